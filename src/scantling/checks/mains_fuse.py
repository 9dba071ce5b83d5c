"""The mains fuse: it must carry what the supply takes at full load, with a fifth to spare, or it tires and blows.

At half the mains voltage a supply takes twice the current: a fuse that suits one country blows in another.
"""

from __future__ import annotations

from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.build.totals import read_total
from scantling.checks.check import TotalUse
from scantling.checks.inputs import known, or_typical
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.rule import check_of, part_at
from scantling.checks.subjects import ident, named
from scantling.findings import Finding
from scantling.formulas.power import mains_current_a
from scantling.model.design import Design
from scantling.model.kinds import Fuse, Supply
from scantling.tables.electric_limits import electric_limit

RAIL_POWER = TotalUse("rail-power", "more")
PERCENT = 100.0


def _run(reader: Reader, subject: str) -> Finding:
    name = ident(subject)
    rail = reader.design.rails[name]
    mains_v = need(reader.workshop.mains_voltage_v, "workshop.mains-voltage")
    supply = part_at(reader, rail.supply, Supply, f"rails.{name}.supply")
    fuse = part_at(reader, rail.mains_fuse, Fuse, f"rails.{name}.mains-fuse")
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda loads, mains, efficiency, factor, rating: (
            PERCENT * mains_current_a(loads, mains, efficiency, factor) / rating
        ),
        inputs={
            "loads": known(f"loads of {subject}", read_total(reader, RAIL_POWER.name, subject), "W"),
            "mains": known("mains voltage", mains_v.value, "V"),
            "efficiency": or_typical(
                f"efficiency of {supply.id}", supply.efficiency_ratio, electric_limit("supply efficiency")
            ),
            "factor": or_typical(
                f"power factor of {supply.id}", supply.power_factor_ratio, electric_limit("power factor")
            ),
            "rating": known(f"rating of {fuse.id}", fuse.current_a, "A"),
        },
        bounds=at_most(electric_limit("load of a fuse").value),
        unit="%",
        because="{loads} at an efficiency of {efficiency} and a power factor of {factor} take {current} from {mains}: "
        "{value} of the fuse's {rating}; {limit}.",
        also={
            "current": (
                lambda loads, mains, efficiency, factor, **_: mains_current_a(loads, mains, efficiency, factor),
                "A",
            )
        },
        mend="the next larger time-lag fuse, if inlet, wire and supply bear it; by a competent person",
    )


def mains_rails(design: Design) -> tuple[str, ...]:
    """Return the rails whose mains fuse is named, as checks name them."""
    return named("rail", (name for name, rail in design.rails.items() if rail.mains_fuse is not None))


CHECK = check_of(
    _run,
    code="RAIL-03",
    title="Mains fuse for its load",
    source="P / (η λ U); fuse of 1.25 times the steady current: two published calculators",
    subjects=mains_rails,
    total=RAIL_POWER,
)
