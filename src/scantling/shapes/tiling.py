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
from scantling.shapes.seams import Axis, Sheets, fewest, unlucky

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
    best: tuple[tuple[float, ...], Paper, Sheets] | None = None
    tried = 0
    for index, paper in enumerate(papers):
        _refuse_small(paper, overlap_mm, boxes)
        for count, sheets, score in _search(boxes, spots, paper, overlap_mm, seam_mm, step_mm, _pages(best)):
            tried += count
            if sheets is not None and (best is None or (*score, index) < best[0]):
                best = ((*score, index), paper, sheets)
    if best is None:
        raise ValueError("tiling needs at least one paper")
    return _tiling(best[1], overlap_mm, best[2], spots, seam_mm, tried)


def _pages(best: tuple[tuple[float, ...], Paper, Sheets] | None) -> float:
    return best[0][0] if best else float("inf")


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


def _search(
    boxes: Any, spots: Sequence[Spot], paper: Paper, overlap_mm: float, seam_mm: float, step_mm: float, pages: float
) -> Iterator[tuple[int, Sheets | None, tuple[float, ...]]]:
    """Yield for every shift of the grid one try, with its sheets where they are no more than the fewest so far."""
    low, high = boxes[:, :2].min(axis=0), boxes[:, 2:].max(axis=0)
    pitch = (paper.usable_width_mm - overlap_mm, paper.usable_height_mm - overlap_mm)
    across_all, up_all = (
        [
            (shift_mm, _along(boxes[:, k::2] - low[k] + shift_mm, pitch[k], overlap_mm))
            for shift_mm in _shifts(pitch[k], float(high[k] - low[k]), overlap_mm, step_mm)
        ]
        for k in (0, 1)
    )
    for (shift_x, across), (shift_y, up) in product(across_all, up_all):
        cells = fewest(across, up, pages)
        if cells is None:
            yield 1, None, ()
            continue
        pages = min(pages, len(cells))
        sheets = Sheets((float(low[0]) - shift_x, float(low[1]) - shift_y), pitch, cells)
        near, split = unlucky(sheets, [(spot.at, spot.group) for spot in spots], seam_mm)
        box = sheets.extents(overlap_mm)
        off_mm = abs(box.middle[0] - (low[0] + high[0]) / 2) + abs(box.middle[1] - (low[1] + high[1]) / 2)
        yield 1, sheets, (len(cells), len(split), len(near), round(float(off_mm), 6), shift_x, shift_y)


def _shifts(pitch_mm: float, spread_mm: float, overlap_mm: float, step_mm: float) -> list[float]:
    """All shifts by the step, and the two that lay an edge of the drawing exactly on an edge of the paper."""
    steps = [k * step_mm for k in range(ceil(pitch_mm / step_mm))]
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
