"""Needs that one tree decides, in the model: one column for every split of every amount that can be wanted.

A split fixes the packs of each offer, so that price levels, tax of lines and the rule against packs above need are
numbers, not rows, and the linear relaxation knows whole packs.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from scantling.choosing.linear import Expr, Linear
from scantling.choosing.model_packs import PackColumns
from scantling.choosing.problem import Terms
from scantling.choosing.splits import Split, splits

MOST_COLUMNS = 400


def add_splits(
    linear: Linear,
    offers: Sequence[PackColumns],
    states: Mapping[int, Expr],
    in_hand: int,
    terms: Mapping[str, Terms],
) -> dict[str, Expr] | None:
    """Add the splits of every amount wanted; return None, with nothing added, where they are too many.

    Returned is, by vendor, the sum of the splits that buy there: the caller ties it to the vendor.
    """
    served = _served(offers, states, in_hand)
    if served is None:
        return None
    by_vendor: dict[str, Expr] = {}
    for amount, fitting in served:
        total = Expr()
        for split in fitting:
            chosen = _column(linear, len(fitting), states[amount])
            total.plus(chosen)
            _buy(offers, split, chosen, terms, by_vendor)
        linear.equal(total.plus(states[amount], -1), 0)
    return by_vendor


def _served(
    offers: Sequence[PackColumns], states: Mapping[int, Expr], in_hand: int
) -> list[tuple[int, list[Split]]] | None:
    """Return the splits that serve each amount that must be bought for; None where they are too many."""
    amounts = sorted(amount for amount in states if amount > in_hand)
    found = splits([o.offer for o in offers], [o.most for o in offers], in_hand, max(amounts, default=0))
    if found is None:
        return None
    served = [(amount, [s for s in found if s.least <= amount <= s.most]) for amount in amounts]
    return served if sum(len(fitting) for _, fitting in served) <= MOST_COLUMNS else None


def _column(linear: Linear, choices: int, share: Expr) -> Expr:
    """Return the column of a split; where there is no choice, the share of the amount itself."""
    return share.times(1) if choices == 1 else Expr(0, {linear.binary(): 1})


def _buy(
    offers: Sequence[PackColumns],
    split: Split,
    chosen: Expr,
    terms: Mapping[str, Terms],
    by_vendor: dict[str, Expr],
) -> None:
    touched = set()
    for columns, packs in zip(offers, split.packs, strict=True):
        if packs:
            columns.buy_split(chosen, packs, terms[columns.offer.vendor])
            touched.add(columns.offer.vendor)
    for vendor in sorted(touched):
        by_vendor.setdefault(vendor, Expr()).plus(chosen)
