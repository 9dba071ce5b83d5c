"""Bushings, contact pressure and fits."""

from __future__ import annotations

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.formulas import bushings, contact, fits

STEEL_MPA = contact.contact_modulus_mpa(205_000, 0.3, 205_000, 0.3)
curvatures = st.floats(0.01, 5)


@pytest.mark.outside
@pytest.mark.parametrize(
    ("hardness", "life"),
    # Source: a bushing maker's design guide, worked lives with C / P = 1: HRC 40 0.98, 50 7.44, 60 50 km
    [(40, 0.98), (50, 7.44), (60, 50)],
)
def test_worked_lives(hardness, life):
    factor = bushings.hardness_ratio(hardness)
    assert bushings.bushing_life_km(1, 1, factor, 1, 50) == pytest.approx(life, abs=0.005)


@pytest.mark.outside
def test_worked_life_of_a_small_bushing():
    # Source: ISO 14728-1 life with the factors of a bushing maker's design guide, C 260 N, P 50 N, 50 km basis; stroke
    #   0.2 m, 60 double strokes a minute, recomputed independently: 7030.4 km, 1046.7 km at HRC 50, 4882 h
    life = bushings.bushing_life_km(260, 50, 1, 1, 50)
    assert life == pytest.approx(7030.4, abs=0.05)
    assert bushings.bushing_life_km(260, 50, bushings.hardness_ratio(50), 1, 50) == pytest.approx(1046.7, abs=0.05)
    assert bushings.life_hours_h(life, 200, 1.0) == pytest.approx(4882, abs=0.5)


@pytest.mark.outside
def test_two_bases_of_the_rating():
    # Source: a bearing maker's selection guide, ratings for 50 km are 1.26 times those for 100 km
    assert bushings.rating_on_50_km_n(1) == pytest.approx(1.26, abs=0.001)
    on_100 = bushings.bushing_life_km(100, 20, 1, 1, 100)
    assert bushings.bushing_life_km(bushings.rating_on_50_km_n(100), 20, 1, 1, 50) == pytest.approx(on_100)


@pytest.mark.outside
@pytest.mark.parametrize(("rows", "factor"), [(4, 1.41), (5, 1.46), (6, 1.28)])
def test_direction_of_the_load(rows, factor):
    # Source: a bearing maker's catalogue, load between two rows: 4 rows 1.41, 5 rows 1.46, 6 rows 1.28 (another: 1.26)
    assert bushings.between_rows_ratio(rows) == pytest.approx(factor, abs=0.005)


@pytest.mark.parametrize("hardness", [0, 12, 20, 39.99, float("nan")])
def test_soft_shafts_have_no_factor(hardness):
    with pytest.raises(ValueError, match="no worked life below 40 HRC"):
        bushings.hardness_ratio(hardness)


@given(st.floats(40, 68), st.floats(40, 68))
def test_harder_shafts_keep_more(a, b):
    soft, hard = sorted((a, b))
    assert 0.27 <= bushings.hardness_ratio(soft) <= bushings.hardness_ratio(hard) <= 1


def test_load_on_one_ball():
    assert bushings.most_loaded_ball_n(10, 4, 5) == pytest.approx(2)
    # six rows: cos 60° ^ 2.5 on either side
    assert bushings.most_loaded_ball_n(10, 6, 5) == pytest.approx(2 / (1 + 2 * 0.5**2.5))
    assert bushings.bushing_life_km(260, 0, 1, 1, 50) == float("inf")


@given(curvatures, curvatures)
def test_ellipse_solves_the_equation_of_an_independent_library(a, b):
    scipy_special = pytest.importorskip("scipy.special")
    small, large = sorted((a, b))
    kappa = contact.ellipse_ratio(small, large)
    m = 1 - kappa**-2
    if m > 1e-6:
        first, second = scipy_special.ellipk(m), scipy_special.ellipe(m)
        assert (kappa**2 * second - first) / (first - second) == pytest.approx(large / small, rel=1e-5)


@pytest.mark.outside
def test_short_formula_of_the_ellipse():
    # Source: curve fit of a lubrication textbook, κ = 1.0339 (Ry/Rx)^0.636, said to be within 3 %
    errors = {r: contact.approximate_ellipse_ratio(1, r) / contact.ellipse_ratio(1, r) - 1 for r in (1, 2, 5, 10, 50)}
    assert max(errors.values(), key=abs) < 0.035
    assert abs(contact.approximate_ellipse_ratio(1, 100) / contact.ellipse_ratio(1, 100) - 1) > 0.06


def test_load_at_first_yield():
    # 21.2 R² Y (Y/E*)², contact mechanics textbook from memory; it is the same as p = 1.60 Y
    yield_mpa, radius = 588.0, 5.0
    load = 21.2 * radius**2 * yield_mpa * (yield_mpa / STEEL_MPA) ** 2
    pressure = contact.sphere_on_plane_pressure_mpa(load, radius, STEEL_MPA)
    assert pressure == pytest.approx(contact.first_yield_pressure_mpa(yield_mpa), rel=0.002)


