"""Toothed belts by profile: pitch, geometry, stiffness, mass, tension."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from itertools import pairwise

from scantling.errors import nearest
from scantling.tables.bands import Band, known_band
from scantling.tables.csv_table import UnfitError, number, rows


@dataclass(frozen=True)
class BeltProfile:
    """A profile, named by pitch and tooth form; two belts that look alike may differ in either.

    pitch_line_offset_mm : from the pulley's outside to the cords    least_teeth : smallest customary pulley
    strain_stiffness_n_mm : force per unit strain and per mm of width    mass_g_m_mm : per length and mm of width
    breaking_n_mm : breaking tension per mm of width, None where not known
    """

    profile: str
    pitch_mm: Fraction
    pitch_line_offset_mm: float
    least_teeth: int
    strain_stiffness_n_mm: Band
    mass_g_m_mm: Band
    breaking_n_mm: float | None
    source: str


@cache
def belt_profile(name: str) -> BeltProfile:
    """Return the profile; blanks do not matter. Raises ``UnfitError`` (a ``LookUpError``) with the nearest names.

    >>> belt_profile("2 mm round").pitch_mm
    Fraction(2, 1)
    """
    wanted = re.sub(r"\s+", "", name.lower())
    for row in rows("belt_profiles"):
        if re.sub(r"\s+", "", row["profile"]) == wanted:
            return BeltProfile(
                profile=row["profile"],
                pitch_mm=Fraction(row["pitch_mm"]),
                pitch_line_offset_mm=float(row["pitch_line_offset_mm"]),
                least_teeth=int(row["least_teeth"]),
                strain_stiffness_n_mm=known_band(row, "strain", "n_mm"),
                mass_g_m_mm=known_band(row, "mass", "g_m_mm"),
                breaking_n_mm=number(row["breaking_n_mm"]),
                source=row["source"],
            )
    raise UnfitError(f"no belt profile is called {name!r}", nearest(name, belt_profile_names()))


def belt_profile_names() -> tuple[str, ...]:
    """Return the names of all profiles."""
    return tuple(row["profile"] for row in rows("belt_profiles"))


@cache
def installation_tension_n(profile: str, width_mm: float) -> float | None:
    """Return the tension at which a belt is installed; None where no table tells it.

    Known for 2 mm belts with round teeth from 2 to 15 mm of width; straight between the table's widths.

    >>> installation_tension_n("2 mm round", 6.0)
    15.8
    """
    if belt_profile(profile).profile != "2 mm round":
        return None
    points = [(float(row["width_mm"]), float(row["tension_n"])) for row in rows("belt_tensions")]
    for (low_mm, low_n), (high_mm, high_n) in pairwise(points):
        if low_mm <= width_mm <= high_mm:
            return low_n + (width_mm - low_mm) / (high_mm - low_mm) * (high_n - low_n)
    return None
