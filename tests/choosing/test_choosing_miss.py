"""The nearest miss of small problems that cannot be met, against trying everything."""

from __future__ import annotations

import itertools
import random
from dataclasses import replace

import pytest
from choosingkit import (
    bench_of,
    cheapest_basket,
    drawn_check,
    every_answer,
    firm_parts,
    random_offers,
    random_problem,
    random_terms,
)

from scantling.choosing.choose import choose
from scantling.choosing.concerns import demanded, is_late
from scantling.choosing.miss import nearest_miss
from scantling.choosing.model import BUDGET, ORDERS
from scantling.choosing.problem import Problem
from scantling.choosing.result import Concern
from scantling.choosing.shortfalls import shortfall_at
from scantling.choosing.solve import solve_problem
from scantling.choosing.tables import SumTerms, Table
from scantling.choosing.trees import Leaf, Node
from scantling.choosing.verify import unmet
from scantling.model.build import Key


def checked_problem(seed: int):
    """Three questions, three checks with margins of their own, parts that anybody sells: only checks are in the way."""
    draw = random.Random(seed)
    problem = random_problem(seed)
    parts = sorted(demanded(problem))
    plain = replace(problem, tables=(), sums={}, days=None, budget_minor=None, most_orders=None, top_up=False, pins={})
    offers = tuple(replace(o, stock=None) for o in random_offers(draw, parts, list(problem.vendors), 1))
    vendors = {name: replace(random_terms(draw, name), minimum_minor=None) for name in problem.vendors}
    plain = replace(plain, offers=offers, vendors=vendors)
    return bench_of(plain, [drawn_check(draw, f"C{n}", problem.domains, 0.35) for n in range(3)])


def nearest_by_trying(opened):
    """Fewest checks given up, then the least sum of what they lack, then the least cost, over all answers."""
    found = []
    for answers in every_answer(opened.problem):
        given_up = unmet(opened.problem, answers)
        lacking = sum(shortfall_at(opened, concern, answers) for concern in given_up)
        cost = cheapest_basket(opened.problem, answers)
        if cost is not None:
            found.append((len(given_up), lacking, cost))
    return min(found)


def infeasible_seeds(make, wanted: int, first: int = 0):
    """The first seeds whose problem cannot be met."""
    seeds = (seed for seed in itertools.count(first) if solve_problem(make(seed), tidy=False) is None)
    return list(itertools.islice(seeds, wanted))


def test_the_fewest_checks_then_the_least_lack_then_the_least_cost():
    for seed in infeasible_seeds(lambda one: checked_problem(one).problem, 25):
        opened = checked_problem(seed)
        miss = nearest_miss(opened, opened.problem)
        told = (len(miss.waived), sum(w.shortfall_permille for w in miss.waived), miss.cost_minor)
        assert told == nearest_by_trying(opened), seed
        assert miss.proven
        assert {w.concern for w in miss.waived} == set(unmet(opened.problem, miss.build.as_dict()))


def hindered_problem(seed: int) -> Problem:
    """A problem with dates, a budget, a cap on orders and parts nobody sells enough of; no least orders."""
    problem = random_problem(seed)
    draw = random.Random(f"hindered {seed}")
    return replace(
        problem,
        vendors={name: replace(terms, minimum_minor=None) for name, terms in problem.vendors.items()},
        offers=tuple(o for o in problem.offers if draw.random() < 0.85),
        days=draw.choice([None, 5, 5]),
        budget_minor=draw.choice([None, 250, 600]),
        most_orders=draw.choice([None, 1]),
        top_up=False,
    )


def fewest_by_trying(problem: Problem) -> int:
    """The fewest concerns without which the rest can be met."""
    parts = [part for part in demanded(problem) if part not in firm_parts(problem)]
    late = sorted({offer.part for offer in problem.offers if is_late(problem, offer)})
    others = [Concern("supply", "", part) for part in parts] + [Concern("date", "", part) for part in late]
    others += [BUDGET] * (problem.budget_minor is not None) + [ORDERS] * (problem.most_orders is not None)
    answers = [(len(unmet(problem, one)), one) for one in every_answer(problem)]
    for size in range(len(others) + len(problem.tables) + 1):
        for given_up, one in answers:
            if size >= given_up and any(
                can_buy(problem, one, frozenset(few)) for few in itertools.combinations(others, size - given_up)
            ):
                return size
    raise AssertionError("nothing helps")


