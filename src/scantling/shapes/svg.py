"""SVG files to outlines in mm, y upwards; circles and circular arcs stay what they are."""

from __future__ import annotations

import itertools
import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from io import BytesIO
from math import atan2, ceil, cos, hypot, sin, sqrt
from typing import Any

from scantling.errors import Fault, FaultsError, Where
from scantling.shapes.arranging import assemble
from scantling.shapes.chaining import as_circle
from scantling.shapes.drawn import MM_PER_UNIT, MOST_EDGES, ClosedPiece, Drawing, Note, Piece, mm_per
from scantling.shapes.edges import FLATTEN_MM, Arc, Edge, Point, Segment, Similarity, arc_steps, distance_mm
from scantling.shapes.outline import Loop
from scantling.shapes.svg_tree import SvgTree, keep_layer, parse_svg

GAP_MM = 0.05
_PX_MM = MM_PER_UNIT["px"]
_TRUE_UNITS = ("mm", "cm", "in", "pt", "pc")
_LENGTH = re.compile(r"\s*([0-9]*\.?[0-9]+(?:[eE][+-]?[0-9]+)?)\s*([a-zA-Z%]*)\s*")


def read_svg(
    data: bytes,
    file: str,
    unit: str | None = None,
    layer: str | None = None,
    gap_mm: float = GAP_MM,
    flatten_mm: float = FLATTEN_MM,
) -> Drawing:
    """Return the outlines of an SVG file, its lower left corner at the origin.

    unit : what one unit of the drawing's own coordinates is; needed where its width and height are not in mm, cm, in,
    pt or pc, since a pixel is no length; wins over the file's own
    layer : only what is in the group of that label or identifier
    gap_mm, flatten_mm : as for DXF files

    Raises FaultsError with SHAPE-01, 02, 04 … 15.
    """
    tree = parse_svg(data, file)
    if layer is not None:
        keep_layer(tree, layer, file)
    scale, name, notes = _scale(tree.root, unit, file)
    found = _Found(scale.mm_per_px, flatten_mm)
    try:
        picture = _picture(tree)
        move = Similarity(complex(scale.mm_per_px, 0), complex(0, scale.height_px * scale.mm_per_px), mirrored=True)
        for shape in _shapes(picture, found):
            _add(shape, move, found, file)
    except (FaultsError, MemoryError, NameError):
        raise
    except Exception as error:  # the file is not ours to trust: whatever the library trips over is a fault of it
        what = f"this SVG file cannot be read: {' '.join(str(error).split())[:120] or type(error).__name__}"
        raise FaultsError([Fault("SHAPE-02", what, "save it again as plain SVG", Where(file))]) from error
    return assemble(
        found.loose,
        found.closed,
        file=file,
        unit=name,
        gap_mm=gap_mm,
        flatten_mm=flatten_mm,
        notes=[*notes, *found.notes(tree)],
        layers=tuple(sorted(set(tree.layers))),
    )


@dataclass(frozen=True)
class _Scale:
    mm_per_px: float
    height_px: float


def _scale(root: Any, unit: str | None, file: str) -> tuple[_Scale, str, list[Note]]:
    """The size of the library's pixel; with a stated unit the page is first made one pixel to the unit."""
    width, height = _length(root.get("width")), _length(root.get("height"))
    words = (root.get("viewBox") or "").replace(",", " ").split()
    box = [float(word) for word in words] if len(words) == 4 and all(map(_is_number, words)) else None
    own = width[1] if width and height and {width[1], height[1]} <= set(_TRUE_UNITS) else ""
    if unit is not None:
        return _stated(root, unit, box, width, height, own, file)
    if not own or width is None or height is None:
        what = f"the file does not say its size: its width is {root.get('width') or 'not given'!r}"
        mend = 'state the unit of its coordinates, as in "unit: mm", or set the page size in mm'
        raise FaultsError([Fault("SHAPE-04", what, mend, Where(file))])
    # written out in pixels here, since the library's own pixels to the millimetre end after seven digits
    height_px = height[0] * MM_PER_UNIT[height[1]] / _PX_MM
    root.set("width", repr(width[0] * MM_PER_UNIT[width[1]] / _PX_MM))
    root.set("height", repr(height_px))
    return _Scale(_PX_MM, height_px), own, []


