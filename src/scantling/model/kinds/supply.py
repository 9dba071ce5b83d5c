"""A power supply."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Power, Voltage
from scantling.model.part import Part


class Supply(Part):
    """A power supply with one output rail."""

    kind: Literal["supply"] = "supply"
    power_w: Power
    voltage_v: Voltage