def can_buy(problem: Problem, answers, given_up: frozenset[Concern]) -> bool:
    """Whether what some answers take can be bought with some concerns given up."""
    lacking = {concern.subject for concern in given_up if concern.kind == "supply"}
    late = {concern.subject for concern in given_up if concern.kind == "date"}
    loose = replace(
        problem,
        offers=tuple(replace(o, lead_days=0) if o.part in late else o for o in problem.offers),
        most_orders=None if ORDERS in given_up else problem.most_orders,
    )
    cost = cheapest_basket(loose, answers, set(demanded(problem)) - lacking)
    limit = None if BUDGET in given_up else problem.budget_minor
    return cost is not None and (limit is None or cost <= limit)


def test_supply_dates_budget_and_orders_are_given_up_as_seldom_as_can_be():
    kinds = set()
    for seed in infeasible_seeds(hindered_problem, 40):
        problem = hindered_problem(seed)
        miss = nearest_miss(bench_of(problem, ()), problem)
        assert len(miss.waived) == fewest_by_trying(problem), seed
        assert can_buy(problem, miss.build.as_dict(), frozenset(w.concern for w in miss.waived))
        kinds |= {w.concern.kind for w in miss.waived}
    assert kinds == {"check", "supply", "date", "budget", "orders"}


def test_amounts_are_those_of_the_purchase():
    for seed in infeasible_seeds(hindered_problem, 40):
        problem = hindered_problem(seed)
        miss = nearest_miss(bench_of(problem, ()), problem)
        amounts = {w.concern: w.amount for w in miss.waived}
        if BUDGET in amounts:
            assert amounts[BUDGET] == miss.cost_minor - problem.budget_minor > 0
        if ORDERS in amounts:
            assert amounts[ORDERS] == len(miss.purchase.orders) - problem.most_orders > 0
        for concern, amount in amounts.items():
            if concern.kind == "date":
                days = [
                    line.lead_days for o in miss.purchase.orders for line in o.lines if line.part == concern.subject
                ]
                assert amount == max(days) - problem.days > 0


def test_a_pin_is_never_given_up():
    key = Key("part", "a")
    problem = replace(checked_problem(3).problem, domains={key: ("x", "y")}, tables=(), demands=(), pins={key: "z"})
    assert nearest_miss(bench_of(problem, ()), problem) is None


def test_a_costly_check_is_given_up_as_one_that_is_tabulated():
    told = 0
    for seed in itertools.count():
        draw = random.Random(seed)
        checks = [drawn_check(draw, f"C{n}", random_problem(seed).domains, 0.3) for n in range(3)]
        plain = checked_problem(seed).problem
        plain = replace(plain, tables=())
        tabulated = bench_of(plain, checks)
        if solve_problem(tabulated.problem, tidy=False) is not None:
            continue
        lazily = bench_of(plain, [replace(check, costly=check.code != "C0") for check in checks])
        known, learnt = nearest_miss(tabulated, tabulated.problem), choose(lazily).miss
        assert len(learnt.waived) == len(known.waived), seed
        assert {w.concern for w in learnt.waived} == set(unmet(tabulated.problem, learnt.build.as_dict()))
        told += 1
        if told == 12:
            return


@pytest.mark.parametrize(("worse", "pinned", "limit"), [("more", "y", 40), ("less", "x", 40)])
def test_a_total_lacks_by_how_far_it_is_beyond_its_limit(worse, pinned, limit):
    key = Key("part", "a")
    tree = Node(key, (("x", Leaf(30)), ("y", Leaf(50))))
    table = Table(Concern("check", "T", "s"), Leaf(limit), ("mass", "s"), worse)
    sums = {("mass", "s"): SumTerms((tree,))}
    problem = Problem(domains={key: ("x", "y")}, tables=(table,), sums=sums, pins={key: pinned})
    assert solve_problem(replace(problem, pins={}), tidy=False) is not None
    miss = nearest_miss(bench_of(problem, ()), problem)
    assert miss.build.as_dict() == {key: pinned}
    assert [w.concern for w in miss.waived] == [table.concern]
