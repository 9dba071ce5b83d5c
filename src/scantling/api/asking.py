"""Why this part: what every other answer to one question would cost, or what forbids it."""

from __future__ import annotations

from collections.abc import Iterator

from scantling.api.opening import Session
from scantling.api.planning import Tell
from scantling.checks.all import CHECKS
from scantling.choosing.choose import choose, open_choice
from scantling.choosing.choose import why as why_answers
from scantling.choosing.result import Choice, Infeasible, WhyOption
from scantling.model.build import Key


def why(
    session: Session, key: Key, enough_minor: int, tell: Tell | None = None
) -> Iterator[Choice | Infeasible | WhyOption]:
    """Yield the best choice first, then one answer after another as it is found; only the conflict if nothing is sound.

    enough_minor : an answer that is at least so much dearer is not looked at further
    """
    opened = open_choice(session.case, CHECKS, session.copies, progress=tell)
    best = choose(opened, progress=tell)
    yield best
    if isinstance(best, Choice):
        yield from why_answers(opened, best, key, enough_minor=enough_minor, progress=tell)
