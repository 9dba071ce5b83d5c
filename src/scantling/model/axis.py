"""Axes: a drive with a guide that moves named parts and must meet requirements."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import Field, model_validator

from scantling.model.base import (
    Acceleration,
    Count,
    Current,
    Data,
    Expression,
    Force,
    Kilometres,
    Length,
    Mass,
    Ratio,
    Speed,
    Stiffness,
    Voltage,
    YesNo,
)
from scantling.model.guide import Guide as Guide
from scantling.model.reach import Home, Reach


class TypedMass(Data):
    """A mass that no place holds: a cable, a print on the bed."""

    mass_kg: Mass
    what: str = Field(alias="for")


class Moved(Data):
    """One thing that an axis moves: a place (all its pieces, or ``count`` of them) or a typed mass."""

    place: str | None = None
    count: Count | None = None
    typed: TypedMass | None = None

    @model_validator(mode="before")
    @classmethod
    def _short(cls, given: Any) -> Any:
        """Accept ``bed``, ``{place: x-bearing, count: 2}`` and ``{mass: 80 g, for: cable}``."""
        if isinstance(given, str):
            return {"place": given}
        if isinstance(given, dict) and "mass" in given:
            return {"typed": given}
        return given


class Needs(Data):
    """What the axis must do.

    lost_motion_mm : how far it may stand still when it is turned back
    ringing_mm : how far it may swing after a corner
    """

    travel_mm: Length | None = None
    speed_mm_s: Speed | None = None
    acceleration_mm_s2: Acceleration | None = None
    resolution_mm: Length | None = None
    life_km: Kilometres | None = None
    layers: tuple[Length, ...] = ()
    holds_itself: YesNo = False
    lost_motion_mm: Length | None = None
    ringing_mm: Length | None = None


class _AxisBase(Data):
    """What all axes have.

    driver_current_a : that the driver is set to, rms    frame_stiffness_n_mm : of the frame where the axis pushes it
    """

    id: str = ""
    title: str = ""
    motor: str | None = None
    motor_count: Count = 1
    supply_voltage_v: Voltage | None = None
    driver_current_a: Current | None = None
    microsteps: Count = 16
    guide: Guide | None = None
    moves: tuple[Moved, ...] = ()
    process_force_n: Force | None = None
    friction_n: Force | None = None
    vertical: YesNo = False
    frame_stiffness_n_mm: Stiffness | None = None
    needs: Needs = Needs()
    reach: Reach | None = None
    home: Home | None = None


class BeltAxis(_AxisBase):
    """A belt drive. ``axles`` is the distance of motor and idler axle as a size; ``clamping`` the belt held at ends.

    tension_n : in the belt at rest, of each run    belt_at : middle of the belt from the motor's face, as a size
    idler_side : what of the belt runs on the idler
    """

    drive: Literal["belt"]
    pulley: str
    belt: str
    idler: str | None = None
    axles: Expression | None = None
    clamping: Expression | None = None
    tension_n: Force | None = None
    belt_at: Expression | None = None
    idler_side: Literal["teeth", "back"] = "teeth"


class ScrewAxis(_AxisBase):
    """A screw drive with ``screws`` screws; ``ends`` gives the fixity (first end, second end) of each.

    screws_apart : distance of two screws, as a size
    """

    drive: Literal["screw"]
    screw: str
    nut: str | None = None
    coupler: str | None = None
    screws: Count = 1
    screws_apart: Expression | None = None
    free: Expression | None = None
    ends: Literal["fixed-free", "supported-supported", "fixed-supported", "fixed-fixed"] = "fixed-free"
    screw_friction_ratio: Ratio | None = None


Axis = Annotated[BeltAxis | ScrewAxis, Field(discriminator="drive")]
