"""What share of its motor's torque a belt axis takes at the worst point of the move that it must make.

The move speeds up, runs and slows down. It asks most while it speeds up: moving mass, friction and process force on the
belt, the rotor's own inertia. A motor is weaker at speed, so the worst point mostly is the end of speeding up; a curve
that dips has it where it dips. More than a half of the estimated torque is not trusted.
"""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.drives import belt_gear
from scantling.build.missing import gather, need
from scantling.build.reader import Reader
from scantling.checks.axis_loads import MOVING_MASS, load_inputs, push_n, reached_mm_s
from scantling.checks.inputs import Input, known
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.motor_torque import LOAD_LIMIT_PERCENT, SOURCE, Driven, current_words, driven, load_percent
from scantling.checks.rule import check_of
from scantling.checks.subjects import belt_axes, belt_axis, ident
from scantling.findings import Finding
from scantling.formulas.motors import speed_rev_s, torque_needed_nmm
from scantling.model.axis import BeltAxis

SPEED_SHARES = (0.25, 0.5, 0.75, 1.0)  # of the top speed, where a motor is looked at while it speeds up


@dataclass(frozen=True)
class Move:
    """From rest up to ``turns_rev_s`` and back, of a belt that goes ``travel_mm`` for a turn of its motor."""

    motor: Driven
    travel_mm: float
    turns_rev_s: float
    vertical: bool

    def push_n(self, **f: float) -> float:
        """Return the force on the belt while it speeds up."""
        return push_n(f, f["acceleration"], self.vertical)

    def friction_n(self, **f: float) -> float:
        """Return what of it is friction."""
        return self.push_n(**f) - self.push_n(**f | {"drag": 0.0, "rubbing": 0.0})

    def needed_nmm(self, **f: float) -> float:
        """Return the torque of all motors of the axis."""
        rotors_kg_mm2 = f["rotor"] * self.motor.count
        return torque_needed_nmm(self.push_n(**f), self.travel_mm, rotors_kg_mm2, f["acceleration"])

    def worst_rev_s(self, **f: float) -> float:
        """Return the turns at which the motor gives least on the way up: the top ones where it gives alike."""
        voltage = self.motor.voltage_ratio(f)
        speeds = [share * self.turns_rev_s for share in SPEED_SHARES]
        speeds += [speed * voltage for speed, _ in self.motor.points if speed * voltage < self.turns_rev_s]
        return min(speeds, key=lambda speed: (self.motor.available_nmm(speed, f), -speed))

    def given_nmm(self, **f: float) -> float:
        """Return what they are estimated to give there."""
        return self.motor.available_nmm(self.worst_rev_s(**f), f)

    def percent(self, **f: float) -> float:
        """Return the share that is needed of what is given."""
        return load_percent(self.needed_nmm(**f), self.given_nmm(**f))


@dataclass(frozen=True)
class Asked:
    """The move that an axis needs, with the figures of its rules but for the acceleration."""

    move: Move
    inputs: dict[str, Input]


def asked_move(reader: Reader, subject: str, speed_mm_s: float, acceleration_mm_s2: float) -> Asked:
    """Return the longest move of a belt axis at a speed and an acceleration."""
    axis, name = belt_axis(reader, subject), ident(subject)
    drive, way = reader.derive(belt_gear, name), axis.needs.travel_mm
    top_mm_s = reached_mm_s(speed_mm_s, acceleration_mm_s2, way.value if way else None)
    motor = driven(reader, axis, name, int(drive.full_steps))
    travel_mm = float(drive.travel_mm)
    move = Move(motor, travel_mm, speed_rev_s(top_mm_s, travel_mm), axis.vertical)
    own = {"rotor": motor.rotor, "acceleration": known("wanted acceleration", acceleration_mm_s2, "mm/s²")}
    return Asked(move, load_inputs(reader, axis, subject) | motor.inputs | own)


def wanted_move(axis: BeltAxis, name: str) -> tuple[float, float]:
    """Return the speed and the acceleration that an axis needs."""
    speed, acceleration = gather(
        lambda: need(axis.needs.speed_mm_s, f"axes.{name}.needs.speed"),
        lambda: need(axis.needs.acceleration_mm_s2, f"axes.{name}.needs.acceleration"),
    )
    return speed.value, acceleration.value


def _run(reader: Reader, subject: str) -> Finding:
    return judged(reader, subject, *wanted_move(belt_axis(reader, subject), ident(subject)))


def judged(reader: Reader, subject: str, speed_mm_s: float, acceleration_mm_s2: float) -> Finding:
    """Return the finding on an axis at a speed and an acceleration."""
    axis, asked = belt_axis(reader, subject), asked_move(reader, subject, speed_mm_s, acceleration_mm_s2)
    move, motor = asked.move, asked.move.motor
    return judge(
        CHECK,
        reader,
        subject,
        rule=move.percent,
        inputs=asked.inputs,
        bounds=at_most(LOAD_LIMIT_PERCENT),
        unit="%",
        because="{mass} at {acceleration}, with {friction} of friction and {process} of process force, pull "
        "{push} on the belt: {needed} of the {given} that the motor gives" + motor.words + " at {turns}, the worst "
        f"point of the move, {{value}}; {{limit}}.{current_words(motor.motor, axis)}",
        mend="fewer teeth, a stronger motor, bushings that rub less, a lighter load, or less acceleration",
        also={
            "friction": (move.friction_n, "N"),
            "push": (move.push_n, "N"),
            "needed": (move.needed_nmm, "N·mm"),
            "given": (move.given_nmm, "N·mm"),
            "turns": (move.worst_rev_s, "rev/s"),
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
