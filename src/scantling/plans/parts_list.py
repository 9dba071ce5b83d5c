"""The parts list: item, quantity, unit, designation, reference, material, remarks (columns after ISO 7573)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from scantling.build.case import Case
from scantling.build.demand import Need, joint_needs, place_needs
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.errors import LookUpError
from scantling.model.build import Build
from scantling.model.part import Part
from scantling.model.place import Place
from scantling.quantities import show_number


@dataclass(frozen=True)
class PartsLine:
    """One line of the parts list; quantities in ``unit`` for one machine and for all copies.

    group : of the places that take it, as the design sorts them
    """

    item: int
    part: str
    quantity: int
    for_all: int
    unit: str
    designation: str
    reference: str
    material: str
    remarks: str
    group: str


HEADING = ["item", "quantity", "quantity for all copies", "unit", "designation", "reference", "material", "remarks"]
HEADING += ["group"]
_UNITS = {"g": "g", "length": "piece", "board-piece": "panel"}
_MOST_ORIGINS = 6


def parts_lines(case: Case, build: Build) -> tuple[PartsLine, ...]:
    """Return the parts list of a build: places in the design's order, then fasteners by name."""
    reader = case.reader(build)
    lines: dict[tuple[str, str, int, int, int], list[Need]] = {}
    for need in _needs(case, reader):
        key = (need.part, need.unit, need.length_um or 0, need.width_um or 0, need.height_um or 0)
        lines.setdefault(key, []).append(need)
    counted = [needs for needs in lines.values() if sum(need.amount for need in needs)]
    return tuple(_line(case, number, needs, build.copies) for number, needs in enumerate(counted, 1))


def _needs(case: Case, reader: Reader) -> Iterator[Need]:
    for place in case.project.design.places:
        yield from _of_place(reader, place)
    fasteners = [need for joint in case.project.design.joints for need in _of_joint(reader, joint)]
    yield from sorted(fasteners, key=lambda need: need.part)


def _of_place(reader: Reader, place: str) -> tuple[Need, ...]:
    """What a place takes; plain pieces where a length, an outline or a mesh is not described."""
    try:
        return reader.derive(place_needs, place)
    except NotDescribedError:
        part, pieces = reader.part(place), reader.pieces(place)
        return (Need(part.id, "piece", pieces, f"place {place}"),) if part is not None and pieces else ()


def _of_joint(reader: Reader, joint: str) -> tuple[Need, ...]:
    try:
        return reader.derive(joint_needs, joint)
    except NotDescribedError:
        return ()


def _line(case: Case, number: int, needs: Sequence[Need], copies: int) -> PartsLine:
    first, quantity = needs[0], sum(need.amount for need in needs)
    part, places = _part(case, first.part), _places(case, needs)
    notes = dict.fromkeys(place.note.rstrip(".") for place in places)
    name = (part.name if part else "") or first.part
    return PartsLine(
        number,
        first.part,
        quantity,
        quantity * copies,
        _UNITS.get(first.unit, "piece"),
        name + _size(first),
        first.part,
        (part.material if part else "") or "",
        "; ".join(text for text in (part.note.rstrip(".") if part else "", *notes, _origins(needs)) if text),
        ", ".join(dict.fromkeys(place.group for place in places if place.group)),
    )


def _places(case: Case, needs: Sequence[Need]) -> list[Place]:
    names = (need.why.removeprefix("place ") for need in needs if need.why.startswith("place "))
    return [case.project.design.places[name] for name in dict.fromkeys(names)]


def _part(case: Case, name: str) -> Part | None:
    try:
        return case.part(name)
    except LookUpError:  # a washer of a size that no table has
        return None


def _size(need: Need) -> str:
    if need.unit == "length" and need.length_um:
        return f", {show_number(need.length_um / 1000)} mm long"
    if need.width_um and need.height_um:
        return f", panel {show_number(need.width_um / 1000)} × {show_number(need.height_um / 1000)} mm"
    return ""


def _origins(needs: Sequence[Need]) -> str:
    found = list(dict.fromkeys(need.why.removeprefix("place ") for need in needs))
    more = " …" if len(found) > _MOST_ORIGINS else ""
    return "for " + ", ".join(found[:_MOST_ORIGINS]) + more


def parts_table(lines: tuple[PartsLine, ...]) -> list[list[str]]:
    """Return the parts list as rows of text, heading first."""
    return [HEADING, *([*_cells(line), line.group] for line in lines)]


def _cells(x: PartsLine) -> list[str]:
    return [str(x.item), str(x.quantity), str(x.for_all), x.unit, x.designation, x.reference, x.material, x.remarks]