def test_a_round_contact_is_the_sphere():
    sphere = contact.sphere_on_plane_pressure_mpa(1.0, 0.6, STEEL_MPA)
    assert contact.point_contact_pressure_mpa(1.0, 1 / 0.6, 1 / 0.6, STEEL_MPA) == pytest.approx(sphere)
    almost = contact.point_contact_pressure_mpa(1.0, 1 / 0.6, 1 / 0.5999, STEEL_MPA)
    assert almost == pytest.approx(sphere, rel=1e-3)


def test_pressure_carries_the_load():
    # the half-ellipsoid of pressure must hold the force: 2/3 π a b p = F, and both curvatures must come out
    small, large, force = 1 / 0.6, 1 / 0.6 + 1 / 4, 0.5
    pressure = contact.point_contact_pressure_mpa(force, small, large, STEEL_MPA)
    kappa = contact.ellipse_ratio(small, large)
    short = (3 * force / (2 * pi * kappa * pressure)) ** 0.5
    special = pytest.importorskip("scipy.special")
    m = 1 - kappa**-2
    ring = pressure / STEEL_MPA * short / (m * (kappa * short) ** 2)
    assert 2 * ring * (special.ellipk(m) - special.ellipe(m)) == pytest.approx(small, rel=1e-5)
    assert 2 * ring * (kappa**2 * special.ellipe(m) - special.ellipk(m)) == pytest.approx(large, rel=1e-5)


@given(st.floats(0.01, 100), st.floats(0.01, 100), st.floats(0.8, 4), st.floats(4, 30))
def test_pressure_grows_with_the_cube_root_of_load(a, b, ball, shaft):
    low, high = sorted((a, b))
    pressures = [contact.ball_on_shaft_pressure_mpa(load, ball, shaft, STEEL_MPA) for load in (low, high)]
    assert pressures[1] / pressures[0] == pytest.approx((high / low) ** (1 / 3))
    # a flatter shaft presses less
    assert contact.ball_on_shaft_pressure_mpa(low, ball, 2 * shaft, STEEL_MPA) < pressures[0]


def test_ball_bushings_on_a_soft_rod():
    # the invented machine: bed 1.47 kg on 2 + 1 bushings, four rows of five or six balls of 1.2 to 1.6 mm, rod 8 mm:
    # 1.3 to 1.9 GPa, which a rod of 180 HV does not stand and one of 60 HRC does
    worst = contact.ball_on_shaft_pressure_mpa(bushings.most_loaded_ball_n(4.8, 4, 5), 1.2, 8, STEEL_MPA)
    best = contact.ball_on_shaft_pressure_mpa(bushings.most_loaded_ball_n(3.6, 5, 6), 1.6, 8, STEEL_MPA)
    assert 1250 < best < worst < 2000
    assert best > contact.first_yield_pressure_mpa(contact.yield_from_hardness_mpa(180))
    hard_hv = contact.vickers_from_rockwell_hv(60)
    assert worst < contact.first_yield_pressure_mpa(contact.yield_from_hardness_mpa(hard_hv))


def test_hardness_scales():
    assert contact.vickers_from_rockwell_hv(20) == 238
    assert contact.vickers_from_rockwell_hv(57) == pytest.approx(595 + 2 / 3 * 58)
    for outside in (19, 66, float("nan")):
        with pytest.raises(ValueError, match="20 to 65 HRC"):
            contact.vickers_from_rockwell_hv(outside)
    for name in ("first_yield_pressure_mpa", "shakedown_pressure_mpa"):
        assert getattr(contact, name)(1000) > 1000
    with pytest.raises(ValueError, match="along a line"):
        contact.ellipse_ratio(0.0, 1.0)


@pytest.mark.outside
def test_play_of_a_shaft_in_a_bushing():
    # Source: ISO 286-2 as printed in two published tables, 8 H7 0/+15, 8 g6 -5/-14 µm
    assert fits.least_play_um(0, -5) == 5
    assert fits.greatest_play_um(15, -14) == 29
    assert fits.middle_play_um(5, 29) == 17
    assert fits.probable_half_range_um(15, 9) == pytest.approx(8.746, abs=1e-3)
    assert fits.least_play_um(0, 24) == -24  # interference of 8 H7/p6


def test_an_inch_rod_in_a_metric_bushing():
    # invented machine: 5/16 in rod, 62 µm loose in an 8 mm bushing
    assert fits.mismatch_um(8.0, 25.4 * 5 / 16) == pytest.approx(62, abs=1)


@given(st.floats(-100, 100), st.floats(0, 100), st.floats(-100, 100), st.floats(0, 100))
def test_probable_play_lies_inside_the_limits(hole, hole_width, shaft, shaft_width):
    least = fits.least_play_um(hole, shaft + shaft_width)
    greatest = fits.greatest_play_um(hole + hole_width, shaft)
    half = fits.probable_half_range_um(hole_width, shaft_width)
    middle = fits.middle_play_um(least, greatest)
    assert least - 1e-9 <= middle - half <= middle + half <= greatest + 1e-9
