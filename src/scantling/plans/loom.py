"""The loom as a table: one row a wire, from, to, size, colour, length with loops, ends; and what it takes in all."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.case import Case
from scantling.build.loom import copper_mm2, end_pieces, wire_count, wire_cut_um, wire_pieces
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.sizes import size
from scantling.model.build import Build
from scantling.model.kinds import Terminal, Wire
from scantling.model.wiring import LoomWire
from scantling.quantities import show_number


@dataclass(frozen=True)
class LoomLine:
    """One wire; ``count`` of it in one machine, ``for_all`` in all copies.

    copper : in words, ``1.5 mm²`` or ``4 x 0.25 mm²``    route_um : without loops    cut_um : as it is cut
    start_end, to_end : part that is crimped on    where : sold as which part
    """

    wire: str
    start: str
    to: str
    count: int
    for_all: int
    copper: str
    colour: str
    route_um: int
    cut_um: int
    start_end: str
    to_end: str
    carries: str
    fuse: str
    part: str
    note: str


@dataclass(frozen=True)
class LoomTotal:
    """What all copies take of a wire in mm, or of an end in pieces."""

    part: str
    amount: int
    unit: str


def loom_lines(case: Case, build: Build) -> tuple[LoomLine, ...]:
    """Return the wires of a build in the design's order; what is not described is left out."""
    reader = case.reader(build)
    found = (_line(reader, build.copies, name, row) for name, row in case.project.design.loom.items())
    return tuple(line for line in found if line is not None)


def loom_totals(case: Case, build: Build) -> tuple[LoomTotal, ...]:
    """Return what all copies take of each wire and end, sorted by part."""
    reader = case.reader(build)
    totals: dict[tuple[str, str], int] = {}
    places = dict.fromkeys(
        place for row in case.project.design.loom.values() for place in (row.wire, row.start_end, row.to_end) if place
    )
    for place in places:
        part = reader.part(place)
        if isinstance(part, Wire):
            amount_mm = sum(um * count for um, count in reader.derive(wire_pieces, place)) // 1000
            totals[part.id, "mm"] = totals.get((part.id, "mm"), 0) + amount_mm * build.copies
        elif isinstance(part, Terminal):
            pieces = reader.derive(end_pieces, place) * build.copies
            totals[part.id, "pieces"] = totals.get((part.id, "pieces"), 0) + pieces
    return tuple(LoomTotal(part, amount, unit) for (part, unit), amount in sorted(totals.items()) if amount)


def _line(reader: Reader, copies: int, name: str, row: LoomWire) -> LoomLine | None:
    part = reader.part(row.wire)
    try:
        count = reader.derive(wire_count, name)
        if not isinstance(part, Wire) or not count:
            return None
        return LoomLine(
            name,
            row.start,
            row.to,
            count,
            count * copies,
            _copper(part),
            row.colour or part.colour,
            round(reader.derive(size, row.length).value * 1000),
            reader.derive(wire_cut_um, name),
            _part_at(reader, row.start_end),
            _part_at(reader, row.to_end),
            row.carries,
            _part_at(reader, row.fuse),
            part.id,
            "; ".join(text for text in ("moves: hold both ends" if row.moves else "", row.note) if text),
        )
    except NotDescribedError:
        return None


def _copper(part: Wire) -> str:
    one = f"gauge {part.gauge}" if part.gauge is not None else f"{show_number(copper_mm2(part))} mm²"
    return one if part.cores == 1 else f"{part.cores} × {one}"


def _part_at(reader: Reader, place: str | None) -> str:
    part = None if place is None else reader.part(place)
    return "" if part is None else part.id


HEADING = [
    "wire",
    "from",
    "to",
    "count",
    "count for all copies",
    "size",
    "colour",
    "route mm",
    "cut to mm",
    "end at from",
]
HEADING += ["end at to", "carries", "fuse of its own", "part", "remarks"]


def loom_table(lines: tuple[LoomLine, ...], totals: tuple[LoomTotal, ...]) -> list[list[str]]:
    """Return the loom as rows of text, heading first; after the wires one row for what all copies take of each part."""
    if not lines:
        return [HEADING]
    return [HEADING, *(_cells(line) for line in lines), *(_total(total) for total in totals)]


def _cells(x: LoomLine) -> list[str]:
    lengths = (show_number(um / 1000) for um in (x.route_um, x.cut_um))
    named = [x.wire, x.start, x.to, str(x.count), str(x.for_all), x.copper, x.colour, *lengths]
    return [*named, x.start_end, x.to_end, x.carries, x.fuse, x.part, x.note]


def _total(total: LoomTotal) -> list[str]:
    amount = f"{show_number(total.amount / 1000)} m" if total.unit == "mm" else f"{total.amount} pieces"
    cells = [""] * len(HEADING)
    cells[0], cells[HEADING.index("part")], cells[-1] = "in all", total.part, amount
    return cells
