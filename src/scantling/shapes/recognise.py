"""What a flat part is made of, in a maker's words: holes by size, patterns, slots, windows, corners; with residuals."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field
from math import atan2, degrees, pi, radians, tau

from scantling.shapes.circle_fit import RegularPolygon, regular_polygon
from scantling.shapes.edges import Arc, Edge, Point, Segment, distance_mm
from scantling.shapes.hole_patterns import Hole, Pattern, find_patterns, same_sizes
from scantling.shapes.outline import Loop, Outline

_SAME_MM = 0.01
_SMOOTH_RAD = radians(2.0)
_SHARP_RAD = radians(10.0)


@dataclass(frozen=True)
class HoleSize:
    """Round holes of one diameter."""

    diameter_mm: float
    centres: tuple[Point, ...]


@dataclass(frozen=True)
class Slot:
    """A long hole with round ends; ``length_mm`` is over all, ``travel_mm`` from centre to centre of the ends."""

    centre: Point
    width_mm: float
    length_mm: float
    turn_deg: float
    residual_mm: float

    @property
    def travel_mm(self) -> float:
        """How far a bolt of the slot's width can move."""
        return self.length_mm - self.width_mm


@dataclass(frozen=True)
class RectangleHole:
    """A window with four straight sides and right angles, its corners sharp or rounded."""

    centre: Point
    width_mm: float
    height_mm: float
    turn_deg: float
    radius_mm: float


@dataclass(frozen=True)
class Rounding:
    """Corners rounded by one radius; ``inside`` ones need a drill or a cutter that small."""

    radius_mm: float
    inside: bool
    count: int


@dataclass(frozen=True)
class OutlineFeatures:
    """The features of an outline; what has no name is counted in ``other_windows``."""

    width_mm: float
    height_mm: float
    area_mm2: float
    cut_mm: float
    holes: tuple[HoleSize, ...]
    patterns: tuple[Pattern, ...]
    slots: tuple[Slot, ...]
    rectangles: tuple[RectangleHole, ...]
    polygons: tuple[RegularPolygon, ...]
    other_windows: int
    roundings: tuple[Rounding, ...]
    sharp_inside: tuple[Point, ...]


def recognise_outline(outline: Outline) -> OutlineFeatures:
    """Return what the outline holds; nothing is guessed: a hole is told by its size, never by a thread."""
    holes = [Hole(circle.centre, circle.diameter_mm) for circle in outline.circles]
    windows = _Windows()
    for window in outline.windows:
        windows.sort(merged(window))
    corners = _Corners()
    if isinstance(outline.boundary, Loop):
        corners.look(merged(outline.boundary), is_window=False)
    for loop in windows.cornered:
        corners.look(loop, is_window=True)
    return OutlineFeatures(
        outline.extents.width_mm,
        outline.extents.height_mm,
        outline.area_mm2,
        outline.perimeter_mm,
        tuple(_size(group) for group in same_sizes(holes)),
        tuple(find_patterns(holes)),
        tuple(windows.slots),
        tuple(windows.rectangles),
        tuple(windows.polygons),
        windows.other,
        corners.roundings(),
        tuple(corners.sharp),
    )


def _size(group: list[Hole]) -> HoleSize:
    return HoleSize(sum(hole.diameter_mm for hole in group) / len(group), tuple(hole.centre for hole in group))


@dataclass
class _Windows:
    """Holes that are not round, sorted by what they are; ``cornered`` are those whose corners matter."""

    slots: list[Slot] = field(default_factory=list)
    rectangles: list[RectangleHole] = field(default_factory=list)
    polygons: list[RegularPolygon] = field(default_factory=list)
    cornered: list[Loop] = field(default_factory=list)
    other: int = 0

    def sort(self, loop: Loop) -> None:
        """Put one window where it belongs."""
        slot, rectangle, polygon = _slot(loop), _rectangle(loop), regular_polygon(loop)
        if slot:
            self.slots.append(slot)
        elif polygon:
            self.polygons.append(polygon)
        else:
            self.cornered.append(loop)
            if rectangle:
                self.rectangles.append(rectangle)
            else:
                self.other += 1


def merged(loop: Loop) -> Loop:
    """Return the loop with segments on one line and arcs on one circle joined, as the maker sees it."""
    edges = list(loop.edges)
    first = next((k for k in range(len(edges)) if _joined(edges[k - 1], edges[k]) is None), None)
    if first is None:
        return loop
    run: list[Edge] = []
    for edge in (*edges[first:], *edges[:first]):
        whole = _joined(run[-1], edge) if run else None
        if whole:
            run[-1] = whole
        else:
            run.append(edge)
    return Loop(tuple(run))


def _joined(a: Edge, b: Edge) -> Edge | None:
    """Both as one edge, if they are the same line or the same circle in one sense."""
    if isinstance(a, Segment) and isinstance(b, Segment):
        whole = Segment(a.start, b.end)
        return whole if _turn(a, b) < 1e-4 and whole.distance_mm(a.end) < 1e-3 else None
    if isinstance(a, Arc) and isinstance(b, Arc) and a.sweep_rad * b.sweep_rad > 0:
        alike = distance_mm(a.centre, b.centre) < 2e-3 and abs(a.radius_mm - b.radius_mm) < 2e-3
        return Arc(a.centre, a.radius_mm, a.start_rad, a.sweep_rad + b.sweep_rad) if alike else None
    return None


