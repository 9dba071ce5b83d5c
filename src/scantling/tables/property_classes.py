"""Strength of screws by property class."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from scantling.tables.csv_table import pick, rows


@dataclass(frozen=True)
class PropertyClass:
    """A property class of screws (8.8, A2-70); stainless ones: proof stress is the 0.2 % limit."""

    name: str
    proof_mpa: float
    yield_mpa: float
    ultimate_mpa: float
    source: str


@cache
def property_class(name: str) -> PropertyClass:
    """Return the class; ``LookUpError`` where it is not in the table.

    >>> property_class("8.8").proof_mpa
    580.0
    """
    row = pick("property class", name, {row["property_class"]: row for row in rows("property_classes")})
    proof, limit, ultimate = (float(row[column]) for column in ("proof_mpa", "yield_mpa", "ultimate_mpa"))
    return PropertyClass(row["property_class"], proof, limit, ultimate, row["source"])
