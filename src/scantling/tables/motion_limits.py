"""Limits of screw axes and of moving things, and class values of what screw axes are made of."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from scantling.tables.bands import Band, known_band
from scantling.tables.csv_table import pick, rows


@dataclass(frozen=True)
class MotionLimit:
    """A limit with its unit (empty for a ratio) and the key of its source."""

    amount: float
    unit: str
    source: str


@dataclass(frozen=True)
class ScrewMake:
    """How crooked and how untrue a screw may be: bow and error of its lead on 300 mm."""

    bow_mm: Band
    lead_error_mm: Band
    source: str


@dataclass(frozen=True)
class SoftTube:
    """Tube that serves as a coupler, clamped by hand at both ends."""

    modulus_mpa: Band
    friction_ratio: Band
    clamp_force_n: Band
    source: str


@cache
def motion_limit(name: str) -> MotionLimit:
    """Return a limit by its name; ``LookUpError`` for one that is not in the table.

    >>> motion_limit("lost motion").amount
    0.1
    """
    row = pick("limit of motion", name, {row["limit"]: row for row in rows("motion_limits")})
    return MotionLimit(float(row["amount_number"]), row["unit"], row["source"])


@cache
def screw_make(family: str) -> ScrewMake:
    """Return what to expect of a screw of a family of threads: trapezoidal ones are rolled to drive, others to tie.

    >>> screw_make("trapezoidal").bow_mm.high
    0.25
    """
    make = "trapezoidal" if family == "trapezoidal" else "threaded rod"
    row = pick("make of screw", make, {row["make"]: row for row in rows("screw_makes")})
    return ScrewMake(known_band(row, "bow", "mm"), known_band(row, "lead_error", "mm"), row["source"])


@cache
def soft_tube() -> SoftTube:
    """Return the class values of soft tube.

    >>> soft_tube().friction_ratio.typical
    0.5
    """
    row = rows("soft_tubes")[0]
    friction = Band(*(float(row[name]) for name in ("friction_low_ratio", "friction_ratio", "friction_high_ratio")))
    return SoftTube(known_band(row, "modulus", "mpa"), friction, known_band(row, "clamp", "n"), row["source"])
