"""The entities of a DXF file as segments, arcs and circles in the file's own unit; inserted blocks are taken apart."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from math import atan2, hypot, radians, tau
from typing import Any

from scantling.errors import Fault, FaultsError, Where
from scantling.shapes.chaining import as_circle
from scantling.shapes.drawn import ClosedPiece, Note, Piece
from scantling.shapes.edges import Arc, Edge, Point, Segment, Similarity, arc_from_bulge, distance_mm, mirror_at
from scantling.shapes.outline import Circle, Loop

MOST_ENTITIES = 200_000
_DEEPEST_BLOCK = 24
_NEVER_PLOTTED = "defpoints"
_SAME = 1e-9


@dataclass
class Gathered:
    """What the entities came to, with counts of what was left out."""

    file: str
    loose: list[Piece] = field(default_factory=list)
    closed: list[ClosedPiece] = field(default_factory=list)
    left_out: Counter[str] = field(default_factory=Counter)
    hidden: Counter[str] = field(default_factory=Counter)
    curves: Counter[str] = field(default_factory=Counter)
    layers: set[str] = field(default_factory=set)
    count: int = 0

    def take(self, number: int = 1) -> None:
        """Count entities, and stop where blocks in blocks multiply beyond all sense."""
        self.count += number
        if self.count > MOST_ENTITIES:
            what = f"the drawing has more than {MOST_ENTITIES} entities, its blocks taken apart"
            raise FaultsError([Fault("SHAPE-01", what, "keep only what is to be cut in it", Where(self.file))])

    def add(self, edges: Sequence[Edge], closed: bool, name: str, layer: str) -> None:
        """Keep a run of edges as what it is: circle, loop or loose piece."""
        edges = tuple(edge for edge in edges if edge.length_mm != 0)  # what is not a number stays, to be refused
        if not edges:
            return
        circle = as_circle(edges) if closed else None
        if circle:
            self.closed.append(ClosedPiece(circle, name, layer))
        elif closed:
            self.closed.append(ClosedPiece(Loop(edges), name, layer))
        else:
            self.loose.append(Piece(edges, name, layer))

    def notes(self, flatten_mm: float) -> list[Note]:
        """Tell what was left out and what was replaced."""
        notes = [
            Note("SHAPE-55", f"{n} {kind} replaced by chords within {flatten_mm} mm")
            for kind, n in _sorted(self.curves)
        ]
        notes += [
            Note("SHAPE-54", f"layer {name!r} is hidden: {n} pieces left out") for name, n in _sorted(self.hidden)
        ]
        left_out = ", ".join(f"{n} {kind}" for kind, n in _sorted(self.left_out))
        return [*notes, Note("SHAPE-56", f"left out, as it is no outline: {left_out}")] if left_out else notes


def _sorted(counts: Counter[str]) -> list[tuple[str, int]]:
    return sorted(counts.items())


def gather(document: Any, file: str, layer: str | None, flatten: float) -> Gathered:
    """Return the pieces of a document's model space; ``flatten`` is the tolerance in the file's unit.

    Raises FaultsError: SHAPE-01 too many entities, SHAPE-15 a block that is missing or holds itself.
    """
    found = Gathered(file)
    hidden = {row.dxf.name.lower() for row in document.layers if row.is_off() or row.is_frozen()} | {_NEVER_PLOTTED}
    for entity, on in _taken_apart(document.modelspace(), None, found, 0):
        found.layers.add(on)
        if layer is not None and on.lower() != layer.lower():
            continue
        if on.lower() in hidden and layer is None:
            found.hidden[on] += 1
            continue
        kind = entity.dxftype()
        reader = _READERS.get(kind)
        if reader is None or not reader(entity, found, f"{kind} {entity.dxf.handle or 'in a block'}", on, flatten):
            found.left_out[kind] += 1
    return found


def _taken_apart(entities: Iterable[Any], parent: str | None, found: Gathered, depth: int) -> Iterator[tuple[Any, str]]:
    """Every entity with its layer; inserts give what they insert, whose layer "0" means that of the insert."""
    for entity in entities:
        found.take()
        own = str(entity.dxf.get("layer", "0"))
        on = parent if parent is not None and own == "0" else own
        if entity.dxftype() != "INSERT":
            yield entity, on
            continue
        name = entity.dxf.get("name", "")
        if depth > _DEEPEST_BLOCK or entity.block() is None:
            what = f"block {name!r} " + ("holds itself" if depth > _DEEPEST_BLOCK else "is inserted but not described")
            raise FaultsError([Fault("SHAPE-15", what, "take the blocks apart and save again", Where(found.file))])
        copies = max(1, entity.mcount)
        found.take(copies)
        for copy in entity.multi_insert() if copies > 1 else [entity]:
            yield from _taken_apart(copy.virtual_entities(), on, found, depth + 1)


def _plane(entity: Any) -> Similarity | None:
    """How the entity's own plane lies on the drawing: as it is, seen from behind, or None for a tilted one."""
    normal = entity.dxf.get("extrusion", (0, 0, 1))
    x, y, z = normal[0], normal[1], normal[2]
    if abs(x) > 1e-6 or abs(y) > 1e-6:
        return None
    return Similarity() if z >= 0 else mirror_at(0.0)


