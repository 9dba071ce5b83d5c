"""The print list: meshes, plastics, counts, grams and hours."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from scantling.build.case import Case
from scantling.build.gets import plastic_of
from scantling.build.meshes import PrintEstimate, mesh_choice, print_estimate
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.quantities import Figure, show_number

NO_FILE = "no file exists"


@dataclass(frozen=True)
class PrintLine:
    """One mesh in one plastic, for one machine and for all copies.

    mesh : ``NO_FILE`` where none suits the chosen parts    estimate : with its band; None where no mesh was read
    """

    place: str
    part: str
    mesh: str
    plastic: str
    count: int
    for_all: int
    estimate: PrintEstimate | None


def print_lines(case: Case, reader: Reader, copies: int) -> tuple[PrintLine, ...]:
    """Return everything that is printed here, in the design's order."""
    lines = (_line(reader, place, copies) for place in case.project.design.places)
    return tuple(line for line in lines if line is not None)


def _line(reader: Reader, place: str, copies: int) -> PrintLine | None:
    plastic, part = plastic_of(reader.get(place)), reader.part(place)
    if plastic is None or part is None:
        return None
    count, mesh, estimate = reader.pieces(place), NO_FILE, None
    try:
        variant = reader.derive(mesh_choice, place)
        if variant is not None:
            mesh, estimate = variant.mesh, reader.derive(print_estimate, place)
    except NotDescribedError:
        pass
    return PrintLine(place, part.id, mesh, plastic, count, count * copies, estimate)


def print_table(lines: Sequence[PrintLine]) -> list[list[str]]:
    """Return the print list as rows of text, heading first; masses are estimates with their band."""
    heading = ["place", "part", "mesh", "plastic", "pieces", "pieces for all copies"]
    return [[*heading, "g each (estimate)", "hours each (estimate)"], *(_row(line) for line in lines)]


def _row(line: PrintLine) -> list[str]:
    mass = line.estimate.mass_kg if line.estimate else None
    time = line.estimate.time_s if line.estimate else None
    counts = [str(line.count), str(line.for_all)]
    return [line.place, line.part, line.mesh, line.plastic, *counts, grams_text(mass), hours_text(time)]


def grams_text(mass_kg: Figure | None) -> str:
    """Return an estimate in grams with its band, ``42 (36–48)``; empty where there is none."""
    if mass_kg is None:
        return ""
    value, low, high = (show_number(kg * 1000, 0) for kg in (mass_kg.value, mass_kg.low, mass_kg.high))
    return f"{value} ({low}–{high})"


def hours_text(time_s: Figure | None) -> str:
    """Return an estimate in hours, ``3.5``; empty where there is none."""
    return "" if time_s is None else show_number(time_s.value / 3600, 1)
