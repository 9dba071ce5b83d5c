"""How far short of its limit a check falls, in thousandths of the limit, from the margin of its finding."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from scantling.build.reader import Reader
from scantling.checks.check import Check
from scantling.choosing.opened import Opened
from scantling.choosing.problem import Problem
from scantling.choosing.result import Concern
from scantling.choosing.tables import MOST_PATHS, Accepted, Table, admissible
from scantling.choosing.trees import TooLargeError, Tree, grow_on, mapped
from scantling.findings import Finding, NotLookedAt
from scantling.model.build import Key

WHOLE = 1000  # of a check that is kept or not and has no scale
MOST = 100_000  # a hundred times the limit: farther off makes no difference


def shortfall(outcome: Finding | NotLookedAt, accepted: Accepted) -> int:
    """Return how far short a finding falls: 0 where a choice may contain it, else at least 1."""
    if admissible(outcome, accepted):
        return 0
    margin = outcome.margin if isinstance(outcome, Finding) else None
    return WHOLE if margin is None else min(MOST, max(1, round(-WHOLE * margin)))


def shortfall_at(opened: Opened, concern: Concern, answers: Mapping[Key, str]) -> int:
    """Return how far short a check falls with given answers; ``WHOLE`` where no such check is known."""
    check = check_of(opened, concern)
    if check is None:
        return WHOLE
    return shortfall(check.run(Reader(opened.case, answers), concern.subject), opened.accepted)


def graded(problem: Problem) -> dict[Concern, Table]:
    """Return the checks that can fall short by more or less, with the one table of each (after ``parted``)."""
    plain: dict[Concern, list[Table]] = {}
    for table in problem.tables:
        if table.sum is None and not table.fixed and table.concern.kind == "check":
            plain.setdefault(table.concern, []).append(table)
    return {concern: tables[0] for concern, tables in sorted(plain.items()) if len(tables) == 1}


def hopeful(table: Table) -> Tree:
    """Return the least that a check can fall short where it fails: a thousandth."""
    return mapped(table.tree, lambda value: 0 if value else 1)


def shortfall_tree(opened: Opened, problem: Problem, table: Table) -> Tree:
    """Return the tree of how far a check falls short; of one that limits a total, how far with the best total.

    Where no check is known, or the tree would be too large, every failure counts as a whole one.
    """
    check = check_of(opened, table.concern)
    flat = mapped(table.tree, lambda value: 0 if value else WHOLE)
    if check is None:
        return flat
    subject, accepted, best = table.concern.subject, opened.accepted, _best_total(problem, table.concern)

    def short(known: Mapping[Key, str]) -> int:
        return shortfall(check.run(Reader(opened.case, known, best), subject), accepted)

    try:
        return grow_on(short, opened.case, MOST_PATHS)
    except TooLargeError:
        return flat


def _best_total(problem: Problem, concern: Concern) -> dict[str, float] | None:
    """Return the best value that the total of a check could have, by the name of the total."""
    for table in problem.tables:
        if table.concern == concern and table.sum is not None:
            terms = problem.sums[table.sum]
            return {table.sum[0]: (terms.least if table.worse == "more" else terms.most) / terms.scale}
    return None


def check_of(opened: Opened, concern: Concern) -> Check | None:
    """Return the check that a concern is about."""
    return next((check for check in opened.checks if check.code == concern.code), None)


def parted(problem: Problem) -> Problem:
    """Return the problem with every table of a total in two: what no total can mend, and what the total must keep to.

    The first can then fall short by what its own tree says, the second by how far the total is beyond the limit.
    """
    tables: list[Table] = []
    for table in problem.tables:
        if table.sum is None:
            tables.append(table)
        else:
            tables.append(Table(table.concern, mapped(table.tree, lambda value: value is not False)))
            tables.append(replace(table, tree=mapped(table.tree, lambda value: True if value is False else value)))
    return replace(problem, tables=tuple(tables))
