"""A toothed belt."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Count, Force, Length, LineMass
from scantling.model.part import Part


class Belt(Part):
    """A toothed belt, open (sold by length) or closed (``closed_teeth``).

    profile : pitch and tooth form as the table of belts names them; two belts that look alike may differ in it
    stiffness_n : force that would stretch it to twice its length, F / (stretch / length)
    allowed_n : tension that it may work at
    """

    kind: Literal["belt"] = "belt"
    profile: str
    width_mm: Length
    closed_teeth: Count | None = None
    line_mass_g_m: LineMass | None = None
    stiffness_n: Force | None = None
    allowed_n: Force | None = None
