"""Friction of the pairs that move in a machine."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from scantling.tables.bands import Band, band
from scantling.tables.csv_table import pick, rows


@dataclass(frozen=True)
class Friction:
    """Coefficient of friction of a pair, and the pull of seals and grease that one such bearing adds."""

    pair: str
    friction_ratio: Band
    drag_n: Band | None
    source: str


@cache
def friction(pair: str) -> Friction:
    """Return the friction of a pair: ball, polymer or bronze bushing, trapezoidal screw, threaded rod, dry steel bolt.

    >>> friction("polymer bushing").friction_ratio.typical
    0.25
    """
    row = pick("pair that rubs", pair, {row["pair"]: row for row in rows("frictions")})
    values = Band(float(row["low_ratio"]), float(row["friction_ratio"]), float(row["high_ratio"]))
    return Friction(row["pair"], values, band(row, "drag", "n"), row["source"])
