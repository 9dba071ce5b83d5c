"""What share of its motors' torque at low speed a screw axis takes to lift, or push, its load.

Friction in the thread takes most of it, so its band counts. More than a half of the estimated torque is not trusted.
"""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.motor_torque import LOAD_LIMIT_PERCENT, SOURCE, current_words, driven, load_percent
from scantling.checks.rule import check_of
from scantling.checks.screw_loads import screw_load
from scantling.checks.subjects import ident, screw_axes, screw_axis
from scantling.findings import Finding


def _run(reader: Reader, subject: str) -> Finding:
    axis = screw_axis(reader, subject)
    load = screw_load(reader, axis, subject)
    motor = driven(reader, axis, ident(subject), int(load.drive.full_steps))
    verb = "Lifting" if axis.vertical else "Pushing"
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda **f: load_percent(load.torque_nmm(f), motor.available_nmm(0.0, f)),
        inputs=load.inputs | motor.inputs,
        bounds=at_most(LOAD_LIMIT_PERCENT),
        unit="%",
        because=f"{verb} {{mass}} takes {{push}} on {load.drive.screws} x {load.drive.thread.name}, with friction "
        f"{{thread}} in the thread {{needed}} of the {{given}} that {motor.count} motor(s) give at low speed: "
        f"{{value}}; {{limit}}.{current_words(motor.motor)}",
        mend="a smaller lead, a stronger motor, or less weight",
        also={
            "push": (lambda **f: load.push_n(f), "N"),
            "needed": (lambda **f: load.torque_nmm(f), "N·mm"),
            "given": (lambda **f: motor.available_nmm(0.0, f), "N·mm"),
        },
    )


CHECK = check_of(
    _run,
    code="SCREW-02",
    title="Torque to lift with a screw",
    source=f"textbook of machine design, power screws; {SOURCE}",
    subjects=screw_axes,
    total=MOVING_MASS,
)
