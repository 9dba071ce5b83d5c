"""Dimension chains, squareness and racking."""

from __future__ import annotations

from math import acos, degrees, radians, sin, sqrt

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.formulas import chains, racking, sampling, square
from scantling.formulas.chains import Link

GAP = [Link(60, 0.20), Link(19.9, 0.10, -1), Link(19.9, 0.10, -1), Link(19.9, 0.05, -1)]
CLUTCH = [Link(27.645, 0.05), Link(11.43, 0.01), Link(50.8, 0.0125)]


@pytest.mark.outside
def test_gap_of_four_sizes():
    # Source: a chain computed independently with 2 million samples: 60 ± 0.20 less 19.9 ± 0.10, ± 0.10, ± 0.05: nominal
    #   0.300, worst ± 0.450, by squares ± 0.250; P(gap < 0) exactly 1.591e-4 (normal, 3 σ = tolerance)
    assert chains.chain_nominal_mm(GAP) == pytest.approx(0.3)
    assert chains.worst_case_mm(GAP) == pytest.approx(0.45)
    assert chains.root_sum_squares_mm(GAP) == pytest.approx(0.25)
    found = sampling.sampled_spread(GAP, seed=12345)
    assert found.mean_mm == pytest.approx(0.3, abs=0.001)
    assert 3 * found.deviation_mm == pytest.approx(0.25, rel=0.01)
    assert (found.high_mm - found.low_mm) / 2 == pytest.approx(0.25, rel=0.02)
    share = sampling.inside_ratio(sampling.Limited(tuple(GAP), 0.0), seed=12345, samples=2_000_000)
    assert 1 - share == pytest.approx(1.591e-4, abs=3e-5)


@pytest.mark.outside
def test_even_sizes_spread_wider():
    # Source: the same chain with sizes spread evenly: σ exactly √(Σ t² / 3) = 0.14434
    even = [Link(link.nominal_mm, link.tolerance_mm, link.effect_ratio, "even") for link in GAP]
    assert sampling.sampled_spread(even, seed=12345).deviation_mm == pytest.approx(0.14434, rel=0.01)


@pytest.mark.outside
def test_one_way_clutch():
    # Source: the one-way clutch of the tolerance literature, φ = acos((a + c) / (e - c)) = 7.0184°; with a ± .05,
    #   c ± .01, e ± .0125: linear ± 0.9806°, by squares ± 0.6579°, mean 7.0150, limits 6.327 … 7.648 (skewed)
    def angle(a, c, e):
        return degrees(acos((a + c) / (e - c)))

    a, c, e = (link.nominal_mm for link in CLUTCH)
    assert angle(a, c, e) == pytest.approx(7.0184, abs=5e-5)
    effects = (-11.9105, -23.7317, 11.8212)  # ° per mm, also from there
    step = 1e-6
    assert (angle(a + step, c, e) - angle(a, c, e)) / step == pytest.approx(effects[0], abs=1e-3)
    linear = [Link(link.nominal_mm, link.tolerance_mm, s) for link, s in zip(CLUTCH, effects, strict=True)]
    assert chains.worst_case_mm(linear) == pytest.approx(0.9806, abs=2e-4)
    assert chains.root_sum_squares_mm(linear) == pytest.approx(0.6579, abs=2e-4)
    sizes = sampling.sample_sizes_mm(CLUTCH, seed=12345, samples=400_000)
    angles = np.degrees(np.arccos((sizes[0] + sizes[1]) / (sizes[2] - sizes[1])))
    assert angles.mean() == pytest.approx(7.0150, abs=0.001)
    low, high = np.quantile(angles, (0.00135, 0.99865))
    assert low == pytest.approx(6.327, abs=0.01)
    assert high == pytest.approx(7.648, abs=0.01)


def test_sizes_drilled_together_cancel():
    apart = [Link(50, 0.3), Link(50, 0.3, -1)]
    together = [Link(50, 0.3, 1, group="drilled together"), Link(50, 0.3, -1, group="drilled together")]
    assert chains.worst_case_mm(apart) == pytest.approx(0.6)
    assert chains.worst_case_mm(together) == 0
    assert chains.root_sum_squares_mm(together) == 0
    assert sampling.sampled_spread(together, seed=1, samples=1000).deviation_mm == pytest.approx(0, abs=1e-12)
    same_way = [Link(50, 0.3, 1, group="one bar"), Link(50, 0.3, 1, group="one bar")]
    assert chains.root_sum_squares_mm(same_way) == pytest.approx(0.6)


