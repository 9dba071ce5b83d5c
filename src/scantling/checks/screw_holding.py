"""Does a vertical axis stay where it is with its motors off? What holds against what drives, never the lead alone.

The weight on the lead drives the screw; friction in the thread and the motors' detent torque hold it. At least a fifth
more than needed is wished, for shaking lowers friction; it also frees the guide, whose drag is not counted. Where the
design does not ask for it, it is said all the same.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

from scantling.build.drives import ScrewDrive, screw_drive
from scantling.build.reader import Reader
from scantling.build.totals import read_total
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.inputs import Input, known, or_range
from scantling.checks.judging import judge
from scantling.checks.limits import INFORMATION, at_least
from scantling.checks.motor_torque import Driven, driven
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident, named, screw_axis
from scantling.findings import Finding
from scantling.formulas.dynamics import weight_n
from scantling.formulas.power_screws import lowering_torque_nmm
from scantling.model.axis import ScrewAxis
from scantling.model.design import Design
from scantling.tables.check_limits import check_number

RESERVE_RATIO = check_number("reserve of friction")
MOST_DETENT_RATIO = 0.11  # of the holding torque: the published sheet of a motor of size 17, 220 of 2000 g·cm at most
MOST_SHOWN_PERCENT = 1000.0  # beyond this a figure says nothing more


@dataclass(frozen=True)
class Hanging:
    """A weight on the screws of an axis whose motors are off; torques of all screws together."""

    drive: ScrewDrive
    motors: int

    def driving_nmm(self, mass: float, **_: float) -> float:
        """Return the torque with which the weight turns frictionless screws."""
        return weight_n(mass) * float(self.drive.lead_mm) / (2 * pi)

    def rubbing_nmm(self, mass: float, thread: float, **_: float) -> float:
        """Return what friction in the threads holds of it."""
        found, screws = self.drive.thread, max(1, self.drive.screws)
        one_nmm = lowering_torque_nmm(
            weight_n(mass) / screws,
            found.pitch_diameter_mm,
            float(self.drive.lead_mm),
            thread,
            found.flank_half_angle_deg,
        )
        return self.driving_nmm(mass) + screws * one_nmm

    def held_percent(self, mass: float, thread: float, detent: float) -> float:
        """Return what holds as a share of what drives."""
        driving_nmm = self.driving_nmm(mass)
        if driving_nmm <= 0:  # nothing hangs on it
            return MOST_SHOWN_PERCENT
        return min(MOST_SHOWN_PERCENT, 100 * (self.rubbing_nmm(mass, thread) + self.motors * detent) / driving_nmm)


def _run(reader: Reader, subject: str) -> Finding:
    axis, name = screw_axis(reader, subject), ident(subject)
    drive = reader.derive(screw_drive, name)
    motor = driven(reader, axis, name, int(drive.full_steps))
    hanging, asked = Hanging(drive, motor.count), axis.needs.holds_itself
    return judge(
        CHECK,
        reader,
        subject,
        rule=hanging.held_percent,
        inputs={
            "mass": known(f"moving mass of {subject}", read_total(reader, MOVING_MASS.name, subject), "kg"),
            "thread": known("friction in the thread", drive.friction),
            "detent": _detent(motor),
        },
        bounds=at_least(check_number("share that holds"), RESERVE_RATIO) if asked else INFORMATION,
        unit="%",
        because=f"{{mass}} on a lead of {float(drive.lead_mm):.4g} mm drives the screws with {{driving}}; friction "
        f"{{thread}} in the thread holds with {{rubbing}} and {motor.count} motor(s) with {{detent}} each: {{value}} "
        + ("of the need; {limit}." if asked else "of the need, with the motors off."),
        mend="a smaller lead, a motor with more detent torque, a brake or a counterweight",
        also={"driving": (hanging.driving_nmm, "N·mm"), "rubbing": (hanging.rubbing_nmm, "N·mm")},
    )


def _detent(motor: Driven) -> Input:
    most_nmm = MOST_DETENT_RATIO * motor.holding.low
    return or_range(f"detent torque of {motor.motor.id}", motor.motor.detent_torque_nmm, 0.0, most_nmm, "N·mm")


def _vertical(design: Design) -> tuple[str, ...]:
    axes = design.axes.items()
    return named("axis", (name for name, axis in axes if isinstance(axis, ScrewAxis) and axis.vertical))


CHECK = check_of(
    _run,
    code="SCREW-03",
    title="Holds its height",
    source="textbook of machine design, power screws: friction against slope; reserve of a fifth: common practice",
    subjects=_vertical,
    total=MOVING_MASS,
)
