"""Cross-sections of the bars of a frame: rods, threaded rods, profiles."""

from __future__ import annotations

from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.sizes import feature
from scantling.errors import LookUpError
from scantling.formulas.sections import (
    box_torsion_mm4,
    rectangle_second_moment_mm4,
    rectangle_torsion_mm4,
    round_area_mm2,
    round_second_moment_mm4,
)
from scantling.model.kinds import Profile, Rod, ThreadedRod
from scantling.shapes.elements.bars import Section
from scantling.tables.materials import material
from scantling.tables.threads import thread

T_MM3_PER_KG_M3 = 1e-12
_USUAL = {"rod": "steel", "threaded-rod": "steel", "profile": "aluminium"}  # where a part does not say its material


def bar_section(reader: Reader, place: str, frame: str) -> Section:
    """Return the cross-section of the bars of a place; a threaded rod bends as a plain rod of its root does.

    Raises ``NotDescribedError`` where there is no bar.
    """
    part = reader.part(place)
    if not isinstance(part, Rod | ThreadedRod | Profile):
        raise NotDescribedError((f"frames.{frame}.bars ({place} as a rod or profile)",))
    name = part.material or _USUAL[part.kind]
    try:
        found = material(name)
    except LookUpError as error:
        raise NotDescribedError((f"parts.{part.id}.material ({error})",)) from None
    if found.modulus_mpa is None:
        raise NotDescribedError((f"parts.{part.id}.material (one with a known modulus)",))
    modulus_mpa = found.modulus_mpa.typical
    shear_mpa = modulus_mpa / (2 * (1 + (found.poisson_ratio or 0.3)))
    shape = _profile(reader, place, part) if isinstance(part, Profile) else _round(reader, place, part)
    return Section(*shape, modulus_mpa, shear_mpa, found.density_kg_m3.typical * T_MM3_PER_KG_M3)


def _round(reader: Reader, place: str, part: Rod | ThreadedRod) -> tuple[float, float, float, float]:
    if isinstance(part, ThreadedRod):
        diameter_mm = thread(part.thread).minor_diameter_mm
    else:
        diameter_mm = reader.derive(feature, place, "diameter").value
    second_mm4 = round_second_moment_mm4(diameter_mm)
    return round_area_mm2(diameter_mm), second_mm4, second_mm4, 2 * second_mm4


def _profile(reader: Reader, place: str, part: Profile) -> tuple[float, float, float, float]:
    width_mm, height_mm = (reader.derive(feature, place, name).value for name in ("width", "height"))
    area_mm2 = width_mm * height_mm
    across_mm4 = rectangle_second_moment_mm4(width_mm, height_mm)
    upright_mm4 = rectangle_second_moment_mm4(height_mm, width_mm)
    if part.wall_mm is None:
        return area_mm2, across_mm4, upright_mm4, rectangle_torsion_mm4(width_mm, height_mm)
    wall_mm = reader.derive(feature, place, "wall").value
    hollow = (max(0.0, width_mm - 2 * wall_mm), max(0.0, height_mm - 2 * wall_mm))
    return (
        area_mm2 - hollow[0] * hollow[1],
        across_mm4 - rectangle_second_moment_mm4(*hollow),
        upright_mm4 - rectangle_second_moment_mm4(hollow[1], hollow[0]),
        box_torsion_mm4(width_mm, height_mm, wall_mm),
    )
