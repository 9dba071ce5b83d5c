"""The entry to choosing: open a case once, then choose, buy, and ask why, as often as wanted."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from scantling.build.case import Case
from scantling.build.reader import Reader
from scantling.checks.check import Check
from scantling.choosing.assemble import LazyCheck, assemble
from scantling.choosing.forbidding import forbid
from scantling.choosing.infeasible import explain
from scantling.choosing.kept import buy_kept
from scantling.choosing.problem import Problem
from scantling.choosing.result import Choice, Infeasible, Purchase
from scantling.choosing.solve import Solved, solve_problem
from scantling.choosing.tables import admissible
from scantling.choosing.ties import Present
from scantling.model.build import Build, Key

Progress = Callable[[int, int, str], None]
MOST_ROUNDS = 20


@dataclass(frozen=True)
class Opened:
    """A case with its problem, all tables grown; used again for every question about it.

    lazy : checks that are run on answers    accepted : (code, subject) of unknown findings that the design lives with
    """

    case: Case
    checks: tuple[Check, ...]
    problem: Problem
    lazy: tuple[LazyCheck, ...]

    @property
    def accepted(self) -> frozenset[tuple[str, str]]:
        """Unknown findings that the design lives with."""
        return frozenset((entry.code, entry.subject) for entry in self.case.project.design.accepted)


def open_choice(case: Case, checks: Sequence[Check], copies: int, *, progress: Progress | None = None) -> Opened:
    """Return a case opened for choosing ``copies`` machines: the only long step, some seconds."""
    made = assemble(case, checks, copies, progress)
    return Opened(case, tuple(checks), made.problem, made.lazy)


def choose(
    opened: Opened,
    *,
    pins: Mapping[Key, str] | None = None,
    present: Choice | Present | None = None,
    most_rounds: int = MOST_ROUNDS,
    progress: Progress | None = None,
) -> Choice | Infeasible:
    """Return the cheapest sound build, proven; where there is none, the nearest miss and the conflict.

    present : the choice in force; among equally cheap ones the one nearest to it is taken
    """
    problem = replace(opened.problem, pins=dict(pins or {}))
    near = present_of(present)
    for number in range(1, most_rounds + 1):
        if progress:
            progress(number - 1, most_rounds, "choosing")
        solved = solve_problem(problem, near)
        if solved is None:
            return explain(opened.case, opened.checks, problem, number, progress)
        failing = failing_lazy(opened, solved.answers)
        if not failing or number == most_rounds:
            return _choice(opened, solved, number, failing)
        cuts = [forbid(check, subject, opened, solved.answers) for check, subject in failing]
        problem = replace(problem, forbidden=(*problem.forbidden, *cuts))
    raise ValueError("at least one round is needed")


def present_of(present: Choice | Present | None) -> Present | None:
    """Return the answers and packs in force."""
    if not isinstance(present, Choice):
        return present
    packs = {line.offer: line.packs for order in present.purchase.orders for line in order.lines}
    return Present(present.build.as_dict(), packs)


def failing_lazy(opened: Opened, answers: Mapping[Key, str]) -> list[LazyCheck]:
    """Return the checks, of those run on answers, that these answers do not satisfy."""
    return [
        (check, subject)
        for check, subject in opened.lazy
        if not admissible(check.run(Reader(opened.case, answers), subject), opened.accepted)
    ]


def _choice(opened: Opened, solved: Solved, rounds: int, failing: Sequence[LazyCheck]) -> Choice:
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


def buy(opened: Opened, build: Build, *, keep: Purchase | None = None) -> Purchase | Infeasible:
    """Return the cheapest purchase of a fixed build, whatever the checks say of it.

    keep : orders in force; then only what is needed otherwise than by them is bought anew
    """
    if keep is not None:
        kept = buy_kept(opened.problem, build.as_dict(), keep)
        if kept is not None:
            return kept
    problem = replace(opened.problem, tables=(), sums={}, forbidden=(), pins=build.as_dict())
    solved = solve_problem(problem)
    return solved.purchase if solved is not None else explain(opened.case, (), problem, 1)
