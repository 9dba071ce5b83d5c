"""The drawing of one panel in its own millimetres: lines, hole marks and words, each word where it covers nothing."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, degrees, pi, radians, sin

from scantling.drawing.marks import waste_strokes
from scantling.drawing.primitives import Arc, HoleMark, Item, Line, Pen
from scantling.plans.sheets.care import CareDistance, care_distances
from scantling.plans.sheets.corners import CornerHole, corner_holes, waste_sides
from scantling.plans.sheets.datums import datum_strokes
from scantling.plans.sheets.job import TemplateHole, TemplateJob
from scantling.plans.sheets.placing import CUTS, HOLES, LINES, THIN, Box, Room, Saying
from scantling.plans.sheets.words import care_strokes, panel_words
from scantling.shapes.edges import Arc as EdgeArc
from scantling.shapes.edges import Extents, Point, distance_mm
from scantling.shapes.outline import Circle, Closed, Outline

CROSS_MM = 4.0
"""Half the length of the marks P, Q, R, S between which the diagonals are read."""


_ROOMY_MM = 12.0


@dataclass(frozen=True)
class CheckMarks:
    """The points of the outline next to the corners of its box, from the lower left anticlockwise: P, Q, R, S."""

    points: tuple[Point, Point, Point, Point]

    @property
    def diagonals_mm(self) -> tuple[float, float]:
        """Lengths of P-R and Q-S."""
        p, q, r, s = self.points
        return distance_mm(p, r), distance_mm(q, s)


@dataclass(frozen=True)
class PanelDrawing:
    """A panel ready to be put on pages: strokes are cut at a page's edge, words stand whole or not at all."""

    job: TemplateJob
    strokes: tuple[Item, ...]
    words: tuple[Saying, ...]
    care: tuple[CareDistance, ...]
    corners: tuple[CornerHole, ...]
    marks: CheckMarks


def check_marks(outline: Outline) -> CheckMarks:
    """Return the marks for the diagonals of an outline."""
    box, points = outline.extents, outline.boundary.flattened()
    corners = (
        (box.x_min_mm, box.y_min_mm),
        (box.x_max_mm, box.y_min_mm),
        (box.x_max_mm, box.y_max_mm),
        (box.x_min_mm, box.y_max_mm),
    )
    p, q, r, s = (min(points, key=lambda at, c=corner: round(distance_mm(at, c), 6)) for corner in corners)  # type: ignore[misc]
    return CheckMarks((p, q, r, s))


def draw_panel(job: TemplateJob, windows: Sequence[Extents], kept: Sequence[Box] = ()) -> PanelDrawing:
    """Return the drawing of a panel for pages that show ``windows`` of it; no word stands in the ``kept`` boxes."""
    marks, corners, care = check_marks(job.outline), corner_holes(job), care_distances(job.holes)
    room = Room(windows)
    strokes: list[Item] = [*_cut_lines(job.outline), *_waste(job.outline), *datum_strokes(job)]
    strokes += [item for point in marks.points for item in _cross(point)]
    strokes += [item for corner in corners for item in _corner(corner)]
    strokes += [item for hole in job.holes for item in _hole(hole)]
    lines = care_strokes(job, care)
    strokes += lines
    _fill(room, job, corners, marks)
    for box in kept:
        room.add(box, HOLES)
    for one in lines:
        room.add_line(one.start, one.end, THIN)
    words = panel_words(job, room, care, corners, marks.points)
    return PanelDrawing(job, tuple(strokes), tuple(words), care, corners, marks)


def _cut_lines(outline: Outline) -> list[Item]:
    return [item for shape in (outline.boundary, *outline.inner) for item in closed_items(shape, Pen.CUT)]


def closed_items(shape: Closed, pen: Pen) -> list[Item]:
    """Return a closed shape as strokes, arcs kept as arcs."""
    if isinstance(shape, Circle):
        return [Arc(shape.centre, shape.radius_mm, pen)]
    return [
        Arc(edge.centre, edge.radius_mm, pen, degrees(edge.start_rad), degrees(edge.sweep_rad))
        if isinstance(edge, EdgeArc)
        else Line(edge.start, edge.end, pen)
        for edge in shape.edges
    ]


def _waste(outline: Outline) -> list[Item]:
    return [stroke for points, left in waste_sides(outline) for stroke in waste_strokes(points, 6.0, 2.5, left)]


