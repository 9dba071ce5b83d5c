"""What a failing costly check teaches: a combination that must not come again, lifted to as much as is true."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import product
from typing import Protocol

from scantling.build.case import Case
from scantling.build.reader import Reader
from scantling.checks.check import Check
from scantling.choosing.problem import Forbidden
from scantling.choosing.tables import admissible, concern_of
from scantling.model.build import Key

MOST_RUNS = 16  # of a costly check, spent on lifting one cut


class Judge(Protocol):
    """What lifting needs of an opened choice."""

    @property
    def case(self) -> Case:
        """The case."""

    @property
    def accepted(self) -> frozenset[tuple[str, str]]:
        """Unknown findings that are accepted."""


def forbid(check: Check, subject: str, judge: Judge, answers: Mapping[Key, str]) -> Forbidden:
    """Return the combination that fails, over just what the check read.

    Every answer that is added to it was tried with all others in it, so nothing sound is forbidden. A question whose
    every answer fails falls out.
    """
    reader = Reader(judge.case, answers)
    check.run(reader, subject)
    sets = {key: [answer] for key, answer in reader.trail.items()}
    runs = 0
    for key in sets:
        for other in judge.case.answers(key, answers):
            if other in sets[key]:
                continue
            trials = list(product(*(given if k != key else [other] for k, given in sets.items())))
            runs += len(trials)
            if runs > MOST_RUNS:
                break
            if all(_fails(check, subject, judge, {**answers, **dict(zip(sets, t, strict=True))}) for t in trials):
                sets[key].append(other)
    whole = {key for key, given in sets.items() if len(given) == len(judge.case.answers(key, {}))}
    left = tuple((key, frozenset(given)) for key, given in sorted(sets.items()) if key not in whole)
    return Forbidden(concern_of(check, subject), left)


def _fails(check: Check, subject: str, judge: Judge, answers: Mapping[Key, str]) -> bool:
    return not admissible(check.run(Reader(judge.case, answers), subject), judge.accepted)
