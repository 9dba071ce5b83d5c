"""All steps together use every piece of a place, and do up every joint, exactly as often as there are.

A piece that no step uses is left over on the bench; one that two steps use is looked for in vain. It is the text that
is at fault, not the machine: never worse than marginal. While the steps name less than half of all places they are not
finished, and what they leave out is not described.
"""

from __future__ import annotations

from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.steps import joint_coverage, place_coverage
from scantling.checks.judging import say
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident, named
from scantling.findings import Finding, Verdict
from scantling.model.design import Design
from scantling.tables.check_limits import check_number

FINISHED_RATIO = check_number("steps make it whole")


def _run(reader: Reader, subject: str) -> Finding:
    counted = joint_coverage if subject.startswith("joint ") else place_coverage
    row = reader.derive(counted, ident(subject))
    if row.needed and not row.used and not _finished(reader.design):
        raise NotDescribedError((f"steps (one that uses {subject})",))
    where = f"by step {', '.join(row.steps)}" if row.steps else "by no step"
    verdict = Verdict.SOUND if row.used == row.needed else Verdict.MARGINAL
    because = f"{row.used} of {row.needed} used {where}."
    return say(CHECK, reader, subject, verdict, because, f"name {row.needed} in the steps that use {subject}")


def _finished(design: Design) -> bool:
    """True where the steps name enough to be taken for the whole assembly."""
    used = {place for step in design.steps.values() for place in step.uses} & set(design.places)
    return len(used) >= FINISHED_RATIO * len(design.places)


def _subjects(design: Design) -> tuple[str, ...]:
    return (*named("place", design.places), *named("joint", design.joints)) if design.steps else ()


CHECK = check_of(_run, code="STEP-01", title="Steps use every piece once", source="counting", subjects=_subjects)
