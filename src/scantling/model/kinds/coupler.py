"""A coupler between motor shaft and screw."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Length
from scantling.model.part import Part


class Coupler(Part):
    """Joins two round ends; ``clamping`` couplers grip any shaft up to their bore by closing a slit or a tube."""

    kind: Literal["coupler"] = "coupler"
    motor_bore_mm: Length
    screw_bore_mm: Length
    grip: Literal["clamping", "set-screw"] = "clamping"
