"""How warm it gets where a part sits: measured, or the room and what each warm neighbour adds."""

from __future__ import annotations

from typing import get_args

from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.checks.inputs import Input, known
from scantling.model.zone import ZoneWord
from scantling.quantities import Figure
from scantling.tables.electric_limits import electric_limit
from scantling.tables.heats import zone_rise_k

WORDS: tuple[str, ...] = get_args(ZoneWord)


def zone_heat(reader: Reader, zone: str) -> Input:
    """Return the temperature of a zone, described by the design or a word of the table of zones."""
    described = reader.design.zones.get(zone)
    if described is None:
        word = need(zone if zone in WORDS else None, f"zones.{zone}")
        return known(f"heat of a {word} zone", (electric_limit("room") + zone_rise_k(word)), "°C")
    what = f"heat of the zone {zone}"
    if described.temperature_c is not None:
        return known(what, described.temperature_c, "°C")
    room = described.room_c if described.room_c is not None else electric_limit("room")
    total: Figure = sum((zone_rise_k(word) for word in described.beside), room)
    return known(what, total.as_typical("zones"), "°C")
