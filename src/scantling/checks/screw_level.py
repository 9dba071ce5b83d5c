"""How far two screws of one axis may be out against each other: what the motors' rest positions and their leads allow.

Two motors on one command keep step only while they are on. Turned by hand, or by a load that creeps while they are off,
one may settle an electrical cycle beside the other. Then the tool is no longer level. A difference of their leads makes
the gantry lean as it rises, and a difference of their loads makes one lag.
"""

from __future__ import annotations

from math import atan, degrees

from scantling.build.drives import ScrewDrive, screw_drive
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.sizes import size
from scantling.checks.inputs import Input, known
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.motor_torque import LOAD_LIMIT_PERCENT
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident, named, screw_axis
from scantling.findings import Finding
from scantling.formulas.motors import cycle_mm, lag_full_steps_ratio
from scantling.formulas.wobble import BOW_LENGTH_MM
from scantling.model.axis import ScrewAxis
from scantling.model.design import Design
from scantling.tables.motion_limits import motion_limit
from scantling.tables.sources import cite


def _run(reader: Reader, subject: str) -> Finding:
    axis, name = screw_axis(reader, subject), ident(subject)
    drive = reader.derive(screw_drive, name)
    step_mm = float(drive.full_step_mm)
    lean = _lean(reader, axis, drive)
    lag_mm = lag_full_steps_ratio(LOAD_LIMIT_PERCENT, 100.0) * step_mm
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda cycles, **_: lag_mm + cycles * cycle_mm(step_mm),
        inputs={"cycles": Input("the cycles that one motor has settled beside the other", 0.0, 0.0, 1.0)},
        bounds=at_most(motion_limit("level of two screws").amount),
        unit="mm",
        because=f"{drive.screws} x {drive.thread.name}: a motor that bears half its torque lags one that bears nothing "
        f"by {lag_mm:.2g} mm; one that has settled a cycle of four full steps beside the other while they were off is "
        f"out by {cycle_mm(step_mm):.3g} mm more. They differ by {{value}}; {{limit}}.{lean} Level the gantry "
        "whenever a screw was turned by hand.",
        mend="a smaller lead, a motor that turns both screws, or a stop against which the gantry is levelled",
    )


def _lean(reader: Reader, axis: ScrewAxis, drive: ScrewDrive) -> str:
    """Return what the difference of the leads does along the travel, in words; nothing where the travel is not said."""
    if axis.needs.travel_mm is None:
        return ""
    error = known("error of the lead", drive.lead_error_300_mm, "mm")
    way_mm = axis.needs.travel_mm.value
    out_mm = error.high * way_mm / BOW_LENGTH_MM
    said = f" Leads that differ by {error.shown()} on 300 mm are out by up to {out_mm:.2g} mm at the top"
    apart_mm = _apart_mm(reader, axis)
    return f"{said}, {degrees(atan(out_mm / apart_mm)):.2g}° of lean." if apart_mm else f"{said}."


def _apart_mm(reader: Reader, axis: ScrewAxis) -> float | None:
    if axis.screws_apart is None:
        return None
    try:
        return reader.derive(size, axis.screws_apart).low
    except NotDescribedError:
        return None


def several_screws(design: Design) -> tuple[str, ...]:
    """Return the axes that are driven by more than one screw."""
    axes = design.axes.items()
    return named("axis", (name for name, axis in axes if isinstance(axis, ScrewAxis) and axis.screws > 1))


CHECK = check_of(
    _run,
    code="SCREW-11",
    title="Two screws in step",
    source="definition: rest positions of a two-phase motor repeat every four full steps; lag by the arc sine of load "
    f"over torque; leads: {cite('screw-makes')}, {cite('threaded-rod-makes')}; limit: {cite('motion-practice')}",
    subjects=several_screws,
    informs=True,
)
