"""Needs in the model: what the answers take of each resource, spares included, as sums of columns."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from scantling.choosing.linear import Expr, Linear
from scantling.choosing.model_answers import Answers, Flow
from scantling.choosing.needs import NO_SPARE, spares
from scantling.choosing.problem import Problem, Resource, Spare

MOST_STATES = 16  # amounts of one need that get a switch each


@dataclass(frozen=True)
class Wanted:
    """Need and spares of one resource together.

    expr : as a sum of columns    most, least : that it can be    some : at least 1 where any is needed, else 0
    states : each amount that can be wanted, with its share, where one tree alone decides it
    parts : where several trees decide it, (amount, share) of each leaf that alone asks for some, constants included
    """

    expr: Expr
    most: int
    some: Expr
    states: dict[int, Expr] | None = None
    parts: tuple[tuple[int, Expr], ...] = ()
    least: int = 0


@dataclass
class _Sources:
    """What one resource's need is made of: a constant, and per tree the amount in each of its leaves."""

    constant: int
    trees: list[list[tuple[int, Expr]]]


def anything(_value: Any) -> bool:
    """Return True: every leaf of a demand can be reached."""
    return True


def wanted(problem: Problem, answers: Answers, linear: Linear) -> dict[Resource, Wanted]:
    """Return what is wanted of every resource that any answers take, sorted."""
    sources: dict[Resource, _Sources] = {}
    for demand in problem.demands:
        _collect(answers.flow(demand.tree, anything), sources)
    return {r: _wanted(problem, r, sources[r], linear) for r in sorted(sources)}


def _collect(flow: Flow, sources: dict[Resource, _Sources]) -> None:
    """Add the leaves of one demand to the sources of the resources they name."""
    resources = sorted({resource for value, _ in flow.leaves for resource, _ in value})
    for resource in resources:
        amounts = [(dict(value).get(resource, 0), part) for value, part in flow.leaves]
        found = sources.setdefault(resource, _Sources(0, []))
        if len(amounts) == 1:
            found.constant += amounts[0][0]
        else:
            found.trees.append(amounts)


def _wanted(problem: Problem, resource: Resource, sources: _Sources, linear: Linear) -> Wanted:
    most = sources.constant + sum(max(amount for amount, _ in tree) for tree in sources.trees)
    most += spares(problem, resource, most)
    least = sources.constant + sum(min(amount for amount, _ in tree) for tree in sources.trees)
    least += spares(problem, resource, least)
    if len(sources.trees) > 1:
        reached = _reached(sources)
        if reached is not None:
            return _by_state(problem, resource, sources, reached, linear)
        need = _sum(sources)
        spare = _spare_column(problem, resource, sources, need, linear)
        parts = tuple((sources.constant + a, part) for tree in sources.trees for a, part in tree if a)
        return Wanted(need.plus(spare), most, _some(sources), parts=parts, least=least)
    amounts = sources.trees[0] if sources.trees else [(0, Expr(1))]
    states: dict[int, Expr] = {}
    for amount, part in amounts:
        need_here = sources.constant + amount
        states.setdefault(need_here + spares(problem, resource, need_here), Expr()).plus(part)
    expr = Expr()
    for state, share in states.items():
        expr.plus(share, state)
    return Wanted(expr, most, _some(sources), states, least=min(states))


def _reached(sources: _Sources) -> list[int] | None:
    """Return every need that several trees can make up together, sorted; None where they are too many."""
    reached = {sources.constant}
    for tree in sources.trees:
        reached = {before + amount for before in reached for amount in {amount for amount, _ in tree}}
        if len(reached) > MOST_STATES:
            return None
    return sorted(reached)


def _by_state(problem: Problem, resource: Resource, sources: _Sources, reached: list[int], linear: Linear) -> Wanted:
    """Return a need that several trees make up, with a switch for each amount that it can be.

    The rows of single leaves follow from the others, but tie each of them to whole amounts.
    """
    switches = {need: Expr(0, {linear.binary(): 1}) for need in reached}
    linear.equal(_weighed(switches, dict.fromkeys(reached, 1)), 1)
    linear.equal(_weighed(switches, {need: need for need in reached}).plus(_sum(sources), -1), 0)
    least = sources.constant + sum(min(amount for amount, _ in tree) for tree in sources.trees)
    for tree in sources.trees:
        lowest = min(amount for amount, _ in tree)
        for amount, share in tree:
            if amount > lowest:
                enough = {need: 1 for need in reached if need >= least - lowest + amount}
                linear.at_least(_weighed(switches, enough).plus(share, -1), 0)
    wanted_of = {need: need + spares(problem, resource, need) for need in reached}
    states: dict[int, Expr] = {}
    for need, switch in switches.items():
        states.setdefault(wanted_of[need], Expr()).plus(switch)
    some = Expr(1).plus(switches[0], -1) if 0 in switches else Expr(1)
    return Wanted(_weighed(switches, wanted_of), max(wanted_of.values()), some, states, least=min(wanted_of.values()))


def _weighed(switches: dict[int, Expr], weights: dict[int, int]) -> Expr:
    total = Expr()
    for need, weight in weights.items():
        total.plus(switches[need], weight)
    return total


def _some(sources: _Sources) -> Expr:
    some = Expr(1 if sources.constant else 0)
    for tree in sources.trees:
        for amount, part in tree:
            if amount:
                some.plus(part)
    return some


def _sum(sources: _Sources) -> Expr:
    need = Expr(sources.constant)
    for tree in sources.trees:
        least = min(amount for amount, _ in tree)  # the shares add up to 1: the least of them is wanted in any case
        need.plus(Expr(least))
        for amount, part in tree:
            need.plus(part, amount - least)
    return need


def _spare_column(problem: Problem, resource: Resource, sources: _Sources, need: Expr, linear: Linear) -> Expr:
    """Return the spares of a need that several places make up, as a whole column equal to ``Spare.of``."""
    spare = problem.spares.get(resource.part, NO_SPARE)
    least = 0 if resource.unit == "g" else spare.at_least
    if not spare.extra and not least:
        return Expr()
    top = sources.constant + sum(max(amount for amount, _ in tree) for tree in sources.trees)
    most = Spare(spare.extra, least).of(top)
    column = linear.column(0, most, whole=True)
    extra = Expr(0, {column: spare.extra.denominator}).plus(need, -spare.extra.numerator)
    linear.at_least(extra, 0)
    if not least:
        linear.at_most(extra, spare.extra.denominator - 1)
        return Expr(0, {column: 1})
    used = _used(sources, linear)
    linear.at_least(Expr(0, {column: 1}).plus(used, -least), 0)
    linear.at_most(Expr(0, {column: 1}).plus(used, -most), 0)
    larger = linear.binary()  # 1 where the share counts, 0 where the least number does
    slack = (most + 1) * spare.extra.denominator
    linear.at_most(Expr().plus(extra).add(larger, slack), spare.extra.denominator - 1 + slack)
    linear.at_most(Expr(0, {column: 1}).add(larger, -most), least)
    return Expr(0, {column: 1})


def _used(sources: _Sources, linear: Linear) -> Expr:
    """Return 1 where any of the resource is needed, else 0."""
    if sources.constant:
        return Expr(1)
    used = linear.binary()
    for tree in sources.trees:
        linear.at_most(_some(_Sources(0, [tree])).add(used, -1), 0)
    linear.at_most(Expr(0, {used: 1}).plus(_some(sources), -1), 0)
    return Expr(0, {used: 1})
