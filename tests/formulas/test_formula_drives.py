"""Belt drives, drivers and whole axes, against published tables, a numeric integration and closed forms."""

from __future__ import annotations

from math import cos, pi, sqrt

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.formulas import belt_drives, motor_drivers, ringing
from scantling.formulas.belts import carriage_stiffness_n_mm, slack_side_tension_n

ways = st.floats(min_value=20, max_value=400)
forces = st.floats(min_value=0.1, max_value=100)


@pytest.mark.outside
@pytest.mark.parametrize(
    ("tip", "limit"),
    # Source: manual of a motor maker, side load of shafts of size 17 by the distance from the tip of 20 mm: N
    [(0, 20), (5, 25), (10, 34), (15, 52)],
)
def test_side_load_of_a_size_17_motor_follows_the_moment(tip, limit):
    found = belt_drives.radial_limit_at_n(20.0, 20.0, 20.0 - tip, 5.0)
    assert found == pytest.approx(limit, rel=0.04)


@pytest.mark.outside
@pytest.mark.parametrize(
    ("tip", "limit"),
    # Source: the same manual, size 23, shaft of 21 mm with its bearing 4.8 mm behind the face (fitted to the first two)
    [(0, 54), (5, 67), (10, 89), (15, 130)],
)
def test_side_load_of_a_size_23_motor_follows_the_moment(tip, limit):
    assert belt_drives.radial_limit_at_n(54.0, 21.0, 21.0 - tip, 4.8) == pytest.approx(limit, rel=0.01)


@pytest.mark.outside
def test_driver_current_by_its_sense_resistor():
    # Source: comment of a published library for such drivers: 0.325 V, 0.10 + 0.02 ohm, 1.64 A rms take 26.4 of 31
    full_a = motor_drivers.full_scale_a(0.325, 0.12)
    assert 32 * 1.64 / full_a - 1 == pytest.approx(26.4, abs=0.05)


@pytest.mark.outside
def test_reference_voltage_of_a_plain_driver():
    # Source: published note on plain drivers, full scale V / (8 R): 3.3 V, 0.22 ohm make 1.875 A at the peak
    assert motor_drivers.full_scale_a(3.3 / 8, 0.22) * sqrt(2) == pytest.approx(1.875)


@pytest.mark.outside
def test_peak_and_rms():
    # Source: definition; 1.41 in torque, 2 in heat
    assert motor_drivers.rms_a(1.5, is_peak=True) * sqrt(2) == pytest.approx(1.5)
    as_if_rms, really = 1.5, motor_drivers.rms_a(1.5, is_peak=True)
    assert as_if_rms / really == pytest.approx(1.414, abs=0.001)
    assert motor_drivers.case_rise_k(50.0, as_if_rms / really) == pytest.approx(100.0)


@pytest.mark.outside
@pytest.mark.parametrize("lasting", [0.2, 0.5, 0.8, 1.0, 1.5])  # in swings
def test_what_still_swings_after_an_acceleration(lasting):
    # Source: handbook of shock and vibration, residual response to a rectangular pulse; here integrated step by step
    frequency, acceleration, step = 30.0, 2000.0, 1e-6
    omega, place, speed, seen = 2 * pi * frequency, 0.0, 0.0, []
    ends = round(lasting / frequency / step)
    for k in range(ends + round(1 / frequency / step)):
        pulled = acceleration if k < ends else 0.0
        speed += step * (-pulled - omega**2 * place)
        place += step * speed
        if k >= ends:
            seen.append(abs(place))
    expected = ringing.residual_mm(acceleration, frequency, lasting / frequency)
    assert max(seen) == pytest.approx(expected, abs=2e-4)


@pytest.mark.outside
def test_mean_and_root_mean_square_of_what_is_left():
    # Source: integrals of |2 sin x| and (2 sin x)² over a period
    phase = np.linspace(0, pi, 100_001)
    left = 2 * np.sin(phase)
    assert float(np.mean(left)) == pytest.approx(ringing.LAG_MEAN_RATIO, rel=1e-4)
    assert float(np.sqrt(np.mean(left**2))) == pytest.approx(ringing.LAG_RMS_RATIO, rel=1e-4)


