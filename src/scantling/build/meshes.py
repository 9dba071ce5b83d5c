"""Printed parts: which mesh suits the chosen parts, and what a piece takes of plastic and time."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.gets import filament_of, plastic_of
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.sizes import feature
from scantling.build.typical import density
from scantling.model.kinds import Filament, MeshVariant, Printed
from scantling.quantities import Figure, Grade
from scantling.shapes.mesh import MeshFacts

# How far a size may be from what a mesh suits. An inch rod of 7.94 mm still goes into a clamp for 8 mm; whether it is
# held is the mate's question.
SUITS_MM = 0.1
# Usual where a part says nothing: a line of a 0.4 mm nozzle, a fifth filled. Common practice, no source.
USUAL_WALL_MM = 0.45
USUAL_INFILL_RATIO = 0.2
# What a slicer makes of walls, floors and supports, against this estimate. From memory of printed parts weighed.
MASS_BAND_RATIO = 0.15


@dataclass(frozen=True)
class PrintEstimate:
    """One piece, printed.

    volume_mm3 : of the mesh, None where it is not closed
    mass_kg : of plastic, walls and infill counted
    time_s : None where the print bed does not say its rate
    fits_bed : None where no print bed is described    width_mm, depth_mm, height_mm : as the mesh stands
    """

    mesh: str
    plastic: str
    volume_mm3: float | None
    mass_kg: Figure
    time_s: Figure | None
    fits_bed: bool | None
    width_mm: float
    depth_mm: float
    height_mm: float


def mesh_choice(reader: Reader, place: str) -> MeshVariant | None:
    """Return the first mesh of a printed part that suits the chosen parts; None where no file exists."""
    part = reader.part(place)
    if not isinstance(part, Printed):
        raise NotDescribedError((f"places.{place} (a printed part)",))
    return next((variant for variant in part.meshes if _suits(reader, variant)), None)


def print_estimate(reader: Reader, place: str) -> PrintEstimate:
    """Return what one piece of a printed place takes; where no mesh suits, what the part's first mesh would take."""
    variant = reader.derive(mesh_choice, place)
    part = reader.part(place)
    assert isinstance(part, Printed)
    name = variant.mesh if variant is not None else part.meshes[0].mesh
    facts = reader.case.project.meshes.get(name)
    if facts is None:
        raise NotDescribedError((f"parts.{part.id}.meshes ({name})",))
    plastic = plastic_of(reader.get(place)) or part.plastics[0]
    filled_mm3 = _filled(part, facts)
    mass_kg = filled_mm3 * _density(reader, plastic) * Figure.exact(1e-9)
    bed = reader.workshop.print_bed
    rate_g_h = bed.rate_g_h if bed is not None else None
    return PrintEstimate(
        mesh=name,
        plastic=plastic,
        volume_mm3=facts.volume_mm3,
        mass_kg=mass_kg,
        time_s=None if rate_g_h is None else mass_kg * Figure.exact(3_600_000) / rate_g_h,
        fits_bed=None if bed is None else _fits(facts, (bed.width_mm.value, bed.depth_mm.value, bed.height_mm.value)),
        width_mm=facts.width_mm,
        depth_mm=facts.depth_mm,
        height_mm=facts.height_mm,
    )


def _suits(reader: Reader, variant: MeshVariant) -> bool:
    """True where every named size is what the mesh was made for."""
    return all(_near(_named(reader, name), wanted) for name, wanted in variant.suits.items())


def _named(reader: Reader, name: str) -> Figure:
    place, _, wanted = name.partition(".")
    return reader.derive(feature, place, wanted)


def _near(there: Figure, wanted: Figure) -> bool:
    return wanted.low - SUITS_MM <= there.value <= wanted.high + SUITS_MM


def _filled(part: Printed, facts: MeshFacts) -> Figure:
    """Plastic in mm3: walls as a skin of the surface, infill inside it."""
    wall_mm = part.wall_width_mm.value if part.wall_width_mm is not None else USUAL_WALL_MM
    infill = part.infill_ratio.value if part.infill_ratio is not None else USUAL_INFILL_RATIO
    skin_mm3 = facts.area_mm2 * part.walls * wall_mm
    if facts.volume_mm3 is None:  # an open mesh: its surface alone is known
        return Figure(skin_mm3, 0.5 * skin_mm3, 2 * skin_mm3, Grade.TYPICAL, "walls of an open mesh")
    skin_mm3 = min(facts.volume_mm3, skin_mm3)
    value = skin_mm3 + infill * (facts.volume_mm3 - skin_mm3)
    high = min(value * (1 + MASS_BAND_RATIO), max(facts.volume_mm3, value))
    return Figure(value, value * (1 - MASS_BAND_RATIO), high, Grade.TYPICAL, "walls and infill estimated")


def _density(reader: Reader, plastic: str) -> Figure:
    filament = filament_of(reader.design, plastic)
    lot = None if filament is None else reader.case.part(filament.id)
    if isinstance(lot, Filament) and lot.density_kg_m3 is not None:
        given: Figure = lot.density_kg_m3
        return given
    return density(plastic, f"parts (a filament of {plastic} with its density)")


def _fits(facts: MeshFacts, bed_mm: tuple[float, float, float]) -> bool:
    """True where the mesh stands on the bed as it is, or turned by a right angle."""
    width_mm, depth_mm, height_mm = bed_mm
    flat = sorted((facts.width_mm, facts.depth_mm))
    wide = sorted((width_mm, depth_mm))
    return facts.height_mm <= height_mm and flat[0] <= wide[0] and flat[1] <= wide[1]
