"""Beams, against tables, worked numbers and an independent frame program."""

from __future__ import annotations

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.formulas import beams
from scantling.formulas.dynamics import friction_force_n, inertia_force_n, natural_frequency_hz, weight_n
from scantling.formulas.sections import (
    rectangle_second_moment_mm4,
    round_area_mm2,
    round_second_moment_mm4,
    tube_second_moment_mm4,
)

STEEL_MPA = 205_000.0
spans = st.floats(100, 1000)
shares = st.floats(0.01, 0.99)


@pytest.mark.outside
@pytest.mark.parametrize(
    ("diameter", "span", "force", "supported", "clamped"),
    # Source: structural analysis tables, P L³ / 48 E I and P L³ / 192 E I, E 205 GPa, computed independently
    [(8, 400, 20, 0.6470, 0.1617), (10, 400, 20, 0.2650, 0.0662), (12, 500, 50, 0.6240, 0.1560)],
)
def test_sag_of_rods(diameter, span, force, supported, clamped):
    second_moment = round_second_moment_mm4(diameter)
    assert beams.supported_sag_mm(force, span, STEEL_MPA, second_moment) == pytest.approx(supported, abs=6e-5)
    assert beams.clamped_sag_mm(force, span, STEEL_MPA, second_moment) == pytest.approx(clamped, abs=6e-5)


@pytest.mark.outside
def test_sag_of_a_shaft_in_an_exercise():
    # Source: a published exercise, shaft 25 mm, L 500, 3 kN, E 200 GPa: 2.037 mm
    second_moment = round_second_moment_mm4(25)
    assert beams.supported_sag_mm(3000, 500, 200_000, second_moment) == pytest.approx(2.037, abs=5e-4)


@pytest.mark.outside
@pytest.mark.parametrize(
    ("diameter", "span", "sag"),
    # Source: an old table of a workshop forum, one of two rods, 10 N in the middle, ends free: 0.31 0.12 0.06 mm at
    #   400 mm for 8, 10, 12 mm: the same order
    [(8, 400, 0.31), (10, 400, 0.12), (12, 400, 0.06)],
)
def test_sag_of_the_workshop_table(diameter, span, sag):
    computed = beams.supported_sag_mm(10, span, 210_000, round_second_moment_mm4(diameter))
    assert computed == pytest.approx(sag, rel=0.12)


def frame_of(span_mm, second_moment_mm4, fixed):
    """A beam in an independent frame program, nodes every hundredth of the span, mm and N."""
    from Pynite import FEModel3D

    model = FEModel3D()
    model.add_material("steel", STEEL_MPA, STEEL_MPA / 2.6, 0.3, 0.0)
    model.add_section("rod", 1e9, second_moment_mm4, second_moment_mm4, 2 * second_moment_mm4)
    for name, x in (("A", 0.0), ("B", span_mm)):
        model.add_node(name, x, 0.0, 0.0)
        model.def_support(name, True, True, True, True, fixed, fixed)
    model.add_member("M", "A", "B", "steel", "rod")
    return model


@pytest.mark.outside
@pytest.mark.parametrize("fixed", [False, True])
@pytest.mark.parametrize(("load_at", "seen_at"), [(0.5, 0.5), (0.3, 0.5), (0.3, 0.2), (0.7, 0.9), (0.2, 0.7)])
def test_load_anywhere_against_a_frame_program(fixed, load_at, seen_at):
    # Source: the Python library PyNiteFEA 3.2 (MIT), a beam of two supports
    span, second_moment = 332.0, round_second_moment_mm4(8)
    model = frame_of(span, second_moment, fixed)
    model.add_member_pt_load("M", "Fy", -20.0, load_at * span)
    model.analyze_linear()
    theirs = -model.members["M"].deflection("dy", seen_at * span)
    formula = beams.clamped_sag_at_mm if fixed else beams.supported_sag_at_mm
    ours = formula(20.0, load_at * span, seen_at * span, span, STEEL_MPA, second_moment)
    assert ours == pytest.approx(theirs, rel=1e-3)


@pytest.mark.outside
def test_a_carriage_against_a_frame_program():
    # Source: the Python library PyNiteFEA 3.2 (MIT), two loads of half the weight, mean of the deflections under them
    span, second_moment, spacing, centre = 332.0, round_second_moment_mm4(8), 110.0, 140.0
    model = frame_of(span, second_moment, fixed=False)
    places = (centre - spacing / 2, centre + spacing / 2)
    for place in places:
        model.add_member_pt_load("M", "Fy", -3.6, place)
    model.analyze_linear()
    theirs = -sum(model.members["M"].deflection("dy", place) for place in places) / 2
    ours = beams.carriage_sag_mm(7.2, centre, spacing, span, STEEL_MPA, second_moment)
    assert ours == pytest.approx(theirs, rel=1e-3)


