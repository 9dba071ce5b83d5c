"""Work on the mains: each step that touches inlet, fuse or mains wire says that it is for a competent person.

Nothing here replaces the local code or a licensed person's judgement.
"""

from __future__ import annotations

from scantling.build.loom import end_place
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Catalogue, Reader
from scantling.checks.judging import say
from scantling.checks.rule import check_of
from scantling.checks.subjects import named
from scantling.findings import Finding, Verdict
from scantling.model.design import Design

ADVICE = "Mains can kill: only by a competent person, under the local code, with the lead out of the wall."
WORDS = ("competent", "qualified", "licensed", "electrician")


def _run(reader: Reader, subject: str) -> Finding:
    places, silent = reader.case.once(_touched)
    if not places:
        raise NotDescribedError(("rails (inlet)", "steps (uses)"))
    if not silent:
        because = f"Every step that touches {', '.join(places)} asks for a competent person. {ADVICE}"
        return say(CHECK, reader, subject, Verdict.SOUND, because)
    because = f"The steps {', '.join(silent)} touch the mains ({', '.join(places)}) and do not say so. {ADVICE}"
    return say(
        CHECK, reader, subject, Verdict.MARGINAL, because, "add it to the step: caution: only by a competent person"
    )


def _touched(case: Catalogue) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Places on the mains that steps use, and the steps that use them without a word of caution."""
    design = case.project.design
    mains = {place for rail in design.rails.values() for place in (rail.inlet, rail.mains_fuse) if place is not None}
    for row in design.loom.values():
        if row.carries == "mains":
            mains |= {end_place(row.start), row.wire}
    using = {name: mains & set(step.uses) for name, step in design.steps.items()}
    silent = tuple(n for n, places in using.items() if places and not _says_so(design.steps[n].caution))
    return tuple(sorted(set().union(*using.values()))), silent


def _says_so(caution: str) -> bool:
    return any(word in caution.casefold() for word in WORDS)


def _subjects(design: Design) -> tuple[str, ...]:
    return named("rail", (name for name, rail in design.rails.items() if rail.inlet is not None))


CHECK = check_of(
    _run,
    code="RAIL-06",
    title="Mains work by a competent person",
    source="usual caution; local codes and licensed practice go before it",
    subjects=_subjects,
)
