"""A power supply."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Current, Power, Ratio, Voltage
from scantling.model.part import Part


class Supply(Part):
    """A power supply with one output rail.

    limit_current_a : at which it folds back or switches off    inrush_a : peak from the mains when switched on cold
    efficiency_ratio, power_factor_ratio : at full load
    """

    kind: Literal["supply"] = "supply"
    power_w: Power
    voltage_v: Voltage
    limit_current_a: Current | None = None
    inrush_a: Current | None = None
    efficiency_ratio: Ratio | None = None
    power_factor_ratio: Ratio | None = None
