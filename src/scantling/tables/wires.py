"""Copper wires by cross-section."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from scantling.errors import LookUpError
from scantling.tables.csv_table import number, rows


@dataclass(frozen=True)
class Wire:
    """Largest resistance of a plain copper wire at 20 °C; solid_ohm_km None where the standard has no such wire."""

    area_mm2: float
    solid_ohm_km: float | None
    flexible_ohm_km: float
    source: str


@cache
def wire(area_mm2: float) -> Wire:
    """Return the wire of a standard cross-section; ``LookUpError`` between the standard ones.

    >>> wire(1.5).flexible_ohm_km
    13.3
    """
    for row in rows("wires"):
        if float(row["area_mm2"]) == area_mm2:
            return Wire(area_mm2, number(row["solid_ohm_km"]), float(row["flexible_ohm_km"]), row["source"])
    raise LookUpError("cross-section of wire", f"{area_mm2:g}", [row["area_mm2"] for row in rows("wires")])
