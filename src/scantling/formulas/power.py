"""Electric power: what a supply must give."""

from __future__ import annotations

from collections.abc import Iterable


def supply_needed_w(loads_w: Iterable[float], headroom_ratio: float) -> float:
    """Rating that a supply needs for its loads.

    loads_w : power of every load that can be on at once [W]
    headroom_ratio : share on top, 0.25 is customary [-]

    Valid for: loads at one voltage.
    Source: trade practice, sum and a quarter on top.

    >>> supply_needed_w((120.0, 40.0, 18.0, 8.0), 0.25)
    232.5
    """
    return sum(loads_w) * (1 + headroom_ratio)


def supply_margin_ratio(rating_w: float, loads_w: Iterable[float]) -> float:
    """Share of a supply's rating that its loads leave free; negative where it is overloaded.

    rating_w : rating of the supply [W]
    loads_w : power of every load that can be on at once [W]

    Valid for: loads at one voltage.
    Source: definition.

    >>> supply_margin_ratio(250.0, (186.0,))
    0.256
    """
    return (rating_w - sum(loads_w)) / rating_w


def current_a(power_w: float, voltage_v: float) -> float:
    """Current of a load.

    power_w : power [W]
    voltage_v : voltage [V]

    Valid for: direct current.
    Source: definition.

    >>> current_a(120.0, 24.0)
    5.0
    """
    return power_w / voltage_v


def resistance_ohm(power_w: float, voltage_v: float) -> float:
    """Resistance of a heater.

    power_w : power at the voltage [W]
    voltage_v : voltage [V]

    Valid for: heaters whose resistance does not change with temperature.
    Source: V² / P.

    >>> resistance_ohm(120.0, 12.0)
    1.2
    """
    return voltage_v**2 / power_w


def mains_current_a(power_w: float, mains_v: float, efficiency_ratio: float, power_factor_ratio: float) -> float:
    """Current that a supply takes from the mains.

    power_w : what it gives [W]
    mains_v : mains voltage [V]
    efficiency_ratio : of the supply [-]
    power_factor_ratio : about 0.5 to 0.65 without correction, 0.95 with [-]

    Valid for: single phase, rms.
    Source: definition of the power factor, P / (η λ U).

    >>> round(mains_current_a(240.0, 230.0, 0.915, 0.52), 2)
    2.19
    """
    return power_w / (mains_v * efficiency_ratio * power_factor_ratio)


def pulse_integral_a2s(peak_a: float, decay_s: float) -> float:
    """Heat that a pulse which dies away leaves in a fuse, as the square of the current times its time.

    peak_a : first peak [A]
    decay_s : time in which the current falls to 1/e [s]

    Valid for: pulses that die away exponentially, as of a capacitor that is charged through a resistor.
    Source: integral of the square, I² τ / 2.

    >>> round(pulse_integral_a2s(35.0, 0.0024), 2)
    1.47
    """
    return peak_a**2 * decay_s / 2


def time_lag_melting_a2s(rating_a: float) -> float:
    """Least heat that melts a time-lag fuse in a pulse.

    rating_a : of the fuse [A]

    Valid for: miniature fuses of 1 to 6.3 A marked T.
    Source: limits of IEC 60127-2 as printed in a sheet: at ten times its rating such a fuse holds for 20 ms at least.

    >>> round(time_lag_melting_a2s(3.15), 1)
    19.8
    """
    return (10 * rating_a) ** 2 * 0.02


def mean_power_w(loads_w: Iterable[tuple[float, float]]) -> float:
    """Power drawn over a long time.

    loads_w : power [W] of each load and the share of the time that it is on [-]

    Valid for: warming of a supply and energy used; a supply must give the peak all the same.
    Source: definition.

    >>> mean_power_w(((150.0, 0.4), (40.0, 0.5)))
    80.0
    """
    return sum(power_w * duty for power_w, duty in loads_w)
