"""A plan as a flat list of facts: what two plans can differ in, and in nothing else.

A new kind of output that may change with a part is a new function in one of the files of facts and a line here.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from scantling.comparing.fact import Fact, Key
from scantling.comparing.facts_of_buying import cost_facts, date_facts, drawer_facts, order_facts, purchase_facts
from scantling.comparing.facts_of_making import bar_facts, cut_facts, drawing_facts, hole_facts, list_facts, print_facts
from scantling.comparing.facts_of_parts import finding_facts, part_facts, screw_facts, setting_facts, step_facts
from scantling.errors import BrokenPromiseError
from scantling.plans.plan import Plan

Source = Callable[[Plan], Iterator[Fact]]

FACTS: tuple[Source, ...] = (
    part_facts,
    finding_facts,
    setting_facts,
    screw_facts,
    hole_facts,
    drawing_facts,
    cut_facts,
    print_facts,
    step_facts,
    list_facts,
    purchase_facts,
    bar_facts,
    order_facts,
    drawer_facts,
    cost_facts,
    date_facts,
)


def facts(plan: Plan) -> dict[Key, Fact]:
    """Return all facts of a plan by key."""
    found: dict[Key, Fact] = {}
    for source in FACTS:
        for fact in source(plan):
            if found.setdefault(fact.key, fact) is not fact:
                raise BrokenPromiseError(f"two facts are called {fact.topic.name} {fact.subject} {fact.what}")
    return found
