"""Measuring cards: for a part without papers, what to measure, with what, how, and what to write down."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from scantling.tables.csv_table import rows

ANY, GUIDE = "any", "guide"


@dataclass(frozen=True)
class Card:
    """One card.

    kind : of part, as files call it, ``any`` for every part, ``guide`` for the guide of an axis
    figure : as files call it    settles : by which words findings name it    gives : what to write down, with its band
    example : a value as it is written under ``actuals``
    """

    number: int
    kind: str
    figure: str
    settles: tuple[str, ...]
    title: str
    tools: str
    how: str
    gives: str
    example: str
    source: str


@cache
def measuring_cards() -> tuple[Card, ...]:
    """Return all cards by number."""
    found = [
        Card(
            number=int(row["card_number"]),
            kind=row["kind"],
            figure=row["figure"],
            settles=tuple(row["settles"].split(";")),
            title=row["title"],
            tools=row["tools"],
            how=row["how"],
            gives=row["gives"],
            example=row["example"],
            source=row["source"],
        )
        for row in rows("measuring_cards")
    ]
    return tuple(sorted(found, key=lambda card: card.number))


def cards_of(kind: str) -> tuple[Card, ...]:
    """Return the cards of a kind of part (``rod``, ``motor`` …), without those of every part."""
    return tuple(card for card in measuring_cards() if card.kind == kind)


def card_of_figure(kind: str, figure: str) -> Card | None:
    """Return the card that tells how to measure a figure of a kind of part.

    >>> card_of_figure("rod", "diameter").number
    1
    """
    return next((c for c in measuring_cards() if c.figure == figure and c.kind in (kind, ANY)), None)


@cache
def card_that_settles(what: str) -> Card | None:
    """Return the card that settles a figure as findings name it: ``surface hardness of y-rod``; None for none.

    >>> card_that_settles("surface hardness of rod-8-soft").number, card_that_settles("share of the busier rod")
    (2, None)
    """
    exact = (card for card in measuring_cards() if what in card.settles)
    begins = (c for c in measuring_cards() if any(what.startswith(f"{words} of ") for words in c.settles))
    return next(exact, None) or next(begins, None)
