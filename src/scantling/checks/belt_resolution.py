"""The finest commanded step of a belt axis against the resolution that it needs; the full step is said beside it.

A micro-step is where the motor is told to go; under load it comes only near: the full step is the honest outer bound.
"""

from __future__ import annotations

from scantling.build.drives import belt_gear
from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.rule import check_of
from scantling.checks.subjects import belt_axes, belt_axis, ident
from scantling.findings import Finding
from scantling.quantities import show_fraction


def _run(reader: Reader, subject: str) -> Finding:
    axis, name = belt_axis(reader, subject), ident(subject)
    wanted = need(axis.needs.resolution_mm, f"axes.{name}.needs.resolution")
    drive = reader.derive(belt_gear, name)
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda travel, steps: travel / steps,
        inputs={
            "travel": known("travel of a turn", float(drive.travel_mm), "mm"),
            "steps": known("steps in a turn", float(drive.full_steps * drive.microsteps)),
        },
        bounds=at_most(wanted.value),
        unit="mm",
        because=f"{drive.teeth} teeth of {float(drive.pitch_mm):g} mm make {{travel}} a turn, in {{steps}} micro-steps "
        f"of {{value}}, {show_fraction(drive.steps_per_mm)} to a millimetre; a full step is "
        f"{float(drive.full_step_mm):.3g} mm; {{limit}} is needed.",
        mend="fewer teeth, more micro-steps, or a motor of 0.9 deg",
    )


CHECK = check_of(
    _run,
    code="BELT-01",
    title="Resolution of a belt axis",
    source="definition: teeth × pitch / (full steps × micro-steps)",
    subjects=belt_axes,
)
