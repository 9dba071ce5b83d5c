"""Figures of a part's material from the class table, where the part does not give its own: typical, with their band."""

from __future__ import annotations

from scantling.checks.inputs import Input, known, or_range, or_typical
from scantling.errors import LookUpError
from scantling.formulas.contact import VICKERS_POINTS, rockwell_from_vickers_hrc, vickers_from_rockwell_hv
from scantling.model.kinds import Rod, SheetStock
from scantling.model.part import Part
from scantling.quantities import Figure, Grade
from scantling.tables.bands import Band
from scantling.tables.materials import Material, material

# Bands for a material that is not named, from memory: any steel, soft to hardened, the softest to the stiffest sheet.
ANY_STEEL_MPA = Figure(203_000.0, 190_000.0, 215_000.0)
BAR_HV = Figure(180.0, 120.0, 238.0)  # steel below 20 HRC, where Rockwell C has no meaning
POSSIBLE_HV = (120.0, 800.0)
POSSIBLE_SHEET_MPA = (1_000.0, 210_000.0)


def material_of(name: str | None, thickness_mm: float | None = None) -> Material | None:
    """Return the class of a material; None where it is not said or not in the table."""
    try:
        return None if name is None else material(name, thickness_mm)
    except LookUpError:
        return None


def figure_of(band: Band | None, source: str) -> Figure | None:
    """Return a band of a table as a typical figure."""
    return None if band is None else Figure(band.typical, band.low, band.high, Grade.TYPICAL, source)


def steel_modulus(part: Part) -> Input:
    """Return the modulus of a rod or screw: that of its material, else of any steel."""
    found = material_of(part.material)
    usual = figure_of(found.modulus_mpa, found.name) if found else None
    return or_typical(f"modulus of {part.id}", None, usual or ANY_STEEL_MPA, "MPa")


def sheet_modulus(stock: SheetStock, thickness_mm: float, along_grain: bool) -> Input:
    """Return the modulus of a sheet, across its grain unless that is known to run along; missing where unknown."""
    what = f"modulus of {stock.id}"
    if stock.modulus_mpa is not None:
        return known(what, stock.modulus_mpa, "MPa")
    found = material_of(stock.material, thickness_mm)
    band = None if found is None else found.modulus_mpa if along_grain else found.cross_modulus_mpa
    usual = figure_of(band, stock.material)
    if usual is None:
        low, high = POSSIBLE_SHEET_MPA
        return Input(what, (low + high) / 2, low, high, "MPa", missing=True)
    return known(what, usual, "MPa")


def hardness_input(rod: Rod) -> Input:
    """Return the hardness of a rod in Vickers: given, else that of its material; missing where unknown."""
    what, given = f"surface hardness of {rod.id}", rod.surface_hardness_hrc
    if given is None:
        found = material_of(rod.material)
        usual = figure_of(found.hardness_hv, found.name) if found else None
        if usual is None:
            return Input(what, sum(POSSIBLE_HV) / 2, *POSSIBLE_HV, "HV", missing=True)
        return known(what, usual, "HV")
    softest, hardest = VICKERS_POINTS[0][0], VICKERS_POINTS[-1][0]
    if given.value < softest:
        return or_typical(what, None, BAR_HV, "HV")
    nominal, low, high = (
        vickers_from_rockwell_hv(min(hardest, max(softest, end))) for end in (given.value, given.low, given.high)
    )
    return Input(what, nominal, low, high, "HV")


def rockwell_input(rod: Rod, possible_hrc: tuple[float, float]) -> Input:
    """Return the hardness of a rod in Rockwell C: given, else that of its material; missing where unknown.

    possible_hrc : what it may be where it is missing; steel too soft for the scale counts as its low end, 20
    """
    what, given = f"surface hardness of {rod.id}", rod.surface_hardness_hrc
    found = material_of(rod.material)
    band = found.hardness_hv if found else None
    if given is not None or band is None:
        return or_range(what, given, *possible_hrc, "HRC")
    least_hv, most_hv = VICKERS_POINTS[0][1], VICKERS_POINTS[-1][1]
    low, nominal, high = (
        rockwell_from_vickers_hrc(min(most_hv, max(least_hv, end))) for end in (band.low, band.typical, band.high)
    )
    return or_typical(what, None, Figure(nominal, low, high), "HRC")


def specific_heat_j_kg_k(part: Part) -> float | None:
    """Return the specific heat of a part's material; None where it is not known."""
    found = material_of(part.material)
    return None if found is None else found.specific_j_kg_k
