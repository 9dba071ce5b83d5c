"""Holes for threads: to pass through, to be tapped, to drive a wood screw or set an insert into."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from scantling.errors import LookUpError
from scantling.tables.bits import bit
from scantling.tables.csv_table import Row, pick, rows
from scantling.tables.threads import thread

Fit = Literal["close", "medium", "coarse"]
FITS: tuple[Fit, ...] = ("close", "medium", "coarse")

# A machine screw that cuts its own thread into wood-based panel: pilot as a share of the thread's diameter.
# From memory: workshop practice, no published source found; M3 2.5–2.7, M4 3.3–3.5, M5 4.2–4.5.
PANEL_PILOT_LOW_RATIO = 0.85
PANEL_PILOT_HIGH_RATIO = 0.90


@dataclass(frozen=True)
class Hole:
    """A hole as its standard gives it; ``bit`` is the name of the bit that makes it, ``source`` a key."""

    diameter_mm: float
    bit: str
    source: str


@dataclass(frozen=True)
class InsertHole:
    """Where a brass insert is set with heat: hole as made, and the insert's own diameter."""

    diameter_mm: float
    insert_diameter_mm: float
    source: str


def clearance_hole(thread_name: str, fit: str) -> Hole:
    """Return the hole that a screw passes through; ``fit`` is close, medium or coarse (inch: close, normal, loose).

    >>> clearance_hole("M5", "medium").diameter_mm
    5.5
    """
    if fit not in FITS:
        raise LookUpError("fit of a clearance hole", fit, FITS)
    found = thread(thread_name)
    if found.is_inch:
        row = pick("clearance hole", found.size, _by("clearance_holes_inch", "size"))
        return Hole(bit(row[fit]).diameter_mm, row[fit], row["source"])
    row = pick("clearance hole", found.size, _by("clearance_holes_metric", "size"))
    return Hole(float(row[f"{fit}_mm"]), row[f"{fit}_mm"], row["source"])


def tapping_drill(thread_name: str) -> Hole:
    """Return the hole to drill before a thread is cut; ``LookUpError`` for threads that are not tapped by hand.

    >>> tapping_drill("1/4-20").bit
    '#7'
    """
    row = pick("tapping drill", thread(thread_name).name, _by("tapping_drills", "thread"))
    return Hole(bit(row["bit"]).diameter_mm, row["bit"], row["source"])


def wood_pilot(screw_mm: float, wood: str) -> Hole:
    """Return the pilot of a wood screw of the nearest nominal diameter; ``wood`` is softwood or hardwood."""
    if wood not in ("softwood", "hardwood"):
        raise LookUpError("wood of a pilot hole", wood, ("softwood", "hardwood"))
    row = min(rows("wood_pilots"), key=lambda one: abs(float(one["screw_mm"]) - screw_mm))
    if abs(float(row["screw_mm"]) - screw_mm) > 0.5:
        raise LookUpError(
            "pilot hole of a wood screw", f"{screw_mm:g} mm", [r["screw_mm"] for r in rows("wood_pilots")]
        )
    return Hole(float(row[f"{wood}_mm"]), row[f"{wood}_mm"], row["source"])


def insert_hole(thread_name: str) -> InsertHole:
    """Return the hole for a brass insert of this thread that is set with heat."""
    row = pick("insert", thread(thread_name).name, _by("insert_holes", "thread"))
    return InsertHole(float(row["hole_mm"]), float(row["outer_diameter_mm"]), row["source"])


def _by(table: str, column: str) -> dict[str, Row]:
    """Rows of a table by one column."""
    return {row[column]: row for row in rows(table)}
