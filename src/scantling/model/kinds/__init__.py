"""The explicit list of part kinds: a new kind is a new small file and one line here."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from scantling.model.kinds.ball_bearing import BallBearing
from scantling.model.kinds.belt import Belt
from scantling.model.kinds.board import Board
from scantling.model.kinds.bushing import Bushing
from scantling.model.kinds.coupler import Coupler
from scantling.model.kinds.cut_out import CutOut
from scantling.model.kinds.drive_nut import DriveNut
from scantling.model.kinds.fasteners import Insert, Nut, Screw, Washer
from scantling.model.kinds.filament import Filament
from scantling.model.kinds.fuse import Fuse
from scantling.model.kinds.heater import Heater
from scantling.model.kinds.motor import Motor
from scantling.model.kinds.printed import MeshVariant, Printed
from scantling.model.kinds.profile import Profile
from scantling.model.kinds.pulley import Pulley
from scantling.model.kinds.rod import Rod
from scantling.model.kinds.sheet_stock import SheetStock
from scantling.model.kinds.supply import Supply
from scantling.model.kinds.terminal import Terminal
from scantling.model.kinds.thing import Thing
from scantling.model.kinds.threaded_rod import ThreadedRod
from scantling.model.kinds.wire import Wire

AnyPart = Annotated[
    BallBearing
    | Belt
    | Board
    | Bushing
    | Coupler
    | CutOut
    | DriveNut
    | Filament
    | Fuse
    | Heater
    | Insert
    | Motor
    | Nut
    | Printed
    | Profile
    | Pulley
    | Rod
    | Screw
    | SheetStock
    | Supply
    | Terminal
    | Thing
    | ThreadedRod
    | Washer
    | Wire,
    Field(discriminator="kind"),
]

__all__ = [
    "AnyPart",
    "BallBearing",
    "Belt",
    "Board",
    "Bushing",
    "Coupler",
    "CutOut",
    "DriveNut",
    "Filament",
    "Fuse",
    "Heater",
    "Insert",
    "MeshVariant",
    "Motor",
    "Nut",
    "Printed",
    "Profile",
    "Pulley",
    "Rod",
    "Screw",
    "SheetStock",
    "Supply",
    "Terminal",
    "Thing",
    "ThreadedRod",
    "Washer",
    "Wire",
]
