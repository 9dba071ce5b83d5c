"""Heat: glass points of plastics, rises beside what is warm, insulating layers."""

from __future__ import annotations

from functools import cache

from scantling.quantities import Figure, Grade
from scantling.tables.csv_table import Row, pick, rows


@cache
def glass_point_c(plastic: str) -> Figure | None:
    """Return the glass point of a plastic; None where the table does not have it.

    >>> glass_point_c("PETG").value
    79.0
    """
    found = {row["plastic"].casefold(): row for row in rows("glass_points")}.get(plastic.casefold())
    return None if found is None else _figure(found, "low_c", "glass_c", "high_c")


@cache
def zone_rise_k(zone: str) -> Figure:
    """Return how much warmer than the room it gets in a class of zones; ``LookUpError`` where there is none.

    >>> zone_rise_k("motor").high
    35.0
    """
    row = pick("zone", zone, {row["zone"]: row for row in rows("zones")})
    return _figure(row, "low_k", "rise_k", "high_k")


@cache
def conductivity_w_m_k(material: str | None) -> Figure | None:
    """Return the conductivity of an insulating material; None where the table does not have it.

    >>> conductivity_w_m_k("cork").value
    0.045
    """
    found = {row["material"]: row for row in rows("insulations")}.get((material or "").casefold())
    return None if found is None else _figure(found, "low_w_m_k", "conductivity_w_m_k", "high_w_m_k")


def _figure(row: Row, low: str, value: str, high: str) -> Figure:
    return Figure(float(row[value]), float(row[low]), float(row[high]), Grade.TYPICAL, row["source"])
