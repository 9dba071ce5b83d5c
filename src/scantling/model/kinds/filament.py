"""Filament that printed parts are made from."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Density
from scantling.model.part import Part


class Filament(Part):
    """A plastic for printing, bought by mass; ``plastic`` names it in the table of materials (``PETG``)."""

    kind: Literal["filament"] = "filament"
    plastic: str
    density_kg_m3: Density | None = None
