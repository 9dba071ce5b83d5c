"""The three things an outline is made of, kept as what they are: segment, arc, circle; points are (x, y) in mm."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from math import acos, atan2, ceil, cos, hypot, pi, sin, tau

Point = tuple[float, float]

FLATTEN_MM = 0.02
"""How far a chord may stand off the arc it replaces, where nothing else is said."""

_MOST_STEPS = 4096


@dataclass(frozen=True)
class Extents:
    """The upright box around something, in mm."""

    x_min_mm: float
    y_min_mm: float
    x_max_mm: float
    y_max_mm: float

    @property
    def width_mm(self) -> float:
        """Size along x."""
        return self.x_max_mm - self.x_min_mm

    @property
    def height_mm(self) -> float:
        """Size along y."""
        return self.y_max_mm - self.y_min_mm

    @property
    def middle(self) -> Point:
        """The middle of the box."""
        return ((self.x_min_mm + self.x_max_mm) / 2, (self.y_min_mm + self.y_max_mm) / 2)

    def joined(self, other: Extents) -> Extents:
        """Return the box around both."""
        return Extents(
            min(self.x_min_mm, other.x_min_mm),
            min(self.y_min_mm, other.y_min_mm),
            max(self.x_max_mm, other.x_max_mm),
            max(self.y_max_mm, other.y_max_mm),
        )

    def holds(self, other: Extents, slack_mm: float = 0.0) -> bool:
        """True where the other box lies inside this one, give or take the slack."""
        return (
            self.x_min_mm - slack_mm <= other.x_min_mm
            and self.y_min_mm - slack_mm <= other.y_min_mm
            and other.x_max_mm <= self.x_max_mm + slack_mm
            and other.y_max_mm <= self.y_max_mm + slack_mm
        )


def extents_of(points: list[Point]) -> Extents:
    """Return the box around points; at least one is needed."""
    xs = [x for x, _ in points]
    ys = [y for _, y in points]
    return Extents(min(xs), min(ys), max(xs), max(ys))


@dataclass(frozen=True)
class Similarity:
    """A move of the plane that keeps shapes: turn and scale by ``factor``, shift, and first mirror where asked.

    With points as complex numbers: ``p -> factor * p + shift``, or ``factor * conj(p) + shift`` where mirrored.
    """

    factor: complex = 1 + 0j
    shift: complex = 0j
    mirrored: bool = False

    def __call__(self, point: Point) -> Point:
        """Move one point."""
        value = complex(*point)
        moved = self.factor * (value.conjugate() if self.mirrored else value) + self.shift
        return (moved.real, moved.imag)

    @property
    def scale_ratio(self) -> float:
        """By how much lengths grow."""
        return abs(self.factor)

    @property
    def turn_rad(self) -> float:
        """By how much directions turn (after mirroring)."""
        return atan2(self.factor.imag, self.factor.real)

    def then(self, after: Similarity) -> Similarity:
        """Return this move followed by another."""
        own_factor = self.factor.conjugate() if after.mirrored else self.factor
        own_shift = self.shift.conjugate() if after.mirrored else self.shift
        return Similarity(
            after.factor * own_factor, after.factor * own_shift + after.shift, self.mirrored != after.mirrored
        )


def shift_by(x_mm: float, y_mm: float) -> Similarity:
    """Return a plain shift."""
    return Similarity(shift=complex(x_mm, y_mm))


def turn_by(angle_rad: float, about: Point = (0.0, 0.0)) -> Similarity:
    """Return a turn, anticlockwise positive, about a point."""
    factor, pivot = complex(cos(angle_rad), sin(angle_rad)), complex(*about)
    return Similarity(factor, pivot - factor * pivot)


def mirror_at(x_mm: float = 0.0) -> Similarity:
    """Return the mirroring at the upright line through ``x_mm``: left becomes right."""
    return Similarity(-1 + 0j, complex(2 * x_mm, 0), mirrored=True)


def scale_by(ratio: float) -> Similarity:
    """Return a growth about the origin."""
    return Similarity(complex(ratio, 0))


def distance_mm(a: Point, b: Point) -> float:
    """Return the distance of two points."""
    return hypot(b[0] - a[0], b[1] - a[1])


def arc_steps(radius_mm: float, sweep_rad: float, flatten_mm: float = FLATTEN_MM) -> int:
    """Return how many equal chords keep within ``flatten_mm`` of the arc (sagitta r (1 - cos(step / 2)))."""
    if radius_mm <= flatten_mm:
        return max(1, ceil(abs(sweep_rad) / (pi / 2) - 1e-9))
    step_rad = 2 * acos(1 - flatten_mm / radius_mm)
    return min(_MOST_STEPS, max(1, ceil(abs(sweep_rad) / min(step_rad, pi / 2) - 1e-9)))


@dataclass(frozen=True)
class Segment:
    """A straight edge from ``start`` to ``end``."""

    start: Point
    end: Point

    @property
    def length_mm(self) -> float:
        """Length."""
        return distance_mm(self.start, self.end)

    @property
    def extents(self) -> Extents:
        """Box around it."""
        return extents_of([self.start, self.end])

    def reversed(self) -> Segment:
        """Return it run the other way."""
        return Segment(self.end, self.start)

    def moved(self, move: Similarity) -> Segment:
        """Return it moved."""
        return Segment(move(self.start), move(self.end))

    def flattened(self, flatten_mm: float = FLATTEN_MM) -> list[Point]:
        """Return its points without the last one."""
        del flatten_mm
        return [self.start]

    def distance_mm(self, point: Point) -> float:
        """Return the distance of a point to it."""
        (ax, ay), (bx, by), (px, py) = self.start, self.end, point
        square = (bx - ax) ** 2 + (by - ay) ** 2
        along = 0.0 if square == 0 else min(1.0, max(0.0, ((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / square))
        return hypot(px - ax - along * (bx - ax), py - ay - along * (by - ay))


@dataclass(frozen=True)
class Arc:
    """A part of a circle: from ``start_rad`` on by ``sweep_rad``, anticlockwise positive, at most a full turn."""

    centre: Point
    radius_mm: float
    start_rad: float
    sweep_rad: float

    @cached_property
    def start(self) -> Point:
        """Where it begins."""
        return self._at(self.start_rad)

    @cached_property
    def end(self) -> Point:
        """Where it ends."""
        return self._at(self.start_rad + self.sweep_rad)

    @property
    def length_mm(self) -> float:
        """Length along the arc."""
        return self.radius_mm * abs(self.sweep_rad)

    @cached_property
    def extents(self) -> Extents:
        """Box around it: its ends, and the quarter points that it passes."""
        first = min(self.start_rad, self.start_rad + self.sweep_rad)
        last = first + abs(self.sweep_rad)
        quarters = [k * pi / 2 for k in range(ceil(first / (pi / 2)), int(last // (pi / 2)) + 1)]
        return extents_of([self.start, self.end, *(self._at(angle_rad) for angle_rad in quarters)])

    def _at(self, angle_rad: float) -> Point:
        return (self.centre[0] + self.radius_mm * cos(angle_rad), self.centre[1] + self.radius_mm * sin(angle_rad))

    def passes(self, angle_rad: float) -> bool:
        """True where the arc goes through the direction ``angle_rad`` as seen from its centre."""
        if self.sweep_rad >= 0:
            return (angle_rad - self.start_rad) % tau <= self.sweep_rad
        return (self.start_rad - angle_rad) % tau <= -self.sweep_rad

    def reversed(self) -> Arc:
        """Return it run the other way."""
        return Arc(self.centre, self.radius_mm, self.start_rad + self.sweep_rad, -self.sweep_rad)

    def moved(self, move: Similarity) -> Arc:
        """Return it moved; a mirror turns its sense of rotation."""
        sign = -1 if move.mirrored else 1
        return Arc(
            move(self.centre),
            self.radius_mm * move.scale_ratio,
            move.turn_rad + sign * self.start_rad,
            sign * self.sweep_rad,
        )

    def flattened(self, flatten_mm: float = FLATTEN_MM) -> list[Point]:
        """Return points on the arc, without its end, whose chords keep within the tolerance."""
        steps = arc_steps(self.radius_mm, self.sweep_rad, flatten_mm)
        return [self._at(self.start_rad + self.sweep_rad * k / steps) for k in range(steps)]

    def distance_mm(self, point: Point) -> float:
        """Return the distance of a point to it."""
        x_mm, y_mm = point[0] - self.centre[0], point[1] - self.centre[1]
        if self.passes(atan2(y_mm, x_mm)):
            return abs(hypot(x_mm, y_mm) - self.radius_mm)
        return min(distance_mm(point, self.start), distance_mm(point, self.end))


Edge = Segment | Arc


def arc_from_bulge(start: Point, end: Point, bulge: float) -> Edge:
    """Return the arc between two points whose bulge is tan(sweep / 4), anticlockwise positive; a segment for none."""
    chord_mm = distance_mm(start, end)
    if abs(bulge) < 1e-9 or chord_mm == 0:
        return Segment(start, end)
    radius_mm = chord_mm * (1 + bulge * bulge) / (4 * abs(bulge))
    # the centre lies on the chord's normal, (1 - b^2) / (4 b) of the chord to its left
    off = (1 - bulge * bulge) / (4 * bulge)
    centre = (
        (start[0] + end[0]) / 2 - off * (end[1] - start[1]),
        (start[1] + end[1]) / 2 + off * (end[0] - start[0]),
    )
    start_rad = atan2(start[1] - centre[1], start[0] - centre[0])
    end_rad = atan2(end[1] - centre[1], end[0] - centre[0])
    sweep_rad = (end_rad - start_rad) % tau if bulge > 0 else -((start_rad - end_rad) % tau)
    return Arc(centre, radius_mm, start_rad, sweep_rad)
