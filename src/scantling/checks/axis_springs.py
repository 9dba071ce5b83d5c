"""Belt, motor, guide and frame of an axis as springs in a row, with the figures that they hang on."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from scantling.build.axis_stiffness import pushed_frame_stiffness, tilting_stiffness
from scantling.build.belt_runs import Runs, belt_runs
from scantling.build.drives import belt_gear
from scantling.build.reader import Reader
from scantling.build.totals import read_total
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.belt_loads import strain_input
from scantling.checks.inputs import Input, known
from scantling.checks.motor_torque import Driven, driven
from scantling.checks.subjects import belt_axis, ident
from scantling.formulas.motors import reflected_inertia_kg_mm2
from scantling.formulas.ringing import (
    motor_stiffness_nmm_rad,
    series_n_mm,
    turning_to_straight_n_mm,
    two_mass_frequency_hz,
)

Figures = Mapping[str, float]


@dataclass(frozen=True)
class Springs:
    """The springs of a belt axis where its belt is softest; ``inputs`` of all their rules.

    inputs : ``mass``, ``strain``, ``holding``, ``setting``, ``rotor``; ``guide`` and ``frame`` where they are described
    """

    runs: Runs
    motor: Driven
    travel_mm: float
    inputs: dict[str, Input]

    def belt_n_mm(self, **f: float) -> float:
        """Return the stiffness of both runs of the belt together."""
        return self.runs.stiffness_n_mm(f["strain"], self.runs.softest_mm)

    def motor_n_mm(self, **f: float) -> float:
        """Return how stiff the motors hold the belt, at the current that their driver is set to."""
        torque_nmm = self.motor.count * f["holding"] * f["setting"]
        return turning_to_straight_n_mm(motor_stiffness_nmm_rad(torque_nmm, self.motor.full_steps), self.travel_mm)

    def whole_n_mm(self, **f: float) -> float:
        """Return the stiffness of all in a row."""
        return series_n_mm([self.motor_n_mm(**f), *self._behind_n_mm(f)])

    def frequency_hz(self, **f: float) -> float:
        """Return the first resonance: what moves on belt, guide and frame, and these on the rotor on its field."""
        rotor_kg = self.motor.count * f["rotor"] / reflected_inertia_kg_mm2(1.0, self.travel_mm)
        return two_mass_frequency_hz(self.motor_n_mm(**f), rotor_kg, series_n_mm(self._behind_n_mm(f)), f["mass"])

    def _behind_n_mm(self, f: Figures) -> list[float]:
        return [self.belt_n_mm(**f), *(f[name] for name in ("guide", "frame") if name in f)]

    @property
    def words(self) -> str:
        """The springs in a sentence, with names of inputs in braces, and what is not among them."""
        told = ["the motor {of_motor}", "the belt {of_belt}"]
        told += [words for name, words in _WORDS.items() if name in self.inputs]
        lacking = [name for name in _WORDS if name not in self.inputs]
        left = f" ({' and '.join(lacking)} not described, so taken as stiff)" if lacking else ""
        return f"{', '.join(told)}{left}"


_WORDS = {"guide": "the guide {guide}", "frame": "the frame {frame}"}


def axis_springs(reader: Reader, subject: str, *, drive_alone: bool = False) -> Springs:
    """Return the springs of a belt axis; of its drive alone without guide and frame."""
    axis, name = belt_axis(reader, subject), ident(subject)
    drive, runs = reader.derive(belt_gear, name), reader.derive(belt_runs, name)
    motor = driven(reader, axis, name, int(drive.full_steps))
    inputs = {
        "mass": known(f"moving mass of {subject}", read_total(reader, MOVING_MASS.name, subject), "kg"),
        "strain": strain_input(reader, name),
        "holding": motor.holding,
        "setting": motor.inputs["setting"],
        "rotor": motor.rotor,
    }
    if drive_alone:
        return Springs(runs, motor, float(drive.travel_mm), inputs)
    guide, frame = reader.derive(tilting_stiffness, name), reader.derive(pushed_frame_stiffness, name)
    inputs |= {} if guide is None else {"guide": known("stiffness of the guide against tilting", guide, "N/mm")}
    inputs |= {} if frame is None else {"frame": known("stiffness of the frame where it is pushed", frame, "N/mm")}
    return Springs(runs, motor, float(drive.travel_mm), inputs)
