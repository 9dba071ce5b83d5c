"""The entry to choosing: open a case once, then choose and buy as often as wanted."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

from scantling.choosing.assemble import LazyCheck
from scantling.choosing.forbidding import forbid
from scantling.choosing.infeasible import explain
from scantling.choosing.kept import buy_kept
from scantling.choosing.opened import Opened as Opened
from scantling.choosing.opened import Progress, failing_lazy
from scantling.choosing.opened import open_choice as open_choice
from scantling.choosing.problem import Forbidden, Problem, fixed_to
from scantling.choosing.result import Choice, Infeasible, Purchase
from scantling.choosing.shortage import shortage
from scantling.choosing.solve import Solved
from scantling.choosing.ties import Present
from scantling.choosing.wide import cheapest
from scantling.model.build import Build, Key

MOST_ROUNDS = 20
NO_PINS: Mapping[Key, str] = MappingProxyType({})


def choose(
    opened: Opened,
    *,
    pins: Mapping[Key, str] = NO_PINS,
    present: Choice | Present | None = None,
    most_rounds: int = MOST_ROUNDS,
    progress: Progress | None = None,
) -> Choice | Infeasible:
    """Return the cheapest sound build, proven; where there is none, the nearest miss and the conflict.

    present : the choice in force; among equally cheap ones the one nearest to it is taken
    """
    problem = replace(opened.problem, pins=dict(pins))
    near = present_of(present)
    for number in range(1, most_rounds + 1):
        if progress:
            progress(number - 1, most_rounds, "choosing")
        solved = cheapest(problem, near)
        if solved is None:
            return explain(opened, problem, number, progress)
        failing = failing_lazy(opened, solved.answers)
        if not failing or number == most_rounds:
            return as_choice(opened, solved, number, failing)
        problem = learnt(opened, problem, solved.answers, failing)
    raise ValueError("at least one round is needed")


def present_of(present: Choice | Present | None) -> Present | None:
    """Return the answers and packs in force."""
    if not isinstance(present, Choice):
        return present
    packs = {line.offer: line.packs for order in present.purchase.orders for line in order.lines}
    return Present(present.build.as_dict(), packs)


def learnt(opened: Opened, problem: Problem, answers: Mapping[Key, str], failing: Sequence[LazyCheck]) -> Problem:
    """Return the problem with what failing checks teach about these answers forbidden."""
    cuts: list[Forbidden] = [forbid(check, subject, opened, answers) for check, subject in failing]
    return replace(problem, forbidden=(*problem.forbidden, *cuts))


def as_choice(opened: Opened, solved: Solved, rounds: int, failing: Sequence[LazyCheck]) -> Choice:
    """Return what was solved as a choice; ``failing`` checks leave it unproven."""
    return Choice(
        Build.of(solved.answers, opened.problem.copies),
        solved.purchase,
        solved.cost_minor,
        solved.bound_minor,
        solved.proven and not failing,
        rounds,
        tuple((check.code, subject) for check, subject in opened.lazy),
        tuple((check.code, subject) for check, subject in failing),
    )


def buy(
    opened: Opened,
    build: Build,
    *,
    keep: Purchase | None = None,
    present: Present | None = None,
    at_once: bool = False,
) -> Purchase | Infeasible:
    """Return the cheapest purchase of a fixed build, whatever the checks say of it.

    keep : orders in force; then only what is needed otherwise than by them is bought anew
    present : the choice in force; of equally cheap purchases the one nearest to it is taken
    at_once : a part that is nowhere to be had is told without looking for the nearest miss
    """
    answers = build.as_dict()
    lacking = shortage(fixed_to(opened.problem, answers)) if at_once else None
    if lacking is not None:
        return lacking
    if keep is not None:
        kept = buy_kept(opened.problem, answers, keep)
        if kept is not None:
            return kept
    problem = fixed_to(opened.problem, answers)
    solved = cheapest(problem, present)
    return solved.purchase if solved is not None else explain(replace(opened, lazy=()), problem, 1)
