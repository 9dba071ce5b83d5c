"""Small random problems, solved by trying everything, against the solver's model."""

from __future__ import annotations

from choosingkit import cheapest_by_trying, random_problem
from hypothesis import given, settings
from hypothesis import strategies as st

from scantling.choosing.solve import solve_problem


@given(st.integers(0, 10**9))
@settings(max_examples=60)
def test_the_model_finds_what_trying_everything_finds(seed):
    problem = random_problem(seed)
    solved = solve_problem(problem, tidy=False)
    cost = cheapest_by_trying(problem)
    assert (None if solved is None else solved.cost_minor) == cost
    assert solved is None or (solved.proven and solved.bound_minor == cost)
