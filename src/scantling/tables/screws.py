"""Heads and preferred lengths of screws, metric and inch."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import NamedTuple

from scantling.tables.csv_table import Row, UnfitError, inches_mm, number, pick, rows
from scantling.tables.threads import Thread, thread


@dataclass(frozen=True)
class ScrewHead:
    """The head of a screw of one standard.

    diameter_mm : nominal (hexagon: over corners; countersunk: theoretical sharp edge)
    diameter_max_mm : largest allowed (knurled, sharp)    height_mm : largest; 0 for set screws
    countersink_deg : None where the head is not sunk; then the length does not include the head
    thread_length_mm : of screws too long to be threaded all the way; None where all are
    driver : what turns it, "hex 2.5", "wrench 7", "PH2"
    """

    head: str
    thread: str
    standard: str
    diameter_mm: float
    diameter_max_mm: float
    height_mm: float
    driver: str
    countersink_deg: float | None
    thread_length_mm: float | None
    source: str

    @property
    def length_includes_head(self) -> bool:
        """True for sunk heads."""
        return self.countersink_deg is not None


class ScrewLength(NamedTuple):
    """A length as it is sold: in mm, and written as the shop writes it."""

    length_mm: float
    label: str


@cache
def screw_head(head: str, thread_name: str) -> ScrewHead:
    """Return the head; ``head`` is socket, button, countersunk, hexagon, pan or set.

    Raises ``LookUpError`` for heads that the standards do not have in this size.

    >>> screw_head("socket", "M3").height_mm
    3.0
    """
    row, found = _row(head, thread_name)
    return _inch_head(row, found) if found.is_inch else _metric_head(row, found)


@cache
def screw_lengths(head: str, thread_name: str) -> tuple[ScrewLength, ...]:
    """Return the lengths that the standard prefers for this head and thread, ascending.

    >>> [length.label for length in screw_lengths("socket", "M3")][:4]
    ['5', '6', '8', '10']
    """
    row, found = _row(head, thread_name)
    labels = pick("series of lengths", row["standard"], _series())
    measure = inches_mm if found.is_inch else float
    ends = ("shortest", "longest") if found.is_inch else ("shortest_mm", "longest_mm")
    shortest_mm, longest_mm = (measure(row[end]) for end in ends)
    unit = " in" if found.is_inch else ""
    every = [ScrewLength(measure(label), label + unit) for label in labels]
    return tuple(one for one in every if shortest_mm <= one.length_mm <= longest_mm)


def head_kinds() -> tuple[str, ...]:
    """Return the names of all heads, in the order of the table."""
    return tuple(dict.fromkeys(row["head"] for row in rows("screw_heads_metric")))


def _row(head: str, thread_name: str) -> tuple[Row, Thread]:
    """The table's row for head and thread, and the thread."""
    found = thread(thread_name)
    pick("screw head", head, dict.fromkeys(head_kinds()))
    table = rows("screw_heads_inch" if found.is_inch else "screw_heads_metric")
    column = "size" if found.is_inch else "thread"
    sizes = {row[column]: row for row in table if row["head"] == head}
    if found.size not in sizes:
        has = f"{head} heads are described for {', '.join(sizes)}" if sizes else "describe it as a part with its sizes"
        raise UnfitError(f"no {head} head is described for {thread_name!r}", has)
    return sizes[found.size], found


@cache
def _series() -> dict[str, tuple[str, ...]]:
    """Preferred lengths by standard."""
    return {row["standard"]: tuple(row["lengths"].split()) for row in rows("screw_lengths")}


def _metric_head(row: Row, found: Thread) -> ScrewHead:
    """Build a head from a row in mm."""
    return ScrewHead(
        head=row["head"],
        thread=found.name,
        standard=row["standard"],
        diameter_mm=float(row["diameter_mm"]),
        diameter_max_mm=float(row["diameter_max_mm"]),
        height_mm=float(row["height_mm"]),
        driver=row["driver"],
        countersink_deg=number(row["countersink_deg"]),
        thread_length_mm=number(row["thread_length_mm"]),
        source=row["source"],
    )


def _inch_head(row: Row, found: Thread) -> ScrewHead:
    """Build a head from a row in inches; such tables print maxima only."""
    diameter_mm = inches_mm(row["diameter_in"])
    return ScrewHead(
        head=row["head"],
        thread=found.name,
        standard=row["standard"],
        diameter_mm=diameter_mm,
        diameter_max_mm=diameter_mm,
        height_mm=inches_mm(row["height_in"]),
        driver=row["driver"],
        countersink_deg=number(row["countersink_deg"]),
        thread_length_mm=inches_mm(row["thread_length_in"]) if row["thread_length_in"] else None,
        source=row["source"],
    )
