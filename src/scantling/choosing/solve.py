"""Solve one problem: the least cost, proven; one basket of the cheapest; its cost recomputed and its rules judged."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

from scantling.choosing.branching import solve_switched
from scantling.choosing.decode import answers_of, decisions_of
from scantling.choosing.linear import MOST_NODES
from scantling.choosing.model import Model, build_model
from scantling.choosing.problem import Problem, fixed_to, in_order
from scantling.choosing.purchase import Decisions, purchase
from scantling.choosing.result import Purchase
from scantling.choosing.ties import SHARE, Present, preferring, settle
from scantling.choosing.verify import broken
from scantling.errors import BrokenPromiseError
from scantling.model.build import Key


@dataclass(frozen=True)
class Solved:
    """The answer to one problem.

    bound_minor : nothing that keeps the rules is cheaper    proven : the cost is the bound
    """

    answers: Mapping[Key, str]
    decisions: Decisions
    purchase: Purchase
    cost_minor: int
    bound_minor: int
    proven: bool


def solve_problem(
    problem: Problem, present: Present | None = None, *, tidy: bool = True, nodes: int = MOST_NODES
) -> Solved | None:
    """Return the cheapest answers and purchase, or None where nothing keeps the rules.

    present : what to stay near among equally cheap ones    tidy : settle ties (else any of the cheapest is given)
    Raises ``BrokenPromiseError`` where the recomputed cost or a rule disagrees with the model.
    """
    problem = in_order(problem)
    model = build_model(problem)
    found = solve_switched(model.linear, preferring(model, present), nodes=nodes)
    if found is None:
        return None
    bound = found.bound - (SHARE if present else 0)
    solved = checked(problem, model, found.values, bound)
    return settled(problem, solved, present) if tidy and solved.proven else solved


def settled(problem: Problem, solved: Solved, present: Present | None) -> Solved:
    """Return the one basket of the same answers and cost, found in the small model in which no answer is open."""
    model = build_model(fixed_to(problem, solved.answers))
    values = settle(model, solved.cost_minor, present)
    if values is None:
        return solved
    one = checked(problem, model, values, solved.bound_minor)
    return replace(one, proven=solved.proven) if one.cost_minor == solved.cost_minor else solved


def checked(problem: Problem, model: Model, values: list[float], bound: float) -> Solved:
    """Return what column values mean, recomputed in whole minor units and judged by the rules."""
    answers, decisions = answers_of(model, values), decisions_of(model, values)
    bought = purchase(problem, answers, decisions)
    claimed = round(model.cost.value(values))
    if bought.cost_minor != claimed:
        raise BrokenPromiseError(f"the model says {claimed}, the orders add up to {bought.cost_minor}")
    faults = broken(problem, answers, bought)
    if faults:
        raise BrokenPromiseError("the solver's answer breaks rules: " + "; ".join(faults[:5]))
    bound_minor = min(claimed, math.ceil(bound - 1e-3))
    exact = all(bars.exact for bars in model.supplies.bars)
    return Solved(answers, decisions, bought, claimed, bound_minor, exact and bound_minor == claimed)
