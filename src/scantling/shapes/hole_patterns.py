"""Equal holes in an order that makers have a word for: square, rectangle, circle, grid, row, pair; with residuals."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations, pairwise
from math import atan2, cos, degrees, hypot, sin, tau

from scantling.shapes.edges import Point, distance_mm

LIKE_MM = 0.05
"""Holes this near to their place in a pattern belong to it; the residual is told."""

SAME_SIZE_MM = 0.02
_MOST_HOLES = 80


@dataclass(frozen=True)
class Hole:
    """A round hole: its centre and diameter."""

    centre: Point
    diameter_mm: float


@dataclass(frozen=True)
class Pattern:
    """Equal holes in an order.

    kind : "square", "rectangle", "circle", "grid", "row" or "pair"
    pitch_mm : between neighbours, along the turn; on a circle its diameter          across_mm : the other pitch, or 0
    turn_deg : of the pitch, 0 to 180 (0 to 90 for a square; where the first hole of a circle lies)
    residual_mm : how far the worst hole is from its ideal place          bore_mm : of a hole in the middle, or 0
    """

    kind: str
    diameter_mm: float
    count: int
    centre: Point
    pitch_mm: float
    across_mm: float
    turn_deg: float
    residual_mm: float
    bore_mm: float
    holes: tuple[Point, ...]


def same_sizes(holes: Sequence[Hole]) -> list[list[Hole]]:
    """Return the holes by size, largest first, each size in reading order from the foot."""
    groups: list[list[Hole]] = []
    for hole in sorted(holes, key=lambda h: (-h.diameter_mm, h.centre[1], h.centre[0])):
        if groups and groups[-1][0].diameter_mm - hole.diameter_mm <= SAME_SIZE_MM:
            groups[-1].append(hole)
        else:
            groups.append([hole])
    return [sorted(group, key=lambda h: (round(h.centre[1], 3), round(h.centre[0], 3))) for group in groups]


def find_patterns(holes: Sequence[Hole], like_mm: float = LIKE_MM) -> list[Pattern]:
    """Return the patterns among equal holes; every hole belongs to one at most.

    Looked for in this order, since the larger contain the smaller: circles of five and more, grids, squares and
    rectangles (those around a bore first, then the smallest), circles of three, rows, pairs.
    """
    found: list[Pattern] = []
    for group in same_sizes(holes):
        others = [hole for hole in holes if hole not in group]
        free = [hole.centre for hole in group][:_MOST_HOLES]
        diameter_mm = sum(hole.diameter_mm for hole in group) / len(group)
        for finder in (_circles_of_many, _grid, _rectangles, _circles_of_three, _rows, _pair):
            for pattern in finder(free, others, diameter_mm, like_mm):
                if all(point in free for point in pattern.holes):
                    found.append(pattern)
                    free = [point for point in free if point not in pattern.holes]
    return found


def _bore(centre: Point, others: Sequence[Hole], like_mm: float) -> float:
    return max((hole.diameter_mm for hole in others if distance_mm(hole.centre, centre) <= like_mm), default=0.0)


def _mean(points: Sequence[Point]) -> Point:
    return (sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points))


def _circles_of_many(free: list[Point], others: Sequence[Hole], diameter_mm: float, like_mm: float) -> list[Pattern]:
    return [p for p in _circles(free, others, diameter_mm, like_mm) if p.count >= 5]


def _circles_of_three(free: list[Point], others: Sequence[Hole], diameter_mm: float, like_mm: float) -> list[Pattern]:
    return [p for p in _circles(free, others, diameter_mm, like_mm) if p.count == 3]


def _circles(free: list[Point], others: Sequence[Hole], diameter_mm: float, like_mm: float) -> list[Pattern]:
    """Around every other hole, and around the middle of these: rings on which the holes are evenly spread."""
    if len(free) < 3:
        return []
    found = []
    for middle in dict.fromkeys([*(hole.centre for hole in others), _mean(free)]):
        by_radius = sorted((distance_mm(p, middle), p) for p in free if p != middle)
        for ring in _runs(by_radius, 2 * like_mm):
            pattern = _circle(ring, others, diameter_mm, like_mm)
            if pattern:
                found.append(pattern)
    return sorted(found, key=lambda p: (-p.count, p.pitch_mm))


def _runs(by_radius: Sequence[tuple[float, Point]], reach_mm: float) -> Iterator[list[Point]]:
    """Split points, sorted by their radius, where it jumps by more than the reach."""
    run: list[Point] = []
    before_mm = 0.0
    for radius_mm, point in by_radius:
        if run and radius_mm - before_mm > reach_mm:
            yield run
            run = []
        run.append(point)
        before_mm = radius_mm
    if run:
        yield run


def _circle(ring: list[Point], others: Sequence[Hole], diameter_mm: float, like_mm: float) -> Pattern | None:
    if len(ring) < 3:
        return None
    count, centre = len(ring), _mean(ring)
    radius_mm = sum(distance_mm(p, centre) for p in ring) / count
    around = sorted(ring, key=lambda p: atan2(p[1] - centre[1], p[0] - centre[0]) % tau)
    first_rad = atan2(around[0][1] - centre[1], around[0][0] - centre[0]) % tau
    ideal = [_placed(centre, first_rad + tau * k / count, radius_mm, 0.0) for k in range(count)]
    residual_mm = max(distance_mm(a, b) for a, b in zip(around, ideal, strict=True))
    if residual_mm > like_mm or radius_mm < 10 * like_mm:
        return None
    bore_mm = _bore(centre, others, like_mm)
    first_deg, pitch_mm = degrees(first_rad), 2 * radius_mm
    return Pattern("circle", diameter_mm, count, centre, pitch_mm, 0.0, first_deg, residual_mm, bore_mm, tuple(around))


def _grid(free: list[Point], others: Sequence[Hole], diameter_mm: float, like_mm: float) -> list[Pattern]:
    """All the holes as one full grid of at least two by three."""
    if len(free) < 6:
        return []
    nearest = min(free[1:], key=lambda p: distance_mm(p, free[0]))
    turn_rad = atan2(nearest[1] - free[0][1], nearest[0] - free[0][0])
    c, s = cos(turn_rad), sin(turn_rad)
    along = _steps(sorted(x * c + y * s for x, y in free), like_mm)
    up = _steps(sorted(y * c - x * s for x, y in free), like_mm)
    if along is None or up is None or len(along) * len(up) != len(free) or min(len(along), len(up)) < 2:
        return []
    ideal = [(u * c - v * s, u * s + v * c) for u in along for v in up]
    residual_mm = max(min(distance_mm(p, q) for q in ideal) for p in free)
    if residual_mm > like_mm:
        return []
    pitch_mm, across_mm = along[1] - along[0], up[1] - up[0]
    centre = _mean(free)
    bore_mm = _bore(centre, others, like_mm)
    turn_deg, count = _folded(turn_rad, 180), len(free)
    return [
        Pattern("grid", diameter_mm, count, centre, pitch_mm, across_mm, turn_deg, residual_mm, bore_mm, tuple(free))
    ]


def _steps(values: list[float], like_mm: float) -> list[float] | None:
    """The levels among sorted values, if they are evenly spaced."""
    levels: list[list[float]] = []
    for value in values:
        if levels and value - levels[-1][-1] <= like_mm:
            levels[-1].append(value)
        else:
            levels.append([value])
    means = [sum(level) / len(level) for level in levels]
    gaps = [b - a for a, b in pairwise(means)]
    return means if gaps and max(gaps) - min(gaps) <= 2 * like_mm else None


def _rectangles(free: list[Point], others: Sequence[Hole], diameter_mm: float, like_mm: float) -> list[Pattern]:
    """Two diagonals of one length and one middle make a rectangle."""
    diagonals = sorted((distance_mm(a, b), a, b) for a, b in combinations(free, 2))
    found = []
    for i, (length_mm, a, b) in enumerate(diagonals):
        for other_mm, c, d in diagonals[i + 1 :]:
            if other_mm - length_mm > 2 * like_mm:
                break
            if distance_mm(_mean((a, b)), _mean((c, d))) <= like_mm:
                pattern = _rectangle((a, c, b, d), others, diameter_mm, like_mm)
                found += [pattern] if pattern else []
    return sorted(found, key=lambda p: (p.bore_mm == 0, p.kind != "square", p.pitch_mm + p.across_mm, p.centre))


def _rectangle(
    corners: tuple[Point, Point, Point, Point], others: Sequence[Hole], diameter_mm: float, like_mm: float
) -> Pattern | None:
    """The corners in order around; the longer side gives the turn, that of a square lies between 0 and 90 degrees."""
    a, b, c, d = corners
    first_mm = (distance_mm(a, b) + distance_mm(c, d)) / 2
    second_mm = (distance_mm(b, c) + distance_mm(d, a)) / 2
    if second_mm > first_mm:
        return _rectangle((b, c, d, a), others, diameter_mm, like_mm)
    is_square = first_mm - second_mm <= 2 * like_mm
    if is_square:
        first_mm = second_mm = (first_mm + second_mm) / 2
    centre, turn_rad = _mean(corners), atan2(b[1] - a[1], b[0] - a[0])
    ideal = [_placed(centre, turn_rad, i * first_mm, j * second_mm) for i in (-0.5, 0.5) for j in (-0.5, 0.5)]
    residual_mm = max(min(distance_mm(p, q) for q in ideal) for p in corners)
    if residual_mm > like_mm or second_mm < 2 * like_mm:
        return None
    kind, turn_deg = ("square", _folded(turn_rad, 90)) if is_square else ("rectangle", _folded(turn_rad, 180))
    bore_mm = _bore(centre, others, like_mm)
    return Pattern(kind, diameter_mm, 4, centre, first_mm, second_mm, turn_deg, residual_mm, bore_mm, corners)


def _placed(centre: Point, turn_rad: float, along_mm: float, off_mm: float) -> Point:
    c, s = cos(turn_rad), sin(turn_rad)
    return (centre[0] + along_mm * c - off_mm * s, centre[1] + along_mm * s + off_mm * c)


def _folded(turn_rad: float, period_deg: float) -> float:
    """An angle within the period; just under its end is 0."""
    turn_deg = degrees(turn_rad) % period_deg
    return 0.0 if period_deg - turn_deg < 1e-6 else turn_deg


def _rows(free: list[Point], others: Sequence[Hole], diameter_mm: float, like_mm: float) -> list[Pattern]:
    """Three and more on a line, evenly spaced, the longest rows first."""
    del others
    found = []
    for a, b in combinations(free, 2):
        step = (b[0] - a[0], b[1] - a[1])
        run = _follow(a, step, free, like_mm)
        if len(run) >= 3 and not any(_near(p, (a[0] - step[0], a[1] - step[1]), like_mm) for p in free):
            found.append(_row(run, diameter_mm))
    return sorted(found, key=lambda p: (-p.count, p.pitch_mm, p.centre))


def _follow(start: Point, step: Point, free: list[Point], like_mm: float) -> list[Point]:
    run = [start]
    while True:
        ahead = (run[-1][0] + step[0], run[-1][1] + step[1])
        following = next((p for p in free if _near(p, ahead, like_mm) and p not in run), None)
        if following is None:
            return run
        run.append(following)


def _near(a: Point, b: Point, like_mm: float) -> bool:
    return distance_mm(a, b) <= like_mm


def _row(run: list[Point], diameter_mm: float, kind: str = "row") -> Pattern:
    (ax, ay), (bx, by), last = run[0], run[-1], len(run) - 1
    ideal = [(ax + (bx - ax) * k / last, ay + (by - ay) * k / last) for k in range(len(run))]
    residual_mm = max(distance_mm(p, q) for p, q in zip(run, ideal, strict=True))
    pitch_mm = hypot(bx - ax, by - ay) / last
    turn_deg = _folded(atan2(by - ay, bx - ax), 180)
    return Pattern(kind, diameter_mm, len(run), _mean(run), pitch_mm, 0.0, turn_deg, residual_mm, 0.0, tuple(run))


def _pair(free: list[Point], others: Sequence[Hole], diameter_mm: float, like_mm: float) -> list[Pattern]:
    """Two holes left over of one size: their distance is worth knowing."""
    del others, like_mm
    return [_row(free, diameter_mm, "pair")] if len(free) == 2 else []
