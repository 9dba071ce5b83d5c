"""How the load compares with the motor's own rotor, both seen at the shaft: for information.

A rotor that is a large part of what moves eats the torque that its motor gives; it is counted in BELT-03.
"""

from __future__ import annotations

from scantling.build.drives import belt_gear
from scantling.build.reader import Reader
from scantling.build.totals import read_total
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import INFORMATION
from scantling.checks.motor_torque import driven
from scantling.checks.rule import check_of
from scantling.checks.subjects import belt_axes, belt_axis, ident
from scantling.findings import Finding
from scantling.formulas.motors import reflected_inertia_kg_mm2


def _run(reader: Reader, subject: str) -> Finding:
    axis, name = belt_axis(reader, subject), ident(subject)
    drive = reader.derive(belt_gear, name)
    motor = driven(reader, axis, name, int(drive.full_steps))
    travel_mm = float(drive.travel_mm)
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda mass, rotor: reflected_inertia_kg_mm2(mass, travel_mm) / (motor.count * rotor),
        inputs={
            "mass": known(f"moving mass of {subject}", read_total(reader, MOVING_MASS.name, subject), "kg"),
            "rotor": motor.rotor,
        },
        bounds=INFORMATION,
        unit="",
        because=f"{{mass}} on {travel_mm:.3g} mm a turn show the motor {{seen}}: {{value}} times its rotor's "
        "{rotor}.",
        also={"seen": (lambda **f: reflected_inertia_kg_mm2(f["mass"], travel_mm), "kg·mm²")},
    )


CHECK = check_of(
    _run,
    code="MOTOR-04",
    title="Load against rotor",
    source="energy: m (s / 2π)²",
    subjects=belt_axes,
    total=MOVING_MASS,
    informs=True,
)
