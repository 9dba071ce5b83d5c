"""A rotary ball bearing."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Length
from scantling.model.part import Part


class BallBearing(Part):
    """A deep-groove ball bearing, plain or flanged."""

    kind: Literal["ball-bearing"] = "ball-bearing"
    bore_mm: Length
    outer_diameter_mm: Length
    width_mm: Length