def test_even_loads_and_cantilevers():
    # 5 w L⁴ / 384 E I, w L⁴ / 384 E I, P L³ / 3 E I, w L⁴ / 8 E I with L = 100, E I = 1e6, by hand
    assert beams.supported_uniform_sag_mm(1.0, 100, 1e3, 1e3) == pytest.approx(5e8 / 384 / 1e6)
    assert beams.clamped_uniform_sag_mm(1.0, 100, 1e3, 1e3) == pytest.approx(1e8 / 384 / 1e6)
    assert beams.cantilever_sag_mm(1.0, 100, 1e3, 1e3) == pytest.approx(1 / 3)
    assert beams.cantilever_uniform_sag_mm(1.0, 100, 1e3, 1e3) == pytest.approx(12.5)


@given(spans, shares, shares)
def test_load_and_place_may_be_exchanged(span, a, b):
    # Maxwell: the sag at b from a load at a is the sag at a from a load at b
    for formula in (beams.supported_sag_at_mm, beams.clamped_sag_at_mm):
        one = formula(10, a * span, b * span, span, STEEL_MPA, 200.0)
        assert one == pytest.approx(formula(10, b * span, a * span, span, STEEL_MPA, 200.0), rel=1e-9, abs=1e-12)
        assert one >= 0


@given(spans, shares)
def test_the_middle_is_the_worst_place(span, a):
    for formula in (beams.supported_sag_at_mm, beams.clamped_sag_at_mm):
        worst = formula(10, span / 2, span / 2, span, STEEL_MPA, 200.0)
        assert formula(10, a * span, a * span, span, STEEL_MPA, 200.0) <= worst * (1 + 1e-9)


@given(spans, st.floats(0, 0.4), st.floats(0, 0.5))
def test_two_bushings_sag_less_than_one(span, spacing, travel):
    def sag(spacing_mm):
        return beams.carriage_sag_mm(10, span / 2, spacing_mm, span, STEEL_MPA, 200.0)

    assert sag(spacing * span) <= sag(0.0) * (1 + 1e-9)
    change = beams.carriage_height_change_mm(10, travel * span, spacing * span, span, STEEL_MPA, 200.0)
    assert 0 <= change + 1e-12 <= sag(0.0)


@given(st.floats(2, 30), st.floats(2, 30))
def test_thicker_rods_sag_less(a, b):
    thin, thick = sorted((a, b))
    sag = [beams.supported_sag_mm(10, 400, STEEL_MPA, round_second_moment_mm4(d)) for d in (thin, thick)]
    assert sag[1] <= sag[0]


def test_slope_is_the_limit_of_the_sag_near_the_support():
    slope = beams.supported_end_slope_rad(20, 400, STEEL_MPA, 201.06)
    near = beams.supported_sag_at_mm(20, 200, 0.01, 400, STEEL_MPA, 201.06) / 0.01
    assert slope == pytest.approx(near, rel=1e-6)


def test_frequencies():
    stiffness = beams.rod_stiffness_n_mm(400, STEEL_MPA, round_second_moment_mm4(8))
    assert stiffness == pytest.approx(20 / 0.6470, rel=1e-3)
    assert beams.loaded_rod_frequency_hz(stiffness, 1.0, 0.0) == pytest.approx(natural_frequency_hz(stiffness, 1.0))
    # a bare rod: exact first frequency π/2 √(E I / (m L³)); the static shape is 0.7 % high
    rod_kg = 7850e-9 * round_area_mm2(8) * 400
    exact = pi / 2 * (STEEL_MPA * 1000 * round_second_moment_mm4(8) / (rod_kg * 400**3)) ** 0.5
    assert beams.loaded_rod_frequency_hz(stiffness, 0.0, rod_kg) == pytest.approx(exact, rel=0.01)


def test_sections():
    assert tube_second_moment_mm4(20, 14) == round_second_moment_mm4(20) - round_second_moment_mm4(14)
    assert rectangle_second_moment_mm4(60, 6) == 1080
    assert round_area_mm2(2) == pytest.approx(pi)


def test_forces():
    # N = kg·m/s²: 1.47 kg at 2 m/s²
    assert inertia_force_n(1.47, 2000) == pytest.approx(1.47 * 2)
    assert weight_n(2.0) == pytest.approx(19.6133)
    assert friction_force_n(0.25, weight_n(1.47), 0.9) == pytest.approx(4.504, abs=1e-3)
