"""Does a carriage bind because its drive pulls beside its guide? The pull's offset over the spacing of its bushings.

It binds where the ratio passes 1 / (2 μ), whatever the force: two to one for plain linings of 0.25. Ball bushings
hardly bind this way; they bind when seats or rods are not parallel.
"""

from __future__ import annotations

from scantling.build.axis_loads import guide_geometry, guide_size
from scantling.build.drives import guide_friction
from scantling.build.missing import gather, need
from scantling.build.reader import Reader
from scantling.checks.guide_loads import all_guides
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.rule import EmptyPlaceError, check_of
from scantling.checks.subjects import ident
from scantling.findings import Finding
from scantling.formulas.racking import greatest_arm_ratio
from scantling.tables.check_limits import check_number

RESERVE_RATIO = check_number("reserve of friction")
MOST_RATIO = 1000.0  # of frictionless guides; no offset comes near


def _run(reader: Reader, subject: str) -> Finding:
    name = ident(subject)
    guide = need(reader.design.axes[name].guide, f"axes.{name}.guide")
    if not reader.derive(guide_geometry, name).bearings:
        raise EmptyPlaceError(guide.bearings)
    offset, spacing = gather(
        lambda: reader.derive(guide_size, name, "offset"),
        lambda: reader.derive(guide_size, name, "spacing"),
    )
    friction = reader.derive(guide_friction, name)
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda offset, spacing, **_: offset / spacing,
        inputs={
            "offset": known("offset of the drive's pull", offset, "mm"),
            "spacing": known("spacing of the bushings", spacing, "mm"),
            "friction": known("friction of the bushings", friction.ratio),
        },
        bounds=at_most(lambda friction, **_: most_ratio(friction), RESERVE_RATIO),
        unit="",
        because="The drive pulls {offset} beside the middle of bushings {spacing} apart: {value} times the spacing; "
        "with friction {friction} it slides up to {most}; {limit}.",
        also={"most": (lambda friction, **_: most_ratio(friction), "")},
        mend="pull nearer to the guide, bushings further apart, or bushings that rub less",
    )


def most_ratio(friction_ratio: float) -> float:
    """Return the largest offset over spacing that still slides."""
    return MOST_RATIO if friction_ratio <= 0 else min(MOST_RATIO, greatest_arm_ratio(friction_ratio))


CHECK = check_of(
    _run,
    code="ROD-04",
    title="Binding of a carriage",
    source="statics: offset / spacing up to 1 / (2 friction), a bushing maker's two-to-one rule",
    subjects=all_guides,
)
