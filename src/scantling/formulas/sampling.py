"""Dimension chains by sampling: yields, what to widen and what to tighten. The same seed gives the same numbers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf, isfinite
from typing import TYPE_CHECKING, Any

from scantling.formulas.chains import CUT_SIGMAS, SIGMAS, Link, chain_nominal_mm, part_names

if TYPE_CHECKING:
    from numpy import float64
    from numpy.random import Generator
    from numpy.typing import NDArray

    Array = NDArray[float64]

SAMPLES = 1_000_000
_HALVINGS = 10  # of the interval in which a tolerance is sought: to a thousandth


@dataclass(frozen=True)
class Spread:
    """What sampling found: mean, standard deviation and the limits that 99.73 % of all keep."""

    mean_mm: float
    deviation_mm: float
    low_mm: float
    high_mm: float


@dataclass(frozen=True)
class Limited:
    """A chain with its limits, either of which may be infinite."""

    links_mm: tuple[Link, ...]
    low_mm: float = -inf
    high_mm: float = inf


def sample_sizes_mm(links_mm: Sequence[Link], seed: int, samples: int = SAMPLES) -> Array:
    """Random sizes, one row a link and one column a sample.

    links_mm : the sizes
    seed : of the random stream, made from check and subject
    samples : how many

    Valid for: normal, even, cut off or measured spread; links of one group share one draw.
    Source: sampling.

    >>> sample_sizes_mm([Link(10.0, 0.3)], seed=1, samples=4).shape
    (1, 4)
    """
    import numpy as np

    draws = _Draws(seed, samples)
    names = part_names(links_mm)
    return np.array([link.nominal_mm + draws.of(name, link) for name, link in zip(names, links_mm, strict=True)])


def sampled_gaps_mm(links_mm: Sequence[Link], seed: int, samples: int = SAMPLES) -> Array:
    """The sampled sizes of a straight chain.

    links_mm : the sizes
    seed : of the random stream
    samples : how many

    Valid for: straight chains.
    Source: sampling.

    >>> sampled_gaps_mm([Link(10.0, 0.0), Link(4.0, 0.0, -1.0)], seed=1, samples=2).tolist()
    [6.0, 6.0]
    """
    gaps: Array = chain_nominal_mm(links_mm) + _deviations(_Draws(seed, samples), links_mm, part_names(links_mm))
    return gaps


def sampled_spread(links_mm: Sequence[Link], seed: int, samples: int = SAMPLES) -> Spread:
    """Mean, deviation and limits of a straight chain by sampling.

    links_mm : the sizes
    seed : of the random stream
    samples : how many

    Valid for: the limits are good to about 1 % of the half range with 200,000 samples.
    Source: sampling; the limits are the 0.135 % and 99.865 % quantiles.

    >>> round(sampled_spread([Link(10.0, 0.3)], seed=1).deviation_mm, 2)
    0.1
    """
    import numpy as np

    gaps = sampled_gaps_mm(links_mm, seed, samples)
    low, high = np.quantile(gaps, (0.00135, 0.99865))
    return Spread(float(gaps.mean()), float(gaps.std()), float(low), float(high))


def inside_ratio(chain_mm: Limited, seed: int, samples: int = SAMPLES) -> float:
    """Share of all machines in which a chain keeps its limits.

    chain_mm : sizes and limits
    seed : of the random stream
    samples : how many

    Valid for: shares outside above about 100 / samples.
    Source: sampling.

    >>> round(inside_ratio(Limited((Link(1.0, 0.3),), 0.9, 1.1), seed=1), 2)
    0.68
    """
    return float(_inside(sampled_gaps_mm(chain_mm.links_mm, seed, samples), chain_mm).mean())


def all_inside_ratio(chains_mm: Sequence[Limited], seed: int, samples: int = SAMPLES) -> float:
    """Share of all machines in which every one of several chains keeps its limits.

    chains_mm : sizes and limits of each; what has the same group in several of them is one and the same deviation
    seed : of the random stream
    samples : how many

    Valid for: chains that share nothing but the named groups.
    Source: sampling.

    >>> twice = [Limited((Link(1.0, 0.3, group="template"),), 0.9, 1.1)] * 2
    >>> round(all_inside_ratio(twice, seed=1), 2)
    0.68
    """
    import numpy as np

    draws = _Draws(seed, samples)
    kept = np.ones(samples, dtype=bool)
    for number, chain in enumerate(chains_mm):
        names = [
            link.group or f"{number}{name}"
            for link, name in zip(chain.links_mm, part_names(chain.links_mm), strict=True)
        ]
        gaps = chain_nominal_mm(chain.links_mm) + _deviations(draws, chain.links_mm, names)
        kept &= _inside(gaps, chain)
    return float(kept.mean())


def moved_and_wider_mm(chain_mm: Limited, wanted_ratio: float, seed: int, samples: int = SAMPLES) -> list[float]:
    """By how much the chain's middle must move, and how much longer its range (a slot) must be, for a wanted yield.

    chain_mm : sizes and limits
    wanted_ratio : yield
    seed : of the random stream
    samples : how many

    Returns the two in mm: the move to the middle of the limits, and what is still lacking in length after that move.
    With one limit the move alone serves, and nothing is lacking.

    Valid for: wanted shares outside above about 100 / samples.
    Source: quantiles of the sampled chain.

    >>> [round(x, 1) for x in moved_and_wider_mm(Limited((Link(1.0, 0.3),), 0.8, 1.0), 0.997, seed=1)]
    [-0.1, 0.4]
    """
    import numpy as np

    gaps = sampled_gaps_mm(chain_mm.links_mm, seed, samples)
    low, high = chain_mm.low_mm, chain_mm.high_mm
    if not (isfinite(low) and isfinite(high)):
        least = low - float(np.quantile(gaps, 1 - wanted_ratio)) if isfinite(low) else 0.0
        most = float(np.quantile(gaps, wanted_ratio)) - high if isfinite(high) else 0.0
        return [max(0.0, least) - max(0.0, most), 0.0]
    middle = float(np.median(gaps))
    half = float(np.quantile(np.abs(gaps - middle), wanted_ratio))
    return [(low + high) / 2 - middle, max(0.0, 2 * half - (high - low))]


def tighter_ratio(chain_mm: Limited, part: str, wanted_ratio: float, seed: int, samples: int = SAMPLES) -> float | None:
    """To what share of its tolerance one size must be held for a wanted yield; None where it alone is not enough.

    chain_mm : sizes and limits
    part : its group, or ``#`` and the number of the link
    wanted_ratio : yield
    seed : of the random stream
    samples : how many

    Valid for: a size whose middle stays where it is.
    Source: bisection over the same samples.

    >>> tighter_ratio(Limited((Link(1.0, 0.3), Link(0.5, 0.01, -1.0)), 0.3, 0.7), "#0", 0.997, seed=1) < 0.7
    True
    """
    draws = _Draws(seed, samples)
    names = part_names(chain_mm.links_mm)
    own = [link for link, name in zip(chain_mm.links_mm, names, strict=True) if name == part]
    rest = [(link, name) for link, name in zip(chain_mm.links_mm, names, strict=True) if name != part]
    moved = _deviations(draws, own, [part] * len(own))
    fixed = chain_nominal_mm(chain_mm.links_mm) + _deviations(
        draws, [one for one, _ in rest], [name for _, name in rest]
    )
    if _inside(fixed, chain_mm).mean() < wanted_ratio:
        return None
    held, loose = 0.0, 1.0
    for _ in range(_HALVINGS):
        middle = (held + loose) / 2
        is_enough = _inside(fixed + middle * moved, chain_mm).mean() >= wanted_ratio
        held, loose = (middle, loose) if is_enough else (held, middle)
    return held


class _Draws:
    """Random deviations by name: what has one name and one spread is drawn once."""

    def __init__(self, seed: int, samples: int) -> None:
        import numpy as np

        self.stream = np.random.default_rng(seed)
        self.samples = samples
        self._drawn: dict[tuple[str, str], Array] = {}

    def of(self, name: str, link: Link) -> Array:
        """Return the deviations of a link in mm."""
        key = (name, link.spread)
        if key not in self._drawn:
            self._drawn[key] = self._unit(link.spread)
        unit = self._drawn[key]
        if link.spread != "measured":
            return link.tolerance_mm * unit
        import numpy as np

        read = np.array(link.samples_mm or (0.0,))
        picked: Array = read[(unit * len(read)).astype(np.intp)]
        return picked

    def _unit(self, spread: str) -> Array:
        """Deviations of a tolerance of 1; of what was measured, which reading, from 0 up to 1."""
        if spread == "normal":
            return self.stream.standard_normal(self.samples) / SIGMAS
        if spread == "cut off":
            return _cut_normal(self.stream, self.samples) / CUT_SIGMAS
        return self.stream.uniform(-1.0 if spread == "even" else 0.0, 1.0, self.samples)


def _cut_normal(stream: Generator, samples: int) -> Array:
    """Normal numbers of which none is beyond the cut: those that are, are drawn again."""
    import numpy as np

    found = stream.standard_normal(samples)
    while len(beyond := np.flatnonzero(np.abs(found) > CUT_SIGMAS)):
        found[beyond] = stream.standard_normal(len(beyond))
    return found


def _deviations(draws: _Draws, links: Sequence[Link], names: Sequence[str]) -> Array:
    """The sampled deviation of a chain."""
    import numpy as np

    total = np.zeros(draws.samples)
    for name, link in zip(names, links, strict=True):
        if link.tolerance_mm or link.samples_mm:
            total += link.effect_ratio * draws.of(name, link)
    return total


def _inside(gaps: Array, chain: Limited) -> NDArray[Any]:
    """Which of the sampled chains keep the limits."""
    kept: NDArray[Any] = (gaps >= chain.low_mm) & (gaps <= chain.high_mm)
    return kept
