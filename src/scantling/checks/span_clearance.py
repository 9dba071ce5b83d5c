"""The least gap between things that pass each other, at whichever end of the travel it is narrowest."""

from __future__ import annotations

from scantling.build.axis_loads import travel
from scantling.build.missing import gather
from scantling.build.reader import Reader
from scantling.build.sizes import ZERO, size
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import at_least
from scantling.checks.rule import check_of
from scantling.checks.subjects import all_of, ident
from scantling.findings import Finding
from scantling.formulas.reach import narrowest_mm
from scantling.tables.motion_limits import motion_limit
from scantling.tables.sources import cite


def _run(reader: Reader, subject: str) -> Finding:
    described = reader.design.clearances[ident(subject)]
    closes, least = described.closes, described.least_mm
    gap, way = gather(
        lambda: reader.derive(size, described.gap),
        lambda: reader.derive(travel, described.axis) if closes == "high" else ZERO,
    )
    where = {
        "high": "{gap} at the low end of axis AXIS, less {way} of travel, leave {value} at the high end",
        "low": "{value} is left at the low end of axis AXIS, and more everywhere else",
        "never": "{value} is left all along axis AXIS",
    }[closes].replace("AXIS", described.axis)
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda gap, way: narrowest_mm(gap, way, closes),
        inputs={"gap": known("gap at the low end", gap, "mm"), "way": known("travel", way, "mm")},
        bounds=at_least(motion_limit("clearance").amount if least is None else least.value),
        unit="mm",
        because=f"{described.title or described.id}: {where}; {{limit}}.",
        mend="move one of the two, cut it back, or give up some travel",
    )


CHECK = check_of(
    _run,
    code="SPAN-03",
    title="Clearance of moving things",
    source=f"sum of lengths; usual least gap: {cite('motion-practice')}",
    subjects=all_of("clearance", lambda design: design.clearances),
)
