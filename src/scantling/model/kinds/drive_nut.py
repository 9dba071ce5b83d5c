"""The nut that runs on a drive screw."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Length, Ratio
from scantling.model.part import Part


class DriveNut(Part):
    """A nut on a drive screw.

    backlash_mm : its axial play    float_mm : how far it shifts sideways, either way, in its seat
    """

    kind: Literal["drive-nut"] = "drive-nut"
    thread: str
    friction_ratio: Ratio | None = None
    backlash_mm: Length | None = None
    float_mm: Length | None = None
