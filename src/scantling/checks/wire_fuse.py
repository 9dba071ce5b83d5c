"""A fuse must carry the load of its wire with a fifth to spare, or it tires and opens in the middle of a long print."""

from __future__ import annotations

from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge, say
from scantling.checks.limits import at_most
from scantling.checks.rule import check_of
from scantling.checks.wiring import carried, fuse_of, laid, wire_subjects
from scantling.findings import Finding, Verdict
from scantling.tables.electric_limits import electric_limit

PERCENT = 100.0


def _run(reader: Reader, subject: str) -> Finding:
    on = laid(reader, subject)
    if on is None:
        return say(CHECK, reader, subject, Verdict.SOUND, "It falls away with what it leads to.")
    fuse = fuse_of(reader, on)
    if fuse is None:
        if on.row.fuse is None and "." not in on.row.start:
            return say(CHECK, reader, subject, Verdict.SOUND, "There is no fuse in it that could open.")
        raise NotDescribedError((f"loom.{on.name}.fuse",))
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda current, rating: PERCENT * current / rating,
        inputs={"current": carried(reader, on), "rating": known(f"rating of {fuse.name}", fuse.rating_a, "A")},
        bounds=at_most(electric_limit("load of a fuse").value),
        unit="%",
        because=f"{{current}} flow for hours through {fuse.name}, {{value}} of its {{rating}}; {{limit}}.",
        mend="the next larger fuse, if the wire bears it",
    )


CHECK = check_of(
    _run,
    code="WIRE-06",
    title="Fuse for its load",
    source="fuse of 1.25 times the steady current: two published calculators",
    subjects=lambda design: wire_subjects(design, "power"),
)
