"""Copper wires by cross-section: resistance, what they carry for good, alone and in bundles."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from math import exp, log

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


@cache
def carried_a(area_mm2: float) -> float:
    """Return what a circuit of such wires carries for good on a surface at 30 °C, insulation for 70 °C.

    Between the sizes of the table along a straight line in logarithms; ``LookUpError`` outside of it.

    >>> carried_a(1.5)
    18.0
    """
    points = [(float(row["area_mm2"]), float(row["on_a_surface_a"])) for row in rows("wire_currents")]
    for (low_mm2, low_a), (high_mm2, high_a) in pairwise(points):
        if low_mm2 <= area_mm2 <= high_mm2:
            share = log(area_mm2 / low_mm2) / log(high_mm2 / low_mm2)
            return round(low_a * exp(share * log(high_a / low_a)), 9)
    raise LookUpError("cross-section of wire", f"{area_mm2:g}", [row["area_mm2"] for row in rows("wire_currents")])


@cache
def bundling_ratio(circuits: int) -> float:
    """Return the factor of each of several circuits in one bundle; that of the next larger number in the table.

    >>> bundling_ratio(4), bundling_ratio(11)
    (0.65, 0.45)
    """
    known = [(int(row["circuits_count"]), float(row["factor_ratio"])) for row in rows("wire_bundles")]
    return next((factor for number, factor in known if number >= circuits), known[-1][1])
