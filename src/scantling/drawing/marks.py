"""Marks that working drawings share: the length of check bars, arrows, waste sides."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import atan2, cos, degrees, hypot, radians, sin

from scantling.drawing.primitives import Anchor, Item, Line, Pen, Point, Polygon, Text


def longest_bar_mm(room_mm: float) -> float:
    """Return the longest bar in whole tens of millimetres that a length has room for."""
    return 10.0 * int((room_mm + 1e-9) // 10)


def arrow(start: Point, end: Point, words: str = "", pen: Pen = Pen.NOTE, both_ends: bool = False) -> tuple[Item, ...]:
    """Return an arrow with words over its middle: grain, up, front."""
    length_mm = hypot(end[0] - start[0], end[1] - start[1]) or 1e-9
    ux, uy = (end[0] - start[0]) / length_mm, (end[1] - start[1]) / length_mm
    items: list[Item] = [Line(start, end, pen), _head(end, ux, uy, pen)]
    if both_ends:
        items.append(_head(start, -ux, -uy, pen))
    if words:
        turn_deg = _readable_deg(ux, uy)
        x, y = (start[0] + end[0]) / 2, (start[1] + end[1]) / 2
        c, s = cos(radians(turn_deg)), sin(radians(turn_deg))
        items.append(Text((x - 1.2 * s, y + 1.2 * c), words, 2.5, pen, Anchor.MIDDLE, turn_deg))
    return tuple(items)


def _readable_deg(ux: float, uy: float) -> float:
    """The turn of words along a direction, so that they are read from below or from the right."""
    turn_deg = degrees(atan2(uy, ux))
    if -90 < round(turn_deg, 6) <= 90:
        return turn_deg
    return turn_deg - 180 if turn_deg > 0 else turn_deg + 180


def _head(tip: Point, ux: float, uy: float, pen: Pen, length_mm: float = 3.5) -> Polygon:
    back = (tip[0] - length_mm * ux, tip[1] - length_mm * uy)
    wings = (back[0] - 0.9 * uy, back[1] + 0.9 * ux), (back[0] + 0.9 * uy, back[1] - 0.9 * ux)
    return Polygon((tip, *wings), pen, filled=True)


def waste_strokes(
    points: Sequence[Point], every_mm: float = 6.0, length_mm: float = 3.0, left: bool = True
) -> tuple[Line, ...]:
    """Return short slanting strokes on the waste side of a saw line: left of the way along it, or right."""
    reach_mm = 0.7 * length_mm
    side_mm = reach_mm if left else -reach_mm
    strokes: list[Line] = []
    rest_mm = every_mm / 2
    for (ax, ay), (bx, by) in pairwise(points):
        span_mm = hypot(bx - ax, by - ay)
        while span_mm and rest_mm <= span_mm:
            ux, uy = (bx - ax) / span_mm, (by - ay) / span_mm
            x, y = ax + rest_mm * ux, ay + rest_mm * uy
            end = (x + reach_mm * ux - side_mm * uy, y + reach_mm * uy + side_mm * ux)
            strokes.append(Line((x, y), end, Pen.WASTE))
            rest_mm += every_mm
        rest_mm -= span_mm
    return tuple(strokes)
