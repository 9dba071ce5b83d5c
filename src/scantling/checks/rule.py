"""How a rule becomes a check: what is not described becomes "not looked at", what stays empty a verdict."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import TypeVar

from scantling.build.missing import MissingFigureError, NotDescribedError, need
from scantling.build.reader import Reader
from scantling.checks.cards import cards_of_needs
from scantling.checks.check import Check, TotalUse
from scantling.checks.judging import say
from scantling.checks.sentences import cards_told
from scantling.errors import ScantlingError
from scantling.findings import Finding, NotLookedAt, Verdict
from scantling.model.design import Design
from scantling.model.part import Part

P = TypeVar("P", bound=Part)
Run = Callable[[Reader, str], Finding | NotLookedAt]


class EmptyPlaceError(ScantlingError):
    """A rule needs a part where the chosen option leaves a place empty."""

    def __init__(self, place: str) -> None:
        """Keep the place."""
        self.place = place
        super().__init__(f"{place} stays empty")


def check_of(
    run: Run,
    *,
    code: str,
    title: str,
    source: str,
    subjects: Callable[[Design], tuple[str, ...]],
    total: TotalUse | None = None,
    costly: bool = False,
    informs: bool = False,
) -> Check:
    """Return the check whose rule is ``run``."""

    @wraps(run)
    def looked(reader: Reader, subject: str) -> Finding | NotLookedAt:
        try:
            return run(reader, subject)
        except MissingFigureError as error:
            if informs:
                return NotLookedAt(code, subject, title, error.needs)
            lacking = " and ".join(error.needs)
            because = f"Not known: {lacking}; the part has no such figure, and without it there is no verdict."
            cards = cards_of_needs(reader.design, error.needs)
            mend = f"measure it{cards_told([card.number for card in cards])}, or choose another"
            return say(check, reader, subject, Verdict.UNKNOWN, because, mend, error.needs)
        except NotDescribedError as error:
            return NotLookedAt(code, subject, title, error.needs)
        except EmptyPlaceError as error:
            if informs:
                return NotLookedAt(code, subject, title, (f"a part for {error.place}",))
            because = f"{error.place} stays empty, and {subject} cannot do without it."
            return say(check, reader, subject, Verdict.UNSOUND, because, f"choose a part for {error.place}")

    check = Check(code, title, subjects, looked, source, total, costly, informs)
    return check


def part_at(reader: Reader, place: str | None, kind: type[P], fact: str) -> P:
    """Return the part of a kind that fills a place.

    fact : path of the entry that names the place; not described where it is missing or another kind of part sits there
    """
    named = need(place, fact)
    part = reader.part(named)
    if part is None:
        raise EmptyPlaceError(named)
    if not isinstance(part, kind):
        raise NotDescribedError((f"{fact} (a {kind.__name__.lower()}; {part.id or named} is none)",))
    return part
