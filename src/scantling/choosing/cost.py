"""The cost of an order in exact whole minor units, from the packs alone; shares no code with the solver's model.

Shares, taxes and exchange are exact fractions, rounded half up once at the stated place:
tax of each pack, line or order; shipping by mass; the fee's share; duty; at last the order's total into home currency.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from scantling.choosing.problem import CustomsTerms, PackOffer, Terms
from scantling.choosing.result import Order, OrderLine
from scantling.quantities import round_half_up


@dataclass(frozen=True)
class Bought:
    """Packs of one offer, with how many of them are above need and why."""

    offer: PackOffer
    packs: int
    for_level: int = 0
    top_up: int = 0


def order(terms: Terms, bought: Sequence[Bought]) -> Order:
    """Return the priced order of one vendor; ``bought`` must hold at least one pack."""
    lines = tuple(_line(terms, item) for item in sorted(bought, key=lambda item: item.offer.id))
    goods = sum(line.goods_minor for line in lines)
    tax = sum(line.tax_minor for line in lines)
    if not terms.with_tax and terms.rounded == "order":
        tax = round_half_up(goods * terms.tax)
    grams = sum(line.grams for line in lines)
    shipping = shipping_minor(terms, goods + tax, grams)
    fee = terms.fee_minor + round_half_up((goods + tax + shipping) * terms.fee_share)
    kinds = tuple(sorted({item.offer.kind for item in bought}))
    duty, handling, per_kind = customs(terms.customs, goods, len(kinds))
    total = goods + tax + shipping + fee + duty + handling + per_kind
    return Order(
        vendor=terms.id,
        currency=terms.currency,
        lines=lines,
        goods_minor=goods,
        tax_minor=tax,
        shipping_minor=shipping,
        payment_fee_minor=fee,
        duty_minor=duty,
        handling_minor=handling,
        per_kind_minor=per_kind,
        total_minor=total,
        rate=terms.rate,
        home_minor=round_half_up(total * terms.rate),
        grams=grams,
        kinds=kinds,
        lead_days=max(line.lead_days for line in lines),
    )


def _line(terms: Terms, item: Bought) -> OrderLine:
    offer, packs = item.offer, item.packs
    price = offer.price_minor(packs)
    tax = 0
    if not terms.with_tax and terms.rounded == "pack":
        tax = packs * round_half_up(price * terms.tax)
    elif not terms.with_tax and terms.rounded == "line":
        tax = round_half_up(packs * price * terms.tax)
    return OrderLine(
        offer=offer.id,
        part=offer.part,
        unit=offer.unit,
        packs=packs,
        pack=offer.pack,
        price_minor=price,
        goods_minor=packs * price,
        tax_minor=tax,
        grams=packs * offer.grams,
        lead_days=offer.lead_days,
        bar_um=offer.bar_um,
        board_um=offer.board_um,
        for_level=item.for_level,
        top_up=item.top_up,
    )


def shipping_minor(terms: Terms, goods_with_tax_minor: int, grams: int) -> int:
    """Return the shipping of a parcel; nothing from the free-above amount on."""
    if terms.free_above_minor is not None and goods_with_tax_minor >= terms.free_above_minor:
        return 0
    return terms.shipping_minor + round_half_up(Fraction(terms.per_kg_minor * grams, 1000))


def customs(terms: CustomsTerms | None, goods_minor: int, kinds: int) -> tuple[int, int, int]:
    """Return duty, handling and the sum of the flat amounts per kind of goods."""
    if terms is None or (terms.above_minor is not None and goods_minor <= terms.above_minor):
        return 0, 0, 0
    return round_half_up(goods_minor * terms.duty), terms.handling_minor, kinds * terms.per_kind_minor


def orders(vendors: Mapping[str, Terms], bought: Sequence[Bought]) -> tuple[Order, ...]:
    """Return one priced order per vendor of whom anything is bought, sorted by vendor."""
    by_vendor: dict[str, list[Bought]] = {}
    for item in bought:
        if item.packs:
            by_vendor.setdefault(item.offer.vendor, []).append(item)
    return tuple(order(vendors[name], by_vendor[name]) for name in sorted(by_vendor))
