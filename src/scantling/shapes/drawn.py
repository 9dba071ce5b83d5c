"""What a drawing file comes out as: outlines, and what the reader had to do or leave out to get them."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.errors import Fault, FaultsError, Where, nearest
from scantling.shapes.edges import Edge, Extents, Point
from scantling.shapes.outline import Closed, Outline

MM_PER_UNIT = {
    "mm": 1.0,
    "cm": 10.0,
    "m": 1000.0,
    "in": 25.4,
    "ft": 304.8,
    "yd": 914.4,
    "mil": 0.0254,
    "um": 0.001,
    "pt": 25.4 / 72,
    "pc": 25.4 / 6,
    "px": 25.4 / 96,
}
"""Units that a drawing may be in; a point is 1/72 in, a pixel 1/96 in (CSS)."""

FURTHEST_MM = 1e6
"""Nothing that a saw can cut lies a kilometre off; also keeps micrometres exact in floating point."""

MOST_BYTES = 64_000_000
MOST_EDGES = 200_000


@dataclass(frozen=True)
class Note:
    """Something the reader did or left out that the maker should know; ``at`` is the place in mm, if there is one."""

    code: str
    what: str
    at: Point | None = None

    def __str__(self) -> str:
        """Return the sentence with its place."""
        return f"{self.what}{'' if self.at is None else ' at ' + place(self.at)} [{self.code}]"


@dataclass(frozen=True)
class Piece:
    """An open run of edges as the file holds it; ``name`` says what it is ("LINE 2F")."""

    edges: tuple[Edge, ...]
    name: str = ""
    layer: str = ""

    @property
    def start(self) -> Point:
        """Where it begins."""
        return self.edges[0].start

    @property
    def end(self) -> Point:
        """Where it ends."""
        return self.edges[-1].end

    @property
    def length_mm(self) -> float:
        """Length along it."""
        return sum(edge.length_mm for edge in self.edges)

    def reversed(self) -> Piece:
        """Return it run the other way."""
        return Piece(tuple(edge.reversed() for edge in reversed(self.edges)), self.name, self.layer)


@dataclass(frozen=True)
class ClosedPiece:
    """A closed shape as the file holds it or as it was joined from pieces."""

    shape: Closed
    name: str = ""
    layer: str = ""


@dataclass(frozen=True)
class Drawing:
    """A drawing file read: its outlines, largest first, in mm, and the notes of the reader."""

    file: str
    unit: str
    outlines: tuple[Outline, ...]
    notes: tuple[Note, ...] = ()
    layers: tuple[str, ...] = ()

    @property
    def extents(self) -> Extents:
        """Box around all outlines."""
        box = self.outlines[0].extents
        for outline in self.outlines[1:]:
            box = box.joined(outline.extents)
        return box

    def only(self) -> Outline:
        """Return the one outline, or refuse a drawing that holds several.

        Raises FaultsError (SHAPE-16) where the drawing holds more than one.
        """
        if len(self.outlines) > 1:
            middles = " and ".join(place(outline.extents.middle) for outline in self.outlines[:2])
            what = f"the drawing holds {len(self.outlines)} separate outlines, around {middles}"
            raise FaultsError([Fault("SHAPE-16", what, "keep one part in a file, or name its layer", Where(self.file))])
        return self.outlines[0]


def place(point: Point) -> str:
    """Write a point for a message: ``(12.5, 40) mm``."""
    return f"({figure(point[0])}, {figure(point[1])}) mm"


def figure(value_mm: float) -> str:
    """Write a length to the micrometre without trailing zeros."""
    text = f"{value_mm:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def mm_per(unit: str, file: str) -> float:
    """Return how many mm the unit has.

    Raises FaultsError (SHAPE-05) for a word that is not a unit of length.
    """
    if unit not in MM_PER_UNIT:
        mend = nearest(unit, MM_PER_UNIT)
        raise FaultsError([Fault("SHAPE-05", f"{unit!r} is no unit of length here", mend, Where(file))])
    return MM_PER_UNIT[unit]


def refuse_large(data: bytes, file: str, most: int = MOST_BYTES) -> None:
    """Raise FaultsError (SHAPE-01) for a file that is larger than any sensible drawing, or empty (SHAPE-02)."""
    if len(data) > most:
        what = f"the file has {len(data) / 1e6:.0f} MB, the limit is {most / 1e6:.0f} MB"
        raise FaultsError([Fault("SHAPE-01", what, "keep only what is to be cut in it", Where(file))])
    if not data.strip():
        raise FaultsError([Fault("SHAPE-02", "the file is empty", "save it again", Where(file))])
