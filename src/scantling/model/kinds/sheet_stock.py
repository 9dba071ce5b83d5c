"""Sheet material that panels are made from."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Density, Length, Stress, YesNo
from scantling.model.part import Part


class SheetStock(Part):
    """A sheet material of one thickness; what is missing comes from the class table as *typical*.

    material : names the class in the table of materials    grain : panels may not be turned on the board
    """

    kind: Literal["sheet"] = "sheet"
    material: str
    thickness_mm: Length
    modulus_mpa: Stress | None = None
    density_kg_m3: Density | None = None
    grain: YesNo = False
