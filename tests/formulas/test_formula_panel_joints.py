"""Joints of panels: slip after the timber standard, clamping as a bed of even stiffness; torsion of bars."""

from __future__ import annotations

from math import pi

import pytest

from scantling.formulas.panel_joints import clamp_stiffness_n_mm, clamp_turning_nmm_rad, slip_modulus_n_mm
from scantling.formulas.sections import box_torsion_mm4, rectangle_torsion_mm4


# Source: EN 1995-1-1 table 7.1, K = ρ^1.5 d / 23, with C24's mean density 420: 8607.5 · 12 / 23 = 4490.9 N/mm (by hand)
@pytest.mark.outside
def test_slip_of_a_bolt_in_softwood():
    assert slip_modulus_n_mm(420.0, 12.0) == pytest.approx(420**1.5 * 12 / 23)
    assert slip_modulus_n_mm(420.0, 12.0) == pytest.approx(4490.9, rel=1e-3)


def test_a_clamped_layer_is_a_bar_of_its_mean_width():
    assert clamp_stiffness_n_mm(370.0, 20.0, 0.001) == pytest.approx(370 * pi / 4 * 20.0005**2 / 0.001)


def test_turning_is_that_of_a_round_bed():
    # by hand: a bed of even stiffness q turns with q I, q = k / A, I / A = D² / 16 of a circle
    assert clamp_turning_nmm_rad(1000.0, 20.0, 0.0) == pytest.approx(1000 * 20**2 / 16)


# Source: torsion of a solid square by the exact series 0.1406 a⁴, of a 2 : 1 rectangle 0.2287 a b³ (Roark, Timoshenko)
@pytest.mark.outside
@pytest.mark.parametrize(
    ("width", "height", "exact"), [(20.0, 20.0, 0.1406 * 20**4), (20.0, 40.0, 0.2287 * 40 * 20**3)]
)
def test_torsion_of_solid_bars(width, height, exact):
    assert rectangle_torsion_mm4(width, height) == pytest.approx(exact, rel=0.005)


def test_torsion_of_a_thin_tube():
    assert box_torsion_mm4(30.0, 30.0, 1.0) == pytest.approx(29.0**3 * 1.0)  # a³ t for a thin square tube
