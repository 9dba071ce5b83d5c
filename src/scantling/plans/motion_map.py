"""The map of an axis as a drawing: speed to the right, acceleration upwards, plain where sound, hatched where not."""

from __future__ import annotations

from collections.abc import Iterator
from math import floor, log10, sqrt

from scantling.checks.axis_map import AxisMap, Cell
from scantling.drawing.primitives import Anchor, Arc, Item, Line, Page, Pen, Point, Polygon, Text
from scantling.findings import Verdict
from scantling.quantities import show_number

WIDTH_MM, HEIGHT_MM = 190.0, 150.0
LEFT_MM, BOTTOM_MM = 24.0, 40.0
FIELD_MM = (156.0, 94.0)
MARK_MM = 1.4
_TICKS = 6
_CURVE = 24
_DIGITS = 2


def motion_page(shown: AxisMap) -> Page:
    """Return the drawing of a map on a page of its own."""
    items = [
        *_hatching(shown),
        *_edges(shown),
        *_frame(),
        *_reached(shown),
        *_axes(shown),
        *_wanted(shown),
        *_words(shown),
    ]
    return Page(
        WIDTH_MM, HEIGHT_MM, tuple(items), f"Axis {shown.axis}: speeds and accelerations at which it stays sound"
    )


def _at(shown: AxisMap, speed_mm_s: float, acceleration_mm_s2: float) -> Point:
    return (
        LEFT_MM + speed_mm_s / shown.width_mm_s * FIELD_MM[0],
        BOTTOM_MM + acceleration_mm_s2 / shown.height_mm_s2 * FIELD_MM[1],
    )


def _box(shown: AxisMap, row: int, column: int) -> tuple[Point, Point]:
    """Lower left and upper right corner of a cell."""
    wide, high = FIELD_MM[0] / len(shown.cells[0]), FIELD_MM[1] / len(shown.cells)
    left, bottom = LEFT_MM + column * wide, BOTTOM_MM + row * high
    return (left, bottom), (left + wide, bottom + high)


def _hatching(shown: AxisMap) -> Iterator[Item]:
    """One stroke through a marginal cell, two through an unsound one, a dot in one that is not known."""
    for row, cells in enumerate(shown.cells):
        for column, cell in enumerate(cells):
            yield from _hatched(cell.verdict, *_box(shown, row, column))


def _hatched(verdict: Verdict, low: Point, high: Point) -> Iterator[Item]:
    if verdict in (Verdict.MARGINAL, Verdict.UNSOUND):
        yield Line(low, high, Pen.GHOST if verdict is Verdict.MARGINAL else Pen.CARE)
    if verdict is Verdict.UNSOUND:
        yield Line((low[0], high[1]), (high[0], low[1]), Pen.CARE)
    if verdict is Verdict.UNKNOWN:
        yield Arc(((low[0] + high[0]) / 2, (low[1] + high[1]) / 2), 0.4, Pen.GHOST)


def _edges(shown: AxisMap) -> Iterator[Item]:
    """Strokes along cells where the verdict turns, and the very limit of what is sound."""
    for row, cells in enumerate(shown.cells):
        for column, cell in enumerate(cells):
            (left, bottom), (right, top) = _box(shown, row, column)
            if _turns(cell, shown.cells, row + 1, column):
                yield Line((left, top), (right, top), Pen.CUT)
            if _turns(cell, shown.cells, row, column + 1):
                yield Line((right, bottom), (right, top), Pen.CUT)
    speeds = [cell.speed_mm_s for cell in shown.cells[0]]
    limit = [_at(shown, speed, most) for speed, most in zip(speeds, shown.most_mm_s2, strict=True)]
    limit = [(LEFT_MM, limit[0][1]), *limit, (LEFT_MM + FIELD_MM[0], limit[-1][1])]
    yield Polygon(tuple(limit), Pen.DATUM, closed=False)


def _turns(cell: Cell, cells: tuple[tuple[Cell, ...], ...], row: int, column: int) -> bool:
    """True where the neighbour is worse or better and neither is sound: the limit of the sound has its own line."""
    if row >= len(cells) or column >= len(cells[0]):
        return False
    pair = {cell.verdict, cells[row][column].verdict}
    return len(pair) == 2 and Verdict.SOUND not in pair


def _frame() -> Iterator[Item]:
    right, top = LEFT_MM + FIELD_MM[0], BOTTOM_MM + FIELD_MM[1]
    yield Polygon(((LEFT_MM, BOTTOM_MM), (right, BOTTOM_MM), (right, top), (LEFT_MM, top)), Pen.NOTE)


