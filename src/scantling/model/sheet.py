"""Sheet parts: an outline with holes by purpose."""

from __future__ import annotations

from typing import Any, Literal

from pydantic import Field, model_validator

from scantling.errors import QuantityError
from scantling.model.base import Angle, Count, Data, Expression, Length, YesNo


class Hole(Data):
    """One hole, or the pattern that the chosen part asks for.

    what (``for``) : ``z-motor.face`` (pattern of the chosen motor), ``joint:ID`` (the joint's screw), ``y-rod.seat``
        (round seat of a rod), ``PLACE.bore``; or empty with ``diameter_mm``
    at : from the outline's origin, sizes    repeat : further points for the same purpose
    fit : ``clearance fine|medium|coarse``, ``tapping``, ``pilot``, ``seat``    turn_deg : of a pattern
    slot_mm : elongation along ``slot_turn_deg``    care : this position must hold (care map)
    per_piece : how many of these points, one after the other, belong to one piece of what is screwed on
    """

    what: str = Field(default="", alias="for")
    at: tuple[Expression, Expression]
    repeat: tuple[tuple[Expression, Expression], ...] = ()
    fit: str = "clearance medium"
    turn_deg: Angle | None = None
    diameter_mm: Length | None = None
    slot_mm: Expression | None = None
    slot_turn_deg: Angle | None = None
    group: str = ""
    care: YesNo = False
    per_piece: Count | None = None
    note: str = ""

    @model_validator(mode="before")
    @classmethod
    def _has_purpose(cls, given: Any) -> Any:
        """A hole needs a purpose or a diameter."""
        if isinstance(given, dict) and not given.get("for") and not given.get("what") and not given.get("diameter"):
            raise QuantityError(
                "a hole without a purpose", "write what it is for, as in for: y-motor.face, or a diameter"
            )
        return given


class Sheet(Data):
    """A panel to be made from the sheet stock of the place with the same name.

    outline : a DXF or SVG file    unit : where the file states none    face_up : words on the template
    """

    id: str = ""
    title: str = ""
    outline: str
    unit: Literal["mm", "cm", "in"] | None = None
    layer: str | None = None
    holes: tuple[Hole, ...] = ()
    face_up: str = "outside face"
    up: str = ""
    grain: Literal["", "x", "y"] = ""
    edge_distance_mm: Length | None = None
    drilled_with: str | None = None
