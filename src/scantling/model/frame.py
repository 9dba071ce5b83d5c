"""Frames: panels, bars and what links them; where they stand, what they carry, how they are pushed."""

from __future__ import annotations

from typing import Any, Literal

from pydantic import Field, model_validator

from scantling.errors import QuantityError
from scantling.model.base import Count, Data, Expression, Force, Length, Mass, Ratio

Where3 = tuple[Expression, Expression, Expression]


class Spot(Data):
    """Where something takes hold: holes of a panel by what they are for, or a point on the machine.

    on : the panel, a sheet's place    at : as its holes say, ``joint:foot-to-front``, ``frame-rod.bore``
    point : instead, for bars that end away from panels
    """

    on: str | None = None
    at: tuple[str, ...] = ()
    point: Where3 | None = None

    @model_validator(mode="before")
    @classmethod
    def _short(cls, given: Any) -> Any:
        """Accept one purpose without brackets; either holes or a point."""
        if isinstance(given, dict):
            given = dict(given)
            if isinstance(given.get("at"), str):
                given["at"] = [given["at"]]
            if ("on" in given and "at" in given) is ("point" in given):
                raise QuantityError("a spot is neither holes nor a point", "write on and at, or point: [x, y, z]")
        return given


class FramePanel(Data):
    """A panel of a frame; ``shift`` moves it on the machine from where its place sits: the second of two pieces."""

    place: str
    shift: Where3 | None = None

    @model_validator(mode="before")
    @classmethod
    def _short(cls, given: Any) -> Any:
        """Accept the place alone."""
        return {"place": given} if isinstance(given, str) else given


class Link(Data):
    """Blocks or angles that link panels: screws that go through one of them, no further apart than ``reach_mm``."""

    place: str
    reach_mm: Length


class Beam(Data):
    """A bar from one spot to another, stiffly joined to its ends."""

    place: str
    start: Spot = Field(alias="from")
    end: Spot = Field(alias="to")


class Carried(Data):
    """A mass that hangs on a spot: typed, or what an axis moves."""

    spot: Spot
    mass_kg: Mass | None = None
    axis: str | None = None


class Push(Data):
    """A push on a spot along x, y or z of the machine: typed, or the force with which an axis speeds up.

    sway_limit_mm : how far the spot may give way; information where none is said
    """

    title: str = ""
    spot: Spot
    direction: Literal["x", "y", "z"]
    force_n: Force | None = None
    axis: str | None = None
    sway_limit_mm: Length | None = None


class Frame(Data):
    """A frame of panels and bars; ``panel`` is the one that it is judged by.

    leg_free_mm, leg_width_mm, legs, force_n, sway_limit_mm, joint_softening : of a portal's open legs, for an estimate
    panels : all panels, ``panel`` alone where none are named    bars : places of rods that pass holes ``PLACE.bore``
    links : what holds panels together    beams : bars between spots    held : what stands firm
    carries : masses    pushes : what it must withstand, the first with the push by hand that is measured
    joint_stiffness : of bolted joints, against what is reckoned
    """

    id: str = ""
    title: str = ""
    panel: str
    leg_free_mm: Length | None = None
    leg_width_mm: Length | None = None
    legs: Count = 2
    force_n: Force | None = None
    sway_limit_mm: Length | None = None
    joint_softening: Ratio | None = None
    panels: tuple[FramePanel, ...] = ()
    bars: tuple[str, ...] = ()
    links: tuple[Link, ...] = ()
    beams: tuple[Beam, ...] = ()
    held: tuple[Spot, ...] = ()
    carries: tuple[Carried, ...] = ()
    pushes: tuple[Push, ...] = ()
    joint_stiffness: Ratio | None = None
