"""A toothed pulley."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Count, Length
from scantling.model.part import Part


class Pulley(Part):
    """A toothed pulley; without a bore it has none to fit a shaft (an idler on its own bearing)."""

    kind: Literal["pulley"] = "pulley"
    teeth: Count
    profile: str
    bore_mm: Length | None = None
    bore_fit: str = "H8"
    belt_width_mm: Length | None = None
