"""Voltage that is lost in a pair of wires, out and back, warm: a heater with a tenth less has a fifth less power."""

from __future__ import annotations

from scantling.build.loom import resistance_ohm_km, wire_length
from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge, say
from scantling.checks.limits import at_most
from scantling.checks.rule import check_of
from scantling.checks.wiring import carried, laid, rail_of, way, wire_subjects
from scantling.findings import Finding, Verdict
from scantling.formulas.wires import voltage_drop_v, warm_resistance_ratio
from scantling.model.kinds import Motor
from scantling.tables.electric_limits import electric_limit

WARM_C = 70.0  # of the conductor, as a loaded wire may get
PERCENT = 100.0


def _run(reader: Reader, subject: str) -> Finding:
    on = laid(reader, subject)
    if on is None:
        return say(CHECK, reader, subject, Verdict.SOUND, "It falls away with what it leads to.")
    if on.row.load is not None and isinstance(reader.part(on.row.load), Motor):
        return say(CHECK, reader, subject, Verdict.SOUND, "The driver holds the current of a motor whatever is lost.")
    volts = rail_of(reader, on.name, on.row).voltage_v.value
    ohm_km = resistance_ohm_km(on.wire) * warm_resistance_ratio(WARM_C)
    most, wished = electric_limit("voltage drop").value, electric_limit("voltage drop wished").value
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda current, length: PERCENT * voltage_drop_v(current, ohm_km, length) / volts,
        inputs={
            "current": carried(reader, on),
            "length": known(f"length of {on.name}", reader.derive(wire_length, on.name), "mm"),
        },
        bounds=at_most(most, reserve_ratio=1 - wished / most),
        unit="%",
        because=f"{{current}} over {{length}} of {on.copper_mm2:.3g} mm² {way(on)} and back lose {{value}} of "
        f"{volts:g} V; {{limit}}.",
        mend="thicker or shorter wire",
    )


CHECK = check_of(
    _run,
    code="WIRE-02",
    title="Voltage lost in a wire",
    source="Ohm's law; IEC 60364-5-52 annex G, 5 % at most and 3 % wished",
    subjects=lambda design: wire_subjects(design, "power"),
)
