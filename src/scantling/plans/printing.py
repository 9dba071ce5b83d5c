"""The print list: meshes, plastics, counts, grams and hours."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from scantling.build.case import Case
from scantling.build.gets import plastic_of
from scantling.build.meshes import PrintEstimate, print_estimate
from scantling.build.reader import Reader
from scantling.quantities import show_number


@dataclass(frozen=True)
class PrintLine:
    """One mesh in one plastic, for one machine and for all copies; estimates carry their band."""

    place: str
    part: str
    mesh: str
    plastic: str
    count: int
    for_all: int
    estimate: PrintEstimate


def print_lines(case: Case, reader: Reader, copies: int) -> tuple[PrintLine, ...]:
    """Return everything that is printed here, in the design's order."""
    lines = []
    for place in case.project.design.places:
        plastic = plastic_of(reader.get(place))
        part = reader.part(place)
        if plastic is None or part is None:
            continue
        count = reader.pieces(place)
        estimate = reader.derive(print_estimate, place)
        lines.append(PrintLine(place, part.id, estimate.mesh, plastic, count, count * copies, estimate))
    return tuple(lines)


def print_table(lines: Sequence[PrintLine]) -> list[list[str]]:
    """Return the print list as rows of text, heading first; masses are estimates with their band."""
    heading = [
        "place",
        "part",
        "mesh",
        "plastic",
        "pieces",
        "for all copies",
        "g each (estimate)",
        "hours each (estimate)",
    ]
    return [heading, *(_row(line) for line in lines)]


def _row(line: PrintLine) -> list[str]:
    mass, time = line.estimate.mass_kg, line.estimate.time_s
    grams = (
        f"{show_number(mass.value * 1000, 0)} ({show_number(mass.low * 1000, 0)}–{show_number(mass.high * 1000, 0)})"
    )
    hours = f"{show_number(time.value / 3600, 1)}" if time else ""
    return [line.place, line.part, line.mesh, line.plastic, str(line.count), str(line.for_all), grams, hours]
