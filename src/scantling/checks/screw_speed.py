"""Does the motor still lift the load at the turns that the wanted speed asks for? And how fast would it get?

A small lead needs many turns, and a motor is weaker the faster it turns. No more than a half of what it is estimated to
give at that speed is trusted.
"""

from __future__ import annotations

from collections.abc import Callable

from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.motor_torque import LOAD_LIMIT_PERCENT, SOURCE, driven, load_percent
from scantling.checks.rule import check_of
from scantling.checks.screw_loads import screw_load
from scantling.checks.subjects import ident, screw_axes, screw_axis
from scantling.findings import Finding
from scantling.formulas.motors import speed_rev_s
from scantling.tables.check_limits import check_number

FASTEST_REV_S = check_number("fastest turns of a motor")
_HALVINGS = 20


def _run(reader: Reader, subject: str) -> Finding:
    axis, name = screw_axis(reader, subject), ident(subject)
    wanted = need(axis.needs.speed_mm_s, f"axes.{name}.needs.speed")
    load = screw_load(reader, axis, subject)
    motor = driven(reader, axis, name, int(load.drive.full_steps))
    lead_mm = float(load.drive.lead_mm)
    turns_rev_s = speed_rev_s(wanted.value, lead_mm)

    def loaded(turns: float, f: dict[str, float]) -> float:
        return load_percent(load.torque_nmm(f), motor.available_nmm(turns, f))

    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda **f: loaded(turns_rev_s, f),
        inputs=load.inputs | motor.inputs,
        bounds=at_most(LOAD_LIMIT_PERCENT),
        unit="%",
        because=f"{wanted.value:g} mm/s on a lead of {lead_mm:.4g} mm are {turns_rev_s:.3g} rev/s, where the motor "
        "gives {given} and {needed} are needed: {value}; {limit}. At that limit the axis would reach {reached}.",
        mend="a larger lead if the torque allows it, a motor of lower inductance, more voltage, or less speed",
        also={
            "given": (lambda **f: motor.available_nmm(turns_rev_s, f), "N·mm"),
            "needed": (lambda **f: load.torque_nmm(f), "N·mm"),
            "reached": (lambda **f: lead_mm * fastest_rev_s(lambda turns: loaded(turns, f)), "mm/s"),
        },
    )


def fastest_rev_s(load_at: Callable[[float], float]) -> float:
    """Return the highest speed at which the load stays within its limit; 0 where it never does.

    load_at : load in % at a speed in rev/s, which only grows with speed
    """
    if load_at(FASTEST_REV_S) <= LOAD_LIMIT_PERCENT:
        return FASTEST_REV_S
    low, high = 0.0, FASTEST_REV_S
    if load_at(low) > LOAD_LIMIT_PERCENT:
        return 0.0
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if load_at(middle) <= LOAD_LIMIT_PERCENT else (low, middle)
    return low


CHECK = check_of(
    _run,
    code="SCREW-07",
    title="Speed of a screw axis",
    source=SOURCE,
    subjects=screw_axes,
    total=MOVING_MASS,
)
