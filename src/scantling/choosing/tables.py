"""What a check allows, as a decision tree: grown by running the check, with totals left as limits of a sum."""

from __future__ import annotations

import random
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from typing import Literal

from scantling.build.reader import Reader, Unread
from scantling.checks.check import Check, TotalUse
from scantling.choosing.result import Concern
from scantling.choosing.trees import Questions, Tree, grow_on, mapped, values
from scantling.findings import Finding, NotLookedAt, Verdict
from scantling.model.build import Key

SumName = tuple[str, str]
Accepted = frozenset[tuple[str, str]]
MOST_PATHS = 20_000


@dataclass(frozen=True)
class Table:
    """What one concern allows.

    tree : leaves are True (allowed), False (not), or, where ``sum`` is given, a whole number: the largest (``worse``
        is ``more``) or smallest (``less``) sum that is allowed
    fixed : part of the design's structure, never waived and never part of a conflict
    """

    concern: Concern
    tree: Tree
    sum: SumName | None = None
    worse: Literal["more", "less"] = "more"
    fixed: bool = False

    def allows(self, value: bool | int, total: int) -> bool:
        """Return whether a leaf's value allows a sum."""
        if isinstance(value, bool):
            return value
        return total <= value if self.worse == "more" else total >= value


@dataclass(frozen=True)
class SumTerms:
    """A total of one subject: a tree of whole contributions per term, and whole units per unit of the figure."""

    terms: tuple[Tree, ...]
    scale: int = 1

    @property
    def least(self) -> int:
        """Return the smallest sum that any answers could give."""
        return sum(min(values(term), default=0) for term in self.terms)

    @property
    def most(self) -> int:
        """Return the largest sum that any answers could give."""
        return sum(max(values(term), default=0) for term in self.terms)


def admissible(outcome: Finding | NotLookedAt, accepted: Accepted) -> bool:
    """Return whether a choice may contain it: what is not described may be, an unknown only where it is accepted."""
    if isinstance(outcome, NotLookedAt) or outcome.admissible:
        return True
    return outcome.verdict is Verdict.UNKNOWN and (outcome.code, outcome.subject) in accepted


def concern_of(check: Check, subject: str) -> Concern:
    """Return the concern that a check has about a subject."""
    return Concern("check", check.code, subject)


def check_table(check: Check, subject: str, case: Questions, accepted: Accepted, limit: int = MOST_PATHS) -> Table:
    """Return the table of a check that uses no total; raises ``TooLargeError``."""

    def allowed(known: Mapping[Key, str]) -> bool:
        return admissible(check.run(Reader(case, known, words=False), subject), accepted)

    tree = grow_on(allowed, case, limit)
    return Table(concern_of(check, subject), tree)


def sum_table(
    check: Check,
    use: TotalUse,
    subject: str,
    case: Questions,
    accepted: Accepted,
    terms: SumTerms,
    limit: int = MOST_PATHS,
) -> Table:
    """Return the table of a check that uses a total: each leaf is the last sum that it allows, found by bisection."""
    ends = terms.least, terms.most

    def extreme(known: Mapping[Key, str]) -> int | bool:
        return extreme_sum(_trial(check, use, subject, case, accepted, terms.scale, known), *ends, use.worse)

    tree = grow_on(extreme, case, limit)
    return Table(concern_of(check, subject), tree, (use.name, subject), use.worse)


def _trial(
    check: Check,
    use: TotalUse,
    subject: str,
    case: Questions,
    accepted: Accepted,
    scale: int,
    known: Mapping[Key, str],
) -> Callable[[int], bool]:
    """Return the function from a sum to what the check says of it."""

    def allowed(units: int) -> bool:
        reader = Reader(case, known, {use.name: units / scale}, words=False)
        return admissible(check.run(reader, subject), accepted)

    return allowed


def extreme_sum(allowed: Callable[[int], bool], least: int, most: int, worse: Literal["more", "less"]) -> int | bool:
    """Return the last sum on the way from good to bad that is allowed; True for all of them, False for none.

    ``allowed`` may turn from True to False once on that way, and never back: that is what is declared.
    """
    good, bad = (least, most) if worse == "more" else (most, least)
    if allowed(bad):
        return True
    if not allowed(good):
        return False
    while abs(bad - good) > 1:
        middle = (good + bad) // 2
        good, bad = (middle, bad) if allowed(middle) else (good, middle)
    return good


def term_tables(concern: Concern, grown: tuple[Tree, ...], scale: int) -> tuple[SumTerms, tuple[Table, ...]]:
    """Return the terms of a sum, and tables that forbid what has no figure (a leaf of None).

    A check that needs a sum says *unknown* where one of its terms is missing, and unknown is not allowed.
    """
    known = SumTerms(tuple(mapped(tree, lambda units: units or 0) for tree in grown), scale)
    holes = (mapped(tree, lambda units: units is not None) for tree in grown)
    return known, tuple(Table(concern, tree) for tree in holes if values(tree) != [True])


def untrue_monotony(
    check: Check,
    use: TotalUse,
    subject: str,
    case: Questions,
    accepted: Accepted,
    terms: SumTerms,
    samples: int = 200,
    seed: int = 0,
) -> tuple[dict[Key, str], int, int] | None:
    """Return answers and two sums at which a declared monotony fails; None where no sample shows it.

    The second sum is the worse one by the declaration, and yet it alone is allowed.
    """
    draw = random.Random(seed)
    for _ in range(samples):
        known: dict[Key, str] = {}
        allowed = partial(_answered, _trial(check, use, subject, case, accepted, terms.scale, known), known, case, draw)
        low, high = sorted(draw.randint(terms.least, terms.most) for _ in range(2))
        better, worst = (low, high) if use.worse == "more" else (high, low)
        if allowed(worst) and not allowed(better):
            return known, better, worst
    return None


def _answered(
    allowed: Callable[[int], bool], known: dict[Key, str], case: Questions, draw: random.Random, units: int
) -> bool:
    """Ask until no question is open, answering each by lot; ``known`` fills up."""
    while True:
        try:
            return allowed(units)
        except Unread as unread:
            known[unread.key] = draw.choice(case.answers(unread.key, known))
