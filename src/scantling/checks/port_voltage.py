"""Is a fan or a switch made for the voltage that its port gives? A fan for 12 V on 24 V burns within the hour."""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge, say
from scantling.checks.limits import between
from scantling.checks.ports import plugged, wants
from scantling.checks.rail_voltage import TOLERANCE_RATIO
from scantling.checks.rule import check_of
from scantling.findings import Finding, Verdict
from scantling.quantities import Figure


def _run(reader: Reader, subject: str) -> Finding:
    on = plugged(reader, subject)
    part = reader.part(on.want.place)
    own: Figure | None = getattr(part, "voltage_v", None)
    given = sorted({port.voltage_v.value for port in on.ports if port.voltage_v is not None})
    if own is None or not given:
        said = f"{on.want.place} states no voltage of its own." if own is None else "The board's port states none."
        return say(CHECK, reader, subject, Verdict.SOUND, said)
    nearest_v = min(given, key=lambda volts: abs(volts - own.value))
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda own: own,
        inputs={"own": known(f"voltage of {on.want.place}", own, "V")},
        bounds=between(nearest_v * (1 - TOLERANCE_RATIO), nearest_v * (1 + TOLERANCE_RATIO)),
        unit="V",
        because=f"{on.want.place} is made for {{value}}; {on.board.id} gives it {nearest_v:g} V; {{limit}}.",
        mend=f"take one for {nearest_v:g} V, or a step-down module",
    )


CHECK = check_of(
    _run,
    code="PORT-03",
    title="Voltage of a port",
    source="a tenth either way: common practice, no source",
    subjects=wants("fan", "heater", "sensor", "switch"),
)
