"""Wire and cable by the length."""

from __future__ import annotations

from typing import Literal

from scantling.model.base import Area, Count, Temperature
from scantling.model.part import Part


class Wire(Part):
    """Flexible copper wire or cable, sold by length on rolls.

    area_mm2 : copper of one core, or ``gauge``, its American gauge    cores : in one sheath
    insulation_c : what its insulation stands at the conductor, 70 °C of plain PVC, 180 °C of silicone
    """

    kind: Literal["wire"] = "wire"
    area_mm2: Area | None = None
    gauge: Count | None = None
    cores: Count = 1
    insulation_c: Temperature | None = None
    colour: str = ""
