"""Motors, against published calculators and by the limits of the model."""

from __future__ import annotations

from cmath import exp
from math import pi, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.formulas import motors

MID = {"holding_nmm": 260.0, "rated_a": 1.3, "resistance_ohm": 2.4, "inductance_mh": 3.0}


@pytest.mark.outside
@pytest.mark.parametrize(
    ("supply", "inductance", "current", "rpm"),
    # Source: calculators of an electronics distributor and a component maker, V / (2 L I steps)
    [(24, 2.8, 1.68, 765.3), (12, 2.8, 1.68, 382.7), (24, 3.2, 1.5, 750.0), (12, 23, 0.4, 195.7)],
)
def test_inductance_limited_speed(supply, inductance, current, rpm):
    assert 60 * motors.inductance_limited_rev_s(supply, inductance, current, 200) == pytest.approx(rpm, abs=0.05)


@pytest.mark.outside
@pytest.mark.parametrize(
    ("microsteps", "percent"),
    # Source: a motor maker's note on microstepping, holding torque · sin(90° / N)
    [(2, 70.71), (4, 38.27), (8, 19.51), (16, 9.80), (32, 4.91), (64, 2.45), (128, 1.23), (256, 0.61)],
)
def test_microstep_torque(microsteps, percent):
    assert motors.microstep_torque_nmm(100, microsteps) == pytest.approx(percent, abs=0.006)


@pytest.mark.outside
def test_holding_torque_and_current_of_a_published_motor():
    # Source: data sheet of a published frame-17 motor: 12 V, 0.4 A, 30 Ω, 23 mH, 2000 g·cm; rated V = I R
    assert 0.4 * 30 == 12
    holding_nmm = 2000 * 9.80665e-3 * 10
    assert holding_nmm == pytest.approx(196, abs=0.2)
    # at 12 V it can hold its current only at rest: at any speed the voltage limits it
    at_rest = motors.voltage_limited_torque_nmm(holding_nmm, 0.4, 30, 23, 12, 0, 200)
    assert at_rest == pytest.approx(holding_nmm / sqrt(2), rel=1e-9)
    slow = motors.pull_out_torque_nmm(holding_nmm, 0.4, 0.4, 30, 23, 12, 1, 200)
    assert slow < at_rest


def test_two_phases_at_rated_current_make_the_holding_torque():
    constant = motors.torque_constant_nmm_per_a(260, 1.3)
    amplitude_a = sqrt(2) * 1.3
    assert constant * amplitude_a == pytest.approx(260)
    assert motors.current_limited_torque_nmm(260, 1.3, 1.3) == 260


def test_induced_voltage_keeps_the_energy():
    # two phases, amplitude E and I in phase: mean electrical power E I must be torque times speed
    emf_v = motors.back_emf_v(260, 1.3, 7.0)
    amplitude_a = sqrt(2) * 1.3
    assert emf_v * amplitude_a == pytest.approx(0.260 * 2 * pi * 7.0)


def test_voltage_limit_is_the_best_over_all_angles():
    # brute force over the load angle of the phasor diagram, against the closed formula
    speed_rev_s, supply_v = 15.0, 24.0
    reactance = 2 * pi * speed_rev_s * 50 * 3.0e-3
    emf = motors.back_emf_v(260, 1.3, speed_rev_s)
    constant = motors.torque_constant_nmm_per_a(260, 1.3)
    best = max(
        constant * ((supply_v * exp(1j * n / 5000 * pi) - emf) / complex(2.4, reactance)).real for n in range(5001)
    )
    closed = motors.voltage_limited_torque_nmm(**MID, supply_v=supply_v, speed_rev_s=speed_rev_s, full_steps=200)
    assert closed == pytest.approx(best, rel=1e-6)


@given(st.floats(0, 60), st.floats(0, 60), st.floats(5, 48))
def test_torque_falls_with_speed_and_rises_with_voltage(a, b, supply_v):
    slow, fast = sorted((a, b))
    at = lambda speed, volts: motors.pull_out_torque_nmm(  # noqa: E731
        260, 1.3, 1.3, 2.4, 3.0, volts, speed, 200
    )
    assert at(fast, supply_v) <= at(slow, supply_v) + 1e-9
    assert at(fast, supply_v) <= at(fast, supply_v + 5) + 1e-9
    assert 0 <= at(fast, supply_v) <= 260


def test_inertia_and_torque_in_other_units():
    # 1 kg on 40 mm a turn: m (s / 2π)² = 40.53 kg·mm² = 4.053e-5 kg·m²; 314.16 rad/s² ask 12.73 N·mm = F s / 2π of 2 N
    inertia = motors.reflected_inertia_kg_mm2(1.0, 40.0)
    angular = 2000 * 2 * pi / 40
    assert motors.inertia_torque_nmm(inertia, angular) == pytest.approx(motors.drive_torque_nmm(2.0, 40.0, 1.0))
    assert motors.torque_needed_nmm(2.0, 40.0, 0.0, 2000.0) == pytest.approx(12.7324, abs=1e-4)


@pytest.mark.parametrize(
    ("force_n", "holding_nmm", "teeth", "share"),
    # the invented demonstration machine: bed 1.02 + 0.45 kg at 2000 mm/s², rotor 2.5 kg·mm², 0.9 N of belt and seals;
    # polymer bushings f 0.25, ball bushings f 0.005; driver at 0.7 of the rated current, typical pull-out 0.7
    [
        (7.44, 140, 20, 0.69),
        (7.44, 140, 16, 0.55),
        (3.91, 140, 20, 0.37),
        (7.44, 260, 20, 0.37),
        (7.44, 400, 20, 0.24),
    ],
)
def test_the_invented_machine(force_n, holding_nmm, teeth, share):
    travel_mm = teeth * 2.0
    needed_nmm = motors.torque_needed_nmm(force_n, travel_mm, 2.5, 2000)
    usable_nmm = motors.PULL_OUT_TYPICAL_RATIO * motors.current_limited_torque_nmm(holding_nmm, 1.0, 0.7)
    assert needed_nmm / usable_nmm == pytest.approx(share, abs=0.02)


def test_lag_and_losses():
    assert motors.lag_full_steps_ratio(100, 100) == pytest.approx(1)
    assert motors.lag_full_steps_ratio(101, 100) == float("inf")
    one_microstep = motors.microstep_torque_nmm(100, 16)
    assert motors.lag_full_steps_ratio(one_microstep, 100) == pytest.approx(1 / 16)
    assert motors.winding_loss_w(1.0, 3.5) == 7
    assert motors.speed_rev_s(160, 32) == 5
