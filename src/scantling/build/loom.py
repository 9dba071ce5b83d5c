"""Wires of the loom: their copper, how long each is cut, how many there are, what the places of wire and ends take."""

from __future__ import annotations

from math import ceil

from scantling.build.missing import NotDescribedError
from scantling.build.reader import Catalogue, Reader
from scantling.build.sizes import size
from scantling.errors import LookUpError
from scantling.formulas.wires import awg_area_mm2, stranded_ohm_km
from scantling.model.kinds import Terminal, Wire
from scantling.model.wiring import LoomWire
from scantling.quantities import Figure
from scantling.tables.wires import carried_a, wire

ROUTE_SHARE = Figure.exact(1.1)  # of the route, for its bends; workshop practice
ENDS_MM = Figure.exact(200.0)  # a loop of 100 mm at each end, to make it anew once; workshop practice
CUT_STEP_UM = 50_000  # wires are cut to the next 50 mm
STEP_NOISE_UM = 1.0


def copper_mm2(part: Wire) -> float:
    """Return the copper of one core; raises ``NotDescribedError``."""
    if part.area_mm2 is not None:
        return float(part.area_mm2.value)
    if part.gauge is None:
        raise NotDescribedError((f"parts.{part.id}.area",))
    return awg_area_mm2(part.gauge)


def resistance_ohm_km(part: Wire) -> float:
    """Return the resistance of one core at 20 °C: the largest that the standard allows, else that of its copper."""
    area_mm2 = copper_mm2(part)
    try:
        return wire(area_mm2).flexible_ohm_km
    except LookUpError:
        return stranded_ohm_km(area_mm2)


def table_current_a(part: Wire) -> float:
    """Return what one circuit of the wire carries for good on a surface at 30 °C; raises ``NotDescribedError``."""
    try:
        return carried_a(copper_mm2(part))
    except LookUpError:
        raise NotDescribedError((f"parts.{part.id}.area from 0.14 to 6 mm2",)) from None


def end_place(end: str) -> str:
    """Return the place of an end.

    >>> end_place("board.bed")
    'board'
    """
    return end.partition(".")[0]


def wire_length(reader: Reader, name: str) -> Figure:
    """Return the length in mm of one wire with its loops; raises ``NotDescribedError``."""
    row = reader.design.loom[name]
    route = reader.derive(size, row.length)
    return route * ROUTE_SHARE + ENDS_MM if row.loop_mm is None else route + row.loop_mm


def wire_cut_um(reader: Reader, name: str) -> int:
    """Return the length to which one wire is cut, in whole µm."""
    length_um = reader.derive(wire_length, name).value * 1000
    return ceil((length_um - STEP_NOISE_UM) / CUT_STEP_UM) * CUT_STEP_UM


def wire_count(reader: Reader, name: str) -> int:
    """Return how many there are in one machine: none that leads to an empty place, or to what needs no earth."""
    row = reader.design.loom[name]
    for place in (end_place(row.start), end_place(row.to)):
        if reader.case.once(_may_be_empty, place) and reader.part(place) is None:
            return 0
    if row.if_needed:
        part = reader.part(end_place(row.to))
        if part is None or not part.needs_earth:
            return 0
    return row.count


def wire_pieces(reader: Reader, place: str) -> tuple[tuple[int, int], ...]:
    """Return the wires that are cut from the part of a place, as (length in µm, how many), the longest first."""
    found: dict[int, int] = {}
    for name, row in reader.design.loom.items():
        count = reader.derive(wire_count, name) if row.wire == place else 0
        if count:
            length_um = reader.derive(wire_cut_um, name)
            found[length_um] = found.get(length_um, 0) + count
    return tuple(sorted(found.items(), reverse=True))


def end_pieces(reader: Reader, place: str) -> int:
    """Return how many ends are done with the part of a place: one a core."""
    total = 0
    for name, row in reader.design.loom.items():
        ends = (row.start_end, row.to_end).count(place)
        if ends:
            total += ends * reader.derive(wire_count, name) * _cores(reader, row)
    return total


def loom_places(case: Catalogue) -> frozenset[str]:
    """Return the places of wire and ends that the loom names."""
    rows = case.project.design.loom.values()
    return frozenset(place for row in rows for place in (row.wire, row.start_end, row.to_end) if place is not None)


def _cores(reader: Reader, row: LoomWire) -> int:
    """Cores of a wire; read only where its options differ."""
    usual = reader.case.once(_usual_cores, row.wire)
    if usual is not None:
        return usual
    part = reader.part(row.wire)
    return part.cores if isinstance(part, Wire) else 0


def _usual_cores(case: Catalogue, place: str) -> int | None:
    parts = [case.part(option.part) for option in case.project.design.places[place].options]
    counts = {part.cores for part in parts if isinstance(part, Wire)}
    return counts.pop() if len(counts) == 1 else None


def _may_be_empty(case: Catalogue, place: str) -> bool:
    places = case.project.design.places
    return places[place].may_be_empty or any(place in o.also_fills for one in places.values() for o in one.options)


def is_of_loom(reader: Reader, place: str) -> bool:
    """Return whether a place is filled by a wire or an end that the loom names."""
    named = place in reader.case.once(loom_places)
    return named and isinstance(reader.part(place), Wire | Terminal)
