"""Dimension chains: how sizes and tolerances add up, in the worst case, by squares and by sampling."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from numpy import float64
    from numpy.typing import NDArray

# A tolerance is three standard deviations of a normally spread size.
SIGMAS = 3.0
SAMPLES = 200_000


@dataclass(frozen=True)
class Link:
    """One size in a chain.

    nominal_mm, tolerance_mm : size ± tolerance
    effect_ratio : what a millimetre of it makes in the chain, +1 or -1 in a straight one
    spread : normal (tolerance = 3 σ) or even (between its limits)
    group : sizes with the same name vary together ("drilled together"); empty where it varies alone
    """

    nominal_mm: float
    tolerance_mm: float
    effect_ratio: float = 1.0
    spread: Literal["normal", "even"] = "normal"
    group: str = ""


@dataclass(frozen=True)
class Spread:
    """What sampling found: mean, standard deviation and the limits that 99.73 % of all keep."""

    mean_mm: float
    deviation_mm: float
    low_mm: float
    high_mm: float


def chain_nominal_mm(links_mm: Sequence[Link]) -> float:
    """Nominal size of a chain.

    links_mm : the sizes

    Valid for: straight chains.
    Source: sum.

    >>> round(chain_nominal_mm([Link(60.0, 0.2), Link(59.7, 0.1, -1.0)]), 6)
    0.3
    """
    return sum(link.effect_ratio * link.nominal_mm for link in links_mm)


def worst_case_mm(links_mm: Sequence[Link]) -> float:
    """Half range of a chain when everything comes together; links of one group add with their signs first.

    links_mm : the sizes

    Valid for: straight chains, or small deviations with their sensitivities as effects.
    Source: sum of the absolute tolerances.

    >>> round(worst_case_mm([Link(60.0, 0.2), Link(19.9, 0.1, -1.0), Link(19.9, 0.1, -1.0), Link(19.9, 0.05, -1.0)]), 3)
    0.45
    """
    return sum(abs(part) for part in _parts_mm(links_mm))


def root_sum_squares_mm(links_mm: Sequence[Link]) -> float:
    """Half range of a chain that 99.73 % of all keep, if sizes vary normally; links of one group add first.

    links_mm : the sizes

    Valid for: three or more links of like size that vary on their own, tolerance = 3 σ.
    Source: root of the sum of squares.

    >>> round(root_sum_squares_mm([Link(60, 0.2), Link(19.9, 0.1, -1), Link(19.9, 0.1, -1), Link(19.9, 0.05, -1)]), 3)
    0.25
    """
    return sqrt(sum(part**2 for part in _parts_mm(links_mm)))


def sample_sizes_mm(links_mm: Sequence[Link], seed: int, samples: int = SAMPLES) -> NDArray[float64]:
    """Random sizes, one row a link and one column a sample; the same seed gives the same numbers.

    links_mm : the sizes
    seed : of the random stream, made from check and subject
    samples : how many

    Valid for: normal or even spread; links of one group share one draw.
    Source: sampling.

    >>> sample_sizes_mm([Link(10.0, 0.3)], seed=1, samples=4).shape
    (1, 4)
    """
    import numpy as np

    stream = np.random.default_rng(seed)
    draws: dict[tuple[str, str], NDArray[float64]] = {}
    sizes = np.empty((len(links_mm), samples))
    for number, link in enumerate(links_mm):
        key = (link.group or f"#{number}", link.spread)
        if key not in draws:
            normal = link.spread == "normal"
            draws[key] = stream.standard_normal(samples) / SIGMAS if normal else stream.uniform(-1, 1, samples)
        sizes[number] = link.nominal_mm + link.tolerance_mm * draws[key]
    return sizes


def sampled_spread(links_mm: Sequence[Link], seed: int, samples: int = SAMPLES) -> Spread:
    """Mean, deviation and limits of a straight chain by sampling.

    links_mm : the sizes
    seed : of the random stream
    samples : how many

    Valid for: the limits are good to about 1 % of the half range with the default number.
    Source: sampling; the limits are the 0.135 % and 99.865 % quantiles.

    >>> round(sampled_spread([Link(10.0, 0.3)], seed=1).deviation_mm, 2)
    0.1
    """
    import numpy as np

    gaps = _gaps_mm(links_mm, seed, samples)
    low, high = np.quantile(gaps, (0.00135, 0.99865))
    return Spread(float(gaps.mean()), float(gaps.std()), float(low), float(high))


def share_below_ratio(links_mm: Sequence[Link], limit_mm: float, seed: int, samples: int = SAMPLES) -> float:
    """Share of all machines whose gap is below a limit.

    links_mm : the sizes
    limit_mm : limit of the gap, 0 where nothing may touch [mm]
    seed : of the random stream
    samples : how many

    Valid for: shares above about 100 / samples.
    Source: sampling.

    >>> share_below_ratio([Link(1.0, 0.3)], 1.0, seed=1) > 0.49
    True
    """
    return float((_gaps_mm(links_mm, seed, samples) < limit_mm).mean())


def _gaps_mm(links_mm: Sequence[Link], seed: int, samples: int) -> NDArray[float64]:
    """The sampled chain."""
    import numpy as np

    effects = np.array([link.effect_ratio for link in links_mm])
    return effects @ sample_sizes_mm(links_mm, seed, samples)


def _parts_mm(links_mm: Sequence[Link]) -> list[float]:
    """What varies on its own: single links, and each group with its effects summed."""
    parts: dict[str, float] = {}
    for number, link in enumerate(links_mm):
        key = link.group or f"#{number}"
        parts[key] = parts.get(key, 0.0) + link.effect_ratio * link.tolerance_mm
    return list(parts.values())
