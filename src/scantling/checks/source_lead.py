"""The part that decides the date: the longest of the shortest lead times, against the days until the machine is needed.

The choice itself keeps to the date; here it is said what the date hangs on and how much is left for a parcel that is
late or wrong.
"""

from __future__ import annotations

from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge, say
from scantling.checks.limits import at_most
from scantling.checks.rule import check_of
from scantling.checks.sourcing import all_bought, listed, softened, whole
from scantling.findings import Finding, Verdict
from scantling.tables.check_limits import check_number

RESERVE_RATIO = check_number("reserve of days")


def _run(reader: Reader, subject: str) -> Finding:
    shop = reader.workshop
    days = (need(shop.need_by, "workshop.need-by") - need(shop.order_on, "workshop.order-on")).days
    waited = {
        one.part: one.lead_days
        for one in all_bought(reader)
        if one.lead_days is not None and one.in_hand < one.pieces * shop.copies
    }
    if not waited:
        return say(CHECK, reader, subject, Verdict.SOUND, "All that is bought is in hand.")
    longest = max(waited.values())
    last = [part for part, lead in waited.items() if lead == longest]
    return softened(
        judge(
            CHECK,
            reader,
            subject,
            rule=lambda lead, **_: lead,
            inputs={
                "lead": known("longest lead time", float(longest), "days"),
                "days": known("days left", float(days)),
            },
            bounds=at_most(lambda days, **_: days, RESERVE_RATIO),
            unit="days",
            because=f"{listed(last)}: {{value}} after ordering, the last to arrive if each part comes from whoever is "
            f"soonest; needed in {days} days; {{limit}}. A parcel that is late or wrong costs as much again.",
            mend="order these first, or choose parts that are near",
        )
    )


CHECK = check_of(
    _run,
    code="SOURCE-03",
    title="What the date hangs on",
    source="lead times of the offers; reserve: common practice, no source",
    subjects=whole,
    informs=True,
)
