"""How much the sag of the guide rods changes the height at the tool along the travel.

The constant part is levelled out. A tool that rides on the carriage goes down towards the middle of the rods; under a
tool that stands still a bed passes on two bushings, and the height there changes about ten times less. Over a rod with
a single bushing it changes more than over one with two; the worse side counts.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from scantling.build.axis_loads import guide_size
from scantling.build.missing import gather, need
from scantling.build.reader import Reader
from scantling.build.rod_ends import Ends, rod_ends
from scantling.build.sizes import feature
from scantling.checks.axis_loads import MOVING_MASS
from scantling.checks.guide_loads import Guided, guided, level_guides
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.materials import steel_modulus
from scantling.checks.rule import check_of
from scantling.checks.standing import ends_inputs
from scantling.checks.subjects import ident
from scantling.findings import Finding
from scantling.formulas.carriages import carriage_drop_mm, height_change_at_tool_mm
from scantling.formulas.sections import round_second_moment_mm4
from scantling.tables.check_limits import check_number

USUAL_LIMIT_MM = check_number("change of height at the tool")


@dataclass(frozen=True)
class Sagging:
    """The rods of an axis under their carriage, on its travel."""

    on: Guided
    ends: Ends
    travel_mm: float

    def change_mm(self, **f: float) -> float:
        """Return how much the height at the tool changes; a carriage longer than its rods stands still."""
        apart_mm = min(f["spacing"], f["free"])
        way_mm = max(0.0, min(self.travel_mm, f["free"] - apart_mm))
        rides = self.on.guide.tool == "rides"
        return height_change_at_tool_mm(
            self.on_rod_n(f), way_mm, apart_mm, *self._beam(f), rides, self.on.one_stands_alone
        )

    def constant_mm(self, **f: float) -> float:
        """Return how far the carriage sinks in the middle of its rods; over a single bushing it sinks furthest."""
        apart_mm, middle_mm = 0.0 if self.on.one_stands_alone else min(f["spacing"], f["free"]), f["free"] / 2
        return carriage_drop_mm(self.on_rod_n(f), middle_mm, middle_mm, apart_mm, *self._beam(f))

    def on_rod_n(self, f: Mapping[str, float]) -> float:
        """Return what bends the busier rod down: of stacked rods each carries half the weight, wherever it hangs."""
        stacked = self.on.guide.lie == "stacked"
        return self.on.on_rod_n(f["mass"], 1 / self.on.geometry.rods if stacked else f["share"])

    def _beam(self, f: Mapping[str, float]) -> tuple[float, float, float, float]:
        fixity = self.ends.fixity(f["free"], f["diameter"], f["modulus"], f)
        return f["free"], f["modulus"], round_second_moment_mm4(f["diameter"]), fixity


def _run(reader: Reader, subject: str) -> Finding:
    name, on = ident(subject), guided(reader, subject)
    free, spacing, travel = gather(
        lambda: reader.derive(guide_size, name, "free"),
        lambda: reader.derive(guide_size, name, "spacing"),
        lambda: need(reader.design.axes[name].needs.travel_mm, f"axes.{name}.needs.travel"),
    )
    ends = rod_ends(reader, name, on.guide)
    sagging = Sagging(on, ends, travel.value)
    tool = "rides on the carriage" if on.guide.tool == "rides" else "stands still"
    return judge(
        CHECK,
        reader,
        subject,
        rule=sagging.change_mm,
        inputs={
            "mass": on.mass,
            "share": on.share,
            "free": known("free length of the rods", free, "mm"),
            "spacing": known("spacing of the bushings", spacing, "mm"),
            "diameter": known("diameter of the rods", reader.derive(feature, on.guide.rods, "diameter"), "mm"),
            "modulus": steel_modulus(on.rod),
        }
        | ends_inputs(ends),
        bounds=at_most(on.guide.sag_limit_mm.value if on.guide.sag_limit_mm else USUAL_LIMIT_MM),
        unit="mm",
        because=f"{{mass}} on {on.geometry.rods} rods of {{diameter}}, {{free}} free, {ends.words}, sag "
        "{constant} in the middle, which levelling takes out; along the travel the height at the tool, which "
        f"{tool}, changes by {{value}}; {{limit}}.{on.share_words}",
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
