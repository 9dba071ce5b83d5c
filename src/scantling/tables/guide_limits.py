"""Limits and usual values of rods, bushings, holders and seats."""

from __future__ import annotations

from functools import cache

from scantling.quantities import Figure, Grade
from scantling.tables.csv_table import pick, rows


@cache
def guide_limit(name: str) -> Figure:
    """Return a limit or usual value with its band, as typical; ``LookUpError`` for a name that is not in the table.

    >>> guide_limit("backing of a holder").high
    1.0
    """
    row = pick("limit of guides", name, {row["limit"]: row for row in rows("guide_limits")})
    value = float(row["usual_number"])
    return Figure(
        value, float(row["low_number"] or value), float(row["high_number"] or value), Grade.TYPICAL, row["source"]
    )
