"""Closed shapes in the plane: loops and circles, and outlines with holes; exact areas, distances and moves, in mm."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from functools import cached_property
from math import cos, hypot, pi, sin, tau
from typing import Any

from scantling.shapes.edges import (
    FLATTEN_MM,
    Arc,
    Edge,
    Extents,
    Point,
    Segment,
    Similarity,
    arc_from_bulge,
    arc_steps,
    distance_mm,
    mirror_at,
    shift_by,
    turn_by,
)

_CLOSED_MM = 1e-3
_ON_EDGE_MM = 1e-7


@dataclass(frozen=True)
class Circle:
    """A full circle."""

    centre: Point
    radius_mm: float

    @property
    def diameter_mm(self) -> float:
        """Diameter."""
        return 2 * self.radius_mm

    @property
    def area_mm2(self) -> float:
        """Area."""
        return pi * self.radius_mm**2

    @property
    def perimeter_mm(self) -> float:
        """Length around."""
        return tau * self.radius_mm

    @property
    def centroid(self) -> Point:
        """Middle of the area."""
        return self.centre

    @property
    def extents(self) -> Extents:
        """Box around it."""
        (x_mm, y_mm), radius_mm = self.centre, self.radius_mm
        return Extents(x_mm - radius_mm, y_mm - radius_mm, x_mm + radius_mm, y_mm + radius_mm)

    @property
    def edges(self) -> tuple[Edge, ...]:
        """The circle as one arc, from the right, anticlockwise."""
        return (Arc(self.centre, self.radius_mm, 0.0, tau),)

    def moved(self, move: Similarity) -> Circle:
        """Return it moved."""
        return Circle(move(self.centre), self.radius_mm * move.scale_ratio)

    def flattened(self, flatten_mm: float = FLATTEN_MM) -> list[Point]:
        """Return points on it whose chords keep within the tolerance; the first is not repeated."""
        steps = max(8, arc_steps(self.radius_mm, tau, flatten_mm))
        (x_mm, y_mm), radius_mm = self.centre, self.radius_mm
        turns = (tau * k / steps for k in range(steps))
        return [(x_mm + radius_mm * cos(turn), y_mm + radius_mm * sin(turn)) for turn in turns]

    def winds(self, point: Point) -> bool:
        """True where the point is inside."""
        return distance_mm(point, self.centre) < self.radius_mm

    def distance_mm(self, point: Point) -> float:
        """Return the distance of a point to the line of the circle, from either side."""
        return abs(distance_mm(point, self.centre) - self.radius_mm)


@dataclass(frozen=True)
class Loop:
    """A closed chain of segments and arcs, each beginning where the one before ends; anticlockwise after ``sorted``."""

    edges: tuple[Edge, ...]

    def __post_init__(self) -> None:
        """Refuse a chain that is not closed: a defect of the caller, not of the input."""
        if not self.edges:
            raise ValueError("a loop needs edges")
        for edge, following in zip(self.edges, (*self.edges[1:], self.edges[0]), strict=True):
            if distance_mm(edge.end, following.start) > _CLOSED_MM:
                raise ValueError(f"the loop is open at {edge.end}: the next edge begins at {following.start}")

    @cached_property
    def _moments(self) -> tuple[float, float, float]:
        """Signed area and first moments: the polygon of the corners, and a circle segment more for every arc."""
        area = first_x = first_y = 0.0
        x0, y0 = self.edges[0].start  # near the shape, so that far-off drawings lose no digits
        for edge in self.edges:
            (ax, ay), (bx, by) = edge.start, edge.end
            ax, ay, bx, by = ax - x0, ay - y0, bx - x0, by - y0
            cross = (ax * by - bx * ay) / 2
            area += cross
            first_x += cross * (ax + bx) / 3
            first_y += cross * (ay + by) / 3
            if isinstance(edge, Arc):
                cap, (cap_x, cap_y) = _cap(edge)
                area += cap
                first_x += cap * (cap_x - x0)
                first_y += cap * (cap_y - y0)
        return area, first_x + area * x0, first_y + area * y0

    @property
    def signed_area_mm2(self) -> float:
        """Area, positive where the loop runs anticlockwise."""
        return self._moments[0]

    @property
    def area_mm2(self) -> float:
        """Area."""
        return abs(self._moments[0])

    @property
    def perimeter_mm(self) -> float:
        """Length around."""
        return sum(edge.length_mm for edge in self.edges)

    @property
    def centroid(self) -> Point:
        """Middle of the area; of the box where there is no area."""
        area, first_x, first_y = self._moments
        return (first_x / area, first_y / area) if area else self.extents.middle

    @cached_property
    def extents(self) -> Extents:
        """Box around it, arcs to their true reach."""
        box = self.edges[0].extents
        for edge in self.edges[1:]:
            box = box.joined(edge.extents)
        return box

    def sorted(self) -> Loop:
        """Return it run anticlockwise."""
        if self.signed_area_mm2 >= 0:
            return self
        return Loop(tuple(edge.reversed() for edge in reversed(self.edges)))

    def moved(self, move: Similarity) -> Loop:
        """Return it moved, still anticlockwise if it was."""
        moved = Loop(tuple(edge.moved(move) for edge in self.edges))
        return Loop(tuple(edge.reversed() for edge in reversed(moved.edges))) if move.mirrored else moved

    def flattened(self, flatten_mm: float = FLATTEN_MM) -> list[Point]:
        """Return its points, arcs as chords within the tolerance; the first is not repeated."""
        return [point for edge in self.edges for point in edge.flattened(flatten_mm)]

    def winds(self, point: Point) -> bool:
        """True where the point is inside, arcs taken exactly."""
        return sum(_winding(edge, point) for edge in self.edges) != 0

    def distance_mm(self, point: Point) -> float:
        """Return the distance of a point to the line of the loop, from either side."""
        return min(edge.distance_mm(point) for edge in self.edges)


Closed = Loop | Circle


@dataclass(frozen=True)
class Outline:
    """A flat part: its boundary, and inside it the holes of any form; ``name`` is the layer or the identifier."""

    boundary: Closed
    inner: tuple[Closed, ...] = ()
    name: str = field(default="", compare=False)

    @property
    def circles(self) -> tuple[Circle, ...]:
        """The round holes."""
        return tuple(shape for shape in self.inner if isinstance(shape, Circle))

    @property
    def windows(self) -> tuple[Loop, ...]:
        """The holes that are not round."""
        return tuple(shape for shape in self.inner if isinstance(shape, Loop))

    @property
    def area_mm2(self) -> float:
        """Area of the material."""
        return self.boundary.area_mm2 - sum(shape.area_mm2 for shape in self.inner)

    @property
    def perimeter_mm(self) -> float:
        """Length of all edges, those of the holes too: what a saw or a cutter travels."""
        return self.boundary.perimeter_mm + sum(shape.perimeter_mm for shape in self.inner)

    @property
    def extents(self) -> Extents:
        """Box around it."""
        return self.boundary.extents

    @property
    def centroid(self) -> Point:
        """Middle of the material."""
        parts = [(self.boundary, 1.0), *((shape, -1.0) for shape in self.inner)]
        area = self.area_mm2
        sums = [sum(sign * shape.area_mm2 * shape.centroid[axis] for shape, sign in parts) for axis in (0, 1)]
        return (sums[0] / area, sums[1] / area) if area else self.extents.middle

    def holds(self, point: Point) -> bool:
        """True where there is material at the point, its edges counted in."""
        if self.edge_distance_mm(point) <= _ON_EDGE_MM:
            return True
        return self.boundary.winds(point) and not any(shape.winds(point) for shape in self.inner)

    def edge_distance_mm(self, point: Point) -> float:
        """Return the distance of a point to the nearest edge, of the boundary or of a hole, from either side."""
        return min(shape.distance_mm(point) for shape in (self.boundary, *self.inner))

    def moved(self, move: Similarity) -> Outline:
        """Return it moved."""
        return replace(self, boundary=self.boundary.moved(move), inner=tuple(shape.moved(move) for shape in self.inner))

    def shifted(self, x_mm: float, y_mm: float) -> Outline:
        """Return it shifted."""
        return self.moved(shift_by(x_mm, y_mm))

    def turned(self, angle_rad: float, about: Point = (0.0, 0.0)) -> Outline:
        """Return it turned, anticlockwise positive."""
        return self.moved(turn_by(angle_rad, about))

    def mirrored(self) -> Outline:
        """Return its other hand, mirrored left to right within the same box."""
        return self.moved(mirror_at(self.extents.middle[0]))

    def polygon(self, flatten_mm: float = FLATTEN_MM) -> Any:
        """Return a shapely polygon, arcs as inscribed chords within the tolerance."""
        from shapely.geometry import Polygon

        holes = [shape.flattened(flatten_mm) for shape in self.inner]
        return Polygon(self.boundary.flattened(flatten_mm), holes)


def polygon_loop(points: list[Point]) -> Loop:
    """Return the loop through points; the first need not be repeated."""
    if len(points) > 1 and points[0] == points[-1]:
        points = points[:-1]
    pairs = zip(points, [*points[1:], points[0]], strict=True)
    return Loop(tuple(Segment(a, b) for a, b in pairs if a != b))


def bulged_loop(vertices: list[tuple[float, float, float]]) -> Loop:
    """Return the loop through (x, y, bulge) points, the bulge being that of the edge which begins there."""
    following = [*vertices[1:], vertices[0]]
    edges = (
        arc_from_bulge((x, y), (u, v), bulge) for (x, y, bulge), (u, v, _) in zip(vertices, following, strict=True)
    )
    return Loop(tuple(edges))


def rectangle_loop(width_mm: float, height_mm: float, radius_mm: float = 0.0, at: Point = (0.0, 0.0)) -> Loop:
    """Return an upright rectangle with its lower left corner at ``at``, its corners rounded where a radius is given."""
    (x, y), w, h, r = at, width_mm, height_mm, radius_mm
    if r == 0:
        return polygon_loop([(x, y), (x + w, y), (x + w, y + h), (x, y + h)])
    b = 0.41421356237309503  # tan(90 deg / 4)
    corners = [
        (x + r, y, 0.0),
        (x + w - r, y, b),
        (x + w, y + r, 0.0),
        (x + w, y + h - r, b),
        (x + w - r, y + h, 0.0),
        (x + r, y + h, b),
        (x, y + h - r, 0.0),
        (x, y + r, b),
    ]
    loop = bulged_loop(corners)
    return Loop(tuple(edge for edge in loop.edges if edge.length_mm > 1e-9))


def _cap(arc: Arc) -> tuple[float, Point]:
    """Signed area between an arc and its chord, and the middle of that area."""
    half_rad, radius_mm = arc.sweep_rad / 2, arc.radius_mm
    twice = 2 * half_rad - sin(2 * half_rad)
    area = radius_mm**2 * twice / 2
    off_mm = 4 * radius_mm * sin(half_rad) ** 3 / (3 * twice) if abs(twice) > 1e-12 else radius_mm
    middle_rad = arc.start_rad + half_rad
    return area, (arc.centre[0] + off_mm * cos(middle_rad), arc.centre[1] + off_mm * sin(middle_rad))


def _winding(edge: Edge, point: Point) -> int:
    """How often an edge passes round the point, counted where it crosses the ray to the right of the point.

    An arc passes as its chord does, and once more where the point lies between the two.
    """
    (ax, ay), (bx, by), (px, py) = edge.start, edge.end, point
    side = (bx - ax) * (py - ay) - (by - ay) * (px - ax)
    turns = 0
    if ay <= py < by and side > 0:
        turns = 1
    elif by <= py < ay and side < 0:
        turns = -1
    if isinstance(edge, Arc) and hypot(px - edge.centre[0], py - edge.centre[1]) < edge.radius_mm:
        # a point on the chord's line counts as a hair to the right and above, as it does in the two lines before
        on_right = side < 0 or (side == 0 and (by > ay or (by == ay and bx < ax)))
        if edge.sweep_rad > 0 and on_right:
            turns += 1
        elif edge.sweep_rad < 0 and not on_right:
            turns -= 1
    return turns
