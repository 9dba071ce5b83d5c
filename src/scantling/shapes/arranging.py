"""Closed shapes sorted into parts and their holes; what crosses itself or its neighbour is told by its place."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from math import floor
from typing import Any

from scantling.errors import Fault, FaultsError, Where
from scantling.shapes.chaining import chain, open_fault
from scantling.shapes.circle_fit import true_circle
from scantling.shapes.drawn import FURTHEST_MM, MOST_EDGES, ClosedPiece, Drawing, Note, Piece, figure, place
from scantling.shapes.edges import FLATTEN_MM, Point
from scantling.shapes.outline import Circle, Closed, Loop, Outline

_THINNEST_MM = 1e-3
_MOST_TOLD = 20
_DEEPEST = 16


def assemble(
    loose: Sequence[Piece],
    closed: Sequence[ClosedPiece],
    *,
    file: str,
    unit: str,
    gap_mm: float,
    flatten_mm: float,
    notes: Sequence[Note] = (),
    layers: tuple[str, ...] = (),
) -> Drawing:
    """Make a drawing of what a file holds: join the loose pieces, sort the closed shapes, tell what is wrong.

    Raises FaultsError: SHAPE-01 too much, SHAPE-07 nothing closed, SHAPE-08 open, SHAPE-11 three ends meet,
    SHAPE-12 out of reach, and those of ``arrange``.
    """
    _refuse_far(loose, closed, file)
    chained = chain(loose, file, gap_mm)
    if chained.faults:
        raise FaultsError(chained.faults)
    shapes, rounded = _rounded([*closed, *chained.closed], flatten_mm)
    outlines, more = arrange(shapes, file, flatten_mm)
    more += rounded
    if not outlines:
        fault = Fault("SHAPE-07", "the drawing holds no closed outline", "draw one, or name the layer", Where(file))
        raise FaultsError([fault, *(open_fault([piece], file) for piece in chained.loose[:_MOST_TOLD])])
    more += [
        Note("SHAPE-53", f"loose {p.name or 'stroke'} of {figure(p.length_mm)} mm left out", p.start)
        for p in chained.loose
    ]
    drawing = Drawing(file, unit, tuple(outlines), (*notes, *chained.notes, *more), layers)
    return replace(drawing, notes=(*drawing.notes, *_size_notes(drawing)))


def _rounded(pieces: Sequence[ClosedPiece], flatten_mm: float) -> tuple[list[ClosedPiece], list[Note]]:
    """Loops of short chords that stand for a circle become one, so that a hole is drilled by its true size."""
    shapes = [replace(piece, shape=true_circle(piece.shape, flatten_mm)) for piece in pieces]
    count = sum(a.shape is not b.shape for a, b in zip(shapes, pieces, strict=True))
    what = f"{count} rings of chords read as circles: their corners and chords lie within {2 * flatten_mm:g} mm of one"
    return shapes, [Note("SHAPE-60", what)] if count else []


def _refuse_far(loose: Sequence[Piece], closed: Sequence[ClosedPiece], file: str) -> None:
    edges = [edge for item in (*loose, *(piece.shape for piece in closed)) for edge in item.edges]
    if len(edges) > MOST_EDGES:
        what = f"the drawing has {len(edges)} edges, the limit is {MOST_EDGES}"
        raise FaultsError([Fault("SHAPE-01", what, "keep only what is to be cut in it", Where(file))])
    for edge in edges:
        box = edge.extents
        reach = (*edge.start, *edge.end, box.x_min_mm, box.y_min_mm, box.x_max_mm, box.y_max_mm)
        if not all(abs(value) <= FURTHEST_MM for value in reach):  # also false for what is not a number
            what = f"a line runs to {place(edge.end)}, beyond {figure(FURTHEST_MM / 1e6)} km"
            raise FaultsError([Fault("SHAPE-12", what, "move the part to the origin, check the unit", Where(file))])


def _size_notes(drawing: Drawing) -> list[Note]:
    """A hint where the size looks like a wrong unit."""
    box = drawing.extents
    largest_mm = max(box.width_mm, box.height_mm)
    if 2 <= largest_mm <= 6000:
        return []
    what = (
        f"the drawing reads as {figure(box.width_mm)} x {figure(box.height_mm)} mm: is its unit really {drawing.unit}?"
    )
    return [Note("SHAPE-57", what)]


def arrange(
    pieces: Sequence[ClosedPiece], file: str, flatten_mm: float = FLATTEN_MM
) -> tuple[list[Outline], list[Note]]:
    """Return outlines with their holes, largest first: what lies in a part is a hole, what lies in a hole a part.

    Raises FaultsError: SHAPE-09 crosses itself, SHAPE-10 two shapes cross or touch,  SHAPE-15 nested too deeply.
    """
    shapes, notes = _worth_keeping(pieces)
    faults = _crossed(shapes, file, flatten_mm)
    if faults:
        raise FaultsError(faults)
    rings = _rings(shapes, flatten_mm)
    faults = _crossings(rings, file)
    if faults:
        raise FaultsError(faults)
    return _nested(shapes, _containers(shapes, rings, file)), notes


def _worth_keeping(pieces: Sequence[ClosedPiece]) -> tuple[list[ClosedPiece], list[Note]]:
    """Leave out shapes drawn twice and lines that run there and back, and tell where."""
    seen: set[tuple[int, ...]] = set()
    kept, notes = [], []
    for piece in pieces:
        box, (x_mm, y_mm) = piece.shape.extents, piece.shape.centroid
        values = (box.x_min_mm, box.y_min_mm, box.x_max_mm, box.y_max_mm, x_mm, y_mm, piece.shape.perimeter_mm)
        keys = [(k, *(floor(value / 0.004 + k / 2) for value in values)) for k in (0, 1)]
        name = piece.name or "a closed line"
        if _is_thin(piece.shape):
            notes.append(Note("SHAPE-53", f"{name} encloses nothing, left out", box.middle))
        elif not seen.isdisjoint(keys):
            notes.append(Note("SHAPE-52", f"{name} is drawn twice, one left out", box.middle))
        else:
            kept.append(piece)
        seen.update(keys)
    return kept, notes


def _is_thin(shape: Closed) -> bool:
    """True for a line there and back; a figure of eight has as little signed area but encloses something."""
    from shapely.geometry import Polygon
    from shapely.validation import make_valid

    least_mm2 = _THINNEST_MM * shape.perimeter_mm
    if shape.area_mm2 >= least_mm2:
        return False
    points = shape.flattened()
    return len(points) < 3 or bool(make_valid(Polygon(points)).area < least_mm2)


def _crossed(pieces: Sequence[ClosedPiece], file: str, flatten_mm: float) -> list[Fault]:
    """Faults of shapes that meet themselves."""
    faults = []
    for piece in pieces:
        spot = _crosses_at(piece.shape, flatten_mm)
        if spot:
            what = f"outline ({piece.name or 'closed line'}) crosses or touches itself at {place(spot)}"
            faults.append(Fault("SHAPE-09", what, "draw it as one line around the part", Where(file)))
    return faults[:_MOST_TOLD]


def _crosses_at(shape: Closed, flatten_mm: float) -> Point | None:
    """Where a loop meets itself, or None."""
    from shapely.geometry import LinearRing, Polygon
    from shapely.validation import explain_validity

    if isinstance(shape, Circle):
        return None
    points = shape.flattened(flatten_mm)
    if len(points) < 3:
        return shape.edges[0].start
    if LinearRing(points).is_simple:
        return None
    found = re.search(r"\[(\S+) (\S+)\]", explain_validity(Polygon(points)))
    return (float(found.group(1)), float(found.group(2))) if found else shape.extents.middle


def _rings(pieces: Sequence[ClosedPiece], flatten_mm: float) -> list[Any]:
    from shapely.geometry import LinearRing

    return [LinearRing(piece.shape.flattened(flatten_mm)) for piece in pieces]


def _crossings(rings: list[Any], file: str) -> list[Fault]:
    from shapely import STRtree

    faults: list[Fault] = []
    tree = STRtree(rings)
    for i, ring in enumerate(rings):
        for j in sorted(tree.query(ring, predicate="intersects").tolist()):
            if i < j and len(faults) < _MOST_TOLD:
                spot = ring.intersection(rings[j]).representative_point()
                what = f"two outlines cross or touch at {place((spot.x, spot.y))}"
                mend = "move them apart, or join them into one outline"
                faults.append(Fault("SHAPE-10", what, mend, Where(file)))
    return faults


def _containers(pieces: Sequence[ClosedPiece], rings: list[Any], file: str) -> list[list[int]]:
    """For every shape the shapes around it, the innermost first."""
    import shapely

    tree = shapely.STRtree([shapely.Polygon(ring) for ring in rings])
    around = []
    for i, ring in enumerate(rings):
        found = [j for j in tree.query(shapely.Point(ring.coords[0]), predicate="within").tolist() if j != i]
        if len(found) > _DEEPEST:
            what = f"more than {_DEEPEST} outlines lie one in the other around {place(pieces[i].shape.extents.middle)}"
            raise FaultsError([Fault("SHAPE-15", what, "keep only what is to be cut", Where(file))])
        around.append(sorted(found, key=lambda j: pieces[j].shape.area_mm2))
    return around


def _nested(pieces: Sequence[ClosedPiece], around: list[list[int]]) -> list[Outline]:
    holes: dict[int, list[Closed]] = {i: [] for i, found in enumerate(around) if len(found) % 2 == 0}
    for i, found in enumerate(around):
        if len(found) % 2 == 1:
            holes[found[0]].append(_sorted(pieces[i].shape))
    outlines = [
        Outline(_sorted(pieces[i].shape), tuple(sorted(inner, key=_by_place)), pieces[i].layer)
        for i, inner in holes.items()
    ]
    return sorted(outlines, key=lambda o: (-round(o.boundary.area_mm2, 3), _by_place(o.boundary)))


def _sorted(shape: Closed) -> Closed:
    return shape.sorted() if isinstance(shape, Loop) else shape


def _by_place(shape: Closed) -> tuple[float, float, float]:
    x_mm, y_mm = shape.extents.middle
    return (round(y_mm, 6), round(x_mm, 6), round(shape.area_mm2, 6))
