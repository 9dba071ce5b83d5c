"""Names for offers that have none: vendor, part and pack, which is how one asks for them over a counter."""

from __future__ import annotations

from collections import Counter

from scantling.model.workshop import Offer, Workshop
from scantling.quantities import Figure, show_number


def with_offer_names(workshop: Workshop) -> Workshop:
    """Return the workshop with an identifier for every offer; a name that would stand twice gets a number."""
    seen = Counter(offer.id for offer in workshop.offers if offer.id)
    named = []
    for offer in workshop.offers:
        name = offer.id or offer_name(offer)
        if not offer.id:
            seen[name] += 1
            name = name if seen[name] == 1 else f"{name}.{seen[name]}"
        named.append(offer.model_copy(update={"id": name}))
    return workshop.model_copy(update={"offers": tuple(named)})


def offer_name(offer: Offer) -> str:
    """Return ``vendor/part/pack``: ``town/rod-8-soft/1x1000mm``, ``far/M3 nut/100``."""
    return f"{offer.vendor}/{offer.part}/{_pack(offer)}"


def _pack(offer: Offer) -> str:
    if offer.length_mm is not None:
        return f"{offer.pack}x{_mm(offer.length_mm)}mm"
    if offer.board_width_mm is not None and offer.board_depth_mm is not None:
        return f"{offer.pack}x{_mm(offer.board_width_mm)}x{_mm(offer.board_depth_mm)}mm"
    if offer.net_mass_kg is not None:
        return f"{offer.pack}x{show_number(offer.net_mass_kg.value * 1000)}g"
    return str(offer.pack)


def _mm(length: Figure) -> str:
    return show_number(length.value)
