"""Hole marks, dimensions and backed texts as the plain strokes that they are drawn with."""

from __future__ import annotations

from collections.abc import Callable
from math import atan2, cos, degrees, hypot, radians, sin

from scantling.drawing.lettering import text_width_mm
from scantling.drawing.primitives import Anchor, Arc, Dimension, HoleMark, Line, Pen, Point, Polygon, Text

Plain = Line | Arc | Polygon | Text
_Frame = Callable[[float, float], Point]

CROSS_BEYOND_MM = 3.0
"""So far a hole's cross reaches beyond the bit, so that it is still seen when the bit has begun."""

_ARROW_MM = 2.4


def plain(item: Plain | HoleMark | Dimension) -> list[Plain]:
    """Return an item as plain strokes, in drawing order."""
    if isinstance(item, HoleMark):
        return _hole(item)
    if isinstance(item, Dimension):
        return _dimension(item)
    if isinstance(item, Text) and item.backed:
        return [Polygon(text_corners(item), Pen.PAPER, filled=True), item]
    return [item]


def text_corners(text: Text, margin_mm: float = 0.5) -> tuple[Point, ...]:
    """Return the corners of the box around a text as it lies, with a margin; capitals only are counted in height."""
    width_mm = text_width_mm(text.text, text.height_mm, text.bold)
    left_mm = {Anchor.START: 0.0, Anchor.MIDDLE: -width_mm / 2, Anchor.END: -width_mm}[text.anchor] - margin_mm
    foot_mm = (-text.height_mm / 2 if text.centred else 0.0) - margin_mm
    right_mm, head_mm = left_mm + width_mm + 2 * margin_mm, foot_mm + text.height_mm + 2 * margin_mm
    corners = ((left_mm, foot_mm), (right_mm, foot_mm), (right_mm, head_mm), (left_mm, head_mm))
    c, s = cos(radians(text.turn_deg)), sin(radians(text.turn_deg))
    return tuple((text.at[0] + c * x - s * y, text.at[1] + s * x + c * y) for x, y in corners)


def _hole(mark: HoleMark) -> list[Plain]:
    (x, y), radius_mm = mark.centre, mark.diameter_mm / 2
    reach_mm = max(radius_mm, mark.bit_mm / 2) + CROSS_BEYOND_MM
    strokes: list[Plain] = [
        Arc(mark.centre, radius_mm, mark.pen),
        Line((x - reach_mm, y), (x + reach_mm, y), Pen.CENTRE),
        Line((x, y - reach_mm), (x, y + reach_mm), Pen.CENTRE),
    ]
    if mark.label:
        off_mm = 0.75 * radius_mm + 0.9
        dx, dy = mark.label_at or (off_mm, off_mm)
        anchor = Anchor.END if dx < 0 else Anchor.START
        strokes += plain(Text((x + dx, y + dy), mark.label, mark.label_mm, Pen.NOTE, anchor, backed=True))
    return strokes


def _dimension(item: Dimension) -> list[Plain]:
    (ax, ay), (bx, by) = item.start, item.end
    length_mm = hypot(bx - ax, by - ay) or 1e-9
    ux, uy = (bx - ax) / length_mm, (by - ay) / length_mm
    nx, ny = -uy, ux
    side = 1 if item.offset_mm >= 0 else -1

    def at(along_mm: float, off_mm: float) -> Point:
        return (ax + along_mm * ux + off_mm * nx, ay + along_mm * uy + off_mm * ny)

    strokes: list[Plain] = []
    if abs(item.offset_mm) > 1:
        ends = (0.0, length_mm)
        strokes += [Line(at(along, side), at(along, item.offset_mm + 1.5 * side), item.pen) for along in ends]
    tight = length_mm < 3 * _ARROW_MM
    spare_mm = 2 * _ARROW_MM if tight else 0.0
    strokes.append(Line(at(-spare_mm, item.offset_mm), at(length_mm + spare_mm, item.offset_mm), item.pen))
    strokes += [
        _arrow(at, along_mm, sign * (-1 if tight else 1), item) for along_mm, sign in ((0.0, 1), (length_mm, -1))
    ]
    return strokes + _dimension_text(item, at, length_mm, degrees(atan2(uy, ux)), spare_mm)


def _arrow(at: _Frame, along_mm: float, sign: int, item: Dimension) -> Polygon:
    tip, back = at(along_mm, item.offset_mm), along_mm + sign * _ARROW_MM
    wings = (at(back, item.offset_mm + 0.35), at(back, item.offset_mm - 0.35))
    return Polygon((tip, *wings), item.pen, filled=True)


def _dimension_text(item: Dimension, at: _Frame, length_mm: float, turn_deg: float, spare_mm: float) -> list[Plain]:
    """The figure stands on its line, or in a box on it where it must hold; it is read from below or from the right."""
    pen = Pen.CARE if item.boxed else item.pen
    width_mm = text_width_mm(item.text, item.height_mm, item.boxed)
    upright = -90 < round(turn_deg, 6) <= 90
    turn_deg = turn_deg if upright else turn_deg + 180
    roomy = width_mm + 2 * _ARROW_MM < length_mm
    along_mm = length_mm / 2 if roomy else length_mm + spare_mm + width_mm / 2 + 1.5
    lift_mm = 0.0 if item.boxed else (item.height_mm / 2 + 0.8) * (1 if upright else -1)
    where = at(along_mm, item.offset_mm + lift_mm)
    text = Text(where, item.text, item.height_mm, pen, Anchor.MIDDLE, turn_deg, item.boxed, item.boxed, centred=True)
    box = [Polygon(text_corners(text, 1.0), pen)] if item.boxed else []
    return [*plain(text), *box]
