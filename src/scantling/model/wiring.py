"""The loom and the electronics: wires one by one, and the ports that a machine wants of its board."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from scantling.model.base import Count, Current, Data, Expression, Length, Temperature, YesNo
from scantling.model.kinds.board import Duty


class LoomWire(Data):
    """One wire or cable of the loom.

    start (``from``), to : places, with a port after a point where there is one (``board.bed``)
    wire : the place whose part is the wire    length : of the route, a size    loop_mm : for both ends together;
        where it is missing a tenth of the route and 100 mm at each end
    start_end (``from-end``), to_end : places whose part is crimped on
    load : the place whose current it carries, or ``current_a``; where neither is said, all that the rail's supply gives
    rail : that feeds it    fuse : the place of a fuse of its own    bundled : circuits that lie together with it
    room_c : how warm it is where it lies    if_needed : only where what it leads to needs an earth
    """

    id: str = ""
    start: str = Field(alias="from")
    to: str
    wire: str
    length: Expression
    loop_mm: Length | None = None
    colour: str = ""
    count: Count = 1
    start_end: str | None = Field(default=None, alias="from-end")
    to_end: str | None = None
    carries: Literal["power", "return", "signal", "earth", "mains"] = "power"
    load: str | None = None
    current_a: Current | None = None
    rail: str | None = None
    fuse: str | None = None
    bundled: Count = 1
    room_c: Temperature | None = None
    moves: YesNo = False
    if_needed: YesNo = False
    note: str = ""


class PortWant(Data):
    """What hangs on the board: every piece of a place on a port of its own, or all on one that they share.

    port : its name on the board; where none is said, the weakest of its kind
    """

    does: Duty
    place: str = Field(alias="for")
    port: str = ""
    shared: YesNo = False


class Electronics(Data):
    """A board with all that is to be plugged in.

    rail : that feeds it    wants : ports    sheet, joint : what it is screwed to, and by which joint
    """

    id: str = ""
    board: str
    rail: str | None = None
    wants: tuple[PortWant, ...] = ()
    sheet: str | None = None
    joint: str | None = None
