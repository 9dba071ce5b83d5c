"""The cut list: which pieces come out of which bar, where to mark, what is left."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.case import Case
from scantling.build.lengths import cut_length_um
from scantling.build.reader import Reader
from scantling.choosing.result import Cut, Purchase
from scantling.model.build import Build
from scantling.quantities import show_number

DEFAULT_KERF_UM = 0


@dataclass(frozen=True)
class CutPiece:
    """A piece in a bar: its length, where its far end is marked from the bar's start, and what it is for."""

    length_um: int
    ends_um: int
    places: tuple[str, ...]


@dataclass(frozen=True)
class BarPlan:
    """Bars that are cut alike, with the pieces in the order of cutting."""

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
    names = _places_by_length(case, build)
    kerf = case.project.workshop.saw.bar_kerf_mm
    kerf_um = round(kerf.value * 1000) if kerf else DEFAULT_KERF_UM
    return tuple(_bar(case, cut, names, 0 if cut.whole else kerf_um) for cut in purchase.cuts)


def _places_by_length(case: Case, build: Build) -> dict[tuple[str, int], tuple[str, ...]]:
    """Return which places want a piece of a part and length."""
    reader: Reader = case.reader(build)
    found: dict[tuple[str, int], list[str]] = {}
    for place in case.project.design.places:
        if reader.get(place) == "cut":
            part = reader.part(place)
            if part is not None:
                found.setdefault((part.id, reader.derive(cut_length_um, place)), []).append(place)
    return {key: tuple(places) for key, places in found.items()}


def _bar(case: Case, cut: Cut, names: dict[tuple[str, int], tuple[str, ...]], kerf_um: int) -> BarPlan:
    pieces, at = [], 0
    for length, count in cut.pieces:
        for _ in range(count):
            at += length
            pieces.append(CutPiece(length, at, names.get((cut.part, length), ())))
            at += kerf_um
    part = case.part(cut.part)
    return BarPlan(
        cut.part,
        part.name or cut.part,
        cut.offer or "in hand",
        cut.bar_um,
        cut.times,
        tuple(pieces),
        kerf_um,
        cut.left_um,
        cut.whole,
    )


def cut_table(bars: tuple[BarPlan, ...]) -> list[list[str]]:
    """Return the cut list as rows of text, heading first; one row a piece of one bar."""
    heading = [
        "bar",
        "times",
        "part",
        "from",
        "bar length mm",
        "piece",
        "length mm",
        "mark at mm",
        "kerf mm",
        "for",
        "left of the bar mm",
    ]
    rows = []
    for number, bar in enumerate(bars, 1):
        for index, piece in enumerate(bar.pieces, 1):
            rows.append(
                [
                    str(number),
                    str(bar.times),
                    bar.part,
                    bar.source,
                    _mm(bar.bar_um),
                    str(index),
                    _mm(piece.length_um),
                    "as it comes" if bar.whole else _mm(piece.ends_um),
                    _mm(bar.kerf_um),
                    ", ".join(piece.places),
                    _mm(bar.left_um),
                ]
            )
    return [heading, *rows]


def _mm(length_um: int) -> str:
    return show_number(length_um / 1000)
