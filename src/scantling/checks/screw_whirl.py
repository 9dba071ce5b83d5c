"""A turning screw bows out like a skipping rope near its critical speed; four fifths of it are the most."""

from __future__ import annotations

from scantling.build.drives import screw_drive
from scantling.build.missing import gather, need
from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.materials import steel_modulus
from scantling.checks.rule import check_of, part_at
from scantling.checks.subjects import ident, screw_axes, screw_axis
from scantling.findings import Finding
from scantling.formulas.whirl import (
    FIXED_FIXED_ROOT_RATIO,
    FIXED_SUPPORTED_ROOT_RATIO,
    FREE_FIXED_ROOT_RATIO,
    SUPPORTED_SUPPORTED_ROOT_RATIO,
    critical_speed_rpm,
)
from scantling.model.kinds import ThreadedRod
from scantling.tables.check_limits import check_number

ROOTS = {
    "fixed-free": FREE_FIXED_ROOT_RATIO,
    "supported-supported": SUPPORTED_SUPPORTED_ROOT_RATIO,
    "fixed-supported": FIXED_SUPPORTED_ROOT_RATIO,
    "fixed-fixed": FIXED_FIXED_ROOT_RATIO,
}
PERMITTED_RATIO = check_number("share of the whirling speed")
STEEL_KG_M3 = 7850.0  # with 207 GPa it gives the 4.76 million of the published inch formula to all digits


def _run(reader: Reader, subject: str) -> Finding:
    axis, name = screw_axis(reader, subject), ident(subject)
    drive = reader.derive(screw_drive, name)
    free, speed = gather(
        lambda: need(drive.free_mm, f"axes.{name}.free"),
        lambda: need(axis.needs.speed_mm_s, f"axes.{name}.needs.speed"),
    )
    lead_mm, root_mm = float(drive.lead_mm), drive.thread.minor_diameter_mm

    def permitted_rpm(free: float, modulus: float, root: float, **_: float) -> float:
        return PERMITTED_RATIO * critical_speed_rpm(root, free, ROOTS[axis.ends], modulus, STEEL_KG_M3)

    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda speed, lead, **_: 60 * speed / lead,
        inputs={
            "speed": known("wanted speed", speed.value, "mm/s"),
            "lead": known(f"lead of {axis.screw}", lead_mm, "mm"),
            "root": known(f"root of the thread of {axis.screw}", root_mm, "mm"),
            "free": known("free length of the screw", free, "mm"),
            "modulus": steel_modulus(part_at(reader, axis.screw, ThreadedRod, f"axes.{name}.screw")),
        },
        bounds=at_most(permitted_rpm),
        unit="rpm",
        because=f"{{speed}} turn {drive.thread.name} at {{value}}; with {{free}} free, held {axis.ends}, and a root of "
        f"{root_mm:.3g} mm; {{limit}}.",
        mend="hold both ends, a thicker screw, a larger lead, or less speed",
    )


CHECK = check_of(
    _run,
    code="SCREW-04",
    title="Whirl of a screw",
    source="beam theory, lowest bending frequency; 80 % of it as handbooks permit",
    subjects=screw_axes,
)
