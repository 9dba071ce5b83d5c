"""The circle through points that nearly lie on one, and loops of short chords that stand for a circle."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, hypot, pi

from scantling.shapes.edges import FLATTEN_MM, Point, Segment, distance_mm
from scantling.shapes.outline import Circle, Closed, Loop


@dataclass(frozen=True)
class CircleFit:
    """A fitted circle, and how far the worst point lies off it."""

    centre: Point
    radius_mm: float
    residual_mm: float


def fit_circle(points: Sequence[Point]) -> CircleFit | None:
    """Return the least-squares circle of points (Kasa's linear form: x2 + y2 = a x + b y + c), or None on a line.

    Fair for points spread over a good part of the circle; on short arcs it comes out small. Source: from memory.
    """
    count = len(points)
    if count < 3:
        return None
    mx, my = sum(x for x, _ in points) / count, sum(y for _, y in points) / count
    u = [(x - mx, y - my) for x, y in points]
    suu, svv = sum(x * x for x, _ in u), sum(y * y for _, y in u)
    suv = sum(x * y for x, y in u)
    suq = sum(x * (x * x + y * y) for x, y in u)
    svq = sum(y * (x * x + y * y) for x, y in u)
    determinant = suu * svv - suv * suv
    if determinant <= 1e-9 * (suu + svv) ** 2:
        return None
    cx, cy = (suq * svv - svq * suv) / (2 * determinant), (svq * suu - suq * suv) / (2 * determinant)
    centre = (mx + cx, my + cy)
    radius_mm = (cx * cx + cy * cy + (suu + svv) / count) ** 0.5
    residual_mm = max(abs(distance_mm(point, centre) - radius_mm) for point in points)
    return CircleFit(centre, radius_mm, residual_mm)


def true_circle(shape: Closed, within_mm: float = FLATTEN_MM) -> Closed:
    """Return the circle that a loop of chords stands for, or the loop itself.

    All corners must lie within the tolerance of the circle, and all chords too, so that a hexagon stays a hexagon.
    """
    if not isinstance(shape, Loop) or len(shape.edges) < 12 or not all(isinstance(e, Segment) for e in shape.edges):
        return shape
    fit = fit_circle([edge.start for edge in shape.edges])
    if fit is None or fit.residual_mm > within_mm:
        return shape
    middles = (((e.start[0] + e.end[0]) / 2, (e.start[1] + e.end[1]) / 2) for e in shape.edges)
    deepest_mm = max(fit.radius_mm - distance_mm(middle, fit.centre) for middle in middles)
    return Circle(fit.centre, fit.radius_mm) if deepest_mm <= 2 * within_mm else shape


@dataclass(frozen=True)
class RegularPolygon:
    """A loop whose corners lie on a circle, evenly spread: a coarse circle, or a hexagon for a nut."""

    corners: int
    centre: Point
    across_corners_mm: float
    across_flats_mm: float
    residual_mm: float


def regular_polygon(shape: Closed, within_mm: float = 0.05) -> RegularPolygon | None:
    """Return the regular polygon that a loop of straight edges is, if it is one; five corners at least."""
    if not isinstance(shape, Loop) or len(shape.edges) < 5 or not all(isinstance(e, Segment) for e in shape.edges):
        return None
    fit = fit_circle([edge.start for edge in shape.edges])
    if fit is None or fit.residual_mm > within_mm:
        return None
    lengths = [hypot(e.end[0] - e.start[0], e.end[1] - e.start[1]) for e in shape.edges]
    if max(lengths) - min(lengths) > 2 * within_mm:
        return None
    count = len(lengths)
    across_flats_mm = 2 * fit.radius_mm * cos(pi / count)
    return RegularPolygon(count, fit.centre, 2 * fit.radius_mm, across_flats_mm, fit.residual_mm)
