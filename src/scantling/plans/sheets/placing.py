"""Finding room for words on a drawing: what lies where, and what a box would cover."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import ceil, floor, hypot

from scantling.drawing.primitives import Anchor, Item, Point, Text
from scantling.plans.sheets.widths import width_mm as measured_mm
from scantling.shapes.edges import Extents

Box = tuple[float, float, float, float]

WORDS, CUTS, HOLES, LINES, THIN = 100.0, 40.0, 20.0, 8.0, 2.0
"""How bad it is to cover a square millimetre of something, from other words down to thin help lines."""

_CELL_MM = 10.0
_UNSEEN = 1e6
_HALF_LINE_MM = 0.3


@dataclass(frozen=True)
class Saying:
    """Words with the strokes that belong to them: a page shows them whole or not at all."""

    box: Box
    items: tuple[Item, ...]


class Room:
    """A drawing's area with all that stands on it; ``windows`` are the pages, a text must be whole on one of them."""

    def __init__(self, windows: Sequence[Extents]) -> None:
        """Begin with empty pages."""
        self.windows = tuple(windows)
        self._things: list[tuple[Box, float]] = []
        self._cells: defaultdict[tuple[int, int], list[int]] = defaultdict(list)

    def add(self, box: Box, weight: float) -> None:
        """Note something that should not be covered."""
        for cell in _cells(box):
            self._cells[cell].append(len(self._things))
        self._things.append((box, weight))

    def add_line(self, start: Point, end: Point, weight: float) -> None:
        """Note a stroke, in pieces short enough to be told from its box."""
        steps = max(1, ceil(hypot(end[0] - start[0], end[1] - start[1]) / 2.0))
        for k in range(steps):
            a = _between(start, end, k / steps)
            b = _between(start, end, (k + 1) / steps)
            self.add(
                _grown((min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1])), _HALF_LINE_MM), weight
            )

    def add_run(self, points: Sequence[Point], weight: float) -> None:
        """Note a closed run of strokes."""
        for start, end in zip(points, [*points[1:], points[0]], strict=True):
            self.add_line(start, end, weight)

    def cost(self, box: Box, home: Point | None = None, most: float = float("inf")) -> float:
        """Return how badly a box lies: what it covers, and whether some page shows it whole (with ``home``).

        most : a sum from which on it does not matter any more
        """
        shown = any(_holds(window, box) and (home is None or _has(window, home)) for window in self.windows)
        cost, seen = 0.0 if shown else _UNSEEN, set()
        for cell in _cells(box):
            for number in self._cells.get(cell, ()):
                if number in seen:
                    continue
                seen.add(number)
                other, weight = self._things[number]
                cost += _shared_mm2(box, other) * weight
                if cost >= most:
                    return cost
        return cost

    def is_clear(self, box: Box) -> bool:
        """True where some page shows the box whole and nothing stands there."""
        return self.cost(box, most=1e-9) == 0

    def line_cost(self, start: Point, end: Point) -> float:
        """Return how badly a thin stroke lies: words and holes that it crosses, none of the lines."""
        steps = max(1, ceil(hypot(end[0] - start[0], end[1] - start[1]) / 1.5))
        points = [_between(start, end, (k + 0.5) / steps) for k in range(steps)]
        crossed = {n for x, y in points for n in self._cells.get((floor(x / _CELL_MM), floor(y / _CELL_MM)), ())}
        heavy = [self._things[n] for n in sorted(crossed) if self._things[n][1] in (WORDS, HOLES)]
        hit = [w for x, y in points for (x0, y0, x1, y1), w in heavy if x0 < x < x1 and y0 < y < y1]
        return sum(hit)

    def best(
        self, boxes: Iterable[Box], home: Point | None = None, extra: Sequence[float] | None = None
    ) -> tuple[int, float]:
        """Return which box lies best, the first of equals, and its cost; (-1, inf) for none.

        extra : what each box costs besides
        """
        best = (-1, float("inf"))
        for number, box in enumerate(boxes):
            cost = self.cost(box, home, best[1]) + (extra[number] if extra else 0.0)
            if cost < best[1] - 1e-9:
                best = (number, cost)
            if cost == 0:
                break
        return best


def text_box(text: Text, margin_mm: float = 0.6) -> Box:
    """Return the upright box around a text; turned texts stand in quarter turns."""
    width_mm = measured_mm(text.text, text.height_mm, text.bold)
    left_mm = {Anchor.START: 0.0, Anchor.MIDDLE: -width_mm / 2, Anchor.END: -width_mm}[text.anchor] - margin_mm
    foot_mm = (-text.height_mm / 2 if text.centred else 0.0) - margin_mm
    right_mm, head_mm = left_mm + width_mm + 2 * margin_mm, foot_mm + text.height_mm + 2 * margin_mm
    x, y = text.at
    if text.turn_deg == 0:
        return (x + left_mm, y + foot_mm, x + right_mm, y + head_mm)
    return (x - head_mm, y + left_mm, x - foot_mm, y + right_mm)


def is_unseen(cost: float) -> bool:
    """True where no page shows the box whole."""
    return cost >= _UNSEEN


def _cells(box: Box) -> list[tuple[int, int]]:
    x0, y0, x1, y1 = (floor(value / _CELL_MM) for value in box)
    return [(i, j) for i in range(x0, x1 + 1) for j in range(y0, y1 + 1)]


def _shared_mm2(a: Box, b: Box) -> float:
    width_mm = min(a[2], b[2]) - max(a[0], b[0])
    height_mm = min(a[3], b[3]) - max(a[1], b[1])
    return width_mm * height_mm if width_mm > 0 and height_mm > 0 else 0.0


def _grown(box: Box, by_mm: float) -> Box:
    return (box[0] - by_mm, box[1] - by_mm, box[2] + by_mm, box[3] + by_mm)


def _between(start: Point, end: Point, share: float) -> Point:
    return (start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1]))


def is_whole(box: Box, window: Extents) -> bool:
    """True where a window shows a box whole."""
    return _holds(window, box)


def _holds(window: Extents, box: Box) -> bool:
    return (
        window.x_min_mm <= box[0]
        and box[2] <= window.x_max_mm
        and window.y_min_mm <= box[1]
        and box[3] <= window.y_max_mm
    )


def _has(window: Extents, point: Point) -> bool:
    return window.x_min_mm <= point[0] <= window.x_max_mm and window.y_min_mm <= point[1] <= window.y_max_mm
