"""Materials by name: stiffness, density, hardness, growth and softening, each with its band."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from scantling.errors import LookUpError
from scantling.tables.bands import Band, band, known_band
from scantling.tables.csv_table import Row, UnfitError, number, rows

ALIASES = {"aluminum": "aluminium", "stainless steel": "stainless", "hardened stainless steel": "hardened stainless"}


@dataclass(frozen=True)
class Material:
    """A class of material.

    modulus_mpa : along the grain or the strong direction    cross_modulus_mpa : across it; the same where there is none
    hardness_hv : Vickers    softening_c : from where a loaded part creeps to the glass transition
    All but name, density and source may be None where they make no sense or are not known.
    """

    name: str
    modulus_mpa: Band | None
    cross_modulus_mpa: Band | None
    poisson_ratio: float | None
    density_kg_m3: Band
    yield_mpa: Band | None
    hardness_hv: Band | None
    growth_um_m_k: float | None
    specific_j_kg_k: float | None
    softening_c: Band | None
    source: str


@cache
def material(name: str, thickness_mm: float | None = None) -> Material:
    """Return the material; for boards whose stiffness depends on the thickness that must be said.

    Raises ``LookUpError`` for unknown names and for thicknesses that the table does not hold.

    >>> material("MDF", 9.0).modulus_mpa
    Band(low=2700.0, typical=3000.0, high=4000.0)
    """
    key = ALIASES.get(name.lower(), name)
    found = [row for row in rows("materials") if row["material"].lower() == key.lower()]
    if not found:
        raise LookUpError("material", name, material_names())
    if len(found) == 1:
        return _material(found[0])
    if thickness_mm is None:
        raise UnfitError(f"{name} is stiffer the thinner it is", "say its thickness")
    for row in found:
        if float(row["thickness_from_mm"]) < thickness_mm <= float(row["thickness_to_mm"]):
            return _material(row)
    raise UnfitError(
        f"no figures for {name} of {thickness_mm:g} mm", f"the table ends at {found[-1]['thickness_to_mm']} mm"
    )


def material_names() -> tuple[str, ...]:
    """Return the names of all materials in the order of the table."""
    return tuple(dict.fromkeys(row["material"] for row in rows("materials")))


def _material(row: Row) -> Material:
    """Build a material from its row."""
    modulus = band(row, "modulus", "mpa")
    return Material(
        name=row["material"],
        modulus_mpa=modulus,
        cross_modulus_mpa=band(row, "cross", "mpa") or modulus,
        poisson_ratio=number(row["poisson_ratio"]),
        density_kg_m3=known_band(row, "density", "kg_m3"),
        yield_mpa=band(row, "yield", "mpa"),
        hardness_hv=band(row, "hardness", "hv"),
        growth_um_m_k=number(row["growth_um_m_k"]),
        specific_j_kg_k=number(row["specific_j_kg_k"]),
        softening_c=band(row, "softening", "c"),
        source=row["source"],
    )