def _direction(edge: Edge, at_end: bool) -> float:
    """The direction of travel at an end of an edge."""
    if isinstance(edge, Segment):
        return atan2(edge.end[1] - edge.start[1], edge.end[0] - edge.start[0])
    angle_rad = edge.start_rad + (edge.sweep_rad if at_end else 0.0)
    return angle_rad + (pi / 2 if edge.sweep_rad > 0 else -pi / 2)


def _signed_turn(a: Edge, b: Edge) -> float:
    """By how much the way bends from one edge to the next, left positive."""
    return (_direction(b, False) - _direction(a, True) + pi) % tau - pi


def _turn(a: Edge, b: Edge) -> float:
    return abs(_signed_turn(a, b))


def _slot(loop: Loop) -> Slot | None:
    """Two half circles of one size, two straight sides between."""
    arcs = [edge for edge in loop.edges if isinstance(edge, Arc)]
    sides = [edge for edge in loop.edges if isinstance(edge, Segment)]
    if len(arcs) != 2 or len(sides) != 2 or isinstance(loop.edges[0], Arc) == isinstance(loop.edges[1], Arc):
        return None
    a, b = arcs
    bent = max(abs(abs(arc.sweep_rad) - pi) * arc.radius_mm for arc in arcs)
    residual_mm = max(abs(a.radius_mm - b.radius_mm), abs(sides[0].length_mm - sides[1].length_mm), bent)
    if residual_mm > 0.05 or a.sweep_rad * b.sweep_rad < 0:
        return None
    travel_mm = distance_mm(a.centre, b.centre)
    width_mm = a.radius_mm + b.radius_mm
    turn_deg = degrees(atan2(b.centre[1] - a.centre[1], b.centre[0] - a.centre[0])) % 180
    middle = ((a.centre[0] + b.centre[0]) / 2, (a.centre[1] + b.centre[1]) / 2)
    return Slot(middle, width_mm, travel_mm + width_mm, 0.0 if 180 - turn_deg < 1e-6 else turn_deg, residual_mm)


def _rectangle(loop: Loop) -> RectangleHole | None:
    """Four sides at right angles, between them nothing or four equal quarter circles."""
    sides = [edge for edge in loop.edges if isinstance(edge, Segment)]
    arcs = [edge for edge in loop.edges if isinstance(edge, Arc)]
    if len(sides) != 4 or len(arcs) not in (0, 4):
        return None
    radius_mm = arcs[0].radius_mm if arcs else 0.0
    if any(abs(arc.radius_mm - radius_mm) > _SAME_MM or abs(abs(arc.sweep_rad) - pi / 2) > _SMOOTH_RAD for arc in arcs):
        return None
    turns = [_turn(sides[k], sides[(k + 1) % 4]) for k in range(4)]
    if any(abs(turn - pi / 2) > radians(0.1) for turn in turns):
        return None
    turn_deg = degrees(_direction(sides[0], False)) % 180
    along_mm, up_mm = sides[0].length_mm + 2 * radius_mm, sides[1].length_mm + 2 * radius_mm
    if turn_deg >= 90 - 1e-6 and turn_deg < 180 - 1e-6:
        turn_deg, along_mm, up_mm = turn_deg - 90, up_mm, along_mm
    return RectangleHole(loop.centroid, along_mm, up_mm, 0.0 if 180 - turn_deg < 1e-6 else turn_deg, radius_mm)


class _Corners:
    """Roundings and sharp inside corners, gathered loop by loop; loops run anticlockwise."""

    def __init__(self) -> None:
        """Begin with none."""
        self.sharp: list[Point] = []
        self._counts: Counter[tuple[float, bool]] = Counter()

    def look(self, loop: Loop, is_window: bool) -> None:
        """Add the corners of one loop; inside a window the material lies on the right."""
        edges = loop.edges
        for k, edge in enumerate(edges):
            before, after = edges[k - 1], edges[(k + 1) % len(edges)]
            turn_rad = _signed_turn(before, edge)
            if (turn_rad if is_window else -turn_rad) > _SHARP_RAD:
                self.sharp.append(edge.start)
            smooth = _turn(before, edge) < _SMOOTH_RAD and _turn(edge, after) < _SMOOTH_RAD
            if isinstance(edge, Arc) and smooth and abs(edge.sweep_rad) < pi - _SMOOTH_RAD:
                inside = (edge.sweep_rad > 0) == is_window
                self._counts[(round(edge.radius_mm, 2), inside)] += 1

    def roundings(self) -> tuple[Rounding, ...]:
        """The radii found, inside ones first, the smallest first."""
        ordered = sorted(self._counts.items(), key=lambda item: (not item[0][1], item[0][0]))
        return tuple(Rounding(radius_mm, inside, count) for (radius_mm, inside), count in ordered)
