"""Rules solved backwards: against closed forms, against limits drawn by lot, with several intervals, with counts."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.checks.backwards import Interval, intersection, solved
from scantling.findings import Verdict

BAD, UNSURE, GOOD = Verdict.UNSOUND.rank, Verdict.MARGINAL.rank, Verdict.SOUND.rank
ONE_PART_IN = 1e-4  # an end is rounded inwards to five digits


def within(low: float, high: float):
    return lambda value: GOOD if low <= value <= high else BAD


def test_a_limit_with_few_digits_is_found_exactly():
    assert solved(within(7.97, 8.013), 8.0).intervals == (Interval(7.97, 8.013),)


def test_a_narrow_fit_is_found_from_outside():
    """An inch rod of 7.938 mm that should be one of 8 mm: the range it misses is 0.4 % away and 0.5 % wide."""
    assert solved(within(7.97, 8.013), 7.938).intervals == (Interval(7.97, 8.013),)


def test_where_the_verdict_turns_twice_there_are_two_intervals():
    found = solved(lambda value: GOOD if value <= 3 or 6 <= value <= 9 else BAD, 2.0)
    assert found.intervals == (Interval(-math.inf, 3), Interval(6, 9))


def test_marginal_is_the_goal_only_where_sound_is_out_of_reach():
    steps = [(3.0, GOOD), (4.0, UNSURE)]
    assert solved(lambda v: next((r for end, r in steps if v <= end), BAD), 5.0).verdict is Verdict.SOUND
    found = solved(lambda v: UNSURE if v <= 4 else BAD, 5.0)
    assert found.verdict is Verdict.MARGINAL
    assert found.intervals == (Interval(-math.inf, 4),)


def test_nothing_serves():
    assert solved(lambda _: BAD, 5.0).intervals == ()


def test_counts_stay_whole():
    found = solved(lambda teeth: GOOD if 13 <= teeth <= 32 and teeth == round(teeth) else BAD, 20, whole=True)
    assert found.intervals == (Interval(13, 32),)


def test_a_value_of_zero_has_room_on_both_sides():
    assert solved(within(-0.25, 0.4), 0.0).intervals == (Interval(-0.25, 0.4),)


@pytest.mark.parametrize("now", [5.0, -5.0, 0.0])
def test_an_end_at_zero_is_found_in_a_few_steps(now):
    tried = []
    solved(lambda value: tried.append(value) or (GOOD if value >= 0 else BAD), now)
    assert len(tried) < 200


@given(st.floats(0.1, 500), st.floats(0.03, 0.9), st.floats(0.03, 5))
def test_ends_are_good_and_what_lies_beyond_them_is_not(now, below, above):
    low, high = now * (1 - below), now * (1 + above)
    (found,) = solved(within(low, high), now).intervals
    assert low <= found.low <= low * (1 + ONE_PART_IN)
    assert high * (1 - ONE_PART_IN) <= found.high <= high


@pytest.mark.outside
def test_a_heater_backwards_is_the_closed_form():
    # Source: lumped heat balance, T_end = T_room + P / k, solved for P by hand: 0.7 W/K * (90 - 22) K = 47.6 W
    found = solved(lambda power: GOOD if 22 + power / 0.7 >= 90 else BAD, 120.0)
    assert found.intervals[0].low == pytest.approx(47.6, rel=ONE_PART_IN)


@pytest.mark.outside
def test_a_cantilever_backwards_is_the_closed_form():
    # Source: beam table, cantilever with an end load, deflection F L^3 / (3 E I), I = b t^3 / 12, solved for t by hand
    force_n, length_mm, width_mm, modulus_mpa, limit_mm = 10.0, 130.0, 120.0, 7100.0, 0.25
    thickness_mm = (4 * force_n * length_mm**3 / (modulus_mpa * width_mm * limit_mm)) ** (1 / 3)

    def rank_at(value: float) -> int:
        return GOOD if 4 * force_n * length_mm**3 / (modulus_mpa * width_mm * value**3) <= limit_mm else BAD

    assert solved(rank_at, 9.0).intervals[0].low == pytest.approx(thickness_mm, rel=ONE_PART_IN)


@given(st.lists(st.tuples(st.integers(0, 20), st.integers(0, 20)), max_size=4), st.integers(0, 20))
def test_what_lies_in_both_lies_in_each(pairs, point):
    one = [Interval(min(p), max(p)) for p in pairs[:2]]
    other = [Interval(min(p), max(p)) for p in pairs[2:]]
    both = any(i.low <= point <= i.high for i in intersection(one, other))
    assert both == (any(i.low <= point <= i.high for i in one) and any(i.low <= point <= i.high for i in other))
