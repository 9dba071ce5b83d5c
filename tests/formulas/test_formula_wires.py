"""Wires, against printed tables and an independent library."""

from __future__ import annotations

import pytest

from scantling.formulas import wires

# Source: ASTM B258 wire gauges as printed in a university's table: gauge, diameter mm, area mm², Ω/km
GAUGES = {
    10: (2.588, 5.261, 3.28),
    12: (2.053, 3.309, 5.21),
    14: (1.628, 2.081, 8.29),
    16: (1.291, 1.309, 13.17),
    18: (1.024, 0.823, 20.95),
    20: (0.812, 0.518, 33.31),
    22: (0.644, 0.326, 52.96),
    24: (0.511, 0.205, 84.2),
    26: (0.405, 0.129, 133.9),
    28: (0.321, 0.081, 212.9),
}


@pytest.mark.outside
@pytest.mark.parametrize("gauge", GAUGES)
def test_printed_gauges(gauge):
    diameter, area, resistance = GAUGES[gauge]
    assert wires.awg_diameter_mm(gauge) == pytest.approx(diameter, abs=0.0006)
    assert wires.awg_area_mm2(gauge) == pytest.approx(area, abs=0.0006)
    assert wires.copper_ohm_km(wires.awg_area_mm2(gauge)) == pytest.approx(resistance, rel=0.001)


@pytest.mark.outside
@pytest.mark.parametrize("gauge", GAUGES)
def test_gauges_of_a_library(gauge):
    # Source: the Python library fluids 1.3 (MIT), wire gauges, which rounds to thousandths of an inch
    piping = pytest.importorskip("fluids.piping")
    theirs_mm = 1000 * piping.t_from_gauge(gauge, schedule="AWG")
    assert wires.awg_diameter_mm(gauge) == pytest.approx(theirs_mm, rel=0.0035)


@pytest.mark.outside
@pytest.mark.parametrize(
    ("resistance", "drop"),
    # Source: IEC 60228 class 5 resistances, 10 A over 1 m out and back, computed independently
    [(39.0, 0.780), (26.0, 0.520), (19.5, 0.390), (13.3, 0.266), (7.98, 0.1596)],
)
def test_voltage_drops(resistance, drop):
    assert wires.voltage_drop_v(10, resistance, 1000) == pytest.approx(drop, abs=1e-9)


@pytest.mark.outside
def test_fuse_and_warmth():
    # Source: two published fuse calculators, 10 A steady needs 12.5 A; resistance of copper at 70 °C is 1.1965 times
    assert wires.least_fuse_a(10) == 12.5
    assert wires.warm_resistance_ratio(70) == pytest.approx(1.1965)
    assert wires.warm_resistance_ratio(20) == 1
