"""What a machine reaches: the tool over its bed, where an axis is homed, and the gaps that moving things leave."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Data, Expression, Length, Speed


class Reach(Data):
    """What the tool reaches along an axis, counted from the low edge of the bed (upwards: from its surface).

    start : of the tool with the axis at the low end of its travel; negative where it stands outside the bed
    over : length of the bed along the axis; none where nothing bounds it (upwards)
    lost_low, lost_high : what clips, rims and screws take at each edge
    wanted_mm : that must be reached; the travel that the axis needs where it is not said
    """

    start: Expression
    over: Expression | None = None
    lost_low: Expression | None = None
    lost_high: Expression | None = None
    wanted_mm: Length | None = None


class Home(Data):
    """How an axis finds its place: a switch that trips at one end of its travel, run into at ``speed_mm_s``.

    trips : how far before the hard stop the switch trips    give : how far its lever or plunger goes on from there
    """

    end: Literal["low", "high"] = "low"
    speed_mm_s: Speed | None = None
    trips: Expression | None = None
    give: Expression | None = None


class Clearance(Data):
    """A gap between a thing that moves with an axis and one that stands, or moves with another.

    gap : with the axis at the low end of its travel
    closes : towards which end the gap becomes less by the travel; ``never`` for things that pass beside each other
    least_mm : that must be left at the narrowest
    """

    id: str = ""
    title: str = ""
    axis: str
    gap: Expression
    closes: Literal["high", "low", "never"] = "never"
    least_mm: Length | None = None
