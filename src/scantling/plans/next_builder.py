"""What the same machine costs the next builder: one copy, an empty drawer, orders chosen anew."""

from __future__ import annotations

from dataclasses import replace

from scantling.build.case import Case
from scantling.choosing.choose import buy
from scantling.choosing.opened import open_build
from scantling.choosing.result import Purchase
from scantling.model.build import Build


def next_builder_cost(case: Case, build: Build) -> int | None:
    """Return the outlay for one copy with the same parts, in home minor units; None where it cannot be bought."""
    one = Build(build.answers, 1)
    opened = open_build(case, one)
    alone = replace(opened.problem, stock=(), days=None, budget_minor=None, most_orders=None)
    bought = buy(replace(opened, problem=alone), one)
    return bought.cost_minor if isinstance(bought, Purchase) else None
