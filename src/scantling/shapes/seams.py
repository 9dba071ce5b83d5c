"""The grid of sheets under a drawing: which cells are needed, where they are joined, and what lies badly."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations
from math import comb, floor
from typing import Any

from scantling.shapes.edges import Extents, Point

Cell = tuple[int, int]

_MOST_WAYS = 5_000


@dataclass(frozen=True)
class Sheets:
    """Cells of a grid that are printed; ``origin`` is the lower left corner of cell (0, 0)."""

    origin: Point
    pitch: Point
    cells: frozenset[Cell]

    def box(self, cell: Cell, more_mm: float = 0.0) -> Extents:
        """Return the box of a cell, wider by so much on all sides."""
        x, y = (self.origin[k] + cell[k] * self.pitch[k] for k in (0, 1))
        return Extents(x - more_mm, y - more_mm, x + self.pitch[0] + more_mm, y + self.pitch[1] + more_mm)

    def extents(self, overlap_mm: float) -> Extents:
        """Return the box around all sheets as they are printed."""
        columns, rows = [i for i, _ in self.cells], [j for _, j in self.cells]
        low, high = (
            self.box((min(columns), min(rows)), overlap_mm / 2),
            self.box((max(columns), max(rows)), overlap_mm / 2),
        )
        return low.joined(high)

    def seams(self) -> list[tuple[Point, Point]]:
        """Return the lines on which neighbours are joined, upright ones first, from the top left."""
        found = []
        for cell in sorted(self.cells, key=lambda c: (-c[1], c[0])):
            box = self.box(cell)
            if (cell[0] + 1, cell[1]) in self.cells:
                found.append(((box.x_max_mm, box.y_min_mm), (box.x_max_mm, box.y_max_mm)))
        for cell in sorted(self.cells, key=lambda c: (-c[1], c[0])):
            box = self.box(cell)
            if (cell[0], cell[1] - 1) in self.cells:
                found.append(((box.x_min_mm, box.y_min_mm), (box.x_max_mm, box.y_min_mm)))
        return [(_tidy(a), _tidy(b)) for a, b in found]


def _tidy(point: Point) -> Point:
    return (round(point[0], 6), round(point[1], 6))


@dataclass(frozen=True)
class Axis:
    """For every point its state along one axis: twice the first cell that shows it, plus 1 where the next does too.

    Cells count from 1 here, since the sheet before the first may show the first millimetres; ``states`` is how many.
    """

    state: Any
    states: int


def fewest(across: Axis, up: Axis, most: float) -> frozenset[Cell] | None:
    """Return the fewest cells whose sheets show every point, or None where they are more than ``most``."""
    import numpy as np

    taken = np.zeros(across.states * up.states, dtype=bool)
    taken[across.state * up.states + up.state] = True
    cells = _fewest_of(taken.tobytes(), up.states)
    return cells if len(cells) <= most else None


@lru_cache(maxsize=4096)
def _fewest_of(taken: bytes, states_up: int) -> frozenset[Cell]:
    """What only one sheet shows forces that sheet; for the rest all ways are tried; then all must hang together."""
    choices = []
    for code, there in enumerate(taken):
        if there:
            (i, more_i), (j, more_j) = (divmod(state, 2) for state in divmod(code, states_up))
            choices.append(frozenset((i + p - 1, j + q - 1) for p in range(1 + more_i) for q in range(1 + more_j)))
    forced = {cell for choice in choices if len(choice) == 1 for cell in choice}
    open_choices = [choice for choice in choices if forced.isdisjoint(choice)]
    middle = _middle(choices)
    # of two cells that serve alike the inner one is taken: the outer ones often hang on nothing
    cells = forced | (_hitting(open_choices, float("inf"), middle) or set())
    return frozenset(cells if connected(cells) else _joined(forced, choices, len(cells)))


def _joined(forced: set[Cell], choices: list[frozenset[Cell]], least: int) -> set[Cell]:
    """The fewest cells that also hang together: all ways while they are few, else the whole rectangle."""
    spare = sorted(_filled(forced.union(*choices)) - forced)
    for more in range(least - len(forced), len(spare) + 1):
        if comb(len(spare), more) > _MOST_WAYS:
            break
        for extra in combinations(spare, more):
            cells = forced.union(extra)
            if not any(cells.isdisjoint(choice) for choice in choices) and connected(cells):
                return cells
    return _filled(forced.union(*choices))


def _hitting(choices: list[frozenset[Cell]], most: float, middle: Point) -> set[Cell] | None:
    """The fewest cells with one from every choice, or None for more than ``most``.

    Choices that share no cell need a cell each: that bound ends the search early, since most choices are such.
    """
    if not choices:
        return set()
    if _apart(choices) > most:
        return None
    best: set[Cell] | None = None
    narrowest = min(choices, key=lambda choice: (len(choice), sorted(choice)))
    for cell in sorted(narrowest, key=lambda c: (abs(c[0] - middle[0]) + abs(c[1] - middle[1]), c)):
        rest = _hitting([choice for choice in choices if cell not in choice], most - 1, middle)
        if rest is not None:
            best, most = rest | {cell}, len(rest)
    return best


def _middle(choices: list[frozenset[Cell]]) -> Point:
    cells = frozenset().union(*choices)
    return (sum(i for i, _ in cells) / len(cells), sum(j for _, j in cells) / len(cells))


def _apart(choices: list[frozenset[Cell]]) -> int:
    """How many of the choices share no cell with one counted before."""
    seen: set[Cell] = set()
    count = 0
    for choice in choices:
        if seen.isdisjoint(choice):
            seen |= choice
            count += 1
    return count


def connected(cells: set[Cell]) -> bool:
    """True where the cells hang together edge to edge."""
    if not cells:
        return True
    todo, seen = [min(cells)], {min(cells)}
    while todo:
        i, j = todo.pop()
        for cell in ((i + 1, j), (i - 1, j), (i, j + 1), (i, j - 1)):
            if cell in cells and cell not in seen:
                seen.add(cell)
                todo.append(cell)
    return len(seen) == len(cells)


def _filled(cells: set[Cell]) -> set[Cell]:
    columns, rows = [i for i, _ in cells], [j for _, j in cells]
    return {(i, j) for i in range(min(columns), max(columns) + 1) for j in range(min(rows), max(rows) + 1)}


def unlucky(sheets: Sheets, spots: Sequence[tuple[Point, str]], seam_mm: float) -> tuple[list[int], list[str]]:
    """Return which spots lie nearer to a seam than wanted, and which groups lie on more than one sheet."""
    near = [k for k, (at, _) in enumerate(spots) if any(_seams_near(sheets, at, seam_mm))]
    homes: dict[str, set[Cell]] = defaultdict(set)
    for at, group in spots:
        if group:
            homes[group].add(_home(sheets, at))
    return near, sorted(group for group, cells in homes.items() if len(cells) > 1)


def _home(sheets: Sheets, at: Point) -> Cell:
    """The cell a spot lies in, or the printed neighbour that shows it."""
    i, j = (floor((at[k] - sheets.origin[k]) / sheets.pitch[k]) for k in (0, 1))
    if (i, j) in sheets.cells:
        return (i, j)
    around = [(i + p, j + q) for p in (-1, 0, 1) for q in (-1, 0, 1) if (i + p, j + q) in sheets.cells]
    return min(around, key=lambda cell: _off_mm(sheets.box(cell), at), default=(i, j))


def _off_mm(box: Extents, at: Point) -> float:
    x_mm = max(box.x_min_mm - at[0], 0.0, at[0] - box.x_max_mm)
    return x_mm + max(box.y_min_mm - at[1], 0.0, at[1] - box.y_max_mm)


def _seams_near(sheets: Sheets, at: Point, seam_mm: float) -> Iterator[bool]:
    """Whether each border of the spot's cell is a seam, with a printed sheet on both sides, and too near."""
    home = _home(sheets, at)
    box = sheets.box(home)
    for step, gap_mm in (
        ((-1, 0), at[0] - box.x_min_mm),
        ((1, 0), box.x_max_mm - at[0]),
        ((0, -1), at[1] - box.y_min_mm),
        ((0, 1), box.y_max_mm - at[1]),
    ):
        yield gap_mm < seam_mm - 1e-9 and (home[0] + step[0], home[1] + step[1]) in sheets.cells