def _reached(shown: AxisMap) -> Iterator[Item]:
    """Right of this line the longest move ends before it has reached its speed."""
    if shown.travel_mm is None:
        return
    most_mm_s = min(shown.width_mm_s, sqrt(shown.height_mm_s2 * shown.travel_mm))
    speeds = [most_mm_s * k / _CURVE for k in range(_CURVE + 1)]
    yield Polygon(tuple(_at(shown, v, v**2 / shown.travel_mm) for v in speeds), Pen.SEAM, closed=False)
    words = f"here {show_number(shown.travel_mm)} mm of travel end before the speed is reached"
    yield Text((LEFT_MM + FIELD_MM[0] - 3.0, BOTTOM_MM + 3.0), words, 2.0, Pen.SEAM, Anchor.END)


def _axes(shown: AxisMap) -> Iterator[Item]:
    for speed in _ticks(shown.width_mm_s):
        x, y = _at(shown, speed, 0.0)
        yield Line((x, y), (x, y - 1.5))
        yield Text((x, y - 5.0), show_number(speed), 2.2, anchor=Anchor.MIDDLE)
    for above in _ticks(shown.height_mm_s2):
        x, y = _at(shown, 0.0, above)
        yield Line((x, y), (x - 1.5, y))
        yield Text((x - 2.5, y), show_number(above), 2.2, anchor=Anchor.END, centred=True)
    yield Text((LEFT_MM + FIELD_MM[0] / 2, BOTTOM_MM - 10.0), "speed, mm/s", 2.5, anchor=Anchor.MIDDLE)
    middle = BOTTOM_MM + FIELD_MM[1] / 2
    yield Text((6.0, middle), "acceleration, mm/s²", 2.5, anchor=Anchor.MIDDLE, turn_deg=90.0)


def _ticks(most: float) -> list[float]:
    """Round numbers from 0 up to the end of an axis."""
    rough = most / _TICKS
    power = 10.0 ** floor(log10(rough))
    step = min((factor * power for factor in (1, 2, 5, 10)), key=lambda one: abs(one - rough))
    return [step * k for k in range(int(most / step) + 1)]


def _wanted(shown: AxisMap) -> Iterator[Item]:
    """The move that the axis must make."""
    x, y = _at(shown, shown.wanted_mm_s, shown.wanted_mm_s2)
    yield Polygon(tuple((x + a * MARK_MM, y + b * MARK_MM) for a, b in ((0, 1), (1, 0), (0, -1), (-1, 0))), Pen.DATUM)
    words = f"wanted: {show_number(shown.wanted_mm_s)} mm/s, {show_number(shown.wanted_mm_s2)} mm/s²"
    yield Text((x + 3.0, y), words, 2.5, centred=True, backed=True, bold=True)


def _words(shown: AxisMap) -> Iterator[Item]:
    yield Text((LEFT_MM, HEIGHT_MM - 10.0), f"Axis {shown.axis}: {shown.title}", 4.0, bold=True)
    most = min(shown.most_mm_s2)
    first = _first(shown)
    told = f"Sound at any speed shown up to {show_number(_down(most))} mm/s²"
    told += f"; above it says first: {', '.join(first)}." if first else "."
    yield Text((LEFT_MM, 22.0), told, 2.5)
    yield Text((LEFT_MM, 16.5), f"Looked at: {', '.join(shown.looked)}; all else as described.", 2.5)
    for number, lacking in enumerate(shown.left_out[:1]):
        yield Text((LEFT_MM, 11.0 - 5.0 * number), f"Not looked at: {lacking}", 2.5)
    x = LEFT_MM
    for verdict, word in ((Verdict.SOUND, "sound"), (Verdict.MARGINAL, "marginal"), (Verdict.UNSOUND, "unsound")):
        low, high = (x, 4.0), (x + 6.0, 8.0)
        yield Polygon((low, (high[0], low[1]), high, (low[0], high[1])), Pen.NOTE)
        yield from _hatched(verdict, low, high)
        yield Text((x + 8.0, 5.0), word, 2.5)
        x += 36.0


def _down(value: float) -> float:
    """Return a limit rounded down to two digits."""
    if value <= 0:
        return 0.0
    unit = 10.0 ** (floor(log10(value)) + 1 - _DIGITS)
    return floor(value / unit) * unit


def _first(shown: AxisMap) -> list[str]:
    """The checks that speak up next to what is sound, each once, from the left."""
    found = []
    for column in range(len(shown.cells[0])):
        rising = [cells[column] for cells in shown.cells]
        found += [cell.code for cell in rising if cell.verdict is not Verdict.SOUND][:1]
    return list(dict.fromkeys(found))
