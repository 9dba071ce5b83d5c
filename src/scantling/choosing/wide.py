"""Many vendors: a bounding model names vendors and answers, the exact model prices them, until bound and cost meet.

What a set of vendors can do at best is found once by the exact model restricted to them; after that the bounding model
must name another set. A whole answer of the bounding model is therefore never taken for the truth.
"""

from __future__ import annotations

from collections.abc import Mapping, Set
from dataclasses import replace
from math import ceil

from scantling.choosing.bounding import UNITS, bounding
from scantling.choosing.linear import MOST_NODES, solve
from scantling.choosing.problem import Problem, fixed_to, in_order
from scantling.choosing.solve import Solved, settled, solve_problem
from scantling.choosing.ties import Present
from scantling.choosing.trees import values
from scantling.model.build import Key

MOST_SETS = 40  # of vendors, looked at one after another
MANY = 6  # vendors: from here on the bounding model pays


def cheapest(problem: Problem, present: Present | None = None, *, tidy: bool = True) -> Solved | None:
    """Return the cheapest answers and purchase by the way that suits a problem; None where nothing keeps the rules.

    present : what to stay near among equally cheap ones    tidy : settle ties (else any of the cheapest is given)
    """
    if not is_wide(problem):
        return solve_problem(problem, present, tidy=tidy)
    problem = in_order(problem)
    found = solve_wide(problem)
    return settled(problem, found, present) if found is not None and found.proven and tidy else found


def is_wide(problem: Problem) -> bool:
    """Return whether there are many vendors, and nothing to buy whose cost the bounding model leaves out."""
    units = {resource.unit for demand in problem.demands for value in values(demand.tree) for resource, _ in value}
    return len(problem.vendors) >= MANY and not problem.boards and units <= set(UNITS)


def solve_wide(problem: Problem, *, sets: int = MOST_SETS, nodes: int = MOST_NODES) -> Solved | None:
    """Return the cheapest answers and purchase, or None where nothing keeps the rules; ties are not settled."""
    bound = bounding(problem)
    best: Solved | None = None
    least = 0.0
    for _ in range(sets):
        named = solve(bound.linear, bound.cost, nodes=nodes)
        if named is None:  # no other vendors are left to be named
            least = float(best.cost_minor) if best else 0.0
            break
        least = named.bound
        if _is_met(best, least):
            break
        vendors = bound.vendors(named.values)
        best = _better(best, _priced(problem, bound.answers.taken(named.values), vendors, nodes))
        if _is_met(best, least):
            break
        best = _better(best, solve_problem(only_from(problem, vendors), tidy=False, nodes=nodes))
        bound.beyond(vendors)
    return best and _proven(best, least)


def only_from(problem: Problem, vendors: Set[str]) -> Problem:
    """Return the problem with some vendors alone."""
    offers = tuple(offer for offer in problem.offers if offer.vendor in vendors)
    return replace(problem, offers=offers, vendors={v: t for v, t in problem.vendors.items() if v in vendors})


def _priced(problem: Problem, answers: Mapping[Key, str], vendors: Set[str], nodes: int) -> Solved | None:
    """Return the cheapest purchase of these answers from these vendors."""
    return solve_problem(fixed_to(only_from(problem, vendors), answers), tidy=False, nodes=nodes)


def _better(best: Solved | None, other: Solved | None) -> Solved | None:
    if best is None or other is None:
        return best or other
    return other if other.cost_minor < best.cost_minor else best


def _is_met(best: Solved | None, least: float) -> bool:
    return best is not None and ceil(least - 1e-3) >= best.cost_minor


def _proven(best: Solved, least: float) -> Solved:
    bound = min(best.cost_minor, ceil(least - 1e-3))
    return replace(best, bound_minor=bound, proven=bound == best.cost_minor)
