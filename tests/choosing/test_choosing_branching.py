"""The search over switches against the solver alone: the same cost, whatever the switches decide."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from scantling.choosing.branching import solve_switched
from scantling.choosing.linear import WHOLE_GAP, Expr, Linear, solve

MOST = 9  # of one line


@st.composite
def shops(draw: st.DrawFn) -> tuple[Linear, Expr]:
    """Draw needs met from shops whose fee falls away above a sum, and on which duty is due above another."""
    model, cost = Linear(), Expr()
    count = draw(st.integers(1, 3))
    needs = draw(st.lists(st.integers(1, MOST), min_size=1, max_size=4))
    cover = [Expr(-need) for need in needs]
    for _ in range(count):
        goods, used = Expr(), model.binary()
        for row in cover:
            pieces = model.column(0, MOST, whole=True)
            row.add(pieces)
            goods.add(pieces, draw(st.integers(1, 40)))
            model.at_most(Expr(0, {pieces: 1}).add(used, -MOST), 0)
        fee, free, due = draw(st.integers(0, 60)), model.switch(), model.switch()
        model.at_least(Expr().plus(goods).add(free, -draw(st.integers(1, 200))), 0)
        above = draw(st.integers(0, 100))
        model.at_most(Expr(-above).plus(goods).add(due, -40 * MOST * len(needs)), 0)
        cost.plus(goods).add(used, fee).add(free, -fee).add(due, draw(st.integers(0, 50)))
        model.at_most(Expr(0, {free: 1}).add(used, -1), 0)
    for row in cover:
        model.at_least(row, 0)
    if draw(st.booleans()):
        model.at_most(cost, draw(st.integers(0, 400)))
    return model, cost


@settings(max_examples=60, deadline=None)
@given(shops())
def test_the_same_cost_as_the_solver_alone(given: tuple[Linear, Expr]) -> None:
    """Both find nothing, or both the same least cost; and the bound is below it by less than a half."""
    model, cost = given
    alone, switched = solve(model, cost), solve_switched(model, cost)
    assert (alone is None) == (switched is None)
    if alone and switched:
        assert round(alone.objective) == round(switched.objective)
        assert switched.proven
        assert switched.objective - 2 * WHOLE_GAP < switched.bound <= switched.objective
        assert abs(cost.value(switched.values) - switched.objective) < 1e-6


def test_a_model_without_switches_goes_to_the_solver() -> None:
    """Nothing is lost where there is nothing to decide first."""
    model = Linear()
    column = model.column(0, 5, whole=True)
    model.at_least(Expr(0, {column: 2}), 3)
    found = solve_switched(model, Expr(0, {column: 1}))
    assert found is not None
    assert found.objective == 2
