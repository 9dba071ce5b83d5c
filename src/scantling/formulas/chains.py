"""Dimension chains: how sizes and tolerances add up, in the worst case and by squares. Sampling is in ``sampling``."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import sqrt
from typing import Literal

# A tolerance is three standard deviations of a normally spread size.
SIGMAS = 3.0
# Where a gauge sorts out what is beyond the tolerance, more is made beyond it: a tolerance is two of them then.
CUT_SIGMAS = 2.0
_CUT_RATIO = 0.879626  # standard deviation left of 1 when all beyond two is cut off: √(1 - 4 φ(2) / (2 Φ(2) - 1))


@dataclass(frozen=True)
class Link:
    """One size in a chain.

    nominal_mm, tolerance_mm : size ± tolerance
    effect_ratio : what a millimetre of it makes in the chain, +1 or -1 in a straight one
    spread : normal (tolerance = 3 σ), even (between its limits), cut off (normal with tolerance = 2 σ, all beyond it
        sorted out) or measured (as ``samples_mm``, deviations that were read on pieces)
    group : sizes with the same name vary together ("drilled together"); empty where it varies alone
    """

    nominal_mm: float
    tolerance_mm: float
    effect_ratio: float = 1.0
    spread: Literal["normal", "even", "cut off", "measured"] = "normal"
    group: str = ""
    samples_mm: tuple[float, ...] = ()


def chain_nominal_mm(links_mm: Sequence[Link]) -> float:
    """Nominal size of a chain.

    links_mm : the sizes

    Valid for: straight chains.
    Source: sum.

    >>> round(chain_nominal_mm([Link(60.0, 0.2), Link(59.7, 0.1, -1.0)]), 6)
    0.3
    """
    return sum(link.effect_ratio * link.nominal_mm for link in links_mm)


def chain_mean_mm(links_mm: Sequence[Link]) -> float:
    """Mean size of a chain: its nominal size and the means of what was measured.

    links_mm : the sizes

    Valid for: straight chains.
    Source: sum of means.

    >>> round(chain_mean_mm([Link(60.0, 0.2), Link(8.0, 0.1, -1.0, "measured", "", (-0.06, -0.04))]), 6)
    52.05
    """
    return chain_nominal_mm(links_mm) + sum(link.effect_ratio * _mean_mm(link) for link in links_mm)


def worst_case_mm(links_mm: Sequence[Link]) -> float:
    """Half range of a chain when everything comes together; links of one group add with their signs first.

    links_mm : the sizes

    Valid for: straight chains, or small deviations with their sensitivities as effects.
    Source: sum of the absolute tolerances.

    >>> round(worst_case_mm([Link(60.0, 0.2), Link(19.9, 0.1, -1.0), Link(19.9, 0.1, -1.0), Link(19.9, 0.05, -1.0)]), 3)
    0.45
    """
    return sum(abs(part) for part in _parts(links_mm, farthest_mm))


def root_sum_squares_mm(links_mm: Sequence[Link]) -> float:
    """Three standard deviations of a chain, within which 99.73 % of all lie where sizes vary normally.

    links_mm : the sizes; links of one group add first

    Valid for: three or more links of like size that vary on their own.
    Source: root of the sum of squares; standard deviations of the normal, even and cut normal distribution.

    >>> round(root_sum_squares_mm([Link(60, 0.2), Link(19.9, 0.1, -1), Link(19.9, 0.1, -1), Link(19.9, 0.05, -1)]), 3)
    0.25
    """
    return SIGMAS * sqrt(sum(part**2 for part in _parts(links_mm, deviation_mm)))


def shares_of_spread(links_mm: Sequence[Link]) -> dict[str, float]:
    """How much of a chain's variance each size makes, by group or by ``#`` and its number: which one to tighten.

    links_mm : the sizes

    Valid for: straight chains.
    Source: sum of variances.

    >>> {name: round(share, 2) for name, share in shares_of_spread([Link(60, 0.2), Link(59, 0.1, -1)]).items()}
    {'#0': 0.8, '#1': 0.2}
    """
    names = dict.fromkeys(part_names(links_mm))
    squares = {name: part**2 for name, part in zip(names, _parts(links_mm, deviation_mm), strict=True)}
    whole = sum(squares.values())
    return {name: square / whole if whole else 0.0 for name, square in squares.items()}


def deviation_mm(link_mm: Link) -> float:
    """Standard deviation of one size.

    link_mm : the size

    Valid for: the four spreads of a link.
    Source: T / 3, T / √3, 0.4398 T (normal cut at two deviations), root of the mean square of what was measured.

    >>> round(deviation_mm(Link(10.0, 0.3, spread="even")), 4)
    0.1732
    """
    if link_mm.spread == "measured":
        mean = _mean_mm(link_mm)
        return sqrt(sum((one - mean) ** 2 for one in link_mm.samples_mm) / (len(link_mm.samples_mm) or 1))
    parts = {"normal": 1 / SIGMAS, "even": 1 / sqrt(3), "cut off": _CUT_RATIO / CUT_SIGMAS}
    return link_mm.tolerance_mm * parts[link_mm.spread]


def farthest_mm(link_mm: Link) -> float:
    """How far one size lies off its nominal at most.

    link_mm : the size

    Valid for: a spread that is normal counts up to its tolerance.
    Source: definition.

    >>> farthest_mm(Link(8.0, 0.0, 1.0, "measured", "", (-0.06, 0.02)))
    0.06
    """
    if link_mm.spread == "measured":
        return max((abs(one) for one in link_mm.samples_mm), default=0.0)
    return link_mm.tolerance_mm


def part_names(links_mm: Sequence[Link]) -> tuple[str, ...]:
    """For each link the name of what varies on its own: its group, or ``#`` and its number.

    links_mm : the sizes

    Valid for: all chains.
    Source: definition.

    >>> part_names([Link(60, 0.2), Link(59, 0.1, -1, group="drilled")])
    ('#0', 'drilled')
    """
    return tuple(link.group or f"#{number}" for number, link in enumerate(links_mm))


def _mean_mm(link_mm: Link) -> float:
    samples = link_mm.samples_mm if link_mm.spread == "measured" else ()
    return sum(samples) / (len(samples) or 1)


def _parts(links_mm: Sequence[Link], of_one_mm: Callable[[Link], float]) -> list[float]:
    """What varies on its own: single links, and each group with its effects summed."""
    parts: dict[str, float] = {}
    for name, link in zip(part_names(links_mm), links_mm, strict=True):
        parts[name] = parts.get(name, 0.0) + link.effect_ratio * of_one_mm(link)
    return list(parts.values())
