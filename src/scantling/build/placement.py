"""Where places sit: origins and turns, as geometry alone. Right-handed, mm, angles anticlockwise.

``face`` says along which of its parent's axes a place's own z looks: ``z``: as the parent. ``x``: its x along the
parent's y, its y up. ``y``: its x along the parent's x, its y up, so that it looks to the front (against the parent's
y). ``turn`` then turns it about its own z.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, radians, sin, sqrt

from scantling.quantities import Figure

Turn = tuple[tuple[float, float, float], tuple[float, float, float], tuple[float, float, float]]
Vector = tuple[Figure, Figure, Figure]

UPRIGHT: Turn = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
ORIGIN: Vector = (Figure.exact(0.0), Figure.exact(0.0), Figure.exact(0.0))

# Columns are the place's own axes, written in the parent's.
FACES: dict[str, Turn] = {
    "z": UPRIGHT,
    "x": ((0.0, 0.0, 1.0), (1.0, 0.0, 0.0), (0.0, 1.0, 0.0)),
    "y": ((1.0, 0.0, 0.0), (0.0, 0.0, -1.0), (0.0, 1.0, 0.0)),
}
_RIGHT_ANGLES = {0: (1.0, 0.0), 90: (0.0, 1.0), 180: (-1.0, 0.0), 270: (0.0, -1.0)}


@dataclass(frozen=True)
class Placed:
    """An origin, and the turn whose columns are the place's own axes."""

    x_mm: Figure
    y_mm: Figure
    z_mm: Figure
    turn: Turn

    @property
    def at(self) -> Vector:
        """The origin."""
        return (self.x_mm, self.y_mm, self.z_mm)


ON_PARENT = Placed(*ORIGIN, UPRIGHT)


def turned(turn_deg: float) -> Turn:
    """Return the turn about z; right angles are exact."""
    whole = _RIGHT_ANGLES.get(round(turn_deg) % 360) if turn_deg == round(turn_deg) else None
    c, s = whole or (cos(radians(turn_deg)), sin(radians(turn_deg)))
    return ((c, -s, 0.0), (s, c, 0.0), (0.0, 0.0, 1.0))


def after(first: Turn, second: Turn) -> Turn:
    """Return the turn that does ``first`` within what ``second`` has turned already (``second`` · ``first``)."""
    rows = [tuple(sum(second[i][k] * first[k][j] for k in range(3)) for j in range(3)) for i in range(3)]
    return (rows[0], rows[1], rows[2])  # type: ignore[return-value]


def moved(turn: Turn, vector: Vector) -> Vector:
    """Return a vector of a turned place in the axes of its parent; bands add."""
    rows = [_row(line, vector) for line in turn]
    return (rows[0], rows[1], rows[2])


def within(parent: Placed, child: Placed) -> Placed:
    """Return a place given in its parent, in what the parent is given in."""
    shift = moved(parent.turn, child.at)
    x, y, z = (a + b for a, b in zip(parent.at, shift, strict=True))
    return Placed(x, y, z, after(child.turn, parent.turn))


def apart(a: Vector, b: Vector) -> Figure:
    """Return the distance of two points, its band that of their differences."""
    steps = [q - p for p, q in zip(a, b, strict=True)]
    value = sqrt(sum(step.value**2 for step in steps))
    low = sqrt(sum(0.0 if s.low <= 0 <= s.high else min(s.low**2, s.high**2) for s in steps))
    high = sqrt(sum(max(s.low**2, s.high**2) for s in steps))
    grade = sum(steps, ORIGIN[0]).grade
    return Figure(value, min(low, value), max(high, value), grade)


def _row(line: tuple[float, float, float], vector: Vector) -> Figure:
    parts = [Figure.exact(factor) * step for factor, step in zip(line, vector, strict=True) if factor != 0.0]
    return sum(parts[1:], parts[0]) if parts else ORIGIN[0]
