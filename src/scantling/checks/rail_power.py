"""Can a supply feed all that hangs on its rail, with head-room? The sum of the loads, duty counted, and a share more.

Supplies are weaker in a warm box and age; a quarter over the sum is the trade's habit.
"""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.build.totals import read_total
from scantling.checks.check import TotalUse
from scantling.checks.inputs import known, or_typical
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.rule import check_of, part_at
from scantling.checks.subjects import all_of, ident
from scantling.findings import Finding
from scantling.model.kinds import Supply
from scantling.quantities import Figure
from scantling.tables.check_limits import check_limit

RAIL_POWER = TotalUse("rail-power", "more")
USUAL_HEADROOM = check_limit("headroom of a supply")
PERCENT = Figure.exact(100.0)


def _run(reader: Reader, subject: str) -> Finding:
    name = ident(subject)
    rail = reader.design.rails[name]
    own = rail.headroom
    supply = part_at(reader, rail.supply, Supply, f"rails.{name}.supply")
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda loads, headroom, **_: loads * (1 + headroom / 100),
        inputs={
            "loads": known(f"loads of {subject}", read_total(reader, RAIL_POWER.name, subject), "W"),
            "headroom": or_typical("head-room", own and own * PERCENT, USUAL_HEADROOM * PERCENT, "%"),
            "rating": known(f"rating of {supply.id}", supply.power_w, "W"),
        },
        bounds=at_most(lambda rating, **_: rating),
        unit="W",
        because="Loads of {loads} and a head-room of {headroom} of them ask for {value}; {limit}, the supply's rating.",
        mend="a larger supply, a smaller heater, or a rail of its own for the bed",
    )


CHECK = check_of(
    _run,
    code="RAIL-01",
    title="Supply with head-room",
    source="sum of loads; a quarter of head-room: common practice, no source",
    subjects=all_of("rail", lambda design: design.rails),
    total=RAIL_POWER,
)
