"""Lines, arcs and areas cut off at an upright window, exactly, so that nothing outside is ever drawn."""

from __future__ import annotations

import itertools
from math import acos, asin, cos, degrees, pi, radians, sin, tau

from scantling.drawing.primitives import Arc, Point, Window

_HAIR_MM = 1e-9


def clip_line(start: Point, end: Point, window: Window) -> tuple[Point, Point] | None:
    """Return the part of a line inside the window, or None (Liang and Barsky's way, from memory)."""
    (ax, ay), (bx, by) = start, end
    first, last = 0.0, 1.0
    for reach, room in (
        (ax - bx, ax - window.x_min_mm),
        (bx - ax, window.x_max_mm - ax),
        (ay - by, ay - window.y_min_mm),
        (by - ay, window.y_max_mm - ay),
    ):
        if reach == 0:
            if room < 0:
                return None
        elif reach < 0:
            first = max(first, room / reach)
        else:
            last = min(last, room / reach)
    if first > last:
        return None
    return (
        (ax + first * (bx - ax), ay + first * (by - ay)),
        (ax + last * (bx - ax), ay + last * (by - ay)),
    )


def clip_arc(arc: Arc, window: Window) -> list[Arc]:
    """Return the parts of an arc or circle inside the window; whole where it lies inside."""
    start_rad, sweep_rad = radians(arc.start_deg), radians(arc.sweep_deg)
    (x, y), radius_mm = arc.centre, arc.radius_mm
    if x - radius_mm > window.x_max_mm or x + radius_mm < window.x_min_mm:
        return []
    if y - radius_mm > window.y_max_mm or y + radius_mm < window.y_min_mm:
        return []
    offsets = sorted(
        offset
        for angle_rad in _crossings(arc, window)
        if 1e-12 < (offset := _along(angle_rad, start_rad, sweep_rad)) < abs(sweep_rad) - 1e-12
    )
    if not offsets:
        return [arc] if _inside(arc, start_rad + sweep_rad / 2, window) else []
    sign = 1 if sweep_rad >= 0 else -1
    bounds = [0.0, *offsets, abs(sweep_rad)]
    kept = [
        (a, b)
        for a, b in itertools.pairwise(bounds)
        if b - a > 1e-12 and _inside(arc, start_rad + sign * (a + b) / 2, window)
    ]
    return [
        Arc(arc.centre, radius_mm, arc.pen, degrees(start_rad + sign * a), degrees(sign * (b - a)))
        for a, b in _rejoined(kept, abs(sweep_rad))
    ]


def _rejoined(kept: list[tuple[float, float]], whole_rad: float) -> list[tuple[float, float]]:
    """Join neighbours, and over the start of a full circle too."""
    joined: list[tuple[float, float]] = []
    for a, b in kept:
        if joined and abs(joined[-1][1] - a) < 1e-12:
            joined[-1] = (joined[-1][0], b)
        else:
            joined.append((a, b))
    is_round = abs(whole_rad - tau) < 1e-9 and len(joined) > 1
    if is_round and joined[0][0] == 0 and abs(joined[-1][1] - whole_rad) < 1e-12:
        first = joined.pop(0)
        joined[-1] = (joined[-1][0], whole_rad + first[1])
    return joined


def _crossings(arc: Arc, window: Window) -> list[float]:
    """Directions in which the full circle crosses the four lines of the window."""
    (x, y), radius_mm = arc.centre, arc.radius_mm
    found = []
    for edge_mm in (window.x_min_mm, window.x_max_mm):
        if abs(edge_mm - x) < radius_mm:
            half_rad = acos((edge_mm - x) / radius_mm)
            found += [half_rad, -half_rad]
    for edge_mm in (window.y_min_mm, window.y_max_mm):
        if abs(edge_mm - y) < radius_mm:
            half_rad = asin((edge_mm - y) / radius_mm)
            found += [half_rad, pi - half_rad]
    return found


def _along(angle_rad: float, start_rad: float, sweep_rad: float) -> float:
    """How far round from the start, in the arc's sense, a direction lies."""
    return (angle_rad - start_rad) % tau if sweep_rad >= 0 else (start_rad - angle_rad) % tau


def _inside(arc: Arc, angle_rad: float, window: Window) -> bool:
    x, y = arc.centre[0] + arc.radius_mm * cos(angle_rad), arc.centre[1] + arc.radius_mm * sin(angle_rad)
    return (
        window.x_min_mm - _HAIR_MM <= x <= window.x_max_mm + _HAIR_MM
        and window.y_min_mm - _HAIR_MM <= y <= window.y_max_mm + _HAIR_MM
    )


def clip_area(points: tuple[Point, ...], window: Window) -> tuple[Point, ...]:
    """Return a filled polygon cut off at the window, side by side (Sutherland and Hodgman's way, from memory)."""
    kept = list(points)
    for axis, limit_mm, sign in (
        (0, window.x_min_mm, 1),
        (0, window.x_max_mm, -1),
        (1, window.y_min_mm, 1),
        (1, window.y_max_mm, -1),
    ):
        kept = _cut_side(kept, axis, limit_mm, sign)
    return tuple(kept)


def _cut_side(points: list[Point], axis: int, limit_mm: float, sign: int) -> list[Point]:
    kept: list[Point] = []
    for a, b in zip(points, [*points[1:], *points[:1]], strict=True):
        a_in, b_in = sign * (a[axis] - limit_mm) >= 0, sign * (b[axis] - limit_mm) >= 0
        if a_in:
            kept.append(a)
        if a_in != b_in:
            share = (limit_mm - a[axis]) / (b[axis] - a[axis])
            kept.append((a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])))
    return kept


def common(a: Window, b: Window) -> Window | None:
    """Return what two windows share, or None."""
    x_min_mm, x_max_mm = max(a.x_min_mm, b.x_min_mm), min(a.x_max_mm, b.x_max_mm)
    y_min_mm, y_max_mm = max(a.y_min_mm, b.y_min_mm), min(a.y_max_mm, b.y_max_mm)
    if x_min_mm >= x_max_mm or y_min_mm >= y_max_mm:
        return None
    return Window(x_min_mm, y_min_mm, x_max_mm, y_max_mm)
