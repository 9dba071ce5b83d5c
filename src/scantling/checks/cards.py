"""Which measuring cards would settle the figures on which a verdict hangs."""

from __future__ import annotations

from collections.abc import Iterable

from scantling.model.design import Design
from scantling.tables.measuring import ANY, GUIDE, Card, card_that_settles, measuring_cards


def settling_cards(design: Design, whats: Iterable[str]) -> tuple[Card, ...]:
    """Return the cards that settle some figures as findings name them, each once, by number.

    A figure of a part wants a card of that part's kind: a modulus is measured on sheets, not on rods.
    """
    found = {card.number: card for what in whats if (card := settling_card(design, what)) is not None}
    return tuple(found[number] for number in sorted(found))


def settling_card(design: Design, what: str) -> Card | None:
    """Return the card that settles one figure, None where there is none."""
    card = card_that_settles(what)
    part = design.parts.get(what.rpartition(" of ")[2])
    if card is None or part is None or card.kind in (ANY, GUIDE, part.kind):
        return card
    return None


def cards_of_needs(design: Design, needs: Iterable[str]) -> tuple[Card, ...]:
    """Return the cards that tell figures missing at some paths in the files, ``parts.bed.mass``."""
    asked = [path.split(".") for path in needs if path.startswith("parts.")]
    kinds = {(part.kind, path[-1]) for path in asked if (part := design.parts.get(path[1])) is not None}
    return tuple(c for c in measuring_cards() if any(c.figure == f and c.kind in (ANY, kind) for kind, f in kinds))
