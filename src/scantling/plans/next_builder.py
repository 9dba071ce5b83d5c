"""What the same machine costs the next builder: one copy, an empty drawer, orders chosen anew."""

from __future__ import annotations

from dataclasses import replace

from scantling.build.case import Case
from scantling.choosing.opened import open_build
from scantling.choosing.solve import solve_problem
from scantling.model.build import Build


def next_builder_cost(case: Case, build: Build) -> int | None:
    """Return the outlay for one copy with the same parts, in home minor units; None where it cannot be bought."""
    alone = open_build(case, Build(build.answers, 1)).problem
    alone = replace(alone, stock=(), days=None, budget_minor=None, most_orders=None)
    solved = solve_problem(alone, tidy=False)
    return None if solved is None else solved.cost_minor
