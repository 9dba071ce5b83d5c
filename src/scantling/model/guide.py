"""The guide of an axis: rods and bushings, how both are held, and what lies beside their middle."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Data, Expression, Length, Ratio, YesNo


class Seats(Data):
    """How the bushings sit in the carriage.

    held : ``rigid`` in straight seats; ``aligning`` in seats slimmer in their middle, on which a bushing can turn
    askew_mm : how far a seat may lie beside the rod's line over the length of its bushing, as it is made
    slack_mm : how much wider an aligning seat is at its ends than in its middle, both sides together
    floating : the bushings of one rod give way across it, so that the rods need not be alike everywhere (a slot, a
        gantry that slides or twists)
    """

    held: Literal["rigid", "aligning"] = "rigid"
    askew_mm: Length | None = None
    slack_mm: Length | None = None
    floating: YesNo = False


class Guide(Data):
    """Rods and bushings that carry the axis.

    spacing_mm : between the middles of the outermost bushings on one rod    carriage_mm : over all
    stops_mm : what stops, switch and tensioner take from the free length    free : free length of a rod, as a size
    ends : how the rods' ends are held; ``held`` partly, in holders that give
    grip_mm : length of rod that each holder grips    stick_out_mm : room beyond both holders together
    fixity_ratio : of held ends, where it was measured: 0 they turn freely, 1 they do not turn
    tool : rides on this carriage, or stands still while the carriage passes under it (a moving bed); the constant
        part of the rods' sag is levelled out, and only its change along the travel counts there
    offset_mm : of the drive's pull from the guide's middle, across it
    apart_mm : between the two rods    lie : of the rods to each other
    load_offset_mm : of the middle of what is carried, across the rods where they lie side by side, in front of them
        where they are stacked
    parallel_mm : by how much the distance of the rods may differ from end to end, once set up
    """

    rods: str
    bearings: str
    spacing_mm: Expression | None = None
    carriage_mm: Expression | None = None
    stops_mm: Expression | None = None
    free: Expression | None = None
    ends: Literal["supported", "held", "clamped"] = "supported"
    grip_mm: Expression | None = None
    fixity_ratio: Ratio | None = None
    stick_out_mm: Expression | None = None
    moving_rods: YesNo = False
    tool: Literal["rides", "stands"] = "rides"
    sag_limit_mm: Length | None = None
    offset_mm: Expression | None = None
    lie: Literal["side by side", "stacked"] = "side by side"
    apart_mm: Expression | None = None
    load_offset_mm: Expression | None = None
    parallel_mm: Length | None = None
    seats: Seats | None = None
