"""A drawing larger than the paper, cut into the fewest sheets, its seams away from holes and off groups of holes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import product
from math import ceil, cos, sin, tau
from string import ascii_uppercase
from typing import Any

from scantling.errors import Fault, FaultsError
from scantling.shapes.edges import Extents, Point
from scantling.shapes.paper import Paper
from scantling.shapes.seams import Axis, Rating, Sheets, fewest, unlucky

OVERLAP_MM = 12.0
SEAM_MM = 5.0
STEP_MM = 5.0
_SAMPLE_MM = 0.5
_HAIR_MM = 1e-9
_MOST_SHEETS = 600
_MOST_SAMPLES = 2_000_000


@dataclass(frozen=True)
class Spot:
    """A hole: where, how far it reaches from its centre, and which holes it belongs with ("" for none)."""

    at: Point
    reach_mm: float = 0.0
    group: str = ""


@dataclass(frozen=True)
class Tile:
    """One sheet: the part of the drawing it shows, and its own cell, which ends in the middle of the overlaps."""

    name: str
    column: int
    row: int
    window: Extents
    cell: Extents


@dataclass(frozen=True)
class Tiling:
    """The sheets, in reading order from the top left, and how good they are.

    seams : where neighbours are joined              crosses : points that both neighbours show, to lay them by
    near_seams : holes nearer to a seam than wanted  split_groups : groups that do not lie on one sheet
    tried : how many grids were looked at; no grid among them has fewer sheets
    """

    paper: Paper
    overlap_mm: float
    tiles: tuple[Tile, ...]
    seams: tuple[tuple[Point, Point], ...]
    crosses: tuple[Point, ...]
    near_seams: tuple[Spot, ...]
    split_groups: tuple[str, ...]
    tried: int


def tile(
    lines: Sequence[Sequence[Point]],
    spots: Sequence[Spot],
    papers: Sequence[Paper],
    overlap_mm: float = OVERLAP_MM,
    seam_mm: float = SEAM_MM,
    step_mm: float = STEP_MM,
) -> Tiling:
    """Return the sheets for a drawing: fewest first, then fewest split groups, then fewest holes near a seam.

    lines : everything that must be on paper, as runs of points          spots : the holes
    papers : the ways a sheet may lie (upright and turned, say); the first wins where equal
    step_mm : the grid is tried at every shift by this much in both directions, on every paper

    Sheets with nothing on them are left out as long as the others hang together edge to edge.
    Raises FaultsError (SHAPE-17) where a paper has no room or too many sheets are needed.
    """
    boxes = _boxes(lines, spots)
    grids: list[tuple[Paper, Sheets]] = []
    tried, pages = 0, float("inf")
    for paper in papers:
        _refuse_small(paper, overlap_mm, boxes)
        for sheets in _grids(boxes, paper, overlap_mm, step_mm):
            tried += 1
            if sheets is not None and len(sheets.cells) <= pages:
                pages = len(sheets.cells)
                grids.append((paper, sheets))
    if not grids:
        raise ValueError("tiling needs at least one paper")
    fewest_of_all = [(paper, sheets) for paper, sheets in grids if len(sheets.cells) == pages]
    middle = (boxes[:, :2].min(axis=0) + boxes[:, 2:].max(axis=0)) / 2
    rate = Rating([spot.at for spot in spots], [spot.group for spot in spots], seam_mm, overlap_mm, middle.tolist())
    paper, sheets = min(fewest_of_all, key=lambda grid: (*rate(grid[1]), papers.index(grid[0]), grid[1].origin))
    return _tiling(paper, overlap_mm, sheets, spots, seam_mm, tried)


def _boxes(lines: Sequence[Sequence[Point]], spots: Sequence[Spot]) -> Any:
    """Everything to be drawn as boxes of half a millimetre at most: rows of low x, low y, high x, high y.

    Each box must lie on one sheet as a whole; so nothing between two points is lost where four sheets meet.
    """
    import numpy as np

    runs = [np.array(run, dtype=float).reshape(-1, 2) for run in (*lines, *(_ring(spot) for spot in spots)) if len(run)]
    if not runs:
        raise ValueError("there is nothing to draw")
    pairs = [(run[:-1], run[1:]) if len(run) > 1 else (run, run) for run in runs]
    start, end = np.concatenate([a for a, _ in pairs]), np.concatenate([b for _, b in pairs])
    steps = np.maximum(1, np.ceil(np.hypot(*(end - start).T) / _SAMPLE_MM)).astype(int)
    if steps.sum() > _MOST_SAMPLES:
        raise FaultsError([Fault("SHAPE-17", "the drawing has too much on it to be cut into sheets", "check its unit")])
    which = np.repeat(np.arange(len(steps)), steps)
    within = np.arange(len(which)) - np.repeat(np.cumsum(steps) - steps, steps)
    way = (end - start)[which] / steps[which, None]
    a, b = start[which] + way * within[:, None], start[which] + way * (within + 1)[:, None]
    return np.unique(np.hstack([np.minimum(a, b), np.maximum(a, b)]).round(9), axis=0)


def _ring(spot: Spot) -> list[Point]:
    (x, y), reach_mm = spot.at, spot.reach_mm
    turns = [tau * k / 16 for k in range(17)] if reach_mm else []
    return [spot.at, *((x + reach_mm * cos(turn), y + reach_mm * sin(turn)) for turn in turns)]


def _refuse_small(paper: Paper, overlap_mm: float, boxes: Any) -> None:
    width_mm, height_mm = paper.usable_width_mm, paper.usable_height_mm
    if overlap_mm < 2 * _SAMPLE_MM or 2 * overlap_mm > min(width_mm, height_mm):
        what = f"{paper.name}: {width_mm:.0f} x {height_mm:.0f} mm between the margins, overlap {overlap_mm:g} mm"
        mend = "the overlap must be at least 1 mm and at most half of that"
        raise FaultsError([Fault("SHAPE-17", what, mend)])
    spread = boxes[:, 2:].max(axis=0) - boxes[:, :2].min(axis=0)
    sheets = (spread[0] / (width_mm - overlap_mm) + 1) * (spread[1] / (height_mm - overlap_mm) + 1)
    if sheets > _MOST_SHEETS:
        what = f"the drawing is {spread[0]:.0f} x {spread[1]:.0f} mm, about {sheets:.0f} sheets of {paper.name}"
        raise FaultsError([Fault("SHAPE-17", what, "check its unit, or print on larger paper")])


def _grids(boxes: Any, paper: Paper, overlap_mm: float, step_mm: float) -> Iterator[Sheets | None]:
    """Yield for every shift of the grid its sheets, or None where they are more than the fewest so far."""
    low, high = boxes[:, :2].min(axis=0), boxes[:, 2:].max(axis=0)
    pitch = (paper.usable_width_mm - overlap_mm, paper.usable_height_mm - overlap_mm)
    across_all, up_all = (
        [
            (shift_mm, _along(boxes[:, k::2] - low[k] + shift_mm, pitch[k], overlap_mm))
            for shift_mm in _shifts(pitch[k], float(high[k] - low[k]), overlap_mm, step_mm)
        ]
        for k in (0, 1)
    )
    pages = float("inf")
    for (shift_x, across), (shift_y, up) in product(across_all, up_all):
        cells = fewest(across, up, pages)
        pages = min(pages, len(cells)) if cells else pages
        origin = (float(low[0]) - shift_x, float(low[1]) - shift_y)
        yield Sheets(origin, pitch, cells) if cells else None


def _shifts(pitch_mm: float, spread_mm: float, overlap_mm: float, step_mm: float) -> list[float]:
    """All shifts by the step, two that lay an edge of the drawing on an edge of the paper, and one in the middle.

    What fits on a cell needs no other than these three along this axis: a seam through it gains nothing.
    """
    steps = [] if spread_mm <= pitch_mm else [k * step_mm for k in range(ceil(pitch_mm / step_mm))]
    ends = [-overlap_mm / 2 % pitch_mm, (overlap_mm / 2 - spread_mm) % pitch_mm]
    middle = ((pitch_mm * max(1, ceil((spread_mm - overlap_mm) / pitch_mm - 1e-9)) - spread_mm) / 2) % pitch_mm
    return sorted({round(shift_mm, 6) for shift_mm in [*steps, *ends, middle]})


def _along(reach_mm: Any, pitch_mm: float, overlap_mm: float) -> Axis:
    """Which sheets show each box whole, along one axis; ``reach_mm`` has its low and its high end."""
    import numpy as np

    low_mm, high_mm = reach_mm.T
    cell = np.floor(low_mm / pitch_mm + 1e-12).astype(int)
    before = high_mm - cell * pitch_mm <= overlap_mm / 2 + _HAIR_MM
    after = low_mm - cell * pitch_mm >= pitch_mm - overlap_mm / 2 - _HAIR_MM
    return Axis(2 * (cell + 1 - before) + (before | after), 2 * (int(cell.max()) + 3))


def _tiling(
    paper: Paper, overlap_mm: float, sheets: Sheets, spots: Sequence[Spot], seam_mm: float, tried: int
) -> Tiling:
    near, split = unlucky(sheets, [(spot.at, spot.group) for spot in spots], seam_mm)
    first, last = min(i for i, _ in sheets.cells), max(j for _, j in sheets.cells)
    ordered = sorted(sheets.cells, key=lambda cell: (-cell[1], cell[0]))
    tiles = tuple(
        Tile(
            f"{_letters(i - first)}{last - j + 1}",
            i - first,
            last - j,
            sheets.box((i, j), overlap_mm / 2),
            sheets.box((i, j)),
        )
        for i, j in ordered
    )
    seams = sheets.seams()
    crosses = sorted({point for seam in seams for point in seam}, key=lambda p: (-p[1], p[0]))
    return Tiling(
        paper, overlap_mm, tiles, tuple(seams), tuple(crosses), tuple(spots[k] for k in near), tuple(split), tried
    )


def _letters(number: int) -> str:
    """Column names as in a spreadsheet: A … Z, AA …"""
    text = ""
    number += 1
    while number:
        number, rest = divmod(number - 1, 26)
        text = ascii_uppercase[rest] + text
    return text
