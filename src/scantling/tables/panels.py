"""Sheets as plates: shear, stiffness through the thickness, and whether screws slip in them as in wood."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from scantling.tables.csv_table import number, rows

PLAIN_POISSON_RATIO = 0.3  # of a sheet whose material has none in the table


@dataclass(frozen=True)
class PanelMaterial:
    """What a material is like as a panel; None where it follows from the modulus."""

    name: str
    shear_mpa: float | None
    through_mpa: float | None
    poisson_ratio: float
    fibrous: bool
    source: str


@cache
def panel_material(name: str) -> PanelMaterial | None:
    """Return a fibrous panel's figures; None for sheets that are alike all ways.

    >>> panel_material("OSB").shear_mpa, panel_material("aluminium")
    (1080.0, None)
    """
    for row in rows("panels"):
        if row["material"].lower() == name.lower():
            ratio = number(row["poisson_ratio"])
            return PanelMaterial(
                name=row["material"],
                shear_mpa=number(row["shear_mpa"]),
                through_mpa=number(row["through_mpa"]),
                poisson_ratio=PLAIN_POISSON_RATIO if ratio is None else ratio,
                fibrous=row["fibrous"] == "yes",
                source=row["source"],
            )
    return None
