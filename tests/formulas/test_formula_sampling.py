"""Sampled dimension chains against exact convolution, and what they propose."""

from __future__ import annotations

from math import exp, pi, sqrt
from time import process_time

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from scantling.formulas import chains, sampling
from scantling.formulas.chains import Link
from scantling.formulas.sampling import Limited

STEP_MM = 0.0005
READ = (-0.06, -0.06, -0.05, -0.04, 0.01)  # deviations of five rods, as a maker would read them


def density(link: Link) -> np.ndarray:
    """The probabilities of one size on a grid of STEP_MM, from its distribution in closed form, zero in the middle."""
    reach = max(chains.farthest_mm(link) * (2 if link.spread == "normal" else 1), STEP_MM)
    steps = int(np.ceil(reach / STEP_MM)) + 1
    at = np.arange(-steps, steps + 1) * STEP_MM
    if link.spread == "measured":
        return np.bincount([round(one / STEP_MM) + steps for one in link.samples_mm], minlength=len(at)) / len(
            link.samples_mm
        )
    t = link.tolerance_mm
    if link.spread == "even":
        p = np.clip((t - np.abs(at)) / STEP_MM + 0.5, 0, 1)
    else:
        sigma = t / (3 if link.spread == "normal" else 2)
        p = np.exp(-0.5 * (at / sigma) ** 2)
        if link.spread == "cut off":
            p *= np.clip((t - np.abs(at)) / STEP_MM + 0.5, 0, 1)
    return p / p.sum()