_Length = tuple[float, str]


def _stated(
    root: Any,
    unit: str,
    box: list[float] | None,
    width: _Length | None,
    height: _Length | None,
    own: str,
    file: str,
) -> tuple[_Scale, str, list[Note]]:
    """One unit of the view box is one stated unit; without a view box one pixel is."""
    ratio, notes = mm_per(unit, file), []
    if box is None:
        height_px = height[0] * (MM_PER_UNIT[height[1]] / _PX_MM if own else 1.0) if height else 0.0
        return _Scale(ratio, height_px), unit, []
    if own and width and box[2] > 0:
        true_mm = width[0] * MM_PER_UNIT[own] / box[2]
        if abs(true_mm / ratio - 1) > 1e-4:
            what = f"one unit read as 1 {unit} as stated, though the file says {true_mm:.6g} mm"
            notes.append(Note("SHAPE-58", what))
    root.set("width", repr(box[2]))
    root.set("height", repr(box[3]))
    return _Scale(ratio, box[3]), unit, notes


def _is_number(word: str) -> bool:
    try:
        float(word)
    except ValueError:
        return False
    return True


def _length(text: str | None) -> _Length | None:
    found = _LENGTH.fullmatch(text or "")
    return (float(found.group(1)), found.group(2)) if found else None


@dataclass
class _Found:
    """What the shapes came to."""

    mm_per_px: float
    flatten_mm: float
    loose: list[Piece] = field(default_factory=list)
    closed: list[ClosedPiece] = field(default_factory=list)
    left_out: Counter[str] = field(default_factory=Counter)
    hidden: int = 0
    curves: int = 0
    edges: int = 0

    def notes(self, tree: SvgTree) -> list[Note]:
        """Tell what was left out and what was replaced."""
        notes = []
        if self.curves:
            notes.append(Note("SHAPE-55", f"{self.curves} curves replaced by chords within {self.flatten_mm} mm"))
        if self.hidden + tree.hidden:
            notes.append(Note("SHAPE-54", f"{self.hidden + tree.hidden} hidden shapes or groups left out"))
        if self.left_out:
            kinds = ", ".join(f"{n} {kind}" for kind, n in sorted(self.left_out.items()))
            notes.append(Note("SHAPE-56", f"left out, as it is no outline: {kinds}"))
        if tree.clipped:
            notes.append(Note("SHAPE-59", f"{tree.clipped} clips or masks are not applied: shapes are read whole"))
        return notes


def _picture(tree: SvgTree) -> Any:
    """The cleaned tree, not the file's own bytes, is what the library reads."""
    from xml.etree import ElementTree

    from svgelements import SVG

    ElementTree.register_namespace("", "http://www.w3.org/2000/svg")
    return SVG.parse(BytesIO(ElementTree.tostring(tree.root)), reify=True, ppi=96)


def _shapes(picture: Any, found: _Found) -> Iterator[Any]:
    """Everything that is drawn and can be seen."""
    from svgelements import Image, Shape, Text

    for element in picture.elements():
        if isinstance(element, Text | Image):
            found.left_out[type(element).__name__.lower()] += 1
        elif isinstance(element, Shape):
            if _is_seen(element):
                yield element
            else:
                found.hidden += 1


def _is_seen(shape: Any) -> bool:
    values = shape.values
    if values.get("visibility") in ("hidden", "collapse") or values.get("display") == "none":
        return False
    if _is_number(str(values.get("opacity"))) and float(values["opacity"]) == 0:
        return False
    return shape.fill.value is not None or shape.stroke.value is not None


def _add(shape: Any, move: Similarity, found: _Found, file: str) -> None:
    """Keep the runs of one shape: closed ones as loops or circles, open ones as loose pieces."""
    from svgelements import Path

    name = f"{type(shape).__name__.lower()} {shape.id or ''}".strip()
    # a turned rectangle or circle keeps its transform until it is a path
    for edges, closed in _runs(abs(Path(shape)), found):
        found.edges += len(edges)
        if found.edges > MOST_EDGES:
            what = f"the drawing has more than {MOST_EDGES} edges"
            raise FaultsError([Fault("SHAPE-01", what, "keep only what is to be cut in it", Where(file))])
        moved = [edge.moved(move) for edge in edges]
        if closed:
            found.closed.append(ClosedPiece(as_circle(moved) or Loop(tuple(moved)), name))
        else:
            found.loose.append(Piece(tuple(moved), name))


