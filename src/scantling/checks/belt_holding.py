"""Does a hanging belt axis stay where it is with its motor off? A belt has no lead that would hold it.

What holds are the motor's detent torque and the friction of the guide, which shaking lowers; so a fifth more than the
weight is wished. Where the design does not ask for it, it is said all the same.
"""

from __future__ import annotations

from scantling.build.drives import belt_gear, guide_friction
from scantling.build.reader import Reader
from scantling.build.sizes import ZERO
from scantling.build.totals import read_total
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.inputs import known, or_range
from scantling.checks.judging import judge
from scantling.checks.limits import INFORMATION, at_least
from scantling.checks.motor_torque import driven
from scantling.checks.rule import check_of
from scantling.checks.screw_holding import MOST_DETENT_RATIO, RESERVE_RATIO
from scantling.checks.subjects import belt_axis, ident, named
from scantling.findings import Finding
from scantling.formulas.dynamics import weight_n
from scantling.formulas.motor_drivers import held_ratio
from scantling.model.axis import BeltAxis
from scantling.model.design import Design


def _run(reader: Reader, subject: str) -> Finding:
    axis, name = belt_axis(reader, subject), ident(subject)
    drive, asked = reader.derive(belt_gear, name), axis.needs.holds_itself
    motor = driven(reader, axis, name, int(drive.full_steps))
    friction = reader.derive(guide_friction, name)
    who, most_nmm = motor.motor.id, MOST_DETENT_RATIO * motor.holding.low

    def held(mass: float, drag: float, detent: float) -> float:
        return 100 * held_ratio(weight_n(mass), drag, motor.count * detent, float(drive.travel_mm))

    return judge(
        CHECK,
        reader,
        subject,
        rule=held,
        inputs={
            "mass": known(f"moving mass of {subject}", read_total(reader, MOVING_MASS.name, subject), "kg"),
            "drag": known("drag of the bushings", friction.typed_n or friction.drag_n or ZERO, "N"),
            "detent": or_range(f"detent torque of {who}", motor.motor.detent_torque_nmm, 0.0, most_nmm, "N·mm"),
        },
        bounds=at_least(100.0, RESERVE_RATIO) if asked else INFORMATION,
        unit="%",
        because=f"{{mass}} hang on the belt with {{weight}}; {motor.count} motor(s) with {{detent}} each on "
        f"{float(drive.travel_mm):.3g} mm a turn and {{drag}} of drag hold {{value}} of it with the current off"
        + ("; {limit}." if asked else "."),
        mend="a counterweight, a brake, or a screw with a small lead instead of the belt",
        also={"weight": (lambda **f: weight_n(f["mass"]), "N")},
    )


def _vertical(design: Design) -> tuple[str, ...]:
    axes = design.axes.items()
    return named("axis", (name for name, axis in axes if isinstance(axis, BeltAxis) and axis.vertical))


CHECK = check_of(
    _run,
    code="BELT-12",
    title="Holds its height on a belt",
    source="statics: detent torque and friction against weight; reserve of a fifth: common practice, no source",
    subjects=_vertical,
    total=MOVING_MASS,
)
