"""What pieces of one part cost when bought from exactly these vendors together: the least cost of at least so many.

Fees of vendors are left out, and so are thresholds that only a whole parcel can reach, so the costs are a bound from
below of what the part costs within any purchase.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from math import inf
from typing import Any

from scantling.choosing.problem import PackOffer, Terms
from scantling.quantities import share_minor

Step = tuple[int, float]  # pieces, and the least cost of at least so many
Labels = tuple[Any, Any]  # steps as two arrays
Joint = Mapping[frozenset[str], float]  # by vendors, all of them used; only those cheaper than every part of them

NOTHING = 1e-9  # two costs that differ by less are the same


def line_cost(offer: PackOffer, packs: int, terms: Terms) -> float:
    """Return what packs of one line add to a purchase at least, in home minor units; shipping is left out."""
    price = offer.price_minor(packs)
    goods = Fraction(packs * price)
    if not terms.with_tax:
        if terms.rounded == "pack":
            goods += packs * share_minor(price, terms.tax)
        elif terms.rounded == "line":
            goods += share_minor(packs * price, terms.tax)
        else:
            goods *= 1 + terms.tax
    return float(goods * (1 + terms.fee_share) * terms.rate)


def steps(offers: Sequence[PackOffer], terms: Terms, most: int) -> list[Step]:
    """Return the undominated (pieces, cost) of one vendor's offers of a part, up to the first that gives ``most``."""
    found: list[Step] = [(0, 0.0)]
    for offer in offers:
        packs = -(-most // offer.pack)
        packs = max(packs, max((level.packs for level in offer.levels), default=1))
        packs = packs if offer.stock is None else min(packs, offer.stock)
        own = [(0, 0.0)] + [(n * offer.pack, line_cost(offer, n, terms)) for n in range(1, packs + 1)]
        own = undominated(own, most)
        found = undominated([(a + b, c + d) for a, c in found for b, d in own], most)
    return found


def undominated(pairs: Iterable[Step], most: int) -> list[Step]:
    """Return, by rising pieces, the pairs that no other beats in both; more than ``most`` counts as ``most``."""
    found: list[Step] = []
    for pieces, cost in sorted(((min(pieces, most), cost) for pieces, cost in pairs), key=lambda p: (-p[0], p[1])):
        if not found or cost < found[-1][1] - NOTHING:
            found.append((pieces, cost))
    return found[::-1]


def joint_costs(by_vendor: Mapping[str, list[Step]], needs: Sequence[int]) -> dict[int, Joint]:
    """Return, for each need, the least cost by the vendors that share it, for sets cheaper than all their subsets.

    by_vendor : the steps of each vendor, up to the greatest need
    """
    return _Joining(by_vendor, tuple(sorted(needs))).found if needs else {}


class _Joining:
    """Joins one vendor after another to the sets that may still undercut all sets within them. A set is a bit mask."""

    def __init__(self, by_vendor: Mapping[str, list[Step]], needs: tuple[int, ...]) -> None:
        self.needs, self.most = needs, needs[-1]
        self.names = sorted(by_vendor)
        self.costs: list[dict[int, float]] = [{} for _ in needs]
        own = [_arrays(by_vendor[name]) for name in self.names]
        self.floor = _floor(own, self.most)
        layer = [(1 << number, labels) for number, labels in enumerate(own)]
        while layer:
            for chosen, labels in layer:
                self._enter(chosen, labels)
            layer = [
                (wider, grown)
                for chosen, labels in layer
                for number in range(chosen.bit_length(), len(own))
                for wider in [chosen | 1 << number]
                if (grown := self._grown(labels, own[number], self._limits(wider))) is not None
            ]

    @property
    def found(self) -> dict[int, Joint]:
        """The costs by need, then by the vendors' names."""
        return {
            need: {
                frozenset(n for b, n in enumerate(self.names) if chosen >> b & 1): cost for chosen, cost in kept.items()
            }
            for need, kept in zip(self.needs, self.costs, strict=True)
        }

    def _limits(self, chosen: int) -> list[tuple[int, float]]:
        """Return the needs at which a set could undercut all sets within it, each with what it must undercut."""
        found = []
        for need, kept in zip(self.needs, self.costs, strict=True):
            limit = min((cost for other, cost in kept.items() if other & chosen == other), default=inf) - NOTHING
            if self.floor[need] < limit:
                found.append((need, limit))
        return found

    def _grown(self, labels: Labels, own: Labels, limits: Sequence[tuple[int, float]]) -> Labels | None:
        """Return the labels with some of one more vendor that may yet come below a limit."""
        import numpy as np

        if not limits:
            return None
        short = labels[0] < limits[-1][0]
        pieces, costs = _sums((labels[0][short], labels[1][short]), (own[0][1:], own[1][1:]))
        hope = np.zeros(pieces.shape, dtype=bool)
        for need, limit in limits:
            hope |= costs + self.floor[np.maximum(need - pieces, 0)] < limit
        return _lowest(pieces[hope], costs[hope], self.most) if hope.any() else None

    def _enter(self, chosen: int, labels: Labels) -> None:
        """Keep the cost of a set at every need for which it beats all sets within it."""
        import numpy as np

        ends = np.searchsorted(labels[0], self.needs)
        for kept, end in zip(self.costs, ends, strict=True):
            cost = float(labels[1][end]) if end < len(labels[1]) else inf
            if cost < inf and all(cost < c - NOTHING for other, c in kept.items() if other & chosen == other):
                kept[chosen] = cost


def _floor(sources: Iterable[Labels], most: int) -> Any:
    """Return the least cost of at least 0, 1, 2 … pieces from all vendors together."""
    import numpy as np

    every = _arrays([(0, 0.0)])
    for own in sources:
        every = _lowest(*_sums(every, own), most)
    return np.append(every[1], np.inf)[np.searchsorted(every[0], np.arange(most + 1))]


def _arrays(own: Sequence[Step]) -> Labels:
    import numpy as np

    return np.array([pieces for pieces, _ in own], dtype=np.int64), np.array([cost for _, cost in own])


def _sums(one: Labels, other: Labels) -> Labels:
    """Return all sums of two labels, flat."""
    return (one[0][:, None] + other[0][None, :]).ravel(), (one[1][:, None] + other[1][None, :]).ravel()


def _lowest(pieces: Any, costs: Any, most: int) -> Labels:
    """Return the undominated of some labels, by rising pieces."""
    import numpy as np

    least = np.full(most + 1, np.inf)
    np.minimum.at(least, np.minimum(pieces, most), costs)
    below = np.minimum.accumulate(least[::-1])[::-1]  # of at least so many
    kept = np.flatnonzero((least <= below) & np.isfinite(least) & (np.append(below[1:], np.inf) > least + NOTHING))
    return kept, least[kept]
