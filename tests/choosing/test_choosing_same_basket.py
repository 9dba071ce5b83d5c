"""The same basket whatever the order in which places, rows, vendors and answers stand in the files."""

from __future__ import annotations

import random
from dataclasses import replace

import pytest
from choosingkit import random_problem
from inventedkit import SMALL, invented

from scantling.choosing.problem import Problem
from scantling.choosing.solve import solve_problem
from scantling.choosing.ties import Present


def shuffled(problem: Problem, seed: int) -> Problem:
    """The same problem with everything in another order."""
    draw = random.Random(seed)

    def mixed(items):
        return tuple(draw.sample(tuple(items), len(tuple(items))))

    return replace(
        problem,
        domains={key: mixed(problem.domains[key]) for key in mixed(problem.domains)},
        tables=mixed(problem.tables),
        sums={name: problem.sums[name] for name in mixed(problem.sums)},
        demands=mixed(problem.demands),
        boards=mixed(problem.boards),
        offers=mixed(problem.offers),
        vendors={name: problem.vendors[name] for name in mixed(problem.vendors)},
        stock=mixed(problem.stock),
        spares={part: problem.spares[part] for part in mixed(problem.spares)},
    )


def basket(problem: Problem):
    """What is bought, and at what cost."""
    solved = solve_problem(problem)
    if solved is None:
        return None
    return solved.cost_minor, [(line.offer, line.packs) for order in solved.purchase.orders for line in order.lines]


@pytest.mark.parametrize("seed", range(30))
def test_small_problems(seed):
    problem = random_problem(seed)
    first = basket(problem)
    assert all(basket(shuffled(problem, one)) == first for one in range(3))


def test_the_same_answers_too():
    for seed in (26, 116, 119, 126):
        problem = random_problem(seed)
        found = [dict(solve_problem(one).answers) for one in (problem, *(shuffled(problem, n) for n in range(3)))]
        assert all(one == found[0] for one in found), seed


@pytest.mark.parametrize("seed", range(4))
def test_invented_machines(seed):
    problem = invented(seed, SMALL)
    first = basket(problem)
    assert first is not None
    assert all(basket(shuffled(problem, one)) == first for one in range(2))


def test_a_present_choice_of_the_same_cost_stays():
    kept = 0
    for seed in range(40):
        problem = random_problem(seed)
        solved = solve_problem(problem)
        if solved is None:
            continue
        packs = {line.offer: line.packs for order in solved.purchase.orders for line in order.lines}
        again = solve_problem(shuffled(problem, seed), Present(solved.answers, packs))
        assert (again.cost_minor, dict(again.answers)) == (solved.cost_minor, dict(solved.answers)), seed
        assert again.purchase == solved.purchase
        kept += 1
    assert kept >= 10
