"""Facts of what is bought: orders, what comes from the drawer, money, dates."""

from __future__ import annotations

from collections.abc import Iterator

from scantling.comparing.fact import Fact, Topic, in_words
from scantling.plans.orders import OrderRow, OrderSheet
from scantling.plans.plan import Plan
from scantling.quantities import show_money, show_number

UNBOUGHT = 3  # grade: as bad as unsound


def purchase_facts(plan: Plan) -> Iterator[Fact]:
    """Whether everything can be had at all; nothing where the workshop has no offers."""
    if plan.purchase is None and not plan.case.project.workshop.offers:
        return
    bought = plan.purchase is not None
    value = "can all be had" if bought else "cannot all be had here"
    yield Fact(Topic.ORDER, "purchase", "parts", value, grade=0 if bought else UNBOUGHT)


def order_facts(plan: Plan) -> Iterator[Fact]:
    """Every line of every order, and the sums below them."""
    for sheet in plan.orders:
        for row in sheet.rows:
            yield _row(sheet, row)
        for words, amount in sheet.sums:
            day = sheet.arrives.isoformat() if sheet.arrives else ""
            behind = in_words(("days", sheet.lead_days), ("arrives", day)) if words == "total" else ""
            yield Fact(Topic.ORDER, sheet.vendor, words, amount, behind, bought=True)


def _row(sheet: OrderSheet, row: OrderRow) -> Fact:
    """What is ordered; its share of the shipping is no reason to order otherwise."""
    behind = in_words(("offer", row.offer), ("a pack", row.price), ("days", row.lead_days), ("", row.remark))
    value = f"{row.packs} × {row.pack_text}, {row.goods}"
    share = f"landed, with its share of shipping and fees: {row.landed_minor} in the smallest coin"
    return Fact(Topic.ORDER, f"{sheet.vendor}: {row.part}", row.offer, value, behind, because=share, bought=True)


def drawer_facts(plan: Plan) -> Iterator[Fact]:
    """What is taken from stock in hand, what is kept as a spare and what is left over."""
    for supply in plan.purchase.supplies if plan.purchase else ():
        size = f" of {show_number(supply.length_um / 1000)} mm" if supply.length_um else ""
        for what, amount in (
            ("taken from the drawer", supply.in_hand),
            ("bought as spares", supply.spares),
            ("left over", supply.left),
        ):
            if amount:
                title = f"{what} ({supply.unit}{size})"
                yield Fact(Topic.ORDER, supply.part, title, str(amount), number=amount, bought=True)


def cost_facts(plan: Plan) -> Iterator[Fact]:
    """The four totals."""
    if plan.totals is None:
        return
    totals = plan.totals
    named = {
        f"outlay for {totals.copies}": totals.outlay,
        "value used in one machine": totals.used,
        "left in the drawer": totals.left,
        "cost to the next builder": totals.next_builder,
    }
    for what, minor in named.items():
        if minor is not None:
            value = show_money(minor, totals.currency)
            yield Fact(Topic.COST, "money", what, value, number=minor, unit=totals.currency, bought=True)


def date_facts(plan: Plan) -> Iterator[Fact]:
    """When everything is there."""
    if plan.dates is None:
        return
    dates = plan.dates
    ready = f" ({dates.ready.isoformat()})" if dates.ready else ""
    last = f"last to come: {', '.join(dates.deciding)}"
    value = f"{dates.lead_days} days{ready}"
    what = "all parts in hand after"
    yield Fact(Topic.DATE, "delivery", what, value, number=dates.lead_days, unit="days", because=last, bought=True)
