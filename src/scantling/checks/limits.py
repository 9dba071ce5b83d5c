"""Limits of a rule: on which side the good lies, how much reserve the rule asks for, and how far a value is inside."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

from scantling.errors import QuantityError
from scantling.findings import Limit
from scantling.quantities import DIMENSIONS, Figure, parse_figure

_ROUNDING = 1e-9  # relative: a value that differs from its limit by less is on it
_PREFERRED = ("ratio", "length", "force", "time", "temperature")

End = float | Callable[..., float] | None


@dataclass(frozen=True)
class Bounds:
    """The limit of a rule; an end may itself be a function of the rule's inputs.

    reserve_ratio : the margin below which a value that is inside is still only marginal
    nominal_holds : a value that is outside at nominal is unsound, however its band lies: for what is chosen by nominal
        size and costs next to nothing to choose right
    """

    side: Limit
    low: End = None
    high: End = None
    reserve_ratio: float = 0.0
    nominal_holds: bool = False

    def at(self, inputs: Mapping[str, float]) -> tuple[float, float]:
        """Return both ends for these inputs, infinite where there is none."""
        return _end(self.low, inputs, -math.inf), _end(self.high, inputs, math.inf)


def at_most(limit: float | Callable[..., float], reserve_ratio: float = 0.0) -> Bounds:
    """Return an upper limit."""
    return Bounds(Limit.UPPER, high=limit, reserve_ratio=reserve_ratio)


def at_least(limit: float | Callable[..., float], reserve_ratio: float = 0.0) -> Bounds:
    """Return a lower limit."""
    return Bounds(Limit.LOWER, low=limit, reserve_ratio=reserve_ratio)


def between(low: float | Callable[..., float], high: float | Callable[..., float]) -> Bounds:
    """Return a two-sided limit."""
    return Bounds(Limit.RANGE, low=low, high=high)


INFORMATION = Bounds(Limit.NONE)


@dataclass(frozen=True)
class Point:
    """A value against its limits at one setting of the inputs: ``slack`` is positive on the good side."""

    value: float
    low: float
    high: float

    @property
    def slack(self) -> float:
        """Distance to the nearer limit, negative outside; a value on its limit but for rounding has none."""
        slack = min(self.value - self.low, self.high - self.value)
        return 0.0 if abs(slack) <= _ROUNDING * max(1.0, abs(self.value)) else slack

    @property
    def is_inside(self) -> bool:
        """True inside or on a limit."""
        return self.slack >= 0

    @property
    def margin(self) -> float:
        """Signed slack / limit; between two limits of half their distance. A limit of zero counts as one unit."""
        if math.isfinite(self.low) and math.isfinite(self.high):
            return 2 * self.slack / ((self.high - self.low) or 1.0)
        limit = self.low if math.isfinite(self.low) else self.high
        return self.slack / (abs(limit) or 1.0) if math.isfinite(limit) else math.inf


def overridden(bounds: Bounds, text: str, unit: str) -> Bounds | None:
    """Return the bounds with the design's own limit, ``0.4 mm`` or ``5..8 mm``; None where it cannot be read.

    ``unit`` is that in which the rule shows its value.
    """
    figure = _in_unit(text, unit)
    if figure is None or bounds.side is Limit.NONE:
        return None
    if bounds.side is Limit.RANGE:
        return replace(bounds, low=figure.low, high=figure.high) if not figure.is_exact else None
    upper = bounds.side is Limit.UPPER
    return replace(bounds, high=figure.value) if upper else replace(bounds, low=figure.value)


def _end(end: End, inputs: Mapping[str, float], otherwise: float) -> float:
    if end is None:
        return otherwise
    return end(**inputs) if callable(end) else end


def _in_unit(text: str, unit: str) -> Figure | None:
    """Read a figure and count it in the shown unit."""
    names = sorted(DIMENSIONS, key=lambda name: name not in _PREFERRED)
    for name in (n for n in names if unit in DIMENSIONS[n].units or unit == DIMENSIONS[n].unit):
        factor = float(DIMENSIONS[name].units[unit].factor) if unit in DIMENSIONS[name].units else 1.0
        try:
            figure = parse_figure(text, name)
        except QuantityError:
            continue
        return Figure(figure.value / factor, figure.low / factor, figure.high / factor)
    return _counted(text, unit)


def _counted(text: str, unit: str) -> Figure | None:
    """Read a number of things that no dimension counts, ``5 teeth``: with the unit's own word or bare."""
    if not unit or any(unit in dimension.units or unit == dimension.unit for dimension in DIMENSIONS.values()):
        return None
    try:
        return parse_figure(text.strip().removesuffix(unit), "ratio")
    except QuantityError:
        return None
