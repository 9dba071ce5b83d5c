"""What is chosen instead of the reference, and why, as far as list prices and the workshop can say."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from scantling.build.demand import Need, place_needs
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.reference import reference_build
from scantling.errors import QuantityError
from scantling.model.build import Key
from scantling.model.part import Part
from scantling.model.workshop import Offer, Workshop
from scantling.plans.plan import Plan
from scantling.quantities import Figure, minor_digits, parse_money, round_half_up, show_money


@dataclass(frozen=True)
class Instead:
    """One place that is not filled by its reference part; "empty" stands for nothing."""

    place: str
    title: str
    reference: str
    chosen: str
    why: str


EMPTY_WORDS = "empty"


def chosen_instead(plan: Plan, pins: Mapping[Key, str] | None = None) -> tuple[Instead, ...]:
    """Return every place with another part than in the reference build, in the design's order.

    pins : answers that were asked for, which is reason enough
    """
    reader, pinned = plan.case.reader(plan.build), pins or {}
    meant = plan.case.reader(reference_build(plan.case, plan.build.copies))
    found = []
    for name, place in plan.case.project.design.places.items():
        part, reference = reader.part(name), meant.part(name)
        if (part.id if part else "") != (reference.id if reference else ""):
            why = "asked for" if plan.case.part_key(name) in pinned else _why(plan, reader, meant, name)
            found.append(Instead(name, place.title or name, _name(reference), _name(part), why))
    return tuple(found)


def _name(part: Part | None) -> str:
    return (part.name or part.id) if part is not None else EMPTY_WORDS


def _why(plan: Plan, reader: Reader, meant: Reader, place: str) -> str:
    option = reader.option(place)
    words = [_filled_by(reader, place)] if option is None else [option.note, _prices(plan, reader, meant, place)]
    return "; ".join(word for word in words if word)


def _filled_by(reader: Reader, place: str) -> str:
    for other in reader.design.places:
        option = reader.option(other)
        if option is not None and place in option.also_fills:
            return f"filled by {option.part} at {other}"
    return "may be empty"


def _prices(plan: Plan, reader: Reader, meant: Reader, place: str) -> str:
    """Compare the list prices of what the place takes, reference against chosen."""
    workshop = reader.workshop
    if not workshop.offers:
        return ""
    if meant.option(place) is None:
        return "empty with the reference parts"
    old, new = _list_price(meant, place), _list_price(reader, place)
    if old is None and new is not None:
        return "the reference is not on offer here"
    if old is None or new is None:
        return ""
    return _compared(round_half_up(old), round_half_up(new), workshop.currency, plan)


def _compared(before: int, after: int, currency: str, plan: Plan) -> str:
    if before == after:
        return "same price"
    amount = show_money(abs(after - before), currency)
    if after < before:
        return f"{amount} less"
    together = ", but less with all that goes with it" if plan.choice is not None and plan.choice.proven else ""
    return f"{amount} more{together}"


def _list_price(reader: Reader, place: str) -> Fraction | None:
    """What the pieces of a place cost in shares of packs, bars and boards, with all that their part brings."""
    try:
        needs = reader.derive(place_needs, place)
    except NotDescribedError:
        return None
    prices = [_need_price(reader.workshop, need) for need in needs]
    return None if any(price is None for price in prices) else sum((p for p in prices if p), Fraction(0))


def _need_price(workshop: Workshop, need: Need) -> Fraction | None:
    rates = [_rate(workshop, offer, need) for offer in workshop.offers if offer.part == need.part]
    return min((rate * need.amount for rate in rates if rate is not None), default=None)


def _rate(workshop: Workshop, offer: Offer, need: Need) -> Fraction | None:
    """Price of one piece as needed, tax included, in home minor units: its share of a pack, a bar, a board, a spool."""
    pack = pack_price(workshop, offer)
    if pack is None:
        return None
    each = pack / max(offer.pack, 1)
    if need.unit == "length":
        return each * _share(need.length_um, offer.length_mm, 1000)
    if need.unit == "board-piece":
        across = _share(need.width_um, offer.board_width_mm, 1000)
        return each * across * _share(need.height_um, offer.board_depth_mm, 1000)
    return each / _grams(offer) if need.unit == "g" else each


def _share(amount_um: int | None, whole: Figure | None, per: int) -> Fraction:
    whole_um = round(whole.value * per) if whole is not None else 0
    return Fraction(amount_um or 0, whole_um) if whole_um else Fraction(1)


def _grams(offer: Offer) -> int:
    return max(1, round(offer.net_mass_kg.value * 1000)) if offer.net_mass_kg is not None else 1000


def pack_price(workshop: Workshop, offer: Offer) -> Fraction | None:
    """Return the lowest price of one pack, tax included, in home minor units; None where it cannot be told."""
    vendor = workshop.vendors.get(offer.vendor)
    if vendor is None:
        return None
    currency = vendor.currency or workshop.currency
    try:
        minor = min(parse_money(text, currency).minor for text in (offer.price, *(one.price for one in offer.levels)))
    except QuantityError:
        return None
    taxed = Fraction(minor) * (1 + vendor.tax if vendor.prices == "without tax" and vendor.tax is not None else 1)
    if currency == workshop.currency:
        return taxed
    rate = workshop.rates.get(currency)
    if rate is None:
        return None
    return taxed * rate.rate * Fraction(10) ** (minor_digits(workshop.currency) - minor_digits(currency))
