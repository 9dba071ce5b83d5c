"""What soft material bears where it is clamped, and how often a thread in it may be done up."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from scantling.tables.bands import Band, band, known_band
from scantling.tables.csv_table import pick, rows


@dataclass(frozen=True)
class ClampLimit:
    """A material that a head sinks into; ``shear_mpa`` is None for wood, where the density decides."""

    material: str
    pressure_mpa: Band
    shear_mpa: Band | None
    source: str

    @property
    def is_wood(self) -> bool:
        """True for solid wood and wood-based panel."""
        return self.shear_mpa is None


@dataclass(frozen=True)
class Tightenings:
    """How often a thread held in this way may be done up."""

    holds: str
    count: Band
    source: str


@cache
def clamp_limit(material: str) -> ClampLimit | None:
    """Return what a soft material bears; None for metal and for what the table does not hold.

    >>> clamp_limit("MDF").pressure_mpa.typical
    18.0
    """
    found = {row["material"].lower(): row for row in rows("clamp_limits")}.get(material.lower())
    if found is None:
        return None
    pressure_mpa, shear_mpa = known_band(found, "pressure", "mpa"), band(found, "shear", "mpa")
    return ClampLimit(found["material"], pressure_mpa, shear_mpa, found["source"])


@cache
def clamp_band(name: str) -> Band:
    """Return a share or a friction by which joints are judged.

    >>> clamp_band("friction of clamped faces").typical
    0.3
    """
    row = pick("band of clamped joints", name, {row["name"]: row for row in rows("clamp_bands")})
    return Band(float(row["low_ratio"]), float(row["ratio"]), float(row["high_ratio"]))


@cache
def tightenings(holds: str) -> Tightenings:
    """Return how often a thread may be done up that is held by ``panel``, ``panel edge``, ``plastic``, ``lock nut``.

    >>> tightenings("panel").count.typical
    3.0
    """
    row = pick("thread that wears", holds, {row["holds"]: row for row in rows("tightenings")})
    low, usual, high = (float(row[f"{name}_count"]) for name in ("low", "usual", "high"))
    return Tightenings(row["holds"], Band(low, usual, high), row["source"])