def _cross(point: Point) -> list[Item]:
    x, y = point
    return [
        Line((x - CROSS_MM, y), (x + CROSS_MM, y), Pen.CHECK),
        Line((x, y - CROSS_MM), (x, y + CROSS_MM), Pen.CHECK),
    ]


def _corner(corner: CornerHole) -> list[Item]:
    (x, y), reach_mm = corner.at, min(1.5, corner.bit_mm / 2)
    return [
        Arc(corner.at, corner.bit_mm / 2, Pen.GHOST),
        Line((x - reach_mm, y), (x + reach_mm, y), Pen.CENTRE),
        Line((x, y - reach_mm), (x, y + reach_mm), Pen.CENTRE),
    ]


def _hole(hole: TemplateHole) -> list[Item]:
    ghosts: list[Item] = [Arc(hole.at, diameter / 2, Pen.GHOST) for diameter in hole.ghosts_mm]
    pen = Pen.CARE if hole.care else Pen.HOLE
    if not hole.slot_mm:
        return [*ghosts, HoleMark(hole.at, hole.drawn_mm, bit_mm=hole.drawn_mm, pen=pen)]
    return [*ghosts, *_slot(hole, pen)]


def _slot(hole: TemplateHole, pen: Pen) -> list[Item]:
    """A long hole: two half circles and two sides, a cross at the middle and at both ends."""
    (x, y), radius_mm = hole.at, hole.drawn_mm / 2
    turn_rad = radians(hole.slot_turn_deg)
    c, s = cos(turn_rad) * hole.slot_mm / 2, sin(turn_rad) * hole.slot_mm / 2
    nx, ny = -sin(turn_rad) * radius_mm, cos(turn_rad) * radius_mm
    ends = ((x + c, y + s), (x - c, y - s))
    start_deg = hole.slot_turn_deg - 90
    items: list[Item] = [HoleMark(hole.at, 0.6, bit_mm=hole.drawn_mm, pen=pen)]
    for at, from_deg in zip(ends, (start_deg, start_deg + 180), strict=True):
        items.append(Arc(at, radius_mm, pen, from_deg, 180.0))
        items += [
            Line((at[0] - 1.5, at[1]), (at[0] + 1.5, at[1]), Pen.CENTRE),
            Line((at[0], at[1] - 1.5), (at[0], at[1] + 1.5), Pen.CENTRE),
        ]
    (ax, ay), (bx, by) = ends
    return [
        *items,
        Line((ax + nx, ay + ny), (bx + nx, by + ny), pen),
        Line((ax - nx, ay - ny), (bx - nx, by - ny), pen),
    ]


def _fill(room: Room, job: TemplateJob, corners: Sequence[CornerHole], marks: CheckMarks) -> None:
    """Note everything that is drawn, so that words keep off it."""
    for shape in (job.outline.boundary, *job.outline.inner):
        room.add_run(shape.flattened(0.5), CUTS)
    for hole in job.holes:
        _fill_hole(room, hole)
    for corner in corners:
        room.add(_square(corner.at, corner.bit_mm / 2), LINES)
    for at in marks.points:
        _fill_cross(room, at, CROSS_MM)


def _fill_hole(room: Room, hole: TemplateHole) -> None:
    """Small holes are kept clear whole, in large ones there is room for words."""
    if hole.drawn_mm > _ROOMY_MM and not hole.slot_mm:
        _ring(room, hole.at, hole.drawn_mm / 2, CUTS)
        room.add(_square(hole.at, 1.5), HOLES)
    else:
        room.add(_square(hole.at, hole.reach_mm + 0.5), HOLES)
    _fill_cross(room, hole.at, hole.drawn_mm / 2 + 3.0)
    for diameter in hole.ghosts_mm:
        _ring(room, hole.at, diameter / 2, THIN)


def _fill_cross(room: Room, at: Point, half_mm: float) -> None:
    (x, y) = at
    room.add_line((x - half_mm, y), (x + half_mm, y), THIN)
    room.add_line((x, y - half_mm), (x, y + half_mm), THIN)


def _square(at: Point, half_mm: float) -> tuple[float, float, float, float]:
    return (at[0] - half_mm, at[1] - half_mm, at[0] + half_mm, at[1] + half_mm)


def _ring(room: Room, centre: Point, radius_mm: float, weight: float) -> None:
    steps = max(16, round(radius_mm * 5))
    points = [
        (centre[0] + radius_mm * cos(2 * pi * k / steps), centre[1] + radius_mm * sin(2 * pi * k / steps))
        for k in range(steps)
    ]
    room.add_run(points, weight)
