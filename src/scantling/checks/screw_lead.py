"""Lead and steps per millimetre of a screw axis, exact; against the needed resolution where one is given."""

from __future__ import annotations

from fractions import Fraction

from scantling.build.drives import ScrewDrive, screw_drive
from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import INFORMATION, at_most
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident, screw_axes, screw_axis
from scantling.findings import Finding
from scantling.formulas.power_screws import rounded_way_mm
from scantling.model.axis import ScrewAxis
from scantling.quantities import show_fraction


def _run(reader: Reader, subject: str) -> Finding:
    axis, drive = screw_axis(reader, subject), reader.derive(screw_drive, ident(subject))
    wanted = axis.needs.resolution_mm
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda lead, steps: lead / steps,
        inputs={
            "lead": known("lead", float(drive.lead_mm), "mm"),
            "steps": known("steps in a turn", float(drive.full_steps * drive.microsteps)),
        },
        bounds=INFORMATION if wanted is None else at_most(wanted.value),
        unit="mm",
        because=f"{drive.thread.name} has a lead of {show_fraction(drive.lead_mm)} mm: "
        f"{show_fraction(drive.steps_per_mm)} steps to a millimetre, {{value}} each; a full step is "
        f"{float(drive.full_step_mm):.4g} mm{'; {limit} is needed' if wanted else ''}.{rounding_words(axis, drive)}",
        mend="a smaller lead, or more micro-steps",
    )


def rounding_words(axis: ScrewAxis, drive: ScrewDrive) -> str:
    """Return what rounding the steps to two decimals does over the travel; nothing where no more are needed."""
    entered = Fraction(round(drive.steps_per_mm * 100), 100)
    if entered == drive.steps_per_mm:
        return ""
    way_mm = axis.needs.travel_mm.value if axis.needs.travel_mm else 100.0
    out_um = 1000 * rounded_way_mm(drive.steps_per_mm, entered, way_mm)
    exact = f"{drive.steps_per_mm.numerator}/{drive.steps_per_mm.denominator}"
    return f" Entered as {float(entered):.2f} instead of {exact} it is out by {out_um:.2g} µm on {way_mm:g} mm."


CHECK = check_of(
    _run,
    code="SCREW-01",
    title="Lead and steps of a screw axis",
    source="definition: lead = pitch × starts; steps = full steps × micro-steps / lead",
    subjects=screw_axes,
)
