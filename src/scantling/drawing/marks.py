"""Marks that working drawings share: check bars, crosses to lay sheets by, tile maps, arrows, waste sides."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import atan2, cos, degrees, hypot, radians, sin

from scantling.drawing.primitives import Anchor, Arc, Item, Line, Pen, Point, Polygon, Text, Window

CROSS_ARM_MM = 5.0


def registration_cross(at: Point, arm_mm: float = CROSS_ARM_MM) -> tuple[Item, ...]:
    """Return a cross in a ring: a dot would hide what it is laid upon."""
    x, y = at
    return (
        Line((x - arm_mm, y), (x + arm_mm, y), Pen.NOTE),
        Line((x, y - arm_mm), (x, y + arm_mm), Pen.NOTE),
        Arc(at, 0.4 * arm_mm, Pen.NOTE),
    )


def check_bar(at: Point, length_mm: float, along_y: bool = False, words: str = "") -> tuple[Item, ...]:
    """Return a bar to be measured with a steel rule from middle of line to middle of line, ticked every 10 mm.

    at : its lower or left end          words : written along it, on the side of the ticks
    The ticks and words lie below a level bar and to the left of an upright one, within 11 mm.
    """

    def turned(along_mm: float, off_mm: float) -> Point:
        return (at[0] - off_mm, at[1] + along_mm) if along_y else (at[0] + along_mm, at[1] - off_mm)

    items: list[Item] = [Line(turned(0, 0), turned(length_mm, 0), Pen.CHECK)]
    for k in range(int(length_mm // 10) + 1):
        is_long = k % 5 == 0 or k * 10 == length_mm
        items.append(Line(turned(10 * k, 0), turned(10 * k, 3.0 if is_long else 1.6), Pen.CHECK))
    turn_deg = 90.0 if along_y else 0.0
    fifties = range(50, int(length_mm) - 9, 50)
    items += [Text(turned(k, 5.0), str(k), 1.7, Pen.CHECK, Anchor.MIDDLE, turn_deg) for k in fifties]
    items.append(Text(turned(length_mm, 5.0), f"{length_mm:g}", 1.7, Pen.CHECK, Anchor.END, turn_deg, bold=True))
    if words:
        items.append(Text(turned(0, 8.6), words, 2.1, Pen.CHECK, Anchor.START, turn_deg))
    return tuple(items)


def bar_words(axis: str, length_mm: float, stop_ratio: float) -> str:
    """Return what stands beside a check bar: room for the reading, and the readings at which to stop."""
    low_mm, high_mm = length_mm * (1 - stop_ratio), length_mm * (1 + stop_ratio)
    return f"{axis}: {length_mm:g} mm – I read ________ mm. Stop if it is under {low_mm:.1f} or over {high_mm:.1f}."


def longest_bar_mm(room_mm: float) -> float:
    """Return the longest bar in whole tens of millimetres that a length has room for."""
    return 10.0 * int((room_mm + 1e-9) // 10)


def tile_map(
    tiles: Sequence[tuple[str, Window]], here: str, at: Point, width_mm: float, height_mm: float
) -> tuple[Item, ...]:
    """Return a small map of all sheets with this one filled, at the right of its room, whose foot is ``at``."""
    x0, y0 = min(w.x_min_mm for _, w in tiles), min(w.y_min_mm for _, w in tiles)
    x1, y1 = max(w.x_max_mm for _, w in tiles), max(w.y_max_mm for _, w in tiles)
    ratio = min(width_mm / (x1 - x0), height_mm / (y1 - y0))

    def small(x: float, y: float) -> Point:
        return (at[0] + width_mm - (x1 - x) * ratio, at[1] + (y - y0) * ratio)

    items: list[Item] = []
    for name, w in tiles:
        low, high = small(w.x_min_mm, w.y_min_mm), small(w.x_max_mm, w.y_max_mm)
        corners = (low, (high[0], low[1]), high, (low[0], high[1]))
        middle = small((w.x_min_mm + w.x_max_mm) / 2, (w.y_min_mm + w.y_max_mm) / 2)
        letter_mm = min(1.8, 0.4 * ratio * min(w.width_mm, w.height_mm))
        items.append(Polygon(corners, Pen.FRAME, filled=name == here))
        items.append(Polygon(corners, Pen.NOTE))
        pen = Pen.PAPER if name == here else Pen.NOTE
        items.append(Text(middle, name, letter_mm, pen, Anchor.MIDDLE, bold=name == here, centred=True))
    return tuple(items)


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


def datum_mark(at: Point, letter: str, towards_deg: float) -> tuple[Item, ...]:
    """Return a filled triangle that stands on an edge at ``at``, its letter off it in the direction ``towards_deg``."""
    ux, uy = cos(radians(towards_deg)), sin(radians(towards_deg))
    base = (at[0] + 4 * ux, at[1] + 4 * uy)
    wings = (base[0] - 2.2 * uy, base[1] + 2.2 * ux), (base[0] + 2.2 * uy, base[1] - 2.2 * ux)
    letter_at = (at[0] + 7.5 * ux, at[1] + 7.5 * uy)
    text = Text(letter_at, letter, 3.5, Pen.DATUM, Anchor.MIDDLE, bold=True, centred=True)
    return (Polygon((at, *wings), Pen.DATUM, filled=True), text)
