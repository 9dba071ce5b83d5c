"""What every other answer to one question would cost, or what forbids it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from scantling.choosing.choose import MOST_ROUNDS, as_choice, learnt
from scantling.choosing.conflict import conflict
from scantling.choosing.opened import Opened, Progress, failing_lazy
from scantling.choosing.problem import Problem
from scantling.choosing.result import Choice, WhyOption
from scantling.choosing.solve import Solved
from scantling.choosing.sounding import Sounding
from scantling.choosing.wide import cheapest
from scantling.model.build import Key


def why(
    opened: Opened, choice: Choice, key: Key, *, enough_minor: int, progress: Progress | None = None
) -> Iterator[WhyOption]:
    """Yield, for every answer to ``key``, what the cheapest sound build with it costs more than ``choice``.

    enough_minor : an answer that costs at least so much more, or is impossible, is told so and not looked at further
    than is needed to tell the two apart
    """
    chosen = choice.build.as_dict()[key]
    yield WhyOption(key, chosen, "best", 0, choice)
    others = [answer for answer in opened.problem.domains[key] if answer != chosen]
    for number, answer in enumerate(others):
        if progress:
            progress(number, len(others), f"{key}: {answer or 'empty'}")
        yield _option(opened, choice, key, answer, enough_minor, progress)


def _option(
    opened: Opened, choice: Choice, key: Key, answer: str, enough_minor: int, progress: Progress | None
) -> WhyOption:
    pinned = replace(opened.problem, pins={key: answer})
    limit = choice.cost_minor + enough_minor
    if pinned.budget_minor is None or pinned.budget_minor > limit:
        near, reason = replace(pinned, budget_minor=limit), "at least"
    else:
        near, reason = pinned, ""
    found = _cheapest(opened, near)
    if found is not None:
        return WhyOption(key, answer, "costs", found.cost_minor - choice.cost_minor, found)
    sounding = Sounding(opened, pinned, progress)
    against = conflict(sounding, pinned, None) if not reason or not _possible(opened, pinned) else None
    if against is None:
        return WhyOption(key, answer, "at least", enough_minor)
    return WhyOption(key, answer, "impossible", conflict=against)


def _possible(opened: Opened, problem: Problem) -> bool:
    """Return whether any sound build keeps to the pins, whatever it costs."""
    return _found(opened, problem) is not None


def _cheapest(opened: Opened, problem: Problem) -> Choice | None:
    """Return the cheapest sound build of a problem with one basket as good as another, or None."""
    found = _found(opened, problem)
    if found is None:
        return None
    return as_choice(opened, found[0], found[1], failing_lazy(opened, found[0].answers))


def _found(opened: Opened, problem: Problem) -> tuple[Solved, int] | None:
    for number in range(1, MOST_ROUNDS + 1):
        solved = cheapest(problem, tidy=False)
        if solved is None:
            return None
        failing = failing_lazy(opened, solved.answers)
        if not failing or number == MOST_ROUNDS:
            return solved, number
        problem = learnt(opened, problem, solved.answers, failing)
    return None
