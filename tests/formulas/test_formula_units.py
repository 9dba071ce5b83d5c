"""Units: the same computed in SI with a library of units, so that no factor of a thousand is lost."""

from __future__ import annotations

from math import pi

import pytest

from scantling.formulas import belts, contact, dynamics, motors, plates, wires
from scantling.formulas.sections import round_second_moment_mm4
from scantling.formulas.whirl import SUPPORTED_SUPPORTED_ROOT_RATIO, critical_speed_rpm


@pytest.fixture(scope="module")
def unit():
    """The registry of units of an independent library."""
    return pytest.importorskip("pint").UnitRegistry()


@pytest.mark.outside
def test_forces_and_frequencies(unit):
    # Source: the Python library pint 0.25 (BSD), the same formulas with units
    force = (1.47 * unit.kg * 2000 * unit.mm / unit.s**2).to("N").magnitude
    assert dynamics.inertia_force_n(1.47, 2000) == pytest.approx(force)
    weight = (1.47 * unit.kg * unit.standard_gravity).to("N").magnitude
    assert dynamics.weight_n(1.47) == pytest.approx(weight)
    ring = ((31 * unit.N / unit.mm) / (2 * unit.kg)) ** 0.5 / (2 * pi)
    assert dynamics.natural_frequency_hz(31, 2) == pytest.approx(ring.to("1/s").magnitude)


@pytest.mark.outside
def test_inertia_of_a_rotor(unit):
    # Source: the Python library pint 0.25 (BSD), g·cm² and rad/s² to N·mm
    inertia = 22 * unit.g * unit.cm**2
    torque = (inertia * 314.16 / unit.s**2).to("N mm").magnitude
    ours = motors.inertia_torque_nmm(inertia.to("kg mm^2").magnitude, 314.16)
    assert ours == pytest.approx(torque)


@pytest.mark.outside
def test_induced_voltage_and_reactance(unit):
    # Source: the Python library pint 0.25 (BSD): N·mm/A · rad/s to V, and mH · rad/s to Ω
    constant = 0.26 * unit.N * unit.m / (2**0.5 * 1.3 * unit.A)
    volts = (constant * 2 * pi * 5 / unit.s).to("V").magnitude
    assert motors.back_emf_v(260, 1.3, 5) == pytest.approx(volts)
    rate = (24 * unit.V / (2 * 2.8 * unit.mH * 1.68 * unit.A * 200)).to("1/s").magnitude
    assert motors.inductance_limited_rev_s(24, 2.8, 1.68, 200) == pytest.approx(rate)


@pytest.mark.outside
def test_string_screw_plate_and_wire(unit):
    # Source: the Python library pint 0.25 (BSD), the same formulas with units
    tension = 4 * (8.4 * unit.g / unit.m) * (150 * unit.mm) ** 2 * (110 / unit.s) ** 2
    assert belts.span_tension_n(8.4, 150, 110) == pytest.approx(tension.to("N").magnitude)
    wave = ((207_000 * unit.MPa) / (7850 * unit.kg / unit.m**3)) ** 0.5
    turns = SUPPORTED_SUPPORTED_ROOT_RATIO**2 / (300 * unit.mm) ** 2 * wave * (5.5 * unit.mm / 4) / (2 * pi)
    ours = critical_speed_rpm(5.5, 300, SUPPORTED_SUPPORTED_ROOT_RATIO, 207_000, 7850)
    assert ours == pytest.approx(turns.to("1/min").magnitude)
    rigidity = plates.plate_rigidity_nmm(3, 70_000, 0.33) * unit.N * unit.mm
    per_area = 2700 * unit.kg / unit.m**3 * 3 * unit.mm
    ring = pi / 2 * 2 / (200 * unit.mm) ** 2 * (rigidity / per_area) ** 0.5
    found = plates.supported_plate_frequency_hz(200, 200, rigidity.magnitude, 3, 2700)
    assert found == pytest.approx(ring.to("1/s").magnitude)
    drop = (10 * unit.A * 13.3 * unit.ohm / unit.km * 2 * 1500 * unit.mm).to("V").magnitude
    assert wires.voltage_drop_v(10, 13.3, 1500) == pytest.approx(drop)


@pytest.mark.outside
def test_hardness_and_second_moment(unit):
    # Source: the Python library pint 0.25 (BSD): 1 HV is 1 kgf/mm²; second moment in m⁴
    stress = (180 * unit.kilogram_force / unit.mm**2 / 3).to("MPa").magnitude
    assert contact.yield_from_hardness_mpa(180) == pytest.approx(stress)
    assert round_second_moment_mm4(8) == pytest.approx((pi / 64 * (8 * unit.mm) ** 4).to("mm^4").magnitude)
