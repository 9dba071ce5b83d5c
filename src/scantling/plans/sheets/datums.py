"""The two edges from which a maker without the paper marks out: A, the lower one as designed, and B, the left one.

They belong to the wood: a panel that lies turned on the page, and the mirrored sheet of the other hand, carry them
where their wood is, so that the figures of the drill table hold for all.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from scantling.drawing.primitives import Anchor, Line, Pen, Text
from scantling.plans.sheets.job import Side, TemplateHole, TemplateJob
from scantling.plans.sheets.placing import WORDS, Room, Saying, text_box
from scantling.shapes.edges import Extents, Point, Segment
from scantling.shapes.outline import Circle, Outline

TEXT_MM = 3.0
_BESIDE_MM = 0.9
_LONG_MM = 12.0
_ON_MM = 0.05
# where along an edge its name may stand
_SHARES = (0.25, 0.4, 0.55, 0.7, 0.15, 0.85, 0.08, 0.92)
_INWARDS: dict[Side, Point] = {"bottom": (0.0, 1.0), "top": (0.0, -1.0), "left": (1.0, 0.0), "right": (-1.0, 0.0)}


def from_edges(job: TemplateJob, holes: Sequence[TemplateHole]) -> list[Point]:
    """Return where holes stand, measured from edge B and from edge A."""
    box = job.outline.extents
    return [(_off_mm(box, job.edge_b, hole.at), _off_mm(box, job.edge_a, hole.at)) for hole in holes]


def edge_lengths_mm(job: TemplateJob) -> tuple[float, float]:
    """Return the sizes of the panel along edge A and along edge B."""
    box = job.outline.extents
    along_a = box.width_mm if job.edge_a in ("bottom", "top") else box.height_mm
    return along_a, box.width_mm + box.height_mm - along_a


def _off_mm(box: Extents, side: Side, at: Point) -> float:
    return {
        "bottom": at[1] - box.y_min_mm,
        "top": box.y_max_mm - at[1],
        "left": at[0] - box.x_min_mm,
        "right": box.x_max_mm - at[0],
    }[side]


def datum_strokes(job: TemplateJob) -> list[Line]:
    """Return short thick strokes at the ends of both edges, just outside of where the outline lies on them."""
    strokes = []
    for side in (job.edge_a, job.edge_b):
        first, last = _reach(job.outline, side)
        long_mm = min(_LONG_MM, (last - first) / 3)
        ends = ((first, first + long_mm), (last - long_mm, last))
        strokes += [Line(_at(job, side, a, -_BESIDE_MM), _at(job, side, b, -_BESIDE_MM), Pen.DATUM) for a, b in ends]
    return strokes


def _reach(outline: Outline, side: Side) -> tuple[float, float]:
    """From where to where the outline's straight edges lie on a side of its box; the whole side where none does."""
    box, axis = outline.extents, 0 if side in ("bottom", "top") else 1
    edges = () if isinstance(outline.boundary, Circle) else outline.boundary.edges
    lying = [
        edge
        for edge in edges
        if isinstance(edge, Segment) and max(_off_mm(box, side, edge.start), _off_mm(box, side, edge.end)) < _ON_MM
    ]
    places = [point[axis] for edge in lying for point in (edge.start, edge.end)]
    if places:
        return min(places), max(places)
    return (box.x_min_mm, box.x_max_mm) if axis == 0 else (box.y_min_mm, box.y_max_mm)


def _at(job: TemplateJob, side: Side, along_mm: float, inwards_mm: float) -> Point:
    """A point beside an edge: so far along it, so far towards the middle of the panel."""
    box, (dx, dy) = job.outline.extents, _INWARDS[side]
    if dx == 0.0:
        return (along_mm, (box.y_min_mm if dy > 0 else box.y_max_mm) + dy * inwards_mm)
    return ((box.x_min_mm if dx > 0 else box.x_max_mm) + dx * inwards_mm, along_mm)


def datum_words(job: TemplateJob, room: Room) -> list[Saying]:
    """Return the names of both edges, inside the panel where there is room beside them."""
    found = []
    for name, side in (("edge A", job.edge_a), ("edge B", job.edge_b)):
        first, last = _reach(job.outline, side)
        text = Text((0.0, 0.0), name, TEXT_MM, Pen.DATUM, Anchor.MIDDLE, bold=True, centred=True)
        text = text if side in ("bottom", "top") else replace(text, turn_deg=90.0)
        places = [_at(job, side, first + share * (last - first), 2.0 + TEXT_MM / 2) for share in _SHARES]
        texts = [replace(text, at=place) for place in places if job.outline.holds(place)]
        number, cost = room.best(text_box(one) for one in texts)
        if texts and cost < WORDS:
            box = text_box(texts[number])
            room.add(box, WORDS)
            found.append(Saying(box, (texts[number],)))
    return found
