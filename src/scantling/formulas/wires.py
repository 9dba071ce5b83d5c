"""Wires: gauge, resistance, voltage drop, fuse."""

from __future__ import annotations

from math import pi

# Copper: resistivity of the international standard at 20 °C, and its rise per kelvin.
COPPER_OHM_MM2_M = 0.017241
COPPER_RISE_PER_K = 0.00393


def awg_diameter_mm(gauge: int) -> float:
    """Diameter of a solid wire by its American gauge.

    gauge : gauge number, larger is thinner [-]

    Valid for: gauges 0 to 40.
    Source: ASTM B258, 0.127 · 92^((36 - n) / 39).

    >>> round(awg_diameter_mm(18), 3)
    1.024
    """
    return float(0.127 * 92 ** ((36 - gauge) / 39))


def awg_area_mm2(gauge: int) -> float:
    """Cross-section of a solid wire by its American gauge.

    gauge : gauge number [-]

    Valid for: solid wire; stranded wire of the same gauge has about the same copper.
    Source: ASTM B258.

    >>> round(awg_area_mm2(18), 3)
    0.823
    """
    return pi / 4 * awg_diameter_mm(gauge) ** 2


def copper_ohm_km(area_mm2: float) -> float:
    """Resistance of a copper wire at 20 °C.

    area_mm2 : cross-section [mm2]

    Valid for: pure copper; standards allow some more.
    Source: resistivity 0.017241 Ω mm²/m over area.

    >>> round(copper_ohm_km(0.823), 2)
    20.95
    """
    return 1000 * COPPER_OHM_MM2_M / area_mm2


def warm_resistance_ratio(temperature_c: float) -> float:
    """Factor of a copper wire's resistance against 20 °C.

    temperature_c : temperature of the wire [C]

    Valid for: copper, 0 to 120 °C.
    Source: 1 + 0.00393 (T - 20).

    >>> warm_resistance_ratio(70.0)
    1.1965
    """
    return 1 + COPPER_RISE_PER_K * (temperature_c - 20)


def voltage_drop_v(current_a: float, resistance_ohm_km: float, length_mm: float) -> float:
    """Voltage lost in a pair of wires, out and back.

    current_a : current [A]
    resistance_ohm_km : resistance of one wire [ohm/km]
    length_mm : length of the pair, one way [mm]

    Valid for: direct current.
    Source: Ohm's law.

    >>> round(voltage_drop_v(10.0, 13.3, 1000.0), 3)
    0.266
    """
    return current_a * resistance_ohm_km * 2 * length_mm * 1e-6


def least_fuse_a(load_a: float) -> float:
    """Smallest rating of a fuse that carries a steady load; it must also be below what the wire may carry.

    load_a : steady current [A]

    Valid for: 25 °C; round up to a rating that is sold.
    Source: two published fuse calculators, 1.25 times the continuous current.

    >>> least_fuse_a(10.0)
    12.5
    """
    return 1.25 * load_a
