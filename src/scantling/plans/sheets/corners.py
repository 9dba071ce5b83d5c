"""Inside corners that a saw cannot turn in: where to drill first, in the waste, and with which bit.

Common practice, no source: inside corners are drilled and then cut from hole to hole; 10 mm lets a jigsaw's blade turn.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import atan2, cos, degrees, pi, sin, tau

from scantling.plans.sheets.job import TemplateJob
from scantling.shapes.edges import Arc, Edge, Point
from scantling.shapes.outline import Circle, Closed, Loop, Outline
from scantling.tables.bits import Bit, bit_set

LARGEST_MM = 10.0
SMALLEST_MM = 3.0
MOST_CORNERS = 60
_ROUNDEST_MM = 15.0
_HAIR_MM = 0.02


@dataclass(frozen=True)
class CornerHole:
    """A hole in the waste that touches both sides of an inside corner, or lies in its rounding."""

    at: Point
    bit: str
    bit_mm: float


def corner_holes(job: TemplateJob) -> tuple[CornerHole, ...]:
    """Return the corners to drill before sawing, in the outline's order; none where no bit in hand fits."""
    bits = tuple(b for b in (job.bits or bit_set("metric 0.5")) if b.diameter_mm >= SMALLEST_MM)
    found = [hole for shape, waste in _shapes(job.outline) for hole in _of_shape(job.outline, shape, waste, bits)]
    return tuple(found[:MOST_CORNERS])


def _shapes(outline: Outline) -> Iterator[tuple[Closed, int]]:
    """Yield each shape with the side on which its waste lies: -1 right of an anticlockwise walk, 1 left."""
    yield outline.boundary, -1
    yield from ((shape, 1) for shape in outline.inner)


def _of_shape(outline: Outline, shape: Closed, waste: int, bits: tuple[Bit, ...]) -> Iterator[CornerHole]:
    if isinstance(shape, Circle):
        return
    edges = shape.sorted().edges
    room_mm = min(shape.extents.width_mm, shape.extents.height_mm) * (0.45 if waste > 0 else 1.0)
    for before, edge in zip((edges[-1], *edges[:-1]), edges, strict=True):
        hole = _sharp(outline, before, edge, waste, bits, room_mm)
        if hole:
            yield hole
        if isinstance(edge, Arc) and edge.sweep_rad * waste > 0:
            hole = _rounded(outline, edge, bits)
            if hole:
                yield hole


def _sharp(
    outline: Outline, before: Edge, after: Edge, waste: int, bits: tuple[Bit, ...], room_mm: float
) -> CornerHole | None:
    """The largest bit that touches both sides of a sharp inside corner."""
    a, b = _direction_rad(before, at_end=True), _direction_rad(after, at_end=False)
    turn_rad = (b - a + pi) % tau - pi
    if turn_rad * waste < pi / 9 or _straight_mm(before, after) < SMALLEST_MM:
        return None  # hardly a corner, or chords of a curve
    half_rad = (pi - abs(turn_rad)) / 2
    middle_rad = atan2(sin(b) - sin(a), cos(b) - cos(a))
    limit_mm = min(LARGEST_MM, room_mm, 2 * _straight_mm(before, after) * (sin(half_rad) / cos(half_rad)))
    for one in sorted(bits, reverse=True):
        if one.diameter_mm <= limit_mm + 1e-9:
            off_mm = one.diameter_mm / 2 / sin(half_rad)
            at = (after.start[0] + off_mm * cos(middle_rad), after.start[1] + off_mm * sin(middle_rad))
            if _in_waste(outline, at, one.diameter_mm / 2):
                return CornerHole(at, one.name, one.diameter_mm)
    return None


def _rounded(outline: Outline, arc: Arc, bits: tuple[Bit, ...]) -> CornerHole | None:
    """The largest bit that lies in the rounding of an inside corner and touches the middle of it."""
    if arc.radius_mm > _ROUNDEST_MM or not 30 <= degrees(abs(arc.sweep_rad)) <= 200:
        return None
    fitting = [one for one in bits if one.diameter_mm <= min(2 * arc.radius_mm, 2 * LARGEST_MM) + 1e-9]
    for one in sorted(fitting, reverse=True):
        off_mm = arc.radius_mm - one.diameter_mm / 2
        middle_rad = arc.start_rad + arc.sweep_rad / 2
        at = (arc.centre[0] + off_mm * cos(middle_rad), arc.centre[1] + off_mm * sin(middle_rad))
        if _in_waste(outline, at, one.diameter_mm / 2):
            return CornerHole(at, one.name, one.diameter_mm)
    return None


def _direction_rad(edge: Edge, *, at_end: bool) -> float:
    if isinstance(edge, Arc):
        along_rad = edge.start_rad + (edge.sweep_rad if at_end else 0.0)
        return along_rad + (pi / 2 if edge.sweep_rad >= 0 else -pi / 2)
    return atan2(edge.end[1] - edge.start[1], edge.end[0] - edge.start[0])


def _straight_mm(before: Edge, after: Edge) -> float:
    return min(before.length_mm, after.length_mm)


def _in_waste(outline: Outline, centre: Point, radius_mm: float) -> bool:
    """True where no material of the panel is taken, a hair apart."""
    shrunk_mm = radius_mm - _HAIR_MM
    rim = [(centre[0] + shrunk_mm * cos(k * tau / 8), centre[1] + shrunk_mm * sin(k * tau / 8)) for k in range(8)]
    return not any(outline.holds(point) for point in (centre, *rim))


def waste_sides(outline: Outline) -> list[tuple[list[Point], bool]]:
    """Return every line that is sawn as a closed run of points, and whether its waste lies to the left."""
    return [(_closed(shape), waste > 0) for shape, waste in _shapes(outline) if isinstance(shape, Loop) or waste < 0]


def _closed(shape: Closed) -> list[Point]:
    points = (shape.sorted() if isinstance(shape, Loop) else shape).flattened(0.1)
    return [*points, points[0]]
