"""When things arrive, and which part decides the date."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta

from scantling.choosing.result import Purchase
from scantling.model.workshop import Workshop


@dataclass(frozen=True)
class Dates:
    """The day on which everything has arrived, counted from the day of ordering where that is stated.

    deciding : parts that arrive last
    """

    lead_days: int
    ready: date | None
    need_by: date | None
    deciding: tuple[str, ...]


def purchase_dates(workshop: Workshop, purchase: Purchase) -> Dates:
    """Return the dates of a purchase."""
    lead = purchase.lead_days
    deciding = sorted(
        {line.part for order in purchase.orders for line in order.lines if lead and line.lead_days == lead}
    )
    ready = workshop.order_on + timedelta(days=lead) if workshop.order_on else None
    return Dates(lead, ready, workshop.need_by, tuple(deciding))
