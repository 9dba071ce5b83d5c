"""Nuts by style and standard; two standards share the name "lock nut" and differ in height, so one must be said."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from scantling.tables.csv_table import Row, UnfitError, inches_mm, number, pick, rows
from scantling.tables.threads import Thread, thread

# Where a style has several standards and one of them is plainly meant.
DEFAULTS = {"plain": "ISO 4032"}


@dataclass(frozen=True)
class Nut:
    """A hexagon nut.

    style : plain, lock (with a plastic ring) or thin    height_mm : largest allowed
    height_min_mm : smallest allowed, None where not known    across_flats_mm : wrench size
    """

    style: str
    standard: str
    thread: str
    height_mm: float
    height_min_mm: float | None
    across_flats_mm: float
    source: str


@cache
def nut(name: str, thread_name: str) -> Nut:
    """Return the nut; ``name`` is a style (plain, lock, thin), a standard, or both ("lock DIN 985").

    A plain metric nut without a standard is ISO 4032; a metric lock nut must name its standard.
    Raises ``LookUpError`` where none or several are meant.

    >>> nut("plain", "M5").height_mm, nut("DIN 934", "M5").height_mm
    (4.7, 4.0)
    """
    found = thread(thread_name)
    candidates = [row for row in _table(found) if name in _names(row)]
    if not candidates:
        known = dict.fromkeys(name for row in _table(found) for name in _names(row))
        pick("nut", name, known)
    sizes = [row for row in candidates if row["size" if found.is_inch else "thread"] == found.size]
    if not sizes:
        raise UnfitError(f"no nut {name!r} is described for {thread_name!r}", "describe it as a part with its sizes")
    row = _the_one(name, sizes)
    return _inch_nut(row, found) if found.is_inch else _metric_nut(row, found)


def nuts_for(thread_name: str) -> tuple[Nut, ...]:
    """Return every nut in the tables that goes on this thread, in the order of the table."""
    found = thread(thread_name)
    sizes = [row for row in _table(found) if row["size" if found.is_inch else "thread"] == found.size]
    return tuple(nut(row["standard"], thread_name) for row in sizes)


def _table(found: Thread) -> tuple[Row, ...]:
    """The rows for this family of threads."""
    return rows("nuts_inch" if found.is_inch else "nuts_metric")


def _names(row: Row) -> tuple[str, str, str]:
    """What a nut may be called."""
    return row["style"], row["standard"], f"{row['style']} {row['standard']}"


def _the_one(name: str, candidates: list[Row]) -> Row:
    """The one that is meant; several that differ in height are a question to the maker."""
    default = [row for row in candidates if row["standard"] == DEFAULTS.get(name)]
    chosen = default or candidates
    if len(chosen) > 1:
        each = " or ".join(f"'{row['style']} {row['standard']}' ({row['height_mm']} mm high)" for row in chosen)
        raise UnfitError(f"{name!r} is the name of several nuts that differ in height", f"say {each}")
    return chosen[0]


def _metric_nut(row: Row, found: Thread) -> Nut:
    """Build a nut from a row in mm."""
    return Nut(
        style=row["style"],
        standard=row["standard"],
        thread=found.name,
        height_mm=float(row["height_mm"]),
        height_min_mm=number(row["height_min_mm"]),
        across_flats_mm=float(row["across_flats_mm"]),
        source=row["source"],
    )


def _inch_nut(row: Row, found: Thread) -> Nut:
    """Build a nut from a row in inches."""
    return Nut(
        style=row["style"],
        standard=row["standard"],
        thread=found.name,
        height_mm=inches_mm(row["height_in"]),
        height_min_mm=inches_mm(row["height_min_in"]) if row["height_min_in"] else None,
        across_flats_mm=inches_mm(row["across_flats_in"]),
        source=row["source"],
    )
