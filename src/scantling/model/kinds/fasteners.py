"""Fasteners; standard ones need no description, their names say all (see ``build.fasteners``)."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Length
from scantling.model.part import Part


class Screw(Part):
    """A machine screw; ``length_mm`` is measured as its head's standard does (a countersunk head counts)."""

    kind: Literal["screw"] = "screw"
    head: Literal["socket", "button", "countersunk", "hexagon", "pan"]
    thread: str
    length_mm: Length


class Nut(Part):
    """A nut; ``style`` names the standard's family, for heights differ between them."""

    kind: Literal["nut"] = "nut"
    style: Literal["plain", "lock", "thin"]
    thread: str
    height_mm: Length
    across_flats_mm: Length


class Washer(Part):
    """A flat washer; ``large`` ones are about three diameters wide."""

    kind: Literal["washer"] = "washer"
    style: Literal["plain", "large"]
    thread: str
    inner_diameter_mm: Length
    outer_diameter_mm: Length
    thickness_mm: Length


class Insert(Part):
    """A threaded insert set into plastic or wood."""

    kind: Literal["insert"] = "insert"
    thread: str
    outer_diameter_mm: Length
    length_mm: Length
