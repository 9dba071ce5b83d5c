"""A screw that is pressed must not bow out: its push against four fifths of the load at which it buckles.

Euler's load where the screw is slender, Johnson's where it is stocky; the root of the thread alone is counted.
"""

from __future__ import annotations

from math import pi

from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.inputs import known, or_typical
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.materials import steel_modulus
from scantling.checks.rule import check_of, part_at
from scantling.checks.screw_loads import screw_load
from scantling.checks.subjects import ident, screw_axes, screw_axis
from scantling.findings import Finding
from scantling.formulas.columns import (
    FIXED_FIXED_RATIO,
    FREE_FIXED_RATIO,
    PINNED_FIXED_RATIO,
    PINNED_PINNED_RATIO,
    buckling_force_n,
)
from scantling.model.kinds import ThreadedRod
from scantling.quantities import Figure
from scantling.tables.check_limits import check_number

ENDS = {
    "fixed-free": FREE_FIXED_RATIO,
    "supported-supported": PINNED_PINNED_RATIO,
    "fixed-supported": PINNED_FIXED_RATIO,
    "fixed-fixed": FIXED_FIXED_RATIO,
}
PERMITTED_RATIO = check_number("share of the buckling load")
YIELD_MPA = Figure(320.0, 240.0, 640.0)  # from the lowest grade of threaded rod (4.6) to 8.8, ISO 898-1


def _run(reader: Reader, subject: str) -> Finding:
    axis = screw_axis(reader, subject)
    load = screw_load(reader, axis, subject)
    free = need(load.drive.free_mm, f"axes.{ident(subject)}.free")
    root_mm, screws = load.drive.thread.minor_diameter_mm, max(1, load.drive.screws)
    area_mm2, second_mm4 = pi / 4 * root_mm**2, pi / 64 * root_mm**4

    def permitted_n(free: float, modulus: float, strength: float, **_: float) -> float:
        return PERMITTED_RATIO * buckling_force_n(modulus, strength, area_mm2, second_mm4, free, ENDS[axis.ends])

    own = {name: load.inputs[name] for name in ("mass", "rubbing", "drag", "process")}
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda **f: load.push_n(f) / screws,
        inputs=own
        | {
            "free": known("free length of the screw", free, "mm"),
            "modulus": steel_modulus(part_at(reader, axis.screw, ThreadedRod, f"axes.{ident(subject)}.screw")),
            "strength": or_typical("yield strength of the screw", None, YIELD_MPA, "MPa"),
        },
        bounds=at_most(permitted_n),
        unit="N",
        because=f"Each of {screws} screws is pressed with {{value}}; {{free}} of {load.drive.thread.name}, held "
        f"{axis.ends}, bows out beyond; {{limit}}.",
        mend="hold both ends, a thicker screw, a shorter one, or hang the load from the screw",
    )


CHECK = check_of(
    _run,
    code="SCREW-05",
    title="Buckling of a screw",
    source="Euler and Johnson columns; 80 % of it as screw makers permit",
    subjects=screw_axes,
    total=MOVING_MASS,
)
