"""A rule solved backwards: for which values of one figure it stays as good as it can be, all else equal.

The verdict is tried on a grid that is fine near the present value and reaches fifty times as far, and the places where
it turns are found by halving. Nothing is taken for monotone: where the verdict turns more than once there are several
intervals.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, floor, inf, log10

from scantling.findings import Verdict

# Shares of the present value by which the grid goes down and up from it; close steps first, for fits are narrow.
_CLOSE = (1e-4, 2e-4, 4e-4, 7e-4, 1e-3, 1.5e-3, 2e-3, 3e-3, 4e-3, 5e-3, 6e-3, 7.5e-3, 0.01, 0.0125, 0.016, 0.02, 0.028)
_STEPS = (*_CLOSE, 0.04, 0.055, 0.07, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.98)
_FURTHER = (1.0, 1.4, 2.0, 3.0, 5.0, 9.0, 19.0, 49.0)
_FROM_ZERO = tuple(step * 10.0**power for power in range(-3, 4) for step in (1.0, 3.0))
_MOST_TIMES = 4  # a count is tried up to so many times its present value
_NEARNESS = 1e-6  # relative, of the value at which a verdict turns
_DIGITS = 5  # of a shown end of an interval, rounded inwards


@dataclass(frozen=True)
class Interval:
    """Values from ``low`` to ``high``, both ends tried and good; infinite where no end was found."""

    low: float
    high: float

    def holds(self, value: float) -> bool:
        """True where a value lies inside, but for rounding."""
        room = 10 * _NEARNESS * abs(value)
        return self.low - room <= value <= self.high + room


@dataclass(frozen=True)
class Solved:
    """The verdict that a figure can bring about, and the intervals in which it does, from low to high."""

    verdict: Verdict
    intervals: tuple[Interval, ...]


def solved(rank_at: Callable[[float], int], now: float, goal: Verdict | None = None, *, whole: bool = False) -> Solved:
    """Return where a figure may lie.

    rank_at : rank of the verdict at a value of the figure    now : its present value    whole : it is a count
    goal : the least verdict that is wanted; without one the best that is found, at least marginal
    """
    points = _grid(now, whole)
    ranks = [rank_at(point) for point in points]
    wanted = goal if goal is not None else Verdict.SOUND if Verdict.SOUND.rank in ranks else Verdict.MARGINAL

    def is_good(value: float) -> bool:
        return rank_at(value) >= wanted.rank

    good = [rank >= wanted.rank for rank in ranks]
    steps = [(*pair, *turn) for pair, turn in zip(pairwise(points), pairwise(good), strict=True)]

    def end(inside: float, outside: float) -> float:
        return inside if whole else _end(is_good, inside, outside)

    starts = ([-inf] if good[0] else []) + [end(b, a) for a, b, was, becomes in steps if becomes and not was]
    ends = [end(a, b) for a, b, was, becomes in steps if was and not becomes] + ([inf] if good[-1] else [])
    return Solved(wanted, tuple(Interval(low, high) for low, high in zip(starts, ends, strict=True) if low <= high))


def intersection(one: Sequence[Interval], other: Sequence[Interval]) -> tuple[Interval, ...]:
    """Return what lies in both.

    >>> intersection([Interval(1, 4), Interval(6, 9)], [Interval(3, 7)])
    (Interval(low=3, high=4), Interval(low=6, high=7))
    """
    both = ((max(a.low, b.low), min(a.high, b.high)) for a in one for b in other)
    return tuple(Interval(low, high) for low, high in sorted(both) if low <= high)


def _grid(now: float, whole: bool) -> list[float]:
    """Return values on both sides of the present one, which is among them, from low to high."""
    if whole:
        return [float(count) for count in range(1, max(2, round(_MOST_TIMES * now)) + 1)]
    if now == 0:
        return [*(-value for value in reversed(_FROM_ZERO)), 0.0, *_FROM_ZERO]
    ratios = [*(1 - step for step in _STEPS), 1.0, *(1 + step for step in (*_STEPS, *_FURTHER))]
    return sorted(now * ratio for ratio in ratios)


def _end(is_good: Callable[[float], bool], inside: float, outside: float) -> float:
    """Return the last good value on the way out, with few digits where one near it is good, else rounded inwards."""
    first, step = inside, abs(inside - outside)  # the step counts where the end is zero, to which nothing is near
    while abs(inside - outside) > _NEARNESS * max(abs(inside), abs(outside), step):
        middle = (inside + outside) / 2
        inside, outside = (middle, outside) if is_good(middle) else (inside, middle)
    plain = float(f"{inside:.{_DIGITS - 1}g}") if abs(inside) > _NEARNESS else 0.0
    if abs(plain - inside) <= _NEARNESS * max(1.0, 2 * abs(inside)) and is_good(plain):
        return plain
    rounded = _to_digits(inside, floor if first < outside else ceil)
    return rounded if min(first, inside) <= rounded <= max(first, inside) else inside


def _to_digits(value: float, rounding: Callable[[float], int]) -> float:
    if value == 0:
        return value
    step = 10.0 ** (floor(log10(abs(value))) + 1 - _DIGITS)
    return float(f"{rounding(value / step) * step:.{_DIGITS}g}")
