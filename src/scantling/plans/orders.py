"""Orders per vendor, as lines that can be read out over a counter, and as rows of a table."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta

from scantling.build.case import Case
from scantling.choosing.result import Order, OrderLine, Purchase
from scantling.model.workshop import Offer, Vendor, Workshop
from scantling.plans.landed import landed_lines
from scantling.quantities import show_money, show_number


@dataclass(frozen=True)
class OrderRow:
    """One line of an order, with what it is for.

    pack_text : what one pack is (``100 pieces``, ``bar of 1000 mm``)    landed_minor : in the workshop's currency
    """

    vendor: str
    offer: str
    part: str
    name: str
    packs: int
    pack_text: str
    price: str
    goods: str
    landed_minor: int
    lead_days: int
    remark: str


@dataclass(frozen=True)
class OrderSheet:
    """One order ready to send: rows and the sums below them as (words, amount).

    dated : what its figures hold for, in words: prices, exchange rate and customs, each with its day
    """

    vendor: str
    title: str
    currency: str
    rows: tuple[OrderRow, ...]
    sums: tuple[tuple[str, str], ...]
    home_minor: int
    lead_days: int
    arrives: date | None
    dated: tuple[str, ...]


def order_sheets(case: Case, purchase: Purchase) -> tuple[OrderSheet, ...]:
    """Return one sheet per order, in the order of their vendors' identifiers."""
    return tuple(_sheet(case, purchase, order) for order in purchase.orders)


def _sheet(case: Case, purchase: Purchase, order: Order) -> OrderSheet:
    workshop = case.project.workshop
    vendor = workshop.vendors[order.vendor]
    offers = {offer.id: offer for offer in workshop.offers}
    rows = tuple(_row(case, order, line, landed, offers.get(line.offer)) for line, landed in landed_lines(order))
    arrives = workshop.order_on + timedelta(days=order.lead_days) if workshop.order_on else None
    return OrderSheet(
        order.vendor,
        vendor.name or order.vendor,
        order.currency,
        rows,
        _sums(order, purchase.currency),
        order.home_minor,
        order.lead_days,
        arrives,
        _dated(workshop, vendor, order.currency),
    )


def _dated(workshop: Workshop, vendor: Vendor, currency: str) -> tuple[str, ...]:
    """Words for the day of each figure that moves with time: prices, rate and customs."""
    rate, customs = workshop.rates.get(currency), vendor.customs
    days = (
        ("prices", vendor.prices_of),
        (f"rate of {currency}", rate.as_of if rate is not None and currency != workshop.currency else None),
        ("customs", customs.as_of if customs is not None else None),
    )
    return tuple(f"{what} as of {day.isoformat()}" for what, day in days if day is not None)


def _row(case: Case, order: Order, line: OrderLine, landed: int, offer: Offer | None) -> OrderRow:
    part = case.part(line.part)
    return OrderRow(
        order.vendor,
        line.offer,
        line.part,
        part.name or line.part,
        line.packs,
        pack_text(line),
        show_money(line.price_minor, order.currency),
        show_money(line.goods_minor, order.currency),
        landed,
        line.lead_days,
        "; ".join(text for text in (offer.note if offer else "", _above_need(line)) if text),
    )


def pack_text(line: OrderLine) -> str:
    """Return in words what one pack holds."""
    if line.unit == "length":
        bar = f"bar of {show_number(line.bar_um / 1000)} mm"
        return bar if line.pack == 1 else f"{line.pack} bars of {show_number(line.bar_um / 1000)} mm"
    if line.unit == "board":
        width, depth = (show_number(side / 1000) for side in line.board_um)
        return f"board {width} × {depth} mm" if line.pack == 1 else f"{line.pack} boards {width} × {depth} mm"
    if line.unit == "g":
        return f"{line.pack} g"
    return "1 piece" if line.pack == 1 else f"{line.pack} pieces"


def _above_need(line: OrderLine) -> str:
    words = []
    if line.for_level:
        words.append(f"{line.for_level} more than needed, for the price level")
    if line.top_up:
        words.append(f"{line.top_up} more than needed, as wished spares")
    return "; ".join(words)


def _sums(order: Order, home: str) -> tuple[tuple[str, str], ...]:
    amounts = [
        ("goods", order.goods_minor),
        ("tax", order.tax_minor),
        ("shipping", order.shipping_minor),
        ("payment fee", order.payment_fee_minor),
        ("duty", order.duty_minor),
        ("customs handling", order.handling_minor),
        ("customs per kind of goods", order.per_kind_minor),
    ]
    shown = [(words, show_money(minor, order.currency)) for words, minor in amounts if minor]
    shown.append(("total", show_money(order.total_minor, order.currency)))
    if order.currency != home:
        shown.append((f"total in {home}", show_money(order.home_minor, home)))
    return tuple(shown)


def order_table(sheet: OrderSheet, home: str) -> list[list[str]]:
    """Return an order as rows of text, heading first, sums last."""
    heading = [
        "vendor",
        "offer",
        "part",
        "name",
        "packs",
        "a pack is",
        "price of a pack",
        "goods",
        f"landed {home}",
        "remark",
    ]
    rows = [
        [
            r.vendor,
            r.offer,
            r.part,
            r.name,
            str(r.packs),
            r.pack_text,
            r.price,
            r.goods,
            _plain(r.landed_minor, home),
            r.remark,
        ]
        for r in sheet.rows
    ]
    sums = [[sheet.vendor, "", "", words, "", "", "", amount, "", ""] for words, amount in sheet.sums]
    return [heading, *rows, *sums]


def _plain(minor: int, currency: str) -> str:
    """Return an amount without its currency, for a column that names it."""
    return show_money(minor, currency).removesuffix(currency).strip()
