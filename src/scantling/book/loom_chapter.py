"""The chapter on the loom: wires one by one, and what all copies take of each."""

from __future__ import annotations

from scantling.book.document import Align, Block, Heading, Paragraph, Table
from scantling.plans.loom import LoomLine
from scantling.plans.plan import Plan
from scantling.quantities import show_number

CAUTION = (
    "Mains wires and earth: only by a competent person, under the local code, with the lead out of the wall. Both ends "
    "of each cable that moves are held; every crimp is pulled; after a quarter of an hour of full load no end is too "
    "hot to hold."
)


def loom_chapter(plan: Plan) -> list[Block]:
    """Return the loom."""
    if not plan.loom:
        return []
    rows = tuple(_row(line) for line in plan.loom)
    totals = tuple(
        (total.part, f"{show_number(total.amount / 1000)} m" if total.unit == "mm" else f"{total.amount} pieces")
        for total in plan.loom_totals
    )
    head = ("wire", "from", "to", "count", "size", "colour", "cut to mm", "ends", "fuse")
    aligns: tuple[Align, ...] = ("left", "left", "left", "right", "left", "left", "right", "left", "left")
    return [
        Heading("Loom"),
        Paragraph(CAUTION, strong=True),
        Table(head, rows, ("1", "1", "1", "auto", "auto", "auto", "auto", "1", "auto"), aligns),
        Paragraph("In all, for all copies:" if plan.build.copies > 1 else "In all:"),
        Table(("part", "amount"), totals, ("1", "1"), ("left", "left")),
    ]


def _row(line: LoomLine) -> tuple[str, ...]:
    ends = " and ".join(dict.fromkeys(end for end in (line.start_end, line.to_end) if end))
    cut = show_number(line.cut_um / 1000)
    return (line.wire, line.start, line.to, str(line.count), line.copper, line.colour, cut, ends, line.fuse)
