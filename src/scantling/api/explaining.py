"""Explain: why a finding is as it is, in one paragraph with the numbers put into its formula."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from scantling.api.opening import Session, start_build
from scantling.build.reference import carry_over
from scantling.checks.all import CHECKS
from scantling.checks.explaining import ExplainedFigure as ExplainedFigure  # faces name its type
from scantling.checks.explaining import Explanation as Explanation
from scantling.checks.explaining import explain as explained
from scantling.errors import Fault, FaultsError, Where, nearest
from scantling.model.build import Key


def explain(
    session: Session, code: str, subjects: Sequence[str] = (), changes: Mapping[Key, str] | None = None
) -> tuple[Explanation, ...]:
    """Return the explanations of one check's findings, on some subjects or on all, what matters most first.

    Of the choice in force, else of the reference parts, with some changes. Raises ``FaultsError`` for a code or a
    subject that is none.
    """
    check = next((check for check in CHECKS if check.code == code.upper()), None)
    if check is None:
        mend = nearest(code.upper(), [check.code for check in CHECKS])
        raise FaultsError([Fault("ASK-07", f"no check has the code {code!r}", mend, Where(code))])
    known = check.subjects(session.case.project.design)
    unknown = [subject for subject in subjects if subject not in known]
    if unknown:
        what = f"{check.code} is not asked about {unknown[0]!r}"
        raise FaultsError([Fault("ASK-08", what, nearest(unknown[0], known), Where(unknown[0]))])
    build = start_build(session)
    if changes:
        build = carry_over(session.case, build, changes)
    return explained(session.case, build, check.code, subjects)
