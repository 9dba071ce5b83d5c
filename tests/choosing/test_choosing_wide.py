"""The way for many vendors against the whole model, and the costs that vendors have together against trying all."""

from __future__ import annotations

import itertools
from fractions import Fraction

import pytest
from choosingkit import random_problem
from hypothesis import given, settings
from hypothesis import strategies as st

from scantling.choosing.bounding import bounding
from scantling.choosing.joint_costs import joint_costs, steps
from scantling.choosing.linear import solve
from scantling.choosing.problem import Level, PackOffer, Terms
from scantling.choosing.solve import solve_problem
from scantling.choosing.wide import cheapest, is_wide, solve_wide

VENDORS = ("a", "b", "c", "d")


@pytest.mark.parametrize("seed", range(60))
def test_the_same_as_the_whole_model(seed: int) -> None:
    """The bound is never above the truth; what is called proven is the truth; and nothing better is missed."""
    problem = random_problem(seed)
    whole, wide = solve_problem(problem, tidy=False), solve_wide(problem)
    bound = bounding(problem)
    least = solve(bound.linear, bound.cost)
    assert (whole is None) == (wide is None)
    if whole is not None and wide is not None and least is not None:
        assert least.bound <= whole.cost_minor + 1e-6
        assert wide.bound_minor <= whole.cost_minor
        assert wide.cost_minor == whole.cost_minor
        assert wide.proven


def test_few_vendors_go_the_plain_way() -> None:
    """Two vendors are no reason for a bounding model, and its answer is the plain one."""
    problem = next(p for p in map(random_problem, range(60)) if solve_problem(p) is not None)
    assert not is_wide(problem)
    assert cheapest(problem) == solve_problem(problem)


@st.composite
def shelves(draw: st.DrawFn) -> tuple[list[PackOffer], int]:
    """Draw some offers of one part from up to four vendors, and a need."""
    offers = []
    for number in range(draw(st.integers(1, 6))):
        price = draw(st.integers(1, 50))
        levels = [Level(1, price)]
        if draw(st.booleans()):
            levels.append(Level(draw(st.integers(2, 3)), draw(st.integers(1, 50))))
        vendor, pack = draw(st.sampled_from(VENDORS)), draw(st.integers(1, 4))
        offers.append(PackOffer(f"o{number}", vendor, "p", "piece", pack, tuple(levels)))
    return offers, draw(st.integers(1, 9))


def tried(offers: list[PackOffer], vendors: frozenset[str], need: int) -> float:
    """Return the least cost from exactly these vendors, by trying every number of packs."""
    some = [offer for offer in offers if offer.vendor in vendors]
    least = float("inf")
    for packs in itertools.product(*(range(max(-(-need // offer.pack), 3) + 1) for offer in some)):
        used = {offer.vendor for offer, count in zip(some, packs, strict=True) if count}
        if used == vendors and sum(o.pack * n for o, n in zip(some, packs, strict=True)) >= need:
            least = min(least, sum(n * o.price_minor(n) for o, n in zip(some, packs, strict=True) if n))
    return least


@settings(max_examples=50, deadline=None)
@given(shelves())
def test_costs_of_vendors_together(shelf: tuple[list[PackOffer], int]) -> None:
    """Every set that beats all sets within it has its least cost, and no other set is kept."""
    offers, need = shelf
    names = sorted({offer.vendor for offer in offers})
    own = {v: steps([o for o in offers if o.vendor == v], Terms(v, "XTS"), need) for v in names}
    found = joint_costs(own, [need])[need]
    sets = [frozenset(c) for n in range(1, len(names) + 1) for c in itertools.combinations(names, n)]
    costs = {chosen: tried(offers, chosen, need) for chosen in sets}
    better = {c: cost for c, cost in costs.items() if all(cost < costs[o] for o in sets if o < c) and cost < 1e9}
    assert found == pytest.approx(better)


def test_a_line_is_priced_as_it_is_billed() -> None:
    """Worked by hand: 3 packs at 4.99, 19 % tax on the line of 14.97 is 2.84; exchanged at 1.5 it adds 26.715."""
    offer = PackOffer("o", "v", "p", "piece", 1, (Level(1, 499),))
    terms = Terms("v", "XXX", Fraction(3, 2), False, Fraction(19, 100), "line")
    assert steps([offer], terms, 3)[-1] == (3, pytest.approx(2671.5))
