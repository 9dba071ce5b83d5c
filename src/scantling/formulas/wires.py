"""Wires: gauge, resistance, voltage drop, what they carry for good, fuse."""

from __future__ import annotations

from math import pi, sqrt

# Copper: resistivity of the international standard at 20 °C, and its rise per kelvin.
COPPER_OHM_MM2_M = 0.017241
COPPER_RISE_PER_K = 0.00393
TABLE_RISE_K = 40.0  # that tables of currents allow: from 30 °C to what PVC stands
TABLE_INSULATION_C = 70.0
STRANDING_RATIO = 1.025  # a stranded wire over a solid one of the same copper


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


def stranded_ohm_km(area_mm2: float) -> float:
    """Resistance of a stranded copper wire at 20 °C that is no size of the metric standard.

    area_mm2 : cross-section of its copper [mm2]

    Valid for: strands laid as usual.
    Source: 2.5 % over a solid wire, as in the conductor table of the American code (stranded over solid).

    >>> round(stranded_ohm_km(0.823), 2)
    21.47
    """
    return STRANDING_RATIO * copper_ohm_km(area_mm2)


def warmth_ratio(insulation_c: float, room_c: float) -> float:
    """Factor of what a wire may carry where it lies warmer, or cooler, than its table assumes; 0 where none is left.

    insulation_c : what the insulation stands at the conductor [C]
    room_c : where it lies [C]

    Valid for: tables that allow 40 K above 30 °C. Better insulation stands a warmer place and never lets the current
        rise: its terminals and neighbours get no less hot.
    Source: losses go with the square of the current, √((T - Ta) / 40 K); the factors of DIN VDE 0298-4, tables 17 and
        18, follow it.

    >>> round(warmth_ratio(70.0, 50.0), 2)
    0.71
    """
    if insulation_c <= room_c:
        return 0.0
    ratio = float(sqrt((insulation_c - room_c) / TABLE_RISE_K))
    return ratio if insulation_c <= TABLE_INSULATION_C else min(1.0, ratio)


def ampacity_a(table_a: float, warm_ratio: float, bundled_ratio: float) -> float:
    """Current that a wire carries for good where it lies.

    table_a : of the table of currents, one circuit alone at the table's temperature [A]
    warm_ratio : factor of where it lies, warmth_ratio [-]
    bundled_ratio : factor of other circuits that lie with it [-]

    Valid for: all circuits of a bundle loaded alike; kinder where some are idle.
    Source: DIN VDE 0298-4, product of the factors.

    >>> round(ampacity_a(18.0, 0.87, 0.65), 2)
    10.18
    """
    return table_a * warm_ratio * bundled_ratio


def lasting_a(supply_limit_a: float, fuse_a: float | None = None) -> float:
    """Current that can flow in a wire for good after a fault, for nothing stops it.

    supply_limit_a : at which the supply holds or folds back [A]
    fuse_a : rating of a fuse of the wire's own, None for none [A]

    Valid for: a short or an overload at the far end. Up to its rating a fuse never blows; beyond it a fuse blows only
        where the supply gives enough, so what lasts is the lesser of both.
    Source: Ib <= In <= Iz of IEC 60364-4-43, with the source's own limit beside the fuse.

    >>> lasting_a(21.9), lasting_a(21.9, 10.0), lasting_a(8.0, 10.0)
    (21.9, 10.0, 8.0)
    """
    return supply_limit_a if fuse_a is None else min(supply_limit_a, fuse_a)
