"""Every way to split a need over the packs of some offers in which no pack is above need."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf

from scantling.choosing.problem import PackOffer

MOST_SPLITS = 150
MOST_STEPS = 4_000


@dataclass(frozen=True)
class Split:
    """Packs by the position of their offer, and the needs for which none of them is above need."""

    packs: tuple[int, ...]
    least: int
    most: int


def splits(offers: Sequence[PackOffer], limits: Sequence[int], in_hand: int, need: int) -> list[Split] | None:
    """Return all splits that serve some need of 1 to ``need``; None where they are too many.

    limits : the most packs of each offer    in_hand : units in the drawer, used first
    A split serves the needs from ``least`` to ``most``: with more it falls short, with less some pack is a mere wish.
    """
    found: list[Split] = []
    over = [
        [_may_be_over(offer, n) if n else 0 for n in range(most + 1)]
        for offer, most in zip(offers, limits, strict=True)
    ]
    steps = 0

    def extend(packs: tuple[int, ...], units: int, spare: float) -> bool:
        nonlocal steps
        steps += 1
        least = 0 if spare > units else units - int(spare)
        if least > need:
            return True  # more packs only leave more over
        position = len(packs)
        if position == len(offers):
            found.append(Split(packs, least, units))
            return len(found) <= MOST_SPLITS
        if steps > MOST_STEPS:
            return False
        pack, may = offers[position].pack, over[position]
        return all(
            extend((*packs, n), units + n * pack, min(spare, may[n]) if n else spare)
            for n in range(limits[position] + 1)
        )

    return found if extend((), in_hand, inf) else None


def _may_be_over(offer: PackOffer, packs: int) -> int:
    """Return how many units may be over before a pack of this line is above need."""
    return (packs - offer.least_need(packs) + 1) * offer.pack - 1
