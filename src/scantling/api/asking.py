"""Why this part: what every other answer to one question would cost, or what forbids it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from scantling.api.opening import Session, read_key, unknown_question
from scantling.api.remembering import Chooser, Store
from scantling.api.telling import Tell
from scantling.checks.all import CHECKS
from scantling.choosing.result import Choice, Concern, Infeasible, WhyOption
from scantling.choosing.why import why as why_answers
from scantling.errors import Fault, FaultsError, QuantityError, Where
from scantling.model.build import Key
from scantling.plans.concerns import concern_words
from scantling.quantities import parse_money, show_money


def question(session: Session, words: Sequence[str]) -> Key:
    """Return the question that a place, ``get:place`` or ``screw:joint`` names; raises ``FaultsError``."""
    if not session.has_offers:
        mend = "name a workshop that has vendors and offers, with --workshop"
        raise FaultsError(
            [Fault("ASK-06", "there is nothing to buy from, so nothing to choose", mend, Where(words[0]))]
        )
    if len(words) != 1:
        raise FaultsError([Fault("ASK-04", "several places are named", "ask about one at a time", Where(words[1]))])
    key = read_key(session, words[0])
    if key is None:
        raise FaultsError([unknown_question(session, words[0], Where(words[0]))])
    return key


def enough_minor(session: Session, text: str) -> int:
    """Return an amount of money in minor units; raises ``FaultsError`` where the text is none."""
    try:
        return parse_money(text, session.case.project.workshop.currency).minor
    except QuantityError as error:
        raise FaultsError([Fault("ASK-05", error.what, error.mend, Where("--enough"))]) from error


def why(
    session: Session, key: Key, enough_minor: int, tell: Tell | None = None, store: Store | None = None
) -> Iterator[Choice | Infeasible | WhyOption]:
    """Yield the best choice first, then one answer after another as it is found; only the conflict if nothing is sound.

    enough_minor : an answer that is at least so much dearer is not looked at further
    """
    chooser = Chooser(session, store)
    best = chooser.choice({}, None, tell)
    yield best
    if isinstance(best, Choice):
        yield from why_answers(chooser.opened(tell), best, key, enough_minor=enough_minor, progress=tell)


def option_words(session: Session, option: WhyOption) -> str:
    """Return in words what an answer would cost, or what forbids it."""
    extra = show_money(option.extra_minor, session.case.project.workshop.currency)
    if option.outcome == "best":
        return "chosen"
    if option.outcome == "costs":
        return f"{extra} more" if option.extra_minor else "costs the same"
    if option.outcome == "at least":
        return f"at least {extra} more: not looked at further"
    concerns = option.conflict.concerns if option.conflict else ()
    against = [concern for concern in concerns if concern.kind != "pin" or concern.subject != str(option.key)]
    return "impossible: " + "; ".join(_against(concern) for concern in against or concerns)


def _against(concern: Concern) -> str:
    """Return in words what stands against an answer."""
    if concern.kind == "supply":
        return f"{concern.subject} cannot be had here"
    if concern.kind == "date":
        return f"{concern.subject} comes too late"
    if concern.kind == "check":
        titles = {check.code: check.title for check in CHECKS}
        return f"{concern.code} {titles.get(concern.code, '')}, {concern.subject}"
    return concern_words(concern)
