"""Conflicts of small problems that cannot be met: irreducible, and smallest where that is said, against trying all."""

from __future__ import annotations

import itertools
import random
from dataclasses import replace

from choosingkit import bench_of, can_by_trying, drawn_check, random_problem

from scantling.choosing.choose import choose
from scantling.choosing.concerns import KINDS, concerns_of, demanded, surely_had
from scantling.choosing.infeasible import explain
from scantling.choosing.model import BUDGET, ORDERS
from scantling.choosing.problem import Problem
from scantling.choosing.result import Concern
from scantling.choosing.solve import solve_problem
from scantling.choosing.tables import Table
from scantling.choosing.trees import Leaf, Node
from scantling.model.build import Key


def hindered(seed: int) -> Problem:
    """A problem that often cannot be met, for reasons of every kind."""
    problem, draw = random_problem(seed), random.Random(f"conflict {seed}")
    key = sorted(problem.domains)[0]
    return replace(
        problem,
        vendors={name: replace(terms, minimum_minor=None) for name, terms in problem.vendors.items()},
        offers=tuple(o for o in problem.offers if draw.random() < 0.85),
        days=draw.choice([None, 5, 5]),
        budget_minor=draw.choice([None, 150, 400]),
        most_orders=draw.choice([None, 1]),
        pins={key: problem.domains[key][0]} if draw.random() < 0.5 else {},
        top_up=False,
    )


def silent_beside(problem: Problem, found: tuple[Concern, ...]) -> frozenset[Concern]:
    """The demands for parts that go without saying: all beside the budget, none beside a cap on orders."""
    supply = frozenset(Concern("supply", "", part) for part in demanded(problem))
    if BUDGET in found:
        return supply
    return frozenset() if ORDERS in found else surely_had(problem)


def conflicts(count: int, make=hindered):
    """Yield problems that cannot be met, with what is told of them."""
    seeds = (seed for seed in itertools.count() if solve_problem(make(seed), tidy=False) is None)
    for seed in itertools.islice(seeds, count):
        problem = make(seed)
        yield seed, problem, explain(bench_of(problem, ()), problem, 1)


def test_together_they_cannot_be_met_and_without_any_one_they_can():
    kinds = set()
    for seed, problem, told in conflicts(40):
        found = told.conflict.concerns
        silent = silent_beside(problem, found)
        assert found, seed
        assert not can_by_trying(problem, silent | frozenset(found)), seed
        for concern in found:
            assert can_by_trying(problem, silent | frozenset(found) - {concern}), (seed, concern)
        kinds |= {concern.kind for concern in found}
    assert kinds == {"check", "supply", "date", "budget", "orders", "pin"}


def test_smallest_is_only_said_where_no_fewer_stand_against_each_other():
    said = 0
    for seed, problem, told in conflicts(25):
        if not told.conflict.smallest:
            continue
        said += 1
        found = told.conflict.concerns
        silent = silent_beside(problem, found)
        asked = [concern for concern in concerns_of(problem) if concern not in silent]
        if BUDGET not in found:
            asked = [concern for concern in asked if concern != BUDGET]
        if BUDGET not in found and ORDERS not in found:
            asked = [concern for concern in asked if concern != ORDERS]
        for size in range(1, len(found)):
            for few in itertools.combinations(asked, size):
                assert can_by_trying(problem, silent | frozenset(few)), (seed, few)
    assert said >= 12


def test_the_order_is_fixed_by_kind_and_name():
    for _, problem, told in conflicts(15):
        again = explain(bench_of(problem, ()), problem, 1).conflict
        assert again == told.conflict
        places = [(KINDS.index(concern.kind), concern) for concern in told.conflict.concerns]
        assert places == sorted(places)


def test_costly_checks_stand_in_conflicts_too():
    told = 0
    for seed in itertools.count():
        plain = replace(hindered(seed), tables=(), sums={}, budget_minor=None, most_orders=None, days=None, pins={})
        draw = random.Random(f"costly {seed}")
        checks = [drawn_check(draw, f"C{n}", plain.domains, 0.3) for n in range(3)]
        tabulated = bench_of(plain, checks)
        lazily = bench_of(plain, [replace(check, costly=True) for check in checks])
        if solve_problem(tabulated.problem, tidy=False) is not None:
            continue
        found = choose(lazily).conflict.concerns
        silent = silent_beside(plain, found)
        assert not can_by_trying(tabulated.problem, silent | frozenset(found)), seed
        for concern in found:
            assert can_by_trying(tabulated.problem, silent | frozenset(found) - {concern}), (seed, concern)
        told += any(concern.kind == "check" for concern in found)
        if told == 10:
            return


def test_a_pin_against_a_rule_of_the_design_is_named():
    keys = [Key("part", name) for name in "ab"]
    no_pair = Node(keys[0], (("x", Node(keys[1], (("x", Leaf(False)), ("y", Leaf(True))))), ("y", Leaf(True))))
    rule = Table(Concern("rule", "forbids", "a", "b=x"), no_pair)
    pins = {keys[0]: "x", keys[1]: "x"}
    problem = Problem(domains=dict.fromkeys(keys, ("x", "y")), tables=(rule,), pins=pins)
    found = explain(bench_of(problem, ()), problem, 1).conflict
    assert [concern.kind for concern in found.concerns] == ["pin", "pin", "rule"]
    assert found.concerns[2] == rule.concern
