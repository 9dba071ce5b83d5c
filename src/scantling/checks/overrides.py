"""What a design says of single findings must be about one that some check makes, in the unit that it is made in."""

from __future__ import annotations

from collections.abc import Iterator

from scantling.build.case import Case
from scantling.build.reference import reference_build
from scantling.checks.all import CHECKS
from scantling.checks.check import Check
from scantling.checks.limits import overridden
from scantling.checks.listening import Listener
from scantling.errors import Fault, nearest
from scantling.findings import Limit
from scantling.model.design import Accepted
from scantling.quantities import show_value

CODE = "ACCEPT-01"


def override_faults(case: Case) -> list[Fault]:
    """Return what is wrong with the accepted findings of a design, each with its place in the files."""
    accepted = case.project.design.accepted
    return [fault for number, one in enumerate(accepted) for fault in _faults(case, one, number)]


def _faults(case: Case, one: Accepted, number: int) -> Iterator[Fault]:
    check = next((check for check in CHECKS if check.code == one.code), None)
    if check is None:
        mend = nearest(one.code, [check.code for check in CHECKS])
        yield _fault(case, number, "code", f"no check has the code {one.code!r}", mend)
        return
    subjects = check.subjects(case.project.design)
    if one.subject not in subjects:
        what = f"{check.code} ({check.title}) is not asked about {one.subject!r}"
        yield _fault(case, number, "subject", what, nearest(one.subject, subjects))
        return
    earlier = case.project.design.accepted[:number]
    if any((other.code, other.subject) == (one.code, one.subject) for other in earlier):
        yield _fault(case, number, "code", f"{one.code} on {one.subject} stands twice", "leave one of them")
    if one.limit is not None:
        trouble = _of_limit(case, check, one.subject, one.limit)
        if trouble is not None:
            yield _fault(case, number, "limit", *trouble)


def _of_limit(case: Case, check: Check, subject: str, text: str) -> tuple[str, str] | None:
    """Return what is wrong with a limit and how to mend it; what is not described yet cannot be compared."""
    listener = Listener(case, reference_build(case).as_dict())
    check.run(listener, subject)
    limited = [one for one in listener.asked if one.trial.bounds.side is not Limit.NONE]
    if not limited:
        if listener.asked:
            return f"{check.code} on {subject} only informs: it has no limit", "leave limit out"
        return None
    one = limited[0]
    if overridden(one.trial.bounds, text, one.unit) is not None:
        return None
    point, side = one.trial.point(), one.trial.bounds.side
    shown = show_value(point.high if side is Limit.UPPER else point.low, one.unit)
    if side is Limit.RANGE:
        shown = f"{point.low:g}..{show_value(point.high, one.unit)}"
    return f"the limit {text!r} of {check.code} cannot be read", f"write it as the check does, for example {shown}"


def _fault(case: Case, number: int, key: str, what: str, mend: str) -> Fault:
    return Fault(CODE, f"an accepted finding: {what}", mend, case.project.where("design", "accepted", number, key))
