"""What flows for good into a fault: a wire must carry all that its supply gives, or have a fuse of its own below that.

A switching supply folds back at a little more than its rating. A fuse larger than that never blows, however thin the
wire behind it; and a fuse for the whole machine says nothing of the thinnest of its wires.
"""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge, say
from scantling.checks.limits import at_most
from scantling.checks.rule import check_of
from scantling.checks.wiring import (
    ampacity_inputs,
    carries_for_good_a,
    fuse_of,
    laid,
    limit_of_supply,
    way,
    wire_subjects,
)
from scantling.findings import Finding, Verdict
from scantling.formulas.wires import lasting_a
from scantling.model.design import Design


def _run(reader: Reader, subject: str) -> Finding:
    on = laid(reader, subject)
    if on is None:
        return say(CHECK, reader, subject, Verdict.SOUND, "It falls away with what it leads to.")
    inputs = {"supply": limit_of_supply(reader, on), **ampacity_inputs(on)}
    fuse = fuse_of(reader, on)
    said = "there is no fuse of its own"
    if fuse is not None:
        inputs["fuse"] = known(f"rating of {fuse.name}", fuse.rating_a, "A")
        said = f"{fuse.name} holds {{fuse}}"
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda supply, fuse=None, **_: lasting_a(supply, fuse),
        inputs=inputs,
        bounds=at_most(lambda table, stands, room, **_: carries_for_good_a(on, table, stands, room)),
        unit="A",
        because=f"A fault behind the wire {way(on)} is fed with {{supply}}, and {said}: {{value}} can flow for good; "
        f"{on.copper_mm2:.3g} mm² carry {{limit}}.",
        mend="a fuse of its own below what the wire carries, or thicker wire",
    )


def _subjects(design: Design) -> tuple[str, ...]:
    """Wires that a rail feeds: behind a driver the driver limits the current."""
    fed = wire_subjects(design, "power", "mains")
    return tuple(subject for subject in fed if design.loom[subject.partition(" ")[2]].rail is not None)


CHECK = check_of(
    _run,
    code="WIRE-03",
    title="Wire against what can flow for good",
    source="IEC 60364-4-43, fuse at most what the wire carries; the supply's own limit beside it",
    subjects=_subjects,
)
