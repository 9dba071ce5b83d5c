"""What share of its motor's torque a belt axis takes at the worst point of the move that it must make.

The worst point is the end of speeding up: moving mass, friction and process force on the belt, the rotor's own inertia,
and a motor that is weaker at speed. More than a half of the estimated torque is not trusted.
"""

from __future__ import annotations

from scantling.build.drives import belt_drive
from scantling.build.missing import gather, need
from scantling.build.reader import Reader
from scantling.checks.axis_loads import MOVING_MASS, load_inputs, push_n, reached_mm_s
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.motor_torque import LOAD_LIMIT_PERCENT, SOURCE, current_words, driven, load_percent
from scantling.checks.rule import check_of
from scantling.checks.subjects import belt_axes, belt_axis, ident
from scantling.findings import Finding
from scantling.formulas.motors import speed_rev_s, torque_needed_nmm


def _run(reader: Reader, subject: str) -> Finding:
    axis, name = belt_axis(reader, subject), ident(subject)
    speed, acceleration = gather(
        lambda: need(axis.needs.speed_mm_s, f"axes.{name}.needs.speed"),
        lambda: need(axis.needs.acceleration_mm_s2, f"axes.{name}.needs.acceleration"),
    )
    drive = reader.derive(belt_drive, name)
    travel_mm = float(drive.travel_mm)
    motor = driven(reader, axis, name, int(drive.full_steps))
    way = axis.needs.travel_mm
    top_mm_s = reached_mm_s(speed.value, acceleration.value, way.value if way else None)
    turns_rev_s = speed_rev_s(top_mm_s, travel_mm)
    inputs = load_inputs(reader, axis, subject) | motor.inputs | {"rotor": motor.rotor}
    inputs["acceleration"] = known("wanted acceleration", acceleration.value, "mm/s²")

    def push(**f: float) -> float:
        return push_n(f, f["acceleration"], axis.vertical)

    def needed(**f: float) -> float:
        return torque_needed_nmm(push(**f), travel_mm, f["rotor"] * motor.count, f["acceleration"])

    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda **f: load_percent(needed(**f), motor.available_nmm(turns_rev_s, f)),
        inputs=inputs,
        bounds=at_most(LOAD_LIMIT_PERCENT),
        unit="%",
        because=f"{{mass}} at {{acceleration}}, with {{friction}} of friction and {{process}} of process force, pull "
        f"{{push}} on the belt: {{needed}} of the {{given}} that the motor gives at {turns_rev_s:.3g} rev/s, "
        f"{{value}}; {{limit}}.{current_words(motor.motor)}",
        mend="fewer teeth, a stronger motor, bushings that rub less, a lighter load, or less acceleration",
        also={
            "friction": (lambda **f: push(**f) - push(**f | {"drag": 0.0, "rubbing": 0.0}), "N"),
            "push": (push, "N"),
            "needed": (needed, "N·mm"),
            "given": (lambda **f: motor.available_nmm(turns_rev_s, f), "N·mm"),
        },
    )


CHECK = check_of(
    _run,
    code="BELT-03",
    title="Torque of a belt axis",
    source=SOURCE,
    subjects=belt_axes,
    total=MOVING_MASS,
)
