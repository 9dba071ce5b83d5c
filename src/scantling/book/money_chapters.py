"""Chapters on what is chosen and bought: instead of the reference, money, dates, orders."""

from __future__ import annotations

from collections.abc import Mapping

from scantling.book.document import Align, Block, Heading, Paragraph, Table
from scantling.model.build import Key
from scantling.plans.instead import chosen_instead
from scantling.plans.orders import OrderSheet
from scantling.plans.plan import Plan
from scantling.plans.summary import days_words, last_words, money_rows, proof_words
from scantling.quantities import show_money


def choice_chapter(plan: Plan, pins: Mapping[Key, str] | None) -> list[Block]:
    """Return what is chosen instead of the reference, and why."""
    rows = tuple((row.title, row.reference, row.chosen, row.why) for row in chosen_instead(plan, pins))
    if not rows and plan.choice is None:
        return []
    proof = proof_words(plan)
    blocks: list[Block] = [Heading("What is chosen instead of the reference")]
    blocks += [Paragraph(f"Cheapest sound choice, {proof}.")] if proof else []
    if not rows:
        return [*blocks, Paragraph("Every place has its reference part.")]
    blocks.append(Paragraph("Amounts compare the list prices of what each place takes in one machine."))
    return [*blocks, Table(("place", "reference", "chosen", "why"), rows, ("auto", "1", "1", "1"))]


def money_chapter(plan: Plan) -> list[Block]:
    """Return the four totals and the dates."""
    rows = money_rows(plan)
    if not rows or plan.dates is None:
        return []
    dates = plan.dates
    ready = f"All parts are in hand {days_words(dates.lead_days)} after ordering"
    ready += f", on {dates.ready.isoformat()}" if dates.ready else ""
    last = f"; last to come: {last_words(plan)}" if dates.deciding else ""
    need = f" Needed by {dates.need_by.isoformat()}." if dates.need_by else ""
    table = Table(("", "amount"), rows, aligns=("left", "right"))
    return [Heading("Money and dates"), table, Paragraph(f"{ready}{last}.{need}")]


def orders_chapter(plan: Plan) -> list[Block]:
    """Return every order with its lines and sums."""
    blocks: list[Block] = [Heading("Orders")] if plan.orders else []
    for sheet in plan.orders:
        blocks += _order(sheet, plan.case.project.workshop.currency)
    return blocks


def _order(sheet: OrderSheet, home: str) -> list[Block]:
    said = [
        f"there in {days_words(sheet.lead_days)}" + (f", on {sheet.arrives.isoformat()}" if sheet.arrives else ""),
        *sheet.dated,
    ]
    rows = tuple(
        (str(r.packs), r.pack_text, r.name, r.price, r.goods, show_money(r.landed_minor, home), r.remark)
        for r in sheet.rows
    )
    foot = tuple(("", "", words, "", amount, "", "") for words, amount in sheet.sums)
    head = ("packs", "a pack is", "part", "price", "goods", "landed", "remark")
    aligns: tuple[Align, ...] = ("right", "left", "left", "right", "right", "right", "left")
    widths = ("auto", "auto", "2", "auto", "auto", "auto", "1")
    words = "; ".join(text for text in said if text)
    return [
        Heading(sheet.title, 2),
        Paragraph(f"{words[:1].upper()}{words[1:]}."),
        Table(head, rows, widths, aligns, foot),
    ]
