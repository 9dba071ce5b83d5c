"""Zones of a machine: how warm it gets where a part sits."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Data, Temperature

ZoneWord = Literal["cool", "warm", "hot", "motor", "bed", "carriage", "hot end", "enclosure", "sun"]


class Zone(Data):
    """A named zone.

    beside : what makes it warm; the rises add up    room_c : of the room around
    temperature_c : as measured there; then nothing is reckoned
    """

    id: str = ""
    title: str = ""
    beside: tuple[ZoneWord, ...] = ()
    room_c: Temperature | None = None
    temperature_c: Temperature | None = None
