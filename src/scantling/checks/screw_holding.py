"""Does a vertical axis stay where it is with its motors off? What holds against what drives, never the lead alone.

The weight on the lead drives the screw; friction in the thread and the motors' detent torque hold it. At least a fifth
more than needed is wished, for shaking lowers friction. Where the design does not ask for it, it is said all the same.
"""

from __future__ import annotations

from math import pi

from scantling.build.drives import screw_drive
from scantling.build.reader import Reader
from scantling.build.totals import read_total
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.inputs import known, or_range
from scantling.checks.judging import judge
from scantling.checks.limits import INFORMATION, at_least
from scantling.checks.motor_torque import driven
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident, named, screw_axis
from scantling.findings import Finding
from scantling.formulas.dynamics import weight_n
from scantling.formulas.power_screws import lowering_torque_nmm
from scantling.model.axis import ScrewAxis
from scantling.model.design import Design

RESERVE_RATIO = 0.2
MOST_DETENT_RATIO = 0.1  # of the holding torque: small steppers show 2 to 10 % (from memory)
MOST_SHOWN_PERCENT = 1000.0


def _run(reader: Reader, subject: str) -> Finding:
    axis, name = screw_axis(reader, subject), ident(subject)
    drive = reader.derive(screw_drive, name)
    motor = driven(reader, axis, name, int(drive.full_steps))
    holding = motor.inputs["holding"]
    detent = or_range(
        f"detent torque of {motor.motor.id}",
        motor.motor.detent_torque_nmm,
        0.0,
        MOST_DETENT_RATIO * holding.low,
        "N·mm",
    )
    lead_mm, thread, screws = float(drive.lead_mm), drive.thread, max(1, drive.screws)

    def driving(**f: float) -> float:
        return weight_n(f["mass"]) * lead_mm / (2 * pi)

    def rubbing(**f: float) -> float:
        one_nmm = lowering_torque_nmm(
            weight_n(f["mass"]) / screws,
            thread.pitch_diameter_mm,
            lead_mm,
            f["thread"],
            thread.flank_half_angle_deg,
        )
        return driving(**f) + screws * one_nmm

    def percent(**f: float) -> float:
        held_nmm = rubbing(**f) + motor.count * f["detent"]
        return min(MOST_SHOWN_PERCENT, 100 * held_nmm / max(driving(**f), 1e-9))

    return judge(
        CHECK,
        reader,
        subject,
        rule=percent,
        inputs={
            "mass": known(f"moving mass of {subject}", read_total(reader, MOVING_MASS.name, subject), "kg"),
            "thread": known("friction in the thread", drive.friction),
            "detent": detent,
        },
        bounds=at_least(100.0, RESERVE_RATIO) if axis.needs.holds_itself else INFORMATION,
        unit="%",
        because=f"{{mass}} on a lead of {lead_mm:.4g} mm drives the screws with {{driving}}; friction {{thread}} in "
        f"the thread holds with {{rubbing}} and {motor.count} motor(s) with {{detent}} each: {{value}} of the need"
        + ("; {limit}." if axis.needs.holds_itself else ", with the motors off."),
        mend="a smaller lead, a motor with more detent torque, a brake or a counterweight",
        also={"driving": (driving, "N·mm"), "rubbing": (rubbing, "N·mm")},
    )


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
