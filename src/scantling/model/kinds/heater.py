"""A heater."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Power, Voltage
from scantling.model.part import Part


class Heater(Part):
    """An electric heater at its rated voltage."""

    kind: Literal["heater"] = "heater"
    power_w: Power
    voltage_v: Voltage
