"""What the tool really reaches along an axis: the travel that the rods leave, laid over the bed less clips and rims.

Rods may be long enough and the tool still not come to the edge, where it does not sit over the middle of the bed.
"""

from __future__ import annotations

from collections.abc import Mapping
from math import inf, isfinite

from scantling.build.missing import need
from scantling.build.reach import reach_sizes, wanted_reach_mm
from scantling.build.reader import Reader
from scantling.checks.inputs import Input, known
from scantling.checks.judging import judge
from scantling.checks.limits import at_least
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident, named
from scantling.findings import Finding
from scantling.formulas.reach import lost_by_place_mm, reached_mm
from scantling.model.design import Design

BOUNDED = (
    "From {start} the tool goes {travel} over a bed of {over}, of which {lost_low} at the low edge and {lost_high} at "
    "the high edge are taken: it reaches {value}; {limit}. Placed better over the bed it would reach {wasted} more."
)
BOUNDLESS = "From {start} the tool goes up by {travel}, over {lost_low} that lie below: it reaches {value}; {limit}."


def _run(reader: Reader, subject: str) -> Finding:
    name = ident(subject)
    sizes, axis = reader.derive(reach_sizes, name), reader.design.axes[name]
    described = need(axis.reach, f"axes.{name}.reach")
    wanted = need(wanted_reach_mm(described, axis.needs.travel_mm), f"axes.{name}.reach.wanted")
    inputs: dict[str, Input] = {
        "start": known("place of the tool at the low end", sizes.start_mm, "mm"),
        "travel": known("travel that the rods leave", sizes.travel_mm, "mm"),
        "lost_low": known("what the low edge takes", sizes.lost_low_mm, "mm"),
    }
    bounded = isfinite(sizes.over_mm.value)
    if bounded:
        inputs["over"] = known("length that the tool works over", sizes.over_mm, "mm")
        inputs["lost_high"] = known("what the high edge takes", sizes.lost_high_mm, "mm")
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda **f: reached_mm(**_sizes(f)),
        inputs=inputs,
        bounds=at_least(wanted.value),
        unit="mm",
        because=BOUNDED if bounded else BOUNDLESS,
        mend="longer rods, a shorter carriage, the tool nearer to the middle, clips that take less; upwards a "
        "tool that comes down to the surface",
        also={"wasted": (lambda **f: lost_by_place_mm(**_sizes(f)), "mm")},
    )


def _sizes(figures: Mapping[str, float]) -> dict[str, float]:
    """Return the figures by the names of the formulas; a bed that nothing bounds is infinitely long."""
    return {f"{name}_mm": value for name, value in ({"over": inf, "lost_high": 0.0} | dict(figures)).items()}


def reaching_axes(design: Design) -> tuple[str, ...]:
    """Return the axes whose reach is described."""
    return named("axis", (name for name, axis in design.axes.items() if axis.reach is not None))


CHECK = check_of(_run, code="SPAN-01", title="Reach of the tool", source="overlap of lengths", subjects=reaching_axes)
