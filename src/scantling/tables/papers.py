"""Paper sizes, upright."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from scantling.errors import LookUpError
from scantling.tables.csv_table import rows


@dataclass(frozen=True)
class Paper:
    """A sheet of paper, upright."""

    name: str
    width_mm: float
    height_mm: float
    source: str


@cache
def paper(name: str) -> Paper:
    """Return the paper; upper and lower case do not matter. ``LookUpError`` where it is not in the table.

    >>> paper("A4").height_mm
    297.0
    """
    for row in rows("papers"):
        if row["paper"].lower() == name.strip().lower():
            return Paper(row["paper"], float(row["width_mm"]), float(row["height_mm"]), row["source"])
    raise LookUpError("paper", name, paper_names())


def paper_names() -> tuple[str, ...]:
    """Return the names of all papers, largest ISO sheet first."""
    return tuple(row["paper"] for row in rows("papers"))