def exact_inside(links: list[Link], low: float, high: float) -> float:
    """The share between two limits by convolving the distributions of all sizes, one after the other."""
    whole, middle = np.array([1.0]), sum(link.effect_ratio * link.nominal_mm for link in links)
    for link in links:
        one = density(link)
        whole = np.convolve(whole, one if link.effect_ratio > 0 else one[::-1])
    at = middle + (np.arange(len(whole)) - len(whole) // 2) * STEP_MM
    weight = np.clip((at - low) / STEP_MM + 0.5, 0, 1) * np.clip((high - at) / STEP_MM + 0.5, 0, 1)
    return float((whole * weight).sum())


MIXED = [
    Link(60.0, 0.3, 1.0, "normal"),
    Link(20.0, 0.2, -1.0, "even"),
    Link(19.5, 0.25, -1.0, "cut off"),
    Link(8.0, 0.0, -1.0, "measured", "", READ),
]


@pytest.mark.outside
@pytest.mark.parametrize(
    ("links", "low", "high"),
    [
        (MIXED[:1], 59.9, 60.2),
        (MIXED[1:2], -20.1, -19.85),
        (MIXED[2:3], -19.6, -19.35),
        (MIXED[3:], -7.97, -7.93),
        (MIXED[:2], 39.8, 40.15),
        (MIXED, 12.2, 12.85),
        (MIXED, 12.0, 13.1),
        (MIXED + MIXED[1:2], -7.7, -7.2),
    ],
)
def test_sampling_agrees_with_exact_convolution(links, low, high):
    # Source: convolution of the distributions of the sizes on a grid of half a micrometre, computed here
    exact = exact_inside(links, low, high)
    share = sampling.inside_ratio(Limited(tuple(links), low, high), seed=2)
    off = 4 * sqrt(max(exact * (1 - exact), 1e-6) / sampling.SAMPLES) + 2e-4  # four standard errors and the grid
    assert share == pytest.approx(exact, abs=off)


@pytest.mark.outside
def test_two_even_sizes_make_a_triangle():
    # Source: the sum of two even spreads of ± t is a triangle on ± 2 t: a share of (1 - d / 2t)² / 2 lies beyond d
    links = (Link(10, 0.2, spread="even"), Link(9, 0.2, -1.0, "even"))
    share = sampling.inside_ratio(Limited(links, 0.7), seed=3)
    assert 1 - share == pytest.approx((1 - 0.3 / 0.4) ** 2 / 2, abs=7e-4)


@pytest.mark.outside
def test_spread_of_a_cut_normal():
    # Source: σ² of a standard normal cut at ± 2 is 1 - 2 · 2 φ(2) / (2 Φ(2) - 1), Φ(2) = 0.97724987 (tables)
    left = sqrt(1 - 4 * exp(-2) / sqrt(2 * pi) / (2 * 0.97724987 - 1))
    assert chains.deviation_mm(Link(0, 0.4, spread="cut off")) == pytest.approx(0.2 * left, rel=1e-5)
    found = sampling.sampled_spread([Link(0, 0.4, spread="cut off")], seed=1)
    assert found.deviation_mm == pytest.approx(0.2 * left, rel=3e-3)
    assert -0.4 <= found.low_mm <= found.high_mm <= 0.4


def test_a_million_in_less_than_a_second_of_one_core():
    spreads = ("normal", "even", "cut off", "normal", "even", "cut off")
    links = tuple(Link(10, 0.2, (-1.0) ** n, spread) for n, spread in enumerate(spreads))
    began = process_time()
    sampling.inside_ratio(Limited(links, -0.5, 0.5), seed=1, samples=1_000_000)
    assert process_time() - began < 1.0


def test_what_was_measured_is_drawn_as_it_was_read():
    gaps = sampling.sampled_gaps_mm([MIXED[3]], seed=1, samples=50_000)
    assert set(np.round(gaps, 6)) == {-7.94, -7.95, -7.96, -8.01}
    assert gaps.mean() == pytest.approx(chains.chain_mean_mm([MIXED[3]]), abs=1e-3)
    assert np.mean(np.isclose(gaps, -7.94)) == pytest.approx(0.4, abs=0.01)


@pytest.mark.outside
def test_per_group_is_not_per_machine():
    # Source: independent chances multiply: twenty groups at 99.73 % leave 94.7 % of machines whole
    chain = Limited((Link(0, 0.3),), -0.3, 0.3)
    one = sampling.inside_ratio(chain, seed=5)
    assert one == pytest.approx(0.9973, abs=3e-4)
    assert sampling.all_inside_ratio([chain] * 20, seed=5, samples=200_000) == pytest.approx(0.9973**20, abs=2e-3)
    # what is common to all twenty (the scale of one template) fails in the same machines
    common = Limited((Link(0, 0.3, group="scale of the template"),), -0.3, 0.3)
    assert sampling.all_inside_ratio([common] * 20, seed=5, samples=200_000) == pytest.approx(0.9973, abs=7e-4)


def test_a_slot_of_the_proposed_length_serves():
    chain = Limited((Link(30, 0.6), Link(28, 0.4, -1.0, "even")), 1.7, 2.1)
    assert sampling.inside_ratio(chain, seed=7) < 0.9
    move, lacking = sampling.moved_and_wider_mm(chain, 0.997, seed=7)
    assert move == pytest.approx(-0.1, abs=0.005)
    moved = (Link(30 + move, 0.6), chain.links_mm[1])
    wider = Limited(moved, chain.low_mm - lacking / 2, chain.high_mm + lacking / 2)
    assert sampling.inside_ratio(wider, seed=8) == pytest.approx(0.997, abs=3e-4)
    assert sampling.inside_ratio(Limited(moved, chain.low_mm, chain.high_mm), seed=8) < 0.9


@pytest.mark.parametrize(("low", "high", "sign"), [(1.9, float("inf"), 1), (-float("inf"), 2.1, -1)])
def test_with_one_limit_a_move_is_enough(low, high, sign):
    links = (Link(30, 0.6), Link(28, 0.4, -1.0, "even"))
    move, lacking = sampling.moved_and_wider_mm(Limited(links, low, high), 0.997, seed=7)
    assert (move * sign > 0, lacking) == (True, 0)
    moved = Limited((Link(30 + move, 0.6), links[1]), low, high)
    assert sampling.inside_ratio(moved, seed=8) == pytest.approx(0.997, abs=3e-4)


def test_the_tolerance_to_tighten():
    links = (Link(30, 0.6), Link(28, 0.1, -1.0))
    chain = Limited(links, 1.6, 2.4)
    assert max(chains.shares_of_spread(links).items(), key=lambda item: item[1])[0] == "#0"
    ratio = sampling.tighter_ratio(chain, "#0", 0.997, seed=1)
    assert ratio is not None
    assert sampling.inside_ratio(Limited((Link(30, 0.6 * ratio), links[1]), 1.6, 2.4), seed=9) == pytest.approx(
        0.997, abs=4e-4
    )
    assert sampling.tighter_ratio(chain, "#1", 0.997, seed=1) is None  # the other alone is not enough


@settings(max_examples=30)
@given(st.lists(st.floats(0.01, 1), min_size=1, max_size=6), st.floats(0.05, 2))
def test_wider_limits_never_lose_a_machine(tolerances, half):
    links = tuple(Link(10, tolerance, (-1.0) ** n, "even") for n, tolerance in enumerate(tolerances))
    middle = chains.chain_nominal_mm(links)
    shares = [sampling.inside_ratio(Limited(links, middle - k * half, middle + k * half), 1, 2000) for k in (1, 1.5, 2)]
    assert shares == sorted(shares)
    worst = chains.worst_case_mm(links) + 1e-9
    assert sampling.inside_ratio(Limited(links, middle - worst, middle + worst), 1, 2000) == 1
