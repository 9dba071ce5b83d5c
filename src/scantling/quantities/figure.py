"""A number with its band and where it comes from: the only form in which sizes travel through scantling."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum


class Grade(StrEnum):
    """How well a figure is known."""

    GIVEN = "given"
    MEASURED = "measured"
    TYPICAL = "typical"


@dataclass(frozen=True)
class Figure:
    """A value in its dimension's canonical unit with the band it lies in.

    value : nominal    low, high : the band, ``low <= value <= high``
    grade : given, measured or typical    source : where it is from, in few words
    """

    value: float
    low: float
    high: float
    grade: Grade = Grade.GIVEN
    source: str = ""

    @classmethod
    def exact(cls, value: float, source: str = "") -> Figure:
        """Return a figure without a band."""
        return cls(value, value, value, Grade.GIVEN, source)

    @property
    def is_exact(self) -> bool:
        """True where the band has no width."""
        return self.low == self.high

    def as_typical(self, source: str) -> Figure:
        """Return the same figure marked as taken from a class table."""
        return replace(self, grade=Grade.TYPICAL, source=source)

    def __add__(self, other: Figure) -> Figure:
        """Add; bands add (worst case)."""
        return Figure(self.value + other.value, self.low + other.low, self.high + other.high, _weaker(self, other))

    def __sub__(self, other: Figure) -> Figure:
        """Subtract; bands add (worst case)."""
        return Figure(self.value - other.value, self.low - other.high, self.high - other.low, _weaker(self, other))

    def __mul__(self, other: Figure) -> Figure:
        """Multiply; the band spans the products of the ends."""
        ends = [a * b for a in (self.low, self.high) for b in (other.low, other.high)]
        return Figure(self.value * other.value, min(ends), max(ends), _weaker(self, other))

    def __truediv__(self, other: Figure) -> Figure:
        """Divide; raises ``ZeroDivisionError`` where the divisor's band holds zero."""
        if other.low <= 0 <= other.high:
            raise ZeroDivisionError("division by a figure whose band holds zero")
        return self * Figure(1 / other.value, 1 / other.high, 1 / other.low, other.grade)


def _weaker(a: Figure, b: Figure) -> Grade:
    """Return the grade of a result: typical where any input is."""
    return Grade.TYPICAL if Grade.TYPICAL in (a.grade, b.grade) else a.grade
