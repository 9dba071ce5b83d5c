"""Who sells what a build needs: its bought parts, how many of each, who has them, how soon, and what is in hand."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.gets import CUT, MADE, plastic_of
from scantling.build.reader import Reader
from scantling.model.workshop import Offer


@dataclass(frozen=True)
class Bought:
    """A part that is bought for one machine or cut from what is bought.

    pieces : in one machine    places : where they go    instead : each of these places has another option
    in_hand : pieces in the drawer    vendors : that offer it
    lead_days : until the soonest comes; None where nobody has it
    """

    part: str
    pieces: int
    places: tuple[str, ...]
    instead: bool
    in_hand: int
    vendors: tuple[str, ...]
    lead_days: int | None


def bought_parts(reader: Reader) -> tuple[Bought, ...]:
    """Return what is bought for the places of a machine, sorted by part."""
    found: dict[str, list[str]] = {}
    for place in reader.design.places:
        part = reader.part(place)
        if part is not None and not is_made_here(reader.get(place)):
            found.setdefault(part.id, []).append(place)
    return tuple(_bought(reader, part, places) for part, places in sorted(found.items()))


def offers_of(reader: Reader, part: str) -> tuple[Offer, ...]:
    """Return the offers of a part in the workshop's order."""
    return tuple(offer for offer in reader.workshop.offers if offer.part == part)


def is_cut(get: str) -> bool:
    """True for a way of getting pieces from a bar, all of which may come from one."""
    return get == CUT


def is_made_here(get: str) -> bool:
    """True for what is printed or made of sheet here: the part itself is not bought."""
    return get == MADE or plastic_of(get) is not None


def _bought(reader: Reader, part: str, places: list[str]) -> Bought:
    offers = offers_of(reader, part)
    vendors = reader.workshop.vendors
    leads = [
        offer.lead_days if offer.lead_days is not None else vendors[offer.vendor].lead_days
        for offer in offers
        if offer.vendor in vendors
    ]
    return Bought(
        part,
        sum(reader.pieces(place) for place in places),
        tuple(places),
        all(len(reader.design.places[place].options) > 1 for place in places),
        sum(row.quantity for row in reader.workshop.stock if row.part == part),
        tuple(sorted({offer.vendor for offer in offers})),
        min(leads, default=None),
    )
