"""Flat washers by style or standard."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from scantling.tables.csv_table import Row, UnfitError, inches_mm, pick, rows
from scantling.tables.threads import Thread, thread


@dataclass(frozen=True)
class Washer:
    """A flat washer; style is plain or large (about three diameters wide, spreads the load on wood and plastic)."""

    style: str
    standard: str
    thread: str
    inner_diameter_mm: float
    outer_diameter_mm: float
    thickness_mm: float
    thickness_max_mm: float
    source: str


@cache
def washer(name: str, thread_name: str) -> Washer:
    """Return the washer; ``name`` is a style (plain, large) or a standard.

    Raises ``LookUpError`` for names and sizes that are not in the tables.

    >>> washer("large", "M5").outer_diameter_mm
    15.0
    """
    found = thread(thread_name)
    table = rows("washers_inch" if found.is_inch else "washers_metric")
    pick("washer", name, dict.fromkeys(word for row in table for word in (row["style"], row["standard"])))
    for row in table:
        if name in (row["style"], row["standard"]) and row["size"] == found.size:
            return _washer(row, found)
    raise UnfitError(f"no {name} washer is described for {thread_name!r}", "describe it as a part with its sizes")


def _washer(row: Row, found: Thread) -> Washer:
    """Build a washer from a row in mm or in inches."""
    unit = "in" if found.is_inch else "mm"
    columns = [f"inner_{unit}", f"outer_{unit}", f"thickness_{unit}", f"thickness_max_{unit}"]
    inner, outer, thickness, thickest = (inches_mm(row[c]) if found.is_inch else float(row[c]) for c in columns)
    return Washer(row["style"], row["standard"], found.name, inner, outer, thickness, thickest, row["source"])
