"""A part whose kind no check needs to know."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import HeatCapacity, Power, Voltage
from scantling.model.part import Part


class Thing(Part):
    """Any other part: a plate, a glass, a board, a fan; it may draw power and store heat."""

    kind: Literal["thing"] = "thing"
    power_w: Power | None = None
    voltage_v: Voltage | None = None
    heat_capacity_j_k: HeatCapacity | None = None
