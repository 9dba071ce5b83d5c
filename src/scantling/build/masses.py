"""Masses: of a piece, of a place, and the moving mass of an axis as a total."""

from __future__ import annotations

from math import pi

from scantling.build.fasteners import fastener_mass
from scantling.build.gets import is_cut
from scantling.build.hardware import brought
from scantling.build.lengths import piece_length
from scantling.build.meshes import print_estimate
from scantling.build.missing import MissingFigureError, NotDescribedError
from scantling.build.reader import Catalogue, Reader
from scantling.build.sizes import ZERO, feature
from scantling.build.total import Total
from scantling.build.typical import belt_line_mass, belt_pitch, density
from scantling.model.axis import Moved
from scantling.model.design import Design
from scantling.model.kinds import Belt, Nut, Printed, Rod, Screw, SheetStock, ThreadedRod, Washer
from scantling.quantities import Figure
from scantling.tables.threads import thread

KG_MM3_PER_KG_M3 = Figure.exact(1e-9)
KG_MM_PER_G_M = Figure.exact(1e-6)


def piece_mass(reader: Reader, place: str) -> Figure:
    """Return the mass in kg of one piece of a place; 0 where it is empty.

    As described, else from size and material: rods, threaded rods (as a plain rod of the pitch diameter, which holds
    the same metal), belts, sheets (outline less its windows; drilled holes, about a hundredth, are left in), printed
    parts.
    Raises ``MissingFigureError`` for a part that says too little.
    """
    part = reader.part(place)
    if part is None:
        return ZERO
    if isinstance(part, Rod | ThreadedRod | Belt) and is_cut(reader.design, place, part):
        return _line_mass(part) * reader.derive(piece_length, place)
    if isinstance(part, SheetStock) and place in reader.design.sheets:
        return _sheet_mass(reader, place, part)
    if part.mass_kg is not None:
        given: Figure = part.mass_kg
        return given
    if isinstance(part, Screw | Nut | Washer):
        return fastener_mass(part)
    if isinstance(part, Printed):
        return reader.derive(print_estimate, place).mass_kg
    if isinstance(part, Belt) and part.closed_teeth is not None:
        pitch_mm = belt_pitch(part.profile, f"parts.{part.id}.profile")
        return _line_mass(part) * Figure.exact(float(part.closed_teeth * pitch_mm))
    raise MissingFigureError((f"parts.{part.id}.mass",))


def place_mass(reader: Reader, place: str) -> Figure:
    """Return the mass in kg of all pieces of a place in one machine, with what its part brings."""
    pieces = Figure.exact(reader.pieces(place)) * reader.derive(piece_mass, place)
    return pieces + reader.derive(brought_mass, place)


def brought_mass(reader: Reader, place: str) -> Figure:
    """Return the mass in kg of what the option in a place brings; things without a mass count nothing."""
    total = ZERO
    for one in reader.derive(brought, place):
        part = reader.case.part(one.part)
        mass_kg: Figure | None = fastener_mass(part) if isinstance(part, Screw | Nut | Washer) else part.mass_kg
        total = total if mass_kg is None else total + Figure.exact(one.count) * mass_kg
    return total


def mass_subjects(design: Design) -> tuple[str, ...]:
    """Return the axes as checks name them."""
    return tuple(f"axis {name}" for name in design.axes)


def mass_terms(design: Design, subject: str) -> tuple[str, ...]:
    """Return the places that an axis moves, each once."""
    return tuple(dict.fromkeys(moved.place for moved in _moves(design, subject) if moved.place is not None))


def moved_mass(reader: Reader, subject: str, place: str) -> Figure:
    """Return the mass in kg that the pieces of a place add to an axis: all of them, or as many as the axis counts."""
    pieces = reader.pieces(place)
    if not pieces:
        return ZERO
    counts = [moved.count for moved in _moves(reader.design, subject) if moved.place == place]
    moving = min(pieces, sum(pieces if count is None else count for count in counts))
    return Figure.exact(moving / pieces) * reader.derive(place_mass, place)


def typed_mass(case: Catalogue, subject: str) -> Figure:
    """Return the mass in kg that an axis moves and no place holds, with its band."""
    moves = _moves(case.project.design, subject)
    return sum((moved.typed.mass_kg for moved in moves if moved.typed is not None), ZERO)


def _moves(design: Design, subject: str) -> tuple[Moved, ...]:
    return design.axes[subject.rpartition(" ")[2]].moves


def _line_mass(part: Rod | ThreadedRod | Belt) -> Figure:
    """Mass in kg per mm."""
    if isinstance(part, Belt):
        return belt_line_mass(part) * KG_MM_PER_G_M
    if isinstance(part, Rod):
        diameter_mm: Figure = part.diameter_mm
        section_mm2 = diameter_mm * diameter_mm * Figure.exact(pi / 4)
    else:
        section_mm2 = Figure.exact(pi / 4 * thread(part.thread).pitch_diameter_mm ** 2)
    return section_mm2 * density(part.material or "steel", f"parts.{part.id}.material") * KG_MM3_PER_KG_M3


def _sheet_mass(reader: Reader, place: str, part: SheetStock) -> Figure:
    outline = reader.case.project.outlines.get(place)
    if outline is None:
        raise NotDescribedError((f"sheets.{place}.outline",))
    thickness_mm = reader.derive(feature, place, "thickness")
    weight: Figure | None = part.density_kg_m3
    if weight is None:
        weight = density(part.material, f"parts.{part.id}.density", thickness_mm.value)
    return Figure.exact(float(outline.area_mm2)) * thickness_mm * weight * KG_MM3_PER_KG_M3


MOVING_MASS = Total(
    name="moving-mass",
    unit="kg",
    scale=1000,
    subjects=mass_subjects,
    terms=mass_terms,
    contribution=moved_mass,
    fixed=typed_mass,
)
