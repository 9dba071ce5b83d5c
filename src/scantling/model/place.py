"""Places of a machine and the parts that may fill them."""

from __future__ import annotations

from typing import Any, Literal

from pydantic import Field, model_validator

from scantling.model.base import Angle, Count, Data, Expression, YesNo

EMPTY = ""  # the option of a place that stays empty, or that another place's option fills


class StandIn(Data):
    """A part that may fill a place instead of the reference part, and all that this choice itself changes.

    quantity : pieces when it differs from the place's    also_fills : places that then stay empty
    brings : further parts it needs, by count    requires, forbids : parts at other places, ``{place: part}``
    """

    part: str
    quantity: Count | None = None
    also_fills: tuple[str, ...] = ()
    brings: dict[str, Count] = Field(default_factory=dict)
    requires: dict[str, str] = Field(default_factory=dict)
    forbids: dict[str, str] = Field(default_factory=dict)
    note: str = ""

    @model_validator(mode="before")
    @classmethod
    def _from_name(cls, given: Any) -> Any:
        """A bare part name is a stand-in that changes nothing else."""
        return {"part": given} if isinstance(given, str) else given


class Place(Data):
    """What one or more pieces of a part fill.

    pieces : names of the pieces, or only ``quantity``    alike : name of a group of places that take the same part
    length : of a piece that is cut, as a size            on, at, turn_deg, face : where it sits
    matched : its pieces must be of one lot, or be sorted into sets that measure alike
    mirrored : names of the pieces that are the other hand (sheet parts)
    accept_unknown : a reason for which missing figures of this place may be overlooked
    """

    id: str = ""
    title: str = ""
    reference: StandIn
    stand_ins: tuple[StandIn, ...] = ()
    quantity: Count | None = None
    pieces: tuple[str, ...] = ()
    alike: str | None = None
    may_be_empty: YesNo = False
    length: Expression | None = None
    on: str = "machine"
    at: tuple[Expression, Expression, Expression] | None = None
    turn_deg: Angle | None = None
    face: Literal["x", "y", "z"] = "z"
    matched: YesNo = False
    mirrored: tuple[str, ...] = ()
    group: str = ""
    note: str = ""

    @property
    def count(self) -> int:
        """Pieces in one machine with the reference part."""
        return self.quantity if self.quantity is not None else (len(self.pieces) or 1)

    @property
    def options(self) -> tuple[StandIn, ...]:
        """The reference and its stand-ins, in the file's order."""
        return (self.reference, *self.stand_ins)
