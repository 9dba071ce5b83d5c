"""A typical value with the band it lies in."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.errors import BrokenPromiseError
from scantling.tables.csv_table import Row


@dataclass(frozen=True)
class Band:
    """A typical value and its band, ``low <= typical <= high``; the unit is in the name of what holds it."""

    low: float
    typical: float
    high: float


def band(row: Row, stem: str, unit: str) -> Band | None:
    """Return the band in the columns ``stem_low_unit``, ``stem_unit``, ``stem_high_unit``; None where they are empty.

    Where a table has no column of typical values, the middle of the band stands for them.
    """
    low, high = row[f"{stem}_low_{unit}"], row[f"{stem}_high_{unit}"]
    if not low:
        return None
    middle = row.get(f"{stem}_{unit}")
    return Band(float(low), float(middle) if middle else (float(low) + float(high)) / 2, float(high))


def known_band(row: Row, stem: str, unit: str) -> Band:
    """Return a band that every row of its table has; ``BrokenPromiseError`` where one is empty after all."""
    found = band(row, stem, unit)
    if found is None:
        raise BrokenPromiseError(f"the table has no {stem} in one of its rows: {dict(row)}")
    return found
