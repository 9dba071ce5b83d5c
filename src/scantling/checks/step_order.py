"""Steps that wait for each other in a circle can never begin: each names another of them as coming first."""

from __future__ import annotations

from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.steps import step_circle
from scantling.checks.judging import say
from scantling.checks.rule import check_of
from scantling.findings import Finding, Verdict


def _run(reader: Reader, subject: str) -> Finding:
    if not reader.design.steps:
        raise NotDescribedError(("steps",))
    circle = step_circle(reader.design)
    if circle:
        because = f"The steps {', '.join(circle)} wait for each other."
        return say(CHECK, reader, subject, Verdict.UNSOUND, because, "take out one of their 'after' or 'uses results'")
    count = len(reader.design.steps)
    return say(CHECK, reader, subject, Verdict.SOUND, f"All steps ({count}) can be done one after another.")


CHECK = check_of(
    _run, code="STEP-02", title="Steps can begin", source="what comes first", subjects=lambda _: ("steps in-order",)
)
