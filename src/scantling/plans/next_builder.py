"""What the same machine costs the next builder: one copy, an empty drawer, orders chosen anew."""

from __future__ import annotations

from dataclasses import replace

from scantling.build.case import Case
from scantling.choosing.choose import buy, open_choice
from scantling.choosing.result import Purchase
from scantling.model.build import Build


def next_builder_cost(case: Case, build: Build) -> int | None:
    """Return the outlay for one copy with the same parts, in home minor units; None where it cannot be bought."""
    empty = {"stock": (), "copies": 1, "need_by": None, "budget": None, "most_orders": None}
    workshop = case.project.workshop.model_copy(update=empty)
    alone = Case(replace(case.project, workshop=workshop))
    bought = buy(open_choice(alone, (), 1), Build(build.answers, 1))
    return bought.cost_minor if isinstance(bought, Purchase) else None
