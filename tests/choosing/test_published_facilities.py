"""Where to open warehouses, as a purchase: a warehouse is a vendor, opening it the shipping, a delivery a pack."""

from __future__ import annotations

import itertools
import random
from collections.abc import Sequence
from dataclasses import replace

import pytest

from scantling.choosing.problem import Demand, Level, PackOffer, Problem, Resource, Terms
from scantling.choosing.result import Concern
from scantling.choosing.solve import solve_problem
from scantling.choosing.tables import SumTerms, Table
from scantling.choosing.trees import Leaf, Node
from scantling.model.build import Key

PUBLISHED_ROWS = (
    (20, 24, 11, 25, 30),
    (28, 27, 82, 83, 74),
    (74, 97, 71, 96, 70),
    (2, 55, 73, 69, 61),
    (46, 96, 59, 83, 4),
    (42, 22, 29, 67, 59),
    (1, 5, 73, 59, 56),
    (10, 73, 13, 43, 96),
    (93, 35, 63, 85, 46),
    (47, 65, 55, 71, 95),
)


def one_source(opening: Sequence[int], capacity: Sequence[int], rows: Sequence[Sequence[int]]) -> Problem:
    """Each store is a question: which warehouse supplies it; a warehouse supplies no more stores than it can."""
    houses = [f"w{number}" for number in range(len(opening))]
    stores = [Key("part", f"store-{number:02d}") for number in range(len(rows))]
    demands, sums, tables = [], {}, []
    offers = []
    for store, row in zip(stores, rows, strict=True):
        takes = [(house, Leaf(((Resource(f"{store.subject} of {house}", "piece"), 1),))) for house in houses]
        demands.append(Demand(store.subject, Node(store, tuple(takes))))
        for house, price in zip(houses, row, strict=True):
            part = f"{store.subject} of {house}"
            offers.append(PackOffer(f"{house}/{store.subject}", house, part, "piece", 1, (Level(1, price),)))
    for number, house in enumerate(houses):
        terms = tuple(Node(s, tuple((other, Leaf(int(other == house))) for other in houses)) for s in stores)
        sums["stores", house] = SumTerms(terms)
        tables.append(Table(Concern("check", "CAPACITY", house), Leaf(capacity[number]), ("stores", house)))
    vendors = {house: Terms(house, "XTS", shipping_minor=fee) for house, fee in zip(houses, opening, strict=True)}
    return Problem(
        domains=dict.fromkeys(stores, tuple(houses)),
        tables=tuple(tables),
        sums=sums,
        demands=tuple(demands),
        offers=tuple(offers),
        vendors=vendors,
        currency="XTS",
    )


def any_source(opening: Sequence[int], rows: Sequence[Sequence[int]]) -> Problem:
    """Each store is one thing that every warehouse sells: no capacity, no question."""
    vendors = {f"w{n}": Terms(f"w{n}", "XTS", shipping_minor=fee) for n, fee in enumerate(opening)}
    demands = tuple(Demand(f"s{n}", Leaf(((Resource(f"s{n}", "piece"), 1),))) for n in range(len(rows)))
    offers = tuple(
        PackOffer(f"w{house}/s{store}", f"w{house}", f"s{store}", "piece", 1, (Level(1, price),))
        for store, row in enumerate(rows)
        for house, price in enumerate(row)
    )
    return Problem(domains={}, demands=demands, offers=offers, vendors=vendors, currency="XTS")


def least_by_sets(opening: Sequence[int], rows: Sequence[Sequence[int]]) -> int:
    """The least cost over all sets of open warehouses."""
    houses = range(len(opening))
    sets = (few for size in range(1, len(opening) + 1) for few in itertools.combinations(houses, size))
    return min(sum(opening[h] for h in few) + sum(min(row[h] for h in few) for row in rows) for few in sets)


@pytest.mark.outside
def test_a_published_instance_with_capacities():
    # Source: a public library of constraint problems, problem 34 (warehouse location): fixed cost 30, capacities
    #   1 4 2 1 3, optimum 383 with all but the fourth warehouse open
    solved = solve_problem(one_source([30] * 5, [1, 4, 2, 1, 3], PUBLISHED_ROWS))
    assert (solved.cost_minor, solved.bound_minor, solved.proven) == (383, 383, True)
    assert [order.vendor for order in solved.purchase.orders] == ["w0", "w1", "w2", "w4"]


@pytest.mark.outside
def test_the_same_without_capacities_by_every_set():
    # Source: the same instance; the least over all 31 sets of open warehouses is counted here
    solved = solve_problem(any_source([30] * 5, PUBLISHED_ROWS))
    assert solved.cost_minor == least_by_sets([30] * 5, PUBLISHED_ROWS)
    loose = solve_problem(one_source([30] * 5, [10] * 5, PUBLISHED_ROWS))
    assert loose.cost_minor == solved.cost_minor < 383


@pytest.mark.parametrize("seed", range(8))
def test_drawn_instances_by_every_set(seed):
    draw = random.Random(f"facilities {seed}")
    houses, stores = draw.choice([(4, 12), (7, 15), (9, 20)])
    places = [[(draw.randint(0, 99), draw.randint(0, 99)) for _ in range(n)] for n in (houses, stores)]
    rows = [[10 * abs(x - a) + 10 * abs(y - b) for a, b in places[0]] for x, y in places[1]]
    opening = [draw.randint(300, 2500) for _ in range(houses)]
    solved = solve_problem(any_source(opening, rows))
    assert solved.proven
    assert solved.cost_minor == least_by_sets(opening, rows)


@pytest.mark.parametrize("cap", [1, 2])
def test_a_cap_on_orders_is_the_best_set_of_that_size(cap):
    best = min(
        30 * len(few) + sum(min(row[h] for h in few) for row in PUBLISHED_ROWS)
        for size in range(1, cap + 1)
        for few in itertools.combinations(range(5), size)
    )
    solved = solve_problem(replace(any_source([30] * 5, PUBLISHED_ROWS), most_orders=cap))
    assert solved.cost_minor == best