def test_same_seed_same_numbers():
    assert sampling.sampled_spread(GAP, seed=7, samples=1000) == sampling.sampled_spread(GAP, seed=7, samples=1000)
    assert sampling.sampled_spread(GAP, seed=7, samples=1000) != sampling.sampled_spread(GAP, seed=8, samples=1000)


@given(st.lists(st.floats(0, 2), min_size=1, max_size=8))
def test_squares_never_exceed_the_worst_case(tolerances):
    links = [Link(10, tolerance, (-1) ** n) for n, tolerance in enumerate(tolerances)]
    worst, squares = chains.worst_case_mm(links), chains.root_sum_squares_mm(links)
    assert squares <= worst * (1 + 1e-12)
    assert worst <= sqrt(len(links)) * squares * (1 + 1e-9) + 1e-12


@pytest.mark.outside
@pytest.mark.parametrize(
    ("a", "b", "angle", "difference"),
    # Source: geometry of a parallelogram, exact differences of the diagonals computed independently
    [(400, 300, 0.1, 0.83776), (500, 500, 0.05, 0.61707), (600, 400, 0.2, 2.32352)],
)
def test_diagonals(a, b, angle, difference):
    gamma = radians(angle)
    assert square.diagonal_difference_mm(gamma, a, b) == pytest.approx(difference, abs=2e-5)
    longer, shorter = (sqrt(a * a + b * b + sign * 2 * a * b * sin(gamma)) for sign in (1, -1))
    assert longer - shorter == pytest.approx(difference, abs=2e-5)
    assert square.skew_rad(longer, shorter, a, b) == pytest.approx(gamma, abs=1e-9)


@pytest.mark.outside
def test_three_length_measure():
    # Source: the three-length skew measure of printer builders: AC 141.6, BD 141.2, AD 100 → AB 99.970, tan 0.002829
    assert square.tan_skew_from_three_lengths_ratio(141.6, 141.2, 100) == pytest.approx(0.002829, abs=5e-7)
    assert sqrt(2 * 141.6**2 + 2 * 141.2**2 - 4 * 100**2) / 2 == pytest.approx(99.970, abs=5e-4)


def test_what_a_small_square_can_tell():
    # two readings of ± 0.03 mm on a figure of 100 mm: ± 0.0003, which is ± 0.06 mm on 200
    uncertainty = square.skew_uncertainty_rad(0.03, 100, 100)
    assert uncertainty == pytest.approx(0.0003, rel=0.05)
    assert square.move_to_square_mm(uncertainty, 200) == pytest.approx(0.06, abs=0.001)


@pytest.mark.outside
@pytest.mark.parametrize(("friction", "ratio"), [(0.25, 2.0), (0.2, 2.5), (0.1, 5.0)])
def test_rule_of_two_to_one(friction, ratio):
    # Source: two bushing makers' design guides: arm / spacing up to 1 / (2 μ); bushings 10 in apart, force
    #   within 20 in
    assert racking.greatest_arm_ratio(friction) == pytest.approx(ratio)
    assert racking.racking_margin_ratio(20, 10, 0.25) == pytest.approx(0)
    assert racking.racking_margin_ratio(21, 10, 0.25) < 0 < racking.racking_margin_ratio(19, 10, 0.25)


@given(st.floats(0.02, 0.5), st.floats(1, 500), st.floats(1, 500))
def test_rule_follows_from_statics(friction, arm, spacing):
    # force F at the arm makes side forces F arm / spacing on two bushings; they rub with 2 f F arm / spacing; it slides
    # while that is below F
    slides = 2 * friction * arm / spacing < 1
    assert (racking.racking_margin_ratio(arm, spacing, friction) > 0) == slides or abs(
        2 * friction * arm / spacing - 1
    ) < 1e-9
