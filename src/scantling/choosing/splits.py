"""Every way to split a need over the packs of some offers in which no pack is above need."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

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
    steps = 0

    def extend(packs: tuple[int, ...]) -> bool:
        nonlocal steps
        steps += 1
        split = _judged(offers, packs, in_hand)
        if split.least > need:
            return True  # more packs only leave more over
        if len(packs) == len(offers):
            found.append(split)
            return len(found) <= MOST_SPLITS
        return steps <= MOST_STEPS and all(extend((*packs, count)) for count in range(limits[len(packs)] + 1))

    return found if extend(()) else None


def _judged(offers: Sequence[PackOffer], packs: tuple[int, ...], in_hand: int) -> Split:
    units = in_hand + sum(offer.pack * count for offer, count in zip(offers, packs, strict=False))
    over = min((_may_be_over(o, count) for o, count in zip(offers, packs, strict=False) if count), default=units)
    return Split(packs, max(0, units - over), units)


def _may_be_over(offer: PackOffer, packs: int) -> int:
    """Return how many units may be over before a pack of this line is above need."""
    return (packs - offer.least_need(packs) + 1) * offer.pack - 1
