"""All steps together must use every piece of a place, and do up every joint, exactly as often as there are.

A piece that no step uses is left over on the bench; one that two steps use is looked for in vain.
"""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.build.steps import joint_coverage, place_coverage
from scantling.checks.judging import say
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident, named
from scantling.findings import Finding, Verdict
from scantling.model.design import Design


def _run(reader: Reader, subject: str) -> Finding:
    counted = joint_coverage if subject.startswith("joint ") else place_coverage
    row = reader.derive(counted, ident(subject))
    where = f"by step {', '.join(row.steps)}" if row.steps else "by no step"
    because = f"{row.used} of {row.needed} used {where}."
    verdict = Verdict.SOUND if row.used == row.needed else Verdict.UNSOUND
    return say(CHECK, reader, subject, verdict, because, f"name {row.needed} in the steps that use {subject}")


def _subjects(design: Design) -> tuple[str, ...]:
    return (*named("place", design.places), *named("joint", design.joints)) if design.steps else ()


CHECK = check_of(_run, code="STEP-01", title="Steps use every piece once", source="counting", subjects=_subjects)
