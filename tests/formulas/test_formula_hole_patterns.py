"""Holes that must meet: the least play against an exact solver, shares of machines against closed forms."""

from __future__ import annotations

from math import erf, sqrt

import numpy as np
import pytest
from scipy.optimize import linprog

from scantling.formulas.hole_patterns import Pattern, going_together, least_play_mm

SQUARE = ((0.0, 0.0), (31.0, 0.0), (31.0, 31.0), (0.0, 31.0))
PAIR = ((0.0, 0.0), (40.0, 0.0))


def exact_play(errors: np.ndarray, points: np.ndarray) -> float:
    """The least greatest distance over move and turn, by a linear programme with each circle as a polygon of 720."""
    turns = np.arange(720) * 2 * np.pi / 720
    way = np.stack([np.cos(turns), np.sin(turns)], axis=1)
    rows, right = [], []
    for (ex, ey), (x, y) in zip(errors, points, strict=True):
        # (e - t - turn (-y, x)) · way <= r
        for c, s in way:
            rows.append([-c, -s, y * c - x * s, -1.0])
            right.append(-(ex * c + ey * s))
    free = (None, None)
    return float(linprog([0, 0, 0, 1], rows, right, bounds=[free, free, free, (0, None)]).x[3])


@pytest.mark.outside
@pytest.mark.parametrize("points", [SQUARE, SQUARE[:3], (*PAIR, (80.0, 0.0)), (*SQUARE, (15.0, 60.0), (70.0, 5.0))])
def test_least_play_against_a_linear_programme(points):
    # Source: a linear programme that knows nothing of the rounds of weighing
    errors = np.random.default_rng(4).standard_normal((12, len(points), 2)) * 0.15
    found = least_play_mm(errors, points)
    exact = np.array([exact_play(one, np.array(points)) for one in errors])
    assert (found >= exact * (1 - 1e-3)).all()  # never too small
    assert (found <= exact * 1.15).all()
    assert np.median(found / exact) < 1.02


@pytest.mark.outside
def test_two_holes_against_the_normal_distribution():
    # Source: the distance of two holes deviates by √2 of each; it may by twice the play: 2 Φ(2 c / (√2 σ)) - 1
    for play in (0.1, 0.2, 0.3):
        pattern = Pattern(PAIR, play, 0.5, 0.0)
        [_], [share], _ = going_together([pattern], 0.0, 0.0, 0.997, seed=1, samples=200_000)
        assert share == pytest.approx(erf(2 * play / (sqrt(2) * 0.5 / 3) / sqrt(2)), abs=2e-3)


def test_one_hole_always_meets():
    assert going_together([Pattern(((5.0, 5.0),), 0.0, 0.8, 0.3)], 0.01, 1.0, 0.997, seed=1)[1] == [1.0]


def test_the_wanted_play_serves():
    pattern = Pattern(SQUARE, 0.2, 0.5, 0.1)
    [_], [share], [play] = going_together([pattern], 0.002, 0.0, 0.997, seed=1)
    assert share < 0.95
    wider = Pattern(SQUARE, play, 0.5, 0.1)
    assert going_together([wider], 0.002, 0.0, 0.997, seed=2)[1][0] == pytest.approx(0.997, abs=1.5e-3)


def test_a_slot_takes_up_what_lies_along_it():
    plain, slotted = (Pattern(PAIR, 0.1, 0.5, 0.0, slot_mm=long) for long in (0.0, 2.0))
    shares = [going_together([one], 0.0, 0.0, 0.997, seed=1)[1][0] for one in (plain, slotted)]
    assert shares[0] < 0.7
    assert shares[1] == 1
    across = Pattern(PAIR, 0.1, 0.5, 0.0, slot_mm=2.0, slot_turn_rad=np.pi / 2)
    assert going_together([across], 0.0, 0.0, 0.997, seed=1)[1][0] == pytest.approx(shares[0], abs=0.01)


@pytest.mark.outside
def test_yield_of_holes_is_that_of_the_machine():
    # Naive: "each group goes together in 99.7 % of all, so the machine does".
    # Source: independent chances multiply, 0.997^20 = 94.2 %
    play = 0.5 / 3 * sqrt(2) * 2.9677 / 2  # two-sided 99.7 % of a normal distribution (tables)
    groups = [Pattern(PAIR, play, 0.5, 0.0, sheet=f"panel {n}") for n in range(20)]
    [whole], shares, _ = going_together(groups, 0.0, 0.0, 0.997, seed=3, samples=100_000)
    assert np.mean(shares) == pytest.approx(0.997, abs=3e-4)
    assert whole == pytest.approx(0.942, abs=3e-3)


def test_the_scale_of_a_template_fails_in_the_same_machines():
    far = ((0.0, 0.0), (300.0, 0.0))  # 0.3 % of 300 mm: 0.9 mm, more than a clearance hole forgives
    alone = Pattern(far, 0.3, 0.05, 0.0, sheet="panel")
    [one], [share], _ = going_together([alone], 0.003, 0.0, 0.997, seed=1)
    assert share < 0.97
    same = [Pattern(far, 0.3, 0.05, 0.0, sheet="panel")] * 10
    apart = [Pattern(far, 0.3, 0.05, 0.0, sheet=f"panel {n}") for n in range(10)]
    together = [going_together(groups, 0.003, 0.0, 0.997, seed=1)[0][0] for groups in (same, apart)]
    assert together[0] > one - 0.02  # one template: they fail together
    assert together[1] == pytest.approx(share**10, abs=0.02)  # ten templates: each on its own


def test_a_seam_shifts_what_lies_beyond_it():
    plain, seamed = (Pattern(PAIR, 0.2, 0.2, 0.0, seam_mm=seam) for seam in (None, 20.0))
    shares = [going_together([one], 0.0, 0.5, 0.997, seed=1)[1][0] for one in (plain, seamed)]
    assert shares[0] > 0.999
    assert shares[1] < 0.98