def _line(entity: Any, found: Gathered, name: str, layer: str, _: float) -> bool:
    start, end = entity.dxf.start, entity.dxf.end
    found.add([Segment((start.x, start.y), (end.x, end.y))], False, name, layer)
    return True


def _arc(entity: Any, found: Gathered, name: str, layer: str, _: float) -> bool:
    plane = _plane(entity)
    if plane is None:
        return False
    centre, first_deg, last_deg = entity.dxf.center, entity.dxf.start_angle, entity.dxf.end_angle
    sweep_rad = radians((last_deg - first_deg) % 360) or tau
    arc = Arc((centre.x, centre.y), abs(entity.dxf.radius), radians(first_deg), sweep_rad).moved(plane)
    found.add([arc], abs(sweep_rad - tau) < _SAME, name, layer)
    return True


def _circle(entity: Any, found: Gathered, name: str, layer: str, _: float) -> bool:
    plane = _plane(entity)
    if plane is None:
        return False
    if entity.dxf.radius:
        circle = Circle((entity.dxf.center.x, entity.dxf.center.y), abs(entity.dxf.radius)).moved(plane)
        found.closed.append(ClosedPiece(circle, name, layer))
    return True


def _light_polyline(entity: Any, found: Gathered, name: str, layer: str, _: float) -> bool:
    plane = _plane(entity)
    if plane is None:
        return False
    points = [(float(x), float(y), float(b)) for x, y, b in entity.get_points("xyb")]  # stored as numbers of numpy
    _bulged(points, entity.closed, plane, found, name, layer)
    return True


def _polyline(entity: Any, found: Gathered, name: str, layer: str, _: float) -> bool:
    plane = _plane(entity)
    if plane is None or entity.is_poly_face_mesh or entity.is_polygon_mesh:
        return False
    drawn = [v for v in entity.vertices if not v.dxf.flags & 16]  # 16: control point of a smoothed line, not on it
    vertices = [(v.dxf.location.x, v.dxf.location.y, v.dxf.get("bulge", 0.0)) for v in drawn]
    _bulged(vertices, entity.is_closed, plane, found, name, layer)
    return True


def _bulged(
    vertices: list[tuple[float, float, float]], closed: bool, plane: Similarity, found: Gathered, name: str, layer: str
) -> None:
    """A polyline with bulges; one whose last point repeats the first is closed, whatever its flag says."""
    if len(vertices) < 2:
        return
    points: list[Point] = [(x, y) for x, y, _ in vertices]
    joined = points[0] == points[-1]
    following = [*points[1:], points[0]] if closed and not joined else points[1:]
    pairs = zip(points, vertices, following, strict=False)
    edges = [arc_from_bulge(a, b, bulge).moved(plane) for a, (_, _, bulge), b in pairs]
    found.add(edges, closed or joined, name, layer)


def _ellipse(entity: Any, found: Gathered, name: str, layer: str, flatten: float) -> bool:
    axis, first_rad, last_rad = entity.dxf.major_axis, entity.dxf.start_param, entity.dxf.end_param
    sweep_rad = (last_rad - first_rad) % tau or tau
    full = abs(sweep_rad - tau) < _SAME
    plane = _plane(entity)
    if plane is not None and abs(entity.dxf.ratio - 1) < _SAME:
        sign = -1 if plane.mirrored else 1
        centre, turn_rad = entity.dxf.center, atan2(axis.y, axis.x)
        arc = Arc((centre.x, centre.y), hypot(axis.x, axis.y), turn_rad + sign * first_rad, sign * sweep_rad)
        found.add([arc], full, name, layer)
        return True
    return _curve(entity, full, found, name, layer, flatten)


def _spline(entity: Any, found: Gathered, name: str, layer: str, flatten: float) -> bool:
    if len(entity.control_points) + len(entity.fit_points) > 20_000:
        return False
    return _curve(entity, bool(entity.closed), found, name, layer, flatten)


def _curve(entity: Any, closed: bool, found: Gathered, name: str, layer: str, flatten: float) -> bool:
    """Chords along a curve; both tests of the tolerance halve it, as a chord is tried at its middle only."""
    points = [(p.x, p.y) for p in entity.flattening(flatten / 2, 8)]
    found.take(len(points))
    found.curves[entity.dxftype()] += 1
    if closed and len(points) > 2:
        whole = points[:-1] if distance_mm(points[0], points[-1]) < flatten else points
        points = [*whole, points[0]]
    found.add([Segment(a, b) for a, b in pairwise(points)], closed, name, layer)
    return True


_READERS: dict[str, Callable[[Any, Gathered, str, str, float], bool]] = {
    "LINE": _line,
    "ARC": _arc,
    "CIRCLE": _circle,
    "LWPOLYLINE": _light_polyline,
    "POLYLINE": _polyline,
    "ELLIPSE": _ellipse,
    "SPLINE": _spline,
}
