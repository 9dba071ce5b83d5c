"""What share of its motor's torque a belt axis takes at the worst point of the move that it must make.

The worst point is the end of speeding up: moving mass, friction and process force on the belt, the rotor's own inertia,
and a motor that is weaker at speed. More than a half of the estimated torque is not trusted.
"""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.drives import belt_gear
from scantling.build.missing import gather, need
from scantling.build.reader import Reader
from scantling.checks.axis_loads import MOVING_MASS, load_inputs, push_n, reached_mm_s
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.motor_torque import LOAD_LIMIT_PERCENT, SOURCE, Driven, current_words, driven, load_percent
from scantling.checks.rule import check_of
from scantling.checks.subjects import belt_axes, belt_axis, ident
from scantling.findings import Finding
from scantling.formulas.motors import speed_rev_s, torque_needed_nmm


@dataclass(frozen=True)
class Move:
    """The end of speeding up, at ``turns_rev_s``, of a belt that goes ``travel_mm`` for a turn of its motor."""

    motor: Driven
    travel_mm: float
    turns_rev_s: float
    vertical: bool

    def push_n(self, **f: float) -> float:
        """Return the force on the belt."""
        return push_n(f, f["acceleration"], self.vertical)

    def friction_n(self, **f: float) -> float:
        """Return what of it is friction."""
        return self.push_n(**f) - self.push_n(**f | {"drag": 0.0, "rubbing": 0.0})

    def needed_nmm(self, **f: float) -> float:
        """Return the torque of all motors of the axis."""
        rotors_kg_mm2 = f["rotor"] * self.motor.count
        return torque_needed_nmm(self.push_n(**f), self.travel_mm, rotors_kg_mm2, f["acceleration"])

    def given_nmm(self, **f: float) -> float:
        """Return what they are estimated to give at this speed."""
        return self.motor.available_nmm(self.turns_rev_s, f)

    def percent(self, **f: float) -> float:
        """Return the share that is needed of what is given."""
        return load_percent(self.needed_nmm(**f), self.given_nmm(**f))


def _run(reader: Reader, subject: str) -> Finding:
    axis, name = belt_axis(reader, subject), ident(subject)
    speed, acceleration = gather(
        lambda: need(axis.needs.speed_mm_s, f"axes.{name}.needs.speed"),
        lambda: need(axis.needs.acceleration_mm_s2, f"axes.{name}.needs.acceleration"),
    )
    drive, way = reader.derive(belt_gear, name), axis.needs.travel_mm
    top_mm_s = reached_mm_s(speed.value, acceleration.value, way.value if way else None)
    turns_rev_s = speed_rev_s(top_mm_s, float(drive.travel_mm))
    motor = driven(reader, axis, name, int(drive.full_steps))
    move = Move(motor, float(drive.travel_mm), turns_rev_s, axis.vertical)
    own = {"rotor": motor.rotor, "acceleration": known("wanted acceleration", acceleration.value, "mm/s²")}
    return judge(
        CHECK,
        reader,
        subject,
        rule=move.percent,
        inputs=load_inputs(reader, axis, subject) | motor.inputs | own,
        bounds=at_most(LOAD_LIMIT_PERCENT),
        unit="%",
        because=f"{{mass}} at {{acceleration}}, with {{friction}} of friction and {{process}} of process force, pull "
        f"{{push}} on the belt: {{needed}} of the {{given}} that the motor gives at {turns_rev_s:.3g} rev/s, "
        f"{{value}}; {{limit}}.{current_words(motor.motor)}",
        mend="fewer teeth, a stronger motor, bushings that rub less, a lighter load, or less acceleration",
        also={
            "friction": (move.friction_n, "N"),
            "push": (move.push_n, "N"),
            "needed": (move.needed_nmm, "N·mm"),
            "given": (move.given_nmm, "N·mm"),
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
