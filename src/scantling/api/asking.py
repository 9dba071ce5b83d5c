"""Why this part: what every other answer to one question would cost, or what forbids it."""

from __future__ import annotations

from collections.abc import Iterator

from scantling.choosing.choose import choose, open_choice
from scantling.choosing.choose import why as why_answers

from scantling.api.opening import Session, read_key
from scantling.api.planning import Tell
from scantling.checks.all import CHECKS
from scantling.choosing.result import Choice, Infeasible, WhyOption
from scantling.errors import Fault, FaultsError, Where, nearest
from scantling.model.build import Key
from scantling.quantities import parse_money


def question(session: Session, subject: str) -> Key:
    """Return the question that a place, ``get:place`` or ``screw:joint`` names; raises ``FaultsError``."""
    key = read_key(session, subject)
    if key is None:
        known = [*session.case.project.design.places, *session.case.project.design.joints]
        raise FaultsError([Fault("ASK-02", f"no place or joint {subject!r}", nearest(subject, known), Where(subject))])
    return key


def why(session: Session, key: Key, enough: str, tell: Tell | None = None) -> Iterator[Choice | Infeasible | WhyOption]:
    """Yield the best choice first, then one answer after another as it is found; only the conflict if nothing is sound.

    enough : money; an answer that is at least so much dearer is not looked at further
    """
    enough_minor = parse_money(enough, session.case.project.workshop.currency).minor
    opened = open_choice(session.case, CHECKS, session.copies, progress=tell)
    best = choose(opened, progress=tell)
    yield best
    if isinstance(best, Choice):
        yield from why_answers(opened, best, key, enough_minor=enough_minor, progress=tell)
