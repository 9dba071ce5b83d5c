"""Whether some demands of a problem can all be met, asked many times over; costly checks are run on what is found."""

from __future__ import annotations

from collections.abc import Mapping

from scantling.choosing.decode import answers_of
from scantling.choosing.forbidding import forbid
from scantling.choosing.linear import Expr, WorkLimitError, solve
from scantling.choosing.model import BUDGET, build_model
from scantling.choosing.opened import Opened, Progress, failing_lazy
from scantling.choosing.problem import Problem
from scantling.choosing.restricted import Held, Restricting
from scantling.choosing.result import Concern
from scantling.choosing.tables import concern_of
from scantling.model.build import Key

MOST_ROUNDS = 20  # of one question, that costly checks may ask for
MOST_NODES = 20_000  # of one solve


class Sounding:
    """Answers whether demands can be met, remembers every answer, and what costly checks taught meanwhile.

    asked : solves so far
    """

    def __init__(self, opened: Opened, problem: Problem, progress: Progress | None = None) -> None:
        """Start with what is forbidden in ``problem``."""
        self.opened = opened
        self.cuts = problem.forbidden
        self.asked = 0
        self._progress = progress
        self._restricting = Restricting(problem)
        self._known: dict[Held, bool] = {}

    def can(self, held: Held) -> bool:
        """Return whether all concerns in ``held`` can be met together; True where the search met its work limit."""
        if held not in self._known:
            self._known[held] = self._ask(held)
        return self._known[held]

    def _ask(self, held: Held) -> bool:
        for _ in range(MOST_ROUNDS):
            try:
                answers = self._answers(held)
            except WorkLimitError:
                return True
            if answers is None:
                return False
            if not self._learn(held, answers):
                return True
        return True

    def _answers(self, held: Held) -> Mapping[Key, str] | None:
        self.asked += 1
        if self._progress:
            self._progress(self.asked, self.asked + 1, "looking for demands that stand against each other")
        model = build_model(self._restricting.to(held, self.cuts))
        found = solve(model.linear, model.cost if BUDGET in held else Expr(), nodes=MOST_NODES)
        return None if found is None else answers_of(model, found.values)

    def _learn(self, held: Held, answers: Mapping[Key, str]) -> bool:
        """Run the costly checks that are held; forbid what fails, and return whether anything did."""
        lazy = tuple((check, subject) for check, subject in self.opened.lazy if concern_of(check, subject) in held)
        if not lazy:
            return False
        whole = self._completed(answers)
        failing = [one for one in failing_lazy(self.opened, whole) if one in lazy]
        self.cuts += tuple(forbid(check, subject, self.opened, whole) for check, subject in failing)
        return bool(failing)

    def _completed(self, answers: Mapping[Key, str]) -> dict[Key, str]:
        """Return the answers with the first possible one to every question that was left out: it is open."""
        whole = dict(answers)
        for key in self.opened.case.questions:
            if key not in whole:
                whole[key] = self.opened.case.answers(key, whole)[0]
        return whole


def pins_of(held: Held) -> frozenset[Concern]:
    """Return the pins among some concerns."""
    return frozenset(concern for concern in held if concern.kind == "pin")