@pytest.mark.outside
@given(ground=st.floats(10, 1e4), inner=st.floats(0.01, 2), between=st.floats(10, 1e4), outer=st.floats(0.05, 5))
def test_two_masses_against_a_linear_algebra_library(ground, inner, between, outer):
    # Source: numpy's eigenvalues of M^-1 K
    stiffness = np.array([[ground + between, -between], [-between, between]])
    masses = np.diag([inner / 1000, outer / 1000])
    lowest = min(np.linalg.eigvals(np.linalg.solve(masses, stiffness)).real)
    found = ringing.two_mass_frequency_hz(ground, inner, between, outer)
    assert found == pytest.approx(sqrt(lowest) / (2 * pi), rel=1e-6)


@pytest.mark.outside
def test_equal_masses_and_springs():
    # Source: textbook of vibration, two equal masses and springs: ω² = (3 - √5) / 2 k / m
    found = ringing.two_mass_frequency_hz(1.0, 1.0, 1.0, 1.0)
    assert found == pytest.approx(sqrt(1000 * (3 - sqrt(5)) / 2) / (2 * pi))


@pytest.mark.outside
def test_motor_stiffness_is_the_slope_of_its_sine():
    # Source: torque T sin(50 θ) of a motor of 200 steps, its slope at rest
    small = 1e-6
    slope = 400.0 * np.sin(50 * small) / small
    assert ringing.motor_stiffness_nmm_rad(400.0, 200) == pytest.approx(float(slope), rel=1e-6)


def test_straight_stiffness_keeps_energy():
    turned = 0.01  # rad, of 40 mm a turn
    moved_mm = turned * 40 / (2 * pi)
    straight = ringing.turning_to_straight_n_mm(5000.0, 40.0)
    assert straight * moved_mm**2 == pytest.approx(5000.0 * turned**2)


@given(force=forces, near=ways, far=ways, installed=st.floats(1, 200))
def test_shares_of_two_runs(force, near, far, installed):
    path = near + far
    slack = slack_side_tension_n(installed, force, near, far)
    least = belt_drives.least_tension_n(force, near, path)
    assert slack == pytest.approx(installed - least)
    assert belt_drives.shaft_pull_n(installed, force, near, path) == pytest.approx(2 * installed + force - 2 * least)
    assert belt_drives.most_tension_n(200.0, force, near, path) + force - least == pytest.approx(200.0)


@given(force=forces, near=ways, far=ways)
def test_shares_are_those_of_springs(force, near, far):
    # the carriage moves by F / k; what that takes from the far run is its stiffness times the way
    moved = force / carriage_stiffness_n_mm(15000.0, near, far)
    assert belt_drives.least_tension_n(force, near, near + far) == pytest.approx(15000.0 / far * moved)


@given(lost=st.floats(0.1, 20), path=st.floats(200, 2000))
def test_axles_that_come_nearer(lost, path):
    nearer = belt_drives.nearer_until_slack_mm(15000.0, lost, path)
    assert belt_drives.tension_lost_n(15000.0, nearer, path) == pytest.approx(lost)


class TestPoints:
    CURVE = ((1.0, 400.0), (5.0, 300.0), (10.0, 100.0))

    def test_between_and_beyond(self):
        def given_nmm(speed, voltage=1.0, current=1.0):
            return motor_drivers.torque_by_points_nmm(self.CURVE, speed, voltage, current)

        assert given_nmm(0.0) == 400
        assert given_nmm(3.0) == pytest.approx(350)
        assert given_nmm(10.0) == pytest.approx(100)
        assert given_nmm(10.1) == 0
        assert given_nmm(10.0, voltage=2.0) == pytest.approx(300)
        assert given_nmm(3.0, current=0.7) == pytest.approx(245)
        assert given_nmm(3.0, current=1.4) == pytest.approx(350)  # no more than was measured


def test_a_belt_holds_by_detent_and_friction_alone():
    # by hand: 20 N·mm on a radius of 6.366 mm are 3.142 N, with 1 N of friction 4.142 of 10 N
    assert motor_drivers.held_ratio(10.0, 1.0, 20.0, 40.0) == pytest.approx(0.41416, abs=1e-5)


def test_a_carriage_that_tilts():
    # by hand: a moment of 20 N·mm on two bushings 100 mm apart, 0.2 N each: 0.0004 mm each way at 500 N/mm
    angle = 2 * (1.0 * 20 / 100 / 500) / 100
    assert 1 / ringing.tilting_stiffness_n_mm(500.0, 1, 100.0, 20.0) == pytest.approx(20 * angle)
    assert cos(angle) == pytest.approx(1)


def test_heat_in_a_sense_resistor():
    # by hand: I² R
    assert motor_drivers.sense_loss_w(1.0, 0.11) == pytest.approx(0.11)