def _runs(path: Any, found: _Found) -> Iterator[tuple[list[Edge], bool]]:
    """The parts of a path between its moves, in the library's pixels; those that end where they began are closed."""
    run: list[Edge] = []
    for segment in path:
        kind = type(segment).__name__
        if kind == "Move":
            yield from _finished(run)
            run = []
        elif kind == "Close" and run:
            end, start = run[-1].end, run[0].start
            if end != start:
                run.append(Segment(end, start))
            yield from _finished(run, closed=True)
            run = []
        elif segment.start is not None and segment.end is not None:
            run += [edge for edge in _edges(segment, kind, found) if edge.length_mm != 0]
    yield from _finished(run)


def _finished(run: list[Edge], closed: bool = False) -> Iterator[tuple[list[Edge], bool]]:
    if run:
        yield run, closed or distance_mm(run[0].start, run[-1].end) < 1e-9


def _edges(segment: Any, kind: str, found: _Found) -> list[Edge]:
    if kind == "Arc":
        return _arc(segment, found)
    if kind in ("CubicBezier", "QuadraticBezier"):
        return _bezier(segment, kind, found)
    return [Segment(_point(segment.start), _point(segment.end))]


def _point(value: Any) -> Point:
    return (float(value.x), float(value.y))


def _arc(segment: Any, found: _Found) -> list[Edge]:
    """A circular arc stays one; an elliptical one becomes chords."""
    centre, start, end = _point(segment.center), _point(segment.start), _point(segment.end)
    rx, ry, sweep_rad = float(segment.rx), float(segment.ry), float(segment.sweep)
    if max(rx, ry) == 0 or sweep_rad == 0:
        return [Segment(start, end)]
    if abs(rx - ry) <= 1e-6 * max(rx, ry):
        start_rad = atan2(start[1] - centre[1], start[0] - centre[0])
        return [Arc(centre, rx, start_rad, sweep_rad)]
    found.curves += 1
    steps = arc_steps(max(rx, ry), sweep_rad, found.flatten_mm / found.mm_per_px)
    first, turn = float(segment.get_start_t()), float(segment.get_rotation().as_radians)
    points = [start]
    for k in range(1, steps):
        t = first + sweep_rad * k / steps
        x, y = rx * cos(t), ry * sin(t)
        points.append((centre[0] + x * cos(turn) - y * sin(turn), centre[1] + x * sin(turn) + y * cos(turn)))
    return _chords([*points, end])


def _bezier(segment: Any, kind: str, found: _Found) -> list[Edge]:
    """Equal steps of the parameter, as many as the second differences ask for (error <= step^2 / 8 * |B''|)."""
    found.curves += 1
    a, d = _point(segment.start), _point(segment.end)
    if kind == "QuadraticBezier":
        q = _point(segment.control)
        b = (a[0] + 2 * (q[0] - a[0]) / 3, a[1] + 2 * (q[1] - a[1]) / 3)
        c = (d[0] + 2 * (q[0] - d[0]) / 3, d[1] + 2 * (q[1] - d[1]) / 3)
    else:
        b, c = _point(segment.control1), _point(segment.control2)
    bend = 6 * max(
        hypot(a[0] - 2 * b[0] + c[0], a[1] - 2 * b[1] + c[1]), hypot(b[0] - 2 * c[0] + d[0], b[1] - 2 * c[1] + d[1])
    )
    steps = min(4096, max(1, ceil(sqrt(bend * found.mm_per_px / (8 * found.flatten_mm)))))
    points = []
    for k in range(steps + 1):
        t = k / steps
        p, q1, r, s = (1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3
        points.append((p * a[0] + q1 * b[0] + r * c[0] + s * d[0], p * a[1] + q1 * b[1] + r * c[1] + s * d[1]))
    return _chords([a, *points[1:-1], d])


def _chords(points: list[Point]) -> list[Edge]:
    return [Segment(p, q) for p, q in itertools.pairwise(points) if p != q]
