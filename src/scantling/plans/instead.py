"""What is chosen instead of the reference, and why, as far as list prices and the workshop can say."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from scantling.build.reader import Reader
from scantling.build.reference import reference_build
from scantling.errors import QuantityError
from scantling.model.build import Key
from scantling.model.part import Part
from scantling.model.workshop import Offer, Workshop
from scantling.plans.plan import Plan
from scantling.quantities import minor_digits, parse_money, round_half_up, show_money


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
    """Compare the cheapest list prices of what the place takes, reference against chosen."""
    workshop, option, reference = reader.workshop, reader.option(place), meant.option(place)
    if option is None or not workshop.offers:
        return ""
    if reference is None:
        return "empty with the reference parts"
    old, new = unit_price(workshop, reference.part), unit_price(workshop, option.part)
    if old is None and new is not None:
        return "the reference is not on offer here"
    if old is None or new is None:
        return ""
    before, after = old * meant.pieces(place), new * reader.pieces(place)
    return _compared(round_half_up(before), round_half_up(after), workshop.currency, plan)


def _compared(before: int, after: int, currency: str, plan: Plan) -> str:
    if before == after:
        return "same list price"
    amount = show_money(abs(after - before), currency)
    if after < before:
        return f"{amount} less at list prices"
    together = ", but less with all that goes with it" if plan.choice is not None and plan.choice.proven else ""
    return f"{amount} more at list prices{together}"


def unit_price(workshop: Workshop, part: str) -> Fraction | None:
    """Return the lowest price, tax included, of one piece, bar, board or spool, in home minor units; None if unsold."""
    prices = [_unit_price(workshop, offer) for offer in workshop.offers if offer.part == part]
    return min((price for price in prices if price is not None), default=None)


def _unit_price(workshop: Workshop, offer: Offer) -> Fraction | None:
    vendor = workshop.vendors.get(offer.vendor)
    if vendor is None:
        return None
    currency = vendor.currency or workshop.currency
    try:
        paid = [parse_money(text, currency) for text in (offer.price, *(level.price for level in offer.levels))]
    except QuantityError:
        return None
    minor = Fraction(min(one.minor for one in paid), max(offer.pack, 1))
    if vendor.prices == "without tax" and vendor.tax is not None:
        minor *= 1 + vendor.tax
    if currency == workshop.currency:
        return minor
    rate = workshop.rates.get(currency)
    if rate is None:
        return None
    return minor * rate.rate * Fraction(10) ** (minor_digits(workshop.currency) - minor_digits(currency))
