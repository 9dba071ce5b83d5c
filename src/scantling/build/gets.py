"""How a part can be got in a workshop: bought, cut from bars, made by hand from sheet, printed in a plastic."""

from __future__ import annotations

from scantling.model.design import Design
from scantling.model.kinds import Belt, Filament, Printed, Rod, SheetStock, ThreadedRod
from scantling.model.part import Part
from scantling.model.project import Project
from scantling.model.workshop import Workshop

BOUGHT = "bought"
CUT = "cut"
MADE = "made"
PRINTED = "printed "


def gets_of(project: Project, place: str, part: Part) -> tuple[str, ...]:
    """Return the ways of getting ``part`` for ``place``, the best liked first; never empty.

    Whether anybody offers it is not asked here: a part that nobody sells is "bought" all the same, and the choice finds
    that it cannot be had.
    """
    design = project.design
    if isinstance(part, SheetStock) and place in design.sheets:
        return (MADE,)
    if isinstance(part, Rod | ThreadedRod | Belt) and is_cut(design, place, part):
        return (CUT,)
    if isinstance(part, Printed):
        return _printed(project, part)
    return (BOUGHT,)


def plastic_of(get: str) -> str | None:
    """Return the plastic of ``printed PETG``, None for every other get."""
    return get.removeprefix(PRINTED) if get.startswith(PRINTED) else None


def filament_of(design: Design, plastic: str) -> Filament | None:
    """Return the first part of the design that is a filament of this plastic."""
    found = (p for p in design.parts.values() if isinstance(p, Filament) and p.plastic == plastic)
    return next(found, None)


def is_cut(design: Design, place: str, part: Rod | ThreadedRod | Belt) -> bool:
    """True where pieces of a length are needed of a part that comes in lengths."""
    if isinstance(part, Belt) and part.closed_teeth is not None:
        return False
    return design.places[place].length is not None or (isinstance(part, Belt) and drives_axis(design, place))


def drives_axis(design: Design, place: str) -> bool:
    """True where the place holds the belt of an axis whose length follows from its axles."""
    return any(a.drive == "belt" and a.belt == place and a.axles is not None for a in design.axes.values())


def is_offered(workshop: Workshop, part: str) -> bool:
    """True where a vendor offers the part or it lies in the drawer."""
    return any(o.part == part for o in workshop.offers) or any(s.part == part for s in workshop.stock)


def _printed(project: Project, part: Printed) -> tuple[str, ...]:
    bed = project.workshop.print_bed
    at_hand = bed.plastics if bed is not None else ()
    plastics = [p for p in part.plastics if p in at_hand and filament_of(project.design, p) is not None]
    ways = [PRINTED + plastic for plastic in plastics]
    if not ways or is_offered(project.workshop, part.id):
        ways.append(BOUGHT)
    return tuple(ways)
