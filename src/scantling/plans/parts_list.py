"""The parts list: item, quantity, unit, designation, reference, material, remarks (columns after ISO 7573)."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from scantling.build.case import Case
from scantling.build.demand import Need, joint_needs, place_needs
from scantling.build.reader import Reader
from scantling.model.build import Build
from scantling.quantities import show_number


@dataclass(frozen=True)
class PartsLine:
    """One line of the parts list; quantities in ``unit`` for one machine and for all copies."""

    item: int
    part: str
    quantity: int
    for_all: int
    unit: str
    designation: str
    reference: str
    material: str
    remarks: str


HEADING = ["item", "quantity", "quantity for all copies", "unit", "designation", "reference", "material", "remarks"]


def parts_lines(case: Case, build: Build) -> tuple[PartsLine, ...]:
    """Return the parts list of a build: places in the design's order, then fasteners by name."""
    reader = case.reader(build)
    lines: dict[tuple[str, str, int], list[tuple[Need, str]]] = {}
    for need, origin in _needs(case, reader):
        lines.setdefault((need.part, need.unit, need.length_um or 0), []).append((need, origin))
    return tuple(
        _line(case, number, needs, build.copies)
        for number, needs in enumerate((needs for needs in lines.values() if sum(n.amount for n, _ in needs)), 1)
    )


def _needs(case: Case, reader: Reader) -> Iterable[tuple[Need, str]]:
    for place in case.project.design.places:
        for need in reader.derive(place_needs, place):
            yield need, place
    fasteners = [
        (need, f"joint {joint}") for joint in case.project.design.joints for need in reader.derive(joint_needs, joint)
    ]
    yield from sorted(fasteners, key=lambda pair: pair[0].part)


def _line(case: Case, number: int, needs: list[tuple[Need, str]], copies: int) -> PartsLine:
    first = needs[0][0]
    part = case.part(first.part)
    quantity = sum(need.amount for need, _ in needs)
    origins = list(dict.fromkeys(origin for _, origin in needs))
    unit = {"g": "g", "length": "piece", "board-piece": "panel"}.get(first.unit, "piece")
    size = f", {show_number(first.length_um / 1000)} mm long" if first.unit == "length" and first.length_um else ""
    return PartsLine(
        number,
        first.part,
        quantity,
        quantity * copies,
        unit,
        (part.name or first.part) + size,
        first.part,
        part.material or "",
        "; ".join(
            text for text in (part.note, "for " + ", ".join(origins[:6]) + (" …" if len(origins) > 6 else "")) if text
        ),
    )


def parts_table(lines: tuple[PartsLine, ...]) -> list[list[str]]:
    """Return the parts list as rows of text, heading first."""
    rows = [
        [str(x.item), str(x.quantity), str(x.for_all), x.unit, x.designation, x.reference, x.material, x.remarks]
        for x in lines
    ]
    return [HEADING, *rows]