class Rating:
    """How good a grid is beside its number of sheets: split groups, holes near a seam, how far off the middle."""

    def __init__(
        self, places: Sequence[Point], groups: Sequence[str], seam_mm: float, overlap_mm: float, middle: Sequence[float]
    ) -> None:
        """Take what stays the same for all grids."""
        import numpy as np

        self._spots = list(zip(places, groups, strict=True))
        self._places = np.array(places, dtype=float).reshape(-1, 2)
        names = sorted(set(groups))
        self._group = np.array([names.index(group) if group else -1 for group in groups], dtype=int)
        self._seam_mm, self._overlap_mm, self._middle = seam_mm, overlap_mm, middle

    def __call__(self, sheets: Sheets) -> tuple[int, int, float]:
        """Return the figures, lower is better in the order given."""
        split, near = self._quickly(sheets)
        if split < 0:
            found_near, found_split = unlucky(sheets, self._spots, self._seam_mm)
            split, near = len(found_split), len(found_near)
        x, y = sheets.extents(self._overlap_mm).middle
        return split, near, round(abs(x - self._middle[0]) + abs(y - self._middle[1]), 6)

    def _quickly(self, sheets: Sheets) -> tuple[int, int]:
        """Both counts for all holes at once; -1 where a hole lies in a cell that is not printed."""
        import numpy as np

        if not len(self._places):
            return 0, 0
        along = (self._places - np.array(sheets.origin)) / np.array(sheets.pitch)
        cell = np.floor(along).astype(int)
        printed = np.zeros(cell.max(axis=0) - min(-1, int(cell.min())) + 4, dtype=bool)
        base = min(-1, int(cell.min())) - 1
        for i, j in sheets.cells:
            if base <= i < base + printed.shape[0] and base <= j < base + printed.shape[1]:
                printed[i - base, j - base] = True
        i, j = (cell - base).T
        if not printed[i, j].all():
            return -1, -1
        rest = (along - cell) * np.array(sheets.pitch)
        low, high = rest < self._seam_mm - 1e-9, np.array(sheets.pitch) - rest < self._seam_mm - 1e-9
        near = (low[:, 0] & printed[i - 1, j]) | (high[:, 0] & printed[i + 1, j])
        near |= (low[:, 1] & printed[i, j - 1]) | (high[:, 1] & printed[i, j + 1])
        homes = np.unique(np.stack([self._group, i, j], axis=1)[self._group >= 0], axis=0)[:, 0]
        return int((np.bincount(homes) > 1).sum()) if len(homes) else 0, int(near.sum())
