"""The cut list: which pieces come out of which bar, where to mark, what is left."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.case import Case
from scantling.build.lengths import cut_length_um
from scantling.build.loom import wire_count, wire_cut_um
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.choosing.result import Cut, Purchase
from scantling.model.build import Build
from scantling.model.kinds import Belt, Wire
from scantling.quantities import Figure, show_number

IN_HAND = "in hand"


@dataclass(frozen=True)
class CutPiece:
    """A piece in a bar.

    length_um : finished    rough_um : as sawn, with what is faced off both ends
    ends_um : where its far end is marked, from the bar's start    places : what it is for
    """

    length_um: int
    rough_um: int
    ends_um: int
    places: tuple[str, ...]


@dataclass(frozen=True)
class BarPlan:
    """Bars that are cut alike, with the pieces in the order of cutting.

    source : the offer, or ``IN_HAND``    kerf_um : what one cut removes    whole : used as it comes, without a cut
    """

    part: str
    name: str
    source: str
    bar_um: int
    times: int
    pieces: tuple[CutPiece, ...]
    kerf_um: int
    left_um: int
    whole: bool


def bar_plans(case: Case, build: Build, purchase: Purchase) -> tuple[BarPlan, ...]:
    """Return the bars to cut, in the purchase's order."""
    places = _places_by_length(case, build)
    return tuple(_bar(case, cut, places) for cut in purchase.cuts)


def _places_by_length(case: Case, build: Build) -> dict[tuple[str, int], tuple[str, ...]]:
    """Return which places want a piece of a part and length."""
    reader: Reader = case.reader(build)
    found: dict[tuple[str, int], list[str]] = {}
    for place in case.project.design.places:
        part = reader.part(place)
        length_um = _length_um(reader, place) if part is not None and reader.get(place) == "cut" else None
        if part is not None and length_um is not None:
            found.setdefault((part.id, length_um), []).append(place)
    for name, row in case.project.design.loom.items():
        part = reader.part(row.wire)
        if part is not None and _is_there(reader, name):
            found.setdefault((part.id, reader.derive(wire_cut_um, name)), []).append(f"wire {name}")
    return {key: tuple(names) for key, names in found.items()}


def _is_there(reader: Reader, name: str) -> bool:
    """True for a wire that is cut in this build."""
    try:
        return bool(reader.derive(wire_count, name) and reader.derive(wire_cut_um, name))
    except NotDescribedError:
        return False


def _length_um(reader: Reader, place: str) -> int | None:
    try:
        return reader.derive(cut_length_um, place)
    except NotDescribedError:
        return None


def _bar(case: Case, cut: Cut, places: dict[tuple[str, int], tuple[str, ...]]) -> BarPlan:
    kerf_um, facing_um = (0, 0) if cut.whole else _sawing_um(case, cut.part)
    pieces, at_um = [], 0
    for length_um, count in cut.pieces:
        rough_um = length_um + 2 * facing_um
        for _ in range(count):
            at_um += rough_um
            pieces.append(CutPiece(length_um, rough_um, at_um, places.get((cut.part, length_um), ())))
            at_um += kerf_um
    part = case.part(cut.part)
    name, source = part.name or cut.part, cut.offer or IN_HAND
    return BarPlan(cut.part, name, source, cut.bar_um, cut.times, tuple(pieces), kerf_um, cut.left_um, cut.whole)


def _sawing_um(case: Case, part: str) -> tuple[int, int]:
    """Kerf, and what is faced off each end: belts and wires are cut without a saw and take neither."""
    saw = case.project.workshop.saw
    if isinstance(case.part(part), Belt | Wire):
        return 0, 0
    return _um(saw.bar_kerf_mm), _um(saw.bar_facing_mm)


def _um(figure: Figure | None) -> int:
    return 0 if figure is None else round(figure.value * 1000)


HEADING = ["bar", "times", "part", "from", "bar length mm", "piece", "finished length mm", "saw to mm", "mark at mm"]
HEADING += ["kerf mm", "for", "left of the bar mm"]


def cut_table(bars: tuple[BarPlan, ...]) -> list[list[str]]:
    """Return the cut list as rows of text, heading first; one row a piece of one bar."""
    rows = [
        _row(number, bar, index, piece)
        for number, bar in enumerate(bars, 1)
        for index, piece in enumerate(bar.pieces, 1)
    ]
    return [HEADING, *rows]


def _row(number: int, bar: BarPlan, index: int, piece: CutPiece) -> list[str]:
    return [
        str(number),
        str(bar.times),
        bar.part,
        bar.source,
        _mm(bar.bar_um),
        str(index),
        _mm(piece.length_um),
        "as it comes" if bar.whole else _mm(piece.rough_um),
        "as it comes" if bar.whole else _mm(piece.ends_um),
        _mm(bar.kerf_um),
        ", ".join(piece.places),
        _mm(bar.left_um),
    ]


def _mm(length_um: int) -> str:
    return show_number(length_um / 1000)
