"""Belts, against formula sheets, exact geometry and the string."""

from __future__ import annotations

from fractions import Fraction
from math import pi, sqrt

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from scantling.formulas import belts

diameters = st.floats(min_value=5, max_value=80)
centres = st.floats(min_value=50, max_value=2000)


@pytest.mark.outside
def test_pitch_diameters():
    # Source: formula sheet of a belt maker, pitch diameter p z / π: 16 teeth 10.1859, 20 teeth 12.7324 mm
    assert belts.pitch_diameter_mm(16, 2.0) == pytest.approx(10.1859, abs=5e-5)
    assert belts.pitch_diameter_mm(20, 2.0) == pytest.approx(12.7324, abs=5e-5)


@pytest.mark.outside
@pytest.mark.parametrize(("travel", "steps"), [(Fraction(40), 80), (Fraction(32), 100), (Fraction(8), 400)])
def test_customary_steps_per_mm(travel, steps):
    # Source: customary settings of belt printers, 200 x 16 steps (20 teeth 80, 16 teeth 100, lead 8 400)
    assert belts.steps_per_mm(200, 16, travel) == steps


def test_steps_per_mm_are_exact():
    assert belts.steps_per_mm(200, 16, Fraction(127, 100)) == Fraction(320000, 127)
    assert belts.belt_travel_per_turn_mm(20, Fraction(508, 100)) == Fraction(508, 5)
    assert isinstance(belts.steps_per_mm(200, 16, 40.0), float)


@pytest.mark.outside
@pytest.mark.parametrize(
    ("small", "large", "centre", "exact", "handbook", "mesh_exact", "mesh_handbook"),
    # Source: formula sheet of a belt maker (length, teeth in mesh with 57°); exact columns by geometry
    [(20, 60, 80, 242.0307, 242.0264, 8.9825, 8.992), (16, 36, 60, 172.6761, 172.6755, 7.4586, 7.4624)],
)
def test_open_belts(small, large, centre, exact, handbook, mesh_exact, mesh_handbook):
    d, large_mm = belts.pitch_diameter_mm(small, 2.0), belts.pitch_diameter_mm(large, 2.0)
    assert belts.open_belt_length_mm(d, large_mm, centre) == pytest.approx(exact, abs=1e-4)
    assert belts.open_belt_length_handbook_mm(d, large_mm, centre) == pytest.approx(handbook, abs=1e-4)
    wrap_rad = belts.wrap_angle_rad(d, large_mm, centre)
    assert belts.teeth_in_mesh_ratio(small, wrap_rad) == pytest.approx(mesh_exact, abs=1e-4)
    by_sheet = small * (180 - 57 * (large_mm - d) / centre) / 360
    assert by_sheet == pytest.approx(mesh_handbook, abs=1e-3)
    assert belts.teeth_in_mesh_ratio(small, wrap_rad) == pytest.approx(by_sheet, abs=0.02)


@pytest.mark.outside
def test_centre_from_length():
    # Source: formula sheet of a belt maker, B = L - 1.57 (D + d), 58.638 mm for 20 and 60 teeth, 200 mm; its 1.57
    #   instead of π / 2 makes 0.02 mm
    d, large_mm = belts.pitch_diameter_mm(20, 2.0), belts.pitch_diameter_mm(60, 2.0)
    assert belts.centre_from_length_handbook_mm(d, large_mm, 200) == pytest.approx(58.638, abs=0.025)
    assert belts.centre_from_length_mm(d, large_mm, 200) == pytest.approx(58.638, abs=0.05)


def test_equal_pulleys_are_plain():
    d = belts.pitch_diameter_mm(20, 2.0)
    assert belts.open_belt_length_mm(d, d, 300) == pytest.approx(640)
    assert belts.teeth_in_mesh_ratio(20, belts.wrap_angle_rad(d, d, 300)) == pytest.approx(10)


@pytest.mark.outside
def test_string_notes():
    # Source: a published calculator of belt tension by frequency, T = 4 m L² f²
    assert belts.span_tension_n(8.4, 150, 110) == pytest.approx(9.15, abs=0.005)
    assert belts.span_frequency_hz(8.4, 150, 15.8) == pytest.approx(144.6, abs=0.05)


def test_crossed_belt_by_hand():
    # two tangents and two arcs of a circle of 20 mm, axles 100 apart: the tangent touches at asin(20/100)
    length_mm = belts.crossed_belt_length_mm(20, 20, 100)
    tangent_mm = 100 * sqrt(1 - 0.2**2)
    assert length_mm == pytest.approx(2 * tangent_mm + 40 * (pi / 2 + 0.2013579), abs=1e-5)


def test_pulleys_that_overlap_have_no_belt():
    with pytest.raises(ValueError, match="overlap"):
        belts.open_belt_length_mm(10, 60, 20)
    with pytest.raises(ValueError, match="overlap"):
        belts.crossed_belt_length_mm(20, 20, 20)
    with pytest.raises(ValueError, match="does not go round"):
        belts.centre_from_length_mm(10, 60, 100)


@given(diameters, diameters, centres)
def test_length_and_centre_are_inverse(a, b, centre):
    small, large = sorted((a, b))
    assume(centre > 2 * large)
    length_mm = belts.open_belt_length_mm(small, large, centre)
    assert belts.centre_from_length_mm(small, large, length_mm) == pytest.approx(centre, abs=1e-6)
    assert belts.open_belt_length_handbook_mm(small, large, centre) == pytest.approx(length_mm, rel=1e-3)
    assert belts.crossed_belt_length_mm(small, large, centre) >= length_mm


@given(st.floats(5, 12), st.floats(50, 800), st.floats(1, 200))
def test_tension_and_note_are_inverse(mass_g_m, span_mm, tension_n):
    note_hz = belts.span_frequency_hz(mass_g_m, span_mm, tension_n)
    assert belts.span_tension_n(mass_g_m, span_mm, note_hz) == pytest.approx(tension_n)


@given(st.floats(5000, 40000), st.floats(50, 500), st.floats(0, 500))
def test_stiffness_is_least_in_the_middle(strain_stiffness_n, half_mm, off_mm):
    assume(off_mm < half_mm)
    middle = belts.carriage_stiffness_n_mm(strain_stiffness_n, half_mm, half_mm)
    assert belts.carriage_stiffness_n_mm(strain_stiffness_n, half_mm - off_mm, half_mm + off_mm) >= middle * (1 - 1e-9)


def test_the_slack_side_gives_up_its_share():
    # all the stretch is in the short span when it is short: the slack side keeps its tension
    assert belts.slack_side_tension_n(20, 30, 1, 999) == pytest.approx(19.97)
    assert belts.slack_side_tension_n(20, 30, 500, 500) == pytest.approx(5)


def test_belt_line_of_the_smaller_pulley():
    # invented machine: 20 to 16 teeth moves the line by 1.27 mm
    assert belts.belt_line_shift_mm(20, 16, 2.0) == pytest.approx(1.27, abs=0.005)
    assert belts.belt_line_shift_mm(16, 20, 2.0) == -belts.belt_line_shift_mm(20, 16, 2.0)
