"""The travel that the rods leave: their free length less the carriage and what stops, switch and tensioner take."""

from __future__ import annotations

from scantling.build.axis_loads import guide_size
from scantling.build.missing import gather, need
from scantling.build.reader import Reader
from scantling.checks.guide_loads import all_guides
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import at_least
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident
from scantling.findings import Finding


def _run(reader: Reader, subject: str) -> Finding:
    name = ident(subject)
    wanted, free, carriage, stops = gather(
        lambda: need(reader.design.axes[name].needs.travel_mm, f"axes.{name}.needs.travel"),
        lambda: reader.derive(guide_size, name, "free"),
        lambda: reader.derive(guide_size, name, "carriage"),
        lambda: reader.derive(guide_size, name, "stops"),
    )
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda free, carriage, stops: free - carriage - stops,
        inputs={
            "free": known("free length of the rods", free, "mm"),
            "carriage": known("length of the carriage", carriage, "mm"),
            "stops": known("what stops and switch take", stops, "mm"),
        },
        bounds=at_least(wanted.value),
        unit="mm",
        because="{free} of free rod, less a carriage of {carriage} and {stops} for stops, leave {value}; {limit}.",
        mend="longer rods, a shorter carriage, or bushings closer together",
    )


CHECK = check_of(
    _run,
    code="ROD-05",
    title="Travel on the rods",
    source="sum of lengths",
    subjects=all_guides,
)
