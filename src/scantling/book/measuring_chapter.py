"""The chapter of measuring cards: what to measure on this build, with room for the readings, and how."""

from __future__ import annotations

from collections.abc import Sequence

from scantling.book.document import Align, Block, Heading, Paragraph, Table
from scantling.plans.measuring import readings
from scantling.plans.plan import Plan
from scantling.tables.measuring import Card

ALIGNS: tuple[Align, ...] = ("right", "left", "left", "left", "left")
WORDS = (
    "Parts without papers are measured as they come out of the parcel, each figure by its card. Write the reading with "
    "its band under actuals in the workshop's file and plan again: it then counts as measured."
)


def measuring_chapter(plan: Plan) -> list[Block]:
    """Return what measuring would tell more of this build, and the cards that say how."""
    wanted = readings(plan.case.reader(plan.build), plan.findings)
    if not wanted:
        return []
    rows = tuple((str(x.card.number), x.what, x.why, ", ".join(x.codes), "____________") for x in wanted)
    cards = {one.card.number: one.card for one in wanted}
    return [
        Heading("Measuring cards"),
        Paragraph(WORDS),
        Table(("card", "figure", "why", "checks", "reading"), rows, ("auto", "2", "1", "2", "auto"), ALIGNS),
        *card_blocks([cards[number] for number in sorted(cards)]),
    ]


def card_blocks(cards: Sequence[Card]) -> list[Block]:
    """Return the cards themselves: tools, what to do, what to write down."""
    rows = tuple((str(c.number), c.title, c.tools, c.how, f"{c.gives} Example: {c.example}") for c in cards)
    head = ("card", "what", "with", "how", "write down")
    return [Table(head, rows, ("auto", "2", "2", "5", "5"), ALIGNS)]
