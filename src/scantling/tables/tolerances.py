"""How far sizes come out off what was wanted: by the way of making them, and of bought parts in general."""

from __future__ import annotations

from functools import cache

from scantling.quantities import Figure, Grade
from scantling.tables.csv_table import pick, rows

PERCENT = 0.01


@cache
def tolerance(name: str) -> Figure:
    """Return a ± with its band, as typical: in mm, a scale as a ratio; ``LookUpError`` for a name not in the table.

    >>> tolerance("hole by hand").value, tolerance("scale of a template").value
    (0.4, 0.0015)
    """
    row = pick("tolerance", name, {row["tolerance"]: row for row in rows("tolerances")})
    unit = PERCENT if row["unit"] == "%" else 1.0
    value, low, high = (float(row[f"{end}_number"]) * unit for end in ("usual", "low", "high"))
    return Figure(value, low, high, Grade.TYPICAL, row["source"])


def general_tolerance_mm(size_mm: float) -> float:
    """Return the ± of a length without a tolerance of its own, class medium; beyond the table that of its end.

    >>> general_tolerance_mm(8), general_tolerance_mm(350)
    (0.2, 0.5)
    """
    table = rows("general_tolerances")
    row = next((row for row in table if abs(size_mm) <= float(row["up_to_mm"])), table[-1])
    return float(row["tolerance_mm"])
