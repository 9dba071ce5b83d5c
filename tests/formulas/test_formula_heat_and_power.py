"""Heat of faces and zones, growth, mains and fuses, wires where they lie: against published tables and sheets."""

from __future__ import annotations

import pytest

from scantling.formulas import heat, power, wires


@pytest.mark.outside
@pytest.mark.parametrize(
    ("room", "factor"),
    # Source: DIN VDE 0298-4 table 17, insulation for 70 °C, as printed in an extract of 2013
    [
        (10, 1.22),
        (15, 1.17),
        (20, 1.12),
        (25, 1.06),
        (30, 1.00),
        (35, 0.94),
        (40, 0.87),
        (45, 0.79),
        (50, 0.71),
        (55, 0.61),
        (60, 0.50),
        (65, 0.35),
    ],
)
def test_factors_of_warmth(room, factor):
    assert wires.warmth_ratio(70.0, room) == pytest.approx(factor, abs=0.006)


@pytest.mark.outside
def test_better_insulation_stands_a_warmer_place_and_carries_no_more():
    # Source: DIN VDE 0298-4 table 18, insulation for 90 °C: 1.00 up to 50 °C
    assert wires.warmth_ratio(90.0, 30.0) == 1.0
    assert wires.warmth_ratio(90.0, 50.0) == 1.0
    assert wires.warmth_ratio(90.0, 70.0) == pytest.approx(0.71, abs=0.006)
    assert wires.warmth_ratio(180.0, 100.0) == 1.0
    assert wires.warmth_ratio(70.0, 70.0) == 0.0


@pytest.mark.outside
@pytest.mark.parametrize(
    ("gauge", "ohm_kft"),
    # Source: conductor table of the American code (chapter 9, table 8): stranded, uncoated, 75 °C, in ohm per 1000 ft
    [(18, 7.95), (16, 4.99), (14, 3.14), (12, 1.98), (10, 1.24)],
)
def test_stranded_wires_of_a_gauge(gauge, ohm_kft):
    ours = wires.stranded_ohm_km(wires.awg_area_mm2(gauge)) * wires.warm_resistance_ratio(75.0)
    assert ours == pytest.approx(ohm_kft / 0.3048, rel=0.006)


@pytest.mark.outside
def test_current_from_the_mains():
    # Source: two published sheets of a supply of 24 V 40 A: 94.6 % efficiency, power factor 0.96, 4.6 A from 230 V
    assert power.mains_current_a(960.0, 230.0, 0.946, 0.96) == pytest.approx(4.6, abs=0.05)


@pytest.mark.outside
@pytest.mark.parametrize(
    ("peak", "integral"),
    # Source: published sheet of a supply of 50 W: inrush of 35, 17 and 14 A peak with 1.5, 0.4 and 0.3 A²s
    [(35.0, 1.5), (17.0, 0.4), (14.0, 0.3)],
)
def test_the_first_peak_into_a_cold_supply(peak, integral):
    assert power.pulse_integral_a2s(peak, 0.0024) == pytest.approx(integral, rel=0.25)


@pytest.mark.outside
def test_a_pulse_that_dies_away_has_half_the_heat_of_its_peak():
    # Source: a published guide to fuses, table of wave shapes: exponential pulse, I²t = (1/2) ip² t
    assert power.pulse_integral_a2s(8.0, 0.004) == pytest.approx(0.5 * 8.0**2 * 0.004)


@pytest.mark.outside
def test_layers_in_series():
    # Source: a published handbook of building, brick 215 mm of 0.84 and plaster 13 mm of 0.50 W/(m K): U = 2.17
    surfaces = 0.055 + 0.123 + 0.013 / 0.50
    assert heat.covered_loss_w_k(1e6, 215.0, 0.84, 1 / surfaces) == pytest.approx(2.17, abs=0.006)


@pytest.mark.outside
def test_a_heated_plate():
    # Source: energy balance of a plate 220 x 220 x 3 of aluminium (2700 kg/m³, 897 J/(kg K)), 220 W, 80 K, 10 W/(m² K)
    # from both faces, computed independently: 28.13 kJ, time constant 363.3 s, 157.6 s, end at 227.3 K, holding 77.4 W
    capacity = heat.heat_capacity_j_k(220 * 220 * 3 * 2.7e-6, 897.0)
    loss = heat.plate_loss_w_k(2 * 220.0 * 220.0, 10.0)
    assert capacity * 80 == pytest.approx(28_130, rel=0.001)
    assert capacity / loss == pytest.approx(363.3, rel=0.001)
    assert heat.warm_up_s(220.0, capacity, loss, 80.0) == pytest.approx(157.6, rel=0.001)
    assert heat.highest_rise_k(220.0, loss) == pytest.approx(227.3, rel=0.001)
    assert heat.holding_power_w(loss, 80.0) == pytest.approx(77.4, abs=0.05)


@pytest.mark.outside
def test_growth_of_an_aluminium_bed():
    # Source: coefficient of aluminium 23e-6 1/K (any handbook), 200 mm by 80 K: 0.37 mm
    assert heat.growth_mm(200.0, 23.0, 80.0) == pytest.approx(0.37, abs=0.005)


def test_what_lasts_is_the_lesser_of_fuse_and_supply():
    assert wires.lasting_a(12.0, 15.0) == 12.0  # the fuse never blows
    assert wires.lasting_a(30.0, 15.0) == 15.0
    assert wires.lasting_a(12.0) == 12.0


def test_sun_warms_what_is_dark():
    assert heat.sun_rise_k(0.9, 800.0, 16.0) == 3 * heat.sun_rise_k(0.3, 800.0, 16.0)
    assert heat.stands_for_hours_c(79.0, 17.5) == 61.5


def test_a_duty_lowers_the_mean_and_never_the_peak():
    loads = ((150.0, 0.4), (40.0, 1.0))
    assert power.mean_power_w(loads) == 100.0
    assert power.supply_needed_w((150.0, 40.0), 0.25) == 237.5


@pytest.mark.outside
def test_a_time_lag_fuse_bears_more_the_larger_it_is():
    # Source: a published sheet of time-lag fuses of 40 mA to 5 A: at ten times the rating 20 ms at least
    assert power.time_lag_melting_a2s(3.15) == pytest.approx((10 * 3.15) ** 2 * 0.020)
    assert power.time_lag_melting_a2s(6.3) == pytest.approx(4 * power.time_lag_melting_a2s(3.15))
