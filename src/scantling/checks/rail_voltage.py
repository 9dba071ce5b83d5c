"""Everything on a rail must be made for its voltage: twice the voltage is four times the heat in a heater."""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge, say
from scantling.checks.limits import between
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident
from scantling.findings import Finding, Verdict
from scantling.model.design import Design
from scantling.quantities import Figure
from scantling.tables.check_limits import check_number

TOLERANCE_RATIO = check_number("voltage either way")


def _run(reader: Reader, subject: str) -> Finding:
    name, _, place = ident(subject).partition("/")
    rail = reader.design.rails[name]
    part = reader.part(place)
    own: Figure | None = getattr(part, "voltage_v", None)
    if own is None:
        return say(CHECK, reader, subject, Verdict.SOUND, f"{place} states no voltage of its own.")
    wanted = rail.voltage_v.value
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda own: own,
        inputs={"own": known(f"voltage of {place}", own, "V")},
        bounds=between(wanted * (1 - TOLERANCE_RATIO), wanted * (1 + TOLERANCE_RATIO)),
        unit="V",
        because=f"{place} is made for {{value}} and hangs on a rail of {wanted:g} V; {{limit}}.",
        mend=f"take one for {wanted:g} V",
    )


def _subjects(design: Design) -> tuple[str, ...]:
    found = []
    for name, rail in design.rails.items():
        places = [rail.supply, *(load.place for load in rail.loads if load.place is not None)]
        found += [f"rail {name}/{place}" for place in dict.fromkeys(places)]
    return tuple(found)


CHECK = check_of(
    _run,
    code="RAIL-02",
    title="Voltages agree",
    source="a tenth either way: common practice, no source",
    subjects=_subjects,
)
