"""How much the sag of the guide rods changes the height at the tool along the travel.

The constant part is levelled out. A tool that rides on the carriage goes down towards the middle of the rods; under a
tool that stands still a bed passes on two bushings, and the height there changes about ten times less.
"""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.axis_loads import guide_size
from scantling.build.missing import gather, need
from scantling.build.reader import Reader
from scantling.build.sizes import feature
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.guide_loads import Guided, guided, level_guides
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


@dataclass(frozen=True)
class Sagging:
    """The rods of an axis under their carriage, on its travel."""

    on: Guided
    travel_mm: float

    def change_mm(self, mass: float, free: float, spacing: float, diameter: float, modulus: float) -> float:
        """Return how much the height at the tool changes; a carriage longer than its rods stands still."""
        apart_mm = min(spacing, free)
        way_mm = max(0.0, min(self.travel_mm, free - apart_mm))
        second_mm4 = round_second_moment_mm4(diameter)
        clamped, rides = self.on.guide.ends == "clamped", self.on.guide.tool == "rides"
        force_n = self.on.on_rod_n(mass)
        return height_change_at_tool_mm(force_n, way_mm, apart_mm, free, modulus, second_mm4, clamped, rides)

    def constant_mm(self, mass: float, free: float, spacing: float, diameter: float, modulus: float) -> float:
        """Return how far the carriage sinks in the middle of its rods."""
        apart_mm, middle_mm, second_mm4 = min(spacing, free), free / 2, round_second_moment_mm4(diameter)
        force_n, clamped = self.on.on_rod_n(mass), self.on.guide.ends == "clamped"
        return carriage_drop_mm(force_n, middle_mm, middle_mm, apart_mm, free, modulus, second_mm4, clamped)


def _run(reader: Reader, subject: str) -> Finding:
    name, on = ident(subject), guided(reader, subject)
    free, spacing, travel = gather(
        lambda: reader.derive(guide_size, name, "free"),
        lambda: reader.derive(guide_size, name, "spacing"),
        lambda: need(reader.design.axes[name].needs.travel_mm, f"axes.{name}.needs.travel"),
    )
    sagging = Sagging(on, travel.value)
    tool = "rides on the carriage" if on.guide.tool == "rides" else "stands still"
    return judge(
        CHECK,
        reader,
        subject,
        rule=sagging.change_mm,
        inputs={
            "mass": on.mass,
            "free": known("free length of the rods", free, "mm"),
            "spacing": known("spacing of the bushings", spacing, "mm"),
            "diameter": known("diameter of the rods", reader.derive(feature, on.guide.rods, "diameter"), "mm"),
            "modulus": steel_modulus(on.rod),
        },
        bounds=at_most(on.guide.sag_limit_mm.value if on.guide.sag_limit_mm else USUAL_LIMIT_MM),
        unit="mm",
        because=f"{{mass}} on {on.geometry.rods} rods of {{diameter}}, {{free}} free, ends {on.guide.ends}, sag "
        "{constant} in the middle, which levelling takes out; along the travel the height at the tool, which "
        f"{tool}, changes by {{value}}; {{limit}}.",
        mend="thicker rods, a shorter span, bushings further apart, or a lighter load",
        also={"constant": (sagging.constant_mm, "mm")},
    )


CHECK = check_of(
    _run,
    code="ROD-01",
    title="Sag of guide rods at the tool",
    source="beam tables, superposed; usual limit 0.1 mm: common practice, no source",
    subjects=level_guides,
    total=MOVING_MASS,
)
