"""How much the sag of the guide rods changes the height at the tool along the travel.

The constant part is levelled out. A tool that rides on the carriage goes down towards the middle of the rods; under a
tool that stands still a bed passes on two bushings, and the height there changes about ten times less.
"""

from __future__ import annotations

from scantling.build.axis_loads import guide_size
from scantling.build.missing import gather, need
from scantling.build.reader import Reader
from scantling.build.sizes import feature
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.guide_loads import guided, level_guides
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.materials import steel_modulus
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident
from scantling.findings import Finding
from scantling.formulas.carriages import carriage_drop_mm, height_change_at_tool_mm
from scantling.formulas.sections import round_second_moment_mm4

USUAL_LIMIT_MM = 0.1  # flat enough after levelling: common practice, no source


def _run(reader: Reader, subject: str) -> Finding:
    name, on = ident(subject), guided(reader, subject)
    free, spacing, travel = gather(
        lambda: reader.derive(guide_size, name, "free"),
        lambda: reader.derive(guide_size, name, "spacing"),
        lambda: need(reader.design.axes[name].needs.travel_mm, f"axes.{name}.needs.travel"),
    )
    limit = on.guide.sag_limit_mm.value if on.guide.sag_limit_mm else USUAL_LIMIT_MM
    clamped, rides = on.guide.ends == "clamped", on.guide.tool == "rides"

    def change(mass: float, free: float, spacing: float, diameter: float, modulus: float) -> float:
        second_mm4, apart_mm = round_second_moment_mm4(diameter), min(spacing, free)
        way_mm = max(0.0, min(travel.value, free - apart_mm))
        return height_change_at_tool_mm(on.on_rod_n(mass), way_mm, apart_mm, free, modulus, second_mm4, clamped, rides)

    def constant(mass: float, free: float, spacing: float, diameter: float, modulus: float) -> float:
        second_mm4, middle_mm = round_second_moment_mm4(diameter), free / 2
        apart_mm = min(spacing, free)
        return carriage_drop_mm(on.on_rod_n(mass), middle_mm, middle_mm, apart_mm, free, modulus, second_mm4, clamped)

    return judge(
        CHECK,
        reader,
        subject,
        rule=change,
        inputs={
            "mass": on.mass,
            "free": known("free length of the rods", free, "mm"),
            "spacing": known("spacing of the bushings", spacing, "mm"),
            "diameter": known("diameter of the rods", reader.derive(feature, on.guide.rods, "diameter"), "mm"),
            "modulus": steel_modulus(on.rod),
        },
        bounds=at_most(limit),
        unit="mm",
        because=f"{{mass}} on {on.geometry.rods} rods of {{diameter}}, {{free}} free, ends {on.guide.ends}, sag "
        f"{{constant}} in the middle, which levelling takes out; along the travel the height at the tool, which "
        f"{'rides on the carriage' if rides else 'stands still'}, changes by {{value}}; {{limit}}.",
        mend="thicker rods, a shorter span, bushings further apart, or a lighter load",
        also={"constant": (constant, "mm")},
    )


CHECK = check_of(
    _run,
    code="ROD-01",
    title="Sag of guide rods at the tool",
    source="beam tables, superposed; usual limit 0.1 mm: common practice, no source",
    subjects=level_guides,
    total=MOVING_MASS,
)
