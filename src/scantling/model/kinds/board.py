"""A controller board with its ports."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Count, Current, Data, Length, Power, Resistance, Voltage
from scantling.model.part import Part

Duty = Literal["driver", "heater", "sensor", "switch", "fan"]


class Port(Data):
    """Ports of a board that are alike.

    name : printed beside it, where not all ports of its kind are alike
    does : drives a motor, switches a heater, reads a sensor or a switch, feeds a fan
    current_a : that each may carry; of a driver the rms current of a phase    voltage_v : that it gives
    plug : the plug that goes into it    fused_a : rating of the board's own fuse before it
    sense_ohm : of a driver's resistor for each phase, its own wiring counted
    full_scale_v : over it at the peak of the current when the driver is set to its most
    """

    does: Duty
    name: str = ""
    count: Count = 1
    current_a: Current | None = None
    voltage_v: Voltage | None = None
    plug: str | None = None
    fused_a: Current | None = None
    sense_ohm: Resistance | None = None
    full_scale_v: Voltage | None = None


class Mounting(Data):
    """Four holes at the corners of a rectangle."""

    width_mm: Length
    depth_mm: Length
    hole_mm: Length


class Board(Part):
    """A controller board: what it draws itself, what can be plugged in, how it is screwed down."""

    kind: Literal["board"] = "board"
    power_w: Power | None = None
    voltage_v: Voltage | None = None
    ports: tuple[Port, ...] = ()
    mounting: Mounting | None = None
