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
