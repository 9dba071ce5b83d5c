"""A smooth round guide rod."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Hardness, Length
from scantling.model.part import Part


class Rod(Part):
    """A smooth round rod; its length belongs to the place, its mass to its material and size.

    fit : ISO 286 class of the diameter (``h6``)    surface_hardness_hrc : missing means not hardened is possible
    """

    kind: Literal["rod"] = "rod"
    diameter_mm: Length
    fit: str | None = None
    surface_hardness_hrc: Hardness | None = None
