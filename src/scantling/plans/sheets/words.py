"""Words on a panel's drawing: hole labels, distances that must hold, faces, arrows; each where it covers least."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import atan2, cos, hypot, sin

from scantling.drawing.marks import arrow
from scantling.drawing.primitives import Anchor, Item, Line, Pen, Polygon, Text
from scantling.plans.sheets.care import CareDistance
from scantling.plans.sheets.corners import CornerHole
from scantling.plans.sheets.datums import datum_words
from scantling.plans.sheets.job import TemplateHole, TemplateJob
from scantling.plans.sheets.labels import WAYS, hole_words
from scantling.plans.sheets.placing import WORDS, Box, Room, Saying, text_box
from scantling.plans.sheets.widths import width_mm as measured_mm
from scantling.quantities import show_number
from scantling.shapes.edges import Extents, Point

TEXT_MM = 3.0
"""Height of capitals that can be read at arm's length (common practice, no source)."""

_TOO_BAD = 30.0


def panel_words(
    job: TemplateJob,
    room: Room,
    care: Sequence[CareDistance],
    corners: Sequence[CornerHole],
    marks: Sequence[Point],
) -> list[Saying]:
    """Return the words of a drawing with the strokes that belong to them, placed in the order of their weight."""
    return [
        *_mark_words(job, room, marks),
        *datum_words(job, room),
        *_care_words(job, room, care),
        *hole_words(job, room),
        *_corner_words(room, corners),
        *_face_words(job, room),
        *_arrow_words(job, room),
    ]


def _said(room: Room, text: Text, *more: Item) -> Saying:
    """Take the place of a text."""
    box = text_box(text)
    room.add(box, WORDS)
    return Saying(box, (*more, text))


def _mark_words(job: TemplateJob, room: Room, marks: Sequence[Point]) -> list[Saying]:
    """Letters P, Q, R, S beside the marks, towards the middle of the panel."""
    middle, found = job.outline.extents.middle, []
    for letter, at in zip("PQRS", marks, strict=True):
        text = Text(at, letter, TEXT_MM, Pen.CHECK, Anchor.MIDDLE, bold=True, centred=True)
        inwards = [
            replace(text, at=(at[0] + sx * off_mm, at[1] + sy * off_mm))
            for off_mm in (4.0, 6.0, 9.0)
            for sx, sy in _quadrants(at, middle)
        ]
        found.append(_said(room, _best(room, inwards, at)[0]))
    return found


def _quadrants(at: Point, middle: Point) -> list[tuple[int, int]]:
    sx, sy = (1 if middle[0] >= at[0] else -1), (1 if middle[1] >= at[1] else -1)
    return [(sx, sy), (sx, -sy), (-sx, sy), (-sx, -sy)]


def _best(room: Room, texts: Sequence[Text], home: Point | None = None) -> tuple[Text, float]:
    number, cost = room.best((text_box(text) for text in texts), home)
    return texts[number], cost


def _care_words(job: TemplateJob, room: Room, care: Sequence[CareDistance]) -> list[Saying]:
    """The figure of each distance in a box on its stroke; where no box fits, the table alone has it."""
    found = []
    for distance in care:
        a, b = job.holes[distance.first], job.holes[distance.second]
        text = _care_text(room, a.at, b.at, distance)
        if text is not None:
            box = text_box(text, 0.9)
            room.add(box, WORDS)
            found.append(Saying(box, (text, Polygon(_corners(box), Pen.CARE))))
    return found


def care_strokes(job: TemplateJob, care: Sequence[CareDistance]) -> list[Line]:
    """Return the strokes from hole to hole, from rim to rim, so that the crosses stay clear."""
    pairs = [(job.holes[one.first], job.holes[one.second]) for one in care]
    return [Line(*_between_rims(a, b), Pen.CARE) for a, b in pairs]


def care_figure(distance: CareDistance) -> str:
    """Return the distance with its tolerance, ``31.0 ±0.2``."""
    return f"{distance.length_mm:.1f} ±{show_number(distance.slack_mm, 2)}"


def _care_text(room: Room, a: Point, b: Point, distance: CareDistance) -> Text | None:
    """The figure on or beside its stroke; along a steep stroke it may be read from the right."""
    figure = care_figure(distance)
    long = f"{figure} measure!"
    steep = abs(b[0] - a[0]) < 0.4 * distance.length_mm
    for words in (long, figure):
        if words == long and measured_mm(long, TEXT_MM, True) > 0.7 * distance.length_mm:
            continue
        text = Text(a, words, TEXT_MM, Pen.CARE, Anchor.MIDDLE, bold=True, centred=True, backed=True)
        turns = (0.0, 90.0) if steep else (0.0,)
        texts = [replace(text, at=point, turn_deg=turn) for turn in turns for point in _along(a, b)]
        number, cost = room.best(_free_of_line(text) for text in texts)
        if cost < _TOO_BAD * 4:
            return texts[number]
    return None


def _free_of_line(text: Text) -> Box:
    return text_box(text, 1.2)


def _along(a: Point, b: Point) -> list[Point]:
    """Points on the way from a to b, and beside it, the middle first."""
    length_mm = hypot(b[0] - a[0], b[1] - a[1]) or 1.0
    nx, ny = -(b[1] - a[1]) / length_mm, (b[0] - a[0]) / length_mm
    return [
        (a[0] + share * (b[0] - a[0]) + off_mm * nx, a[1] + share * (b[1] - a[1]) + off_mm * ny)
        for off_mm in (0.0, 5.0, -5.0, 9.0, -9.0, 12.5, -12.5)
        for share in (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8)
    ]


def _between_rims(a: TemplateHole, b: TemplateHole) -> tuple[Point, Point]:
    """The stroke between two holes, from rim to rim, so that the crosses stay clear."""
    angle_rad = atan2(b.at[1] - a.at[1], b.at[0] - a.at[0])
    from_mm, to_mm = a.drawn_mm / 2 + 0.4, b.drawn_mm / 2 + 0.4
    return (
        (a.at[0] + from_mm * cos(angle_rad), a.at[1] + from_mm * sin(angle_rad)),
        (b.at[0] - to_mm * cos(angle_rad), b.at[1] - to_mm * sin(angle_rad)),
    )


def _corners(box: Box) -> tuple[Point, ...]:
    return ((box[0], box[1]), (box[2], box[1]), (box[2], box[3]), (box[0], box[3]))


def _corner_words(room: Room, corners: Sequence[CornerHole]) -> list[Saying]:
    """The bit beside each hole in the waste, where there is room."""
    found = []
    for corner in corners:
        off_mm = corner.bit_mm / 2 + 2.4
        spots = [(corner.at[0] + dx * off_mm, corner.at[1] + dy * off_mm) for dx, dy in WAYS]
        texts = [Text(at, corner.bit, TEXT_MM, Pen.WASTE, Anchor.MIDDLE, centred=True) for at in spots]
        text, cost = _best(room, texts, corner.at)
        if cost < _TOO_BAD:
            found.append(_said(room, text))
    return found


def _face_words(job: TemplateJob, room: Room) -> list[Saying]:
    """What the sheet is and which face is seen, in the freest places, large where there is room."""
    found = []
    for words, height_mm in [(job.title, 5.0), *((words, 4.0) for words in _facing(job))]:
        for size_mm in dict.fromkeys((height_mm, 4.0, TEXT_MM)):
            text = Text((0.0, 0.0), words, size_mm, Pen.NOTE, Anchor.MIDDLE, bold=True, centred=True)
            placed = _freest(job, room, text) or (_outside(job, room, text) if size_mm == TEXT_MM else None)
            if placed is not None:
                found.append(_said(room, placed))
                break
    return found


def _outside(job: TemplateJob, room: Room, text: Text) -> Text | None:
    """Words that have no room on the panel stand beside it, read from the right."""
    box = job.outline.extents
    for x in (box.x_max_mm + 8.0, box.x_min_mm - 8.0, box.x_max_mm + 14.0, box.x_min_mm - 14.0):
        for share in (0.5, 0.7, 0.3, 0.85, 0.15):
            placed = replace(text, at=(x, box.y_min_mm + share * box.height_mm), turn_deg=90.0)
            if room.is_clear(text_box(placed, 1.0)):
                return placed
    return None


def _facing(job: TemplateJob) -> list[str]:
    words = [f"{job.face_up} up".upper()] if job.face_up else []
    return [*words, *([job.hand.upper()] if job.hand else [])]


def _arrows(job: TemplateJob) -> list[tuple[str, bool]]:
    """Words of the arrows and whether each lies along the paper's width; up is away from edge A."""
    arrows = [(f"up: {job.up}", job.edge_a in ("left", "right"))] if job.up else []
    return [*arrows, *([("grain", job.grain == "x")] if job.grain else [])]


def _freest(job: TemplateJob, room: Room, text: Text) -> Text | None:
    """The place on the panel, nearest to its middle, where a text covers nothing."""
    x0, y0, x1, y1 = text_box(replace(text, at=(0.0, 0.0)), 1.5)
    for x, y in _spots(job.outline.extents):
        if room.is_clear((x + x0, y + y0, x + x1, y + y1)) and job.outline.holds((x, y)):
            return replace(text, at=(x, y))
    return None


def _spots(box: Extents, step_mm: float = 6.0) -> list[Point]:
    """A grid of points on the box, those nearest to its middle first."""
    middle = box.middle
    columns, rows = (min(60, max(1, int(side_mm / step_mm))) for side_mm in (box.width_mm, box.height_mm))
    across_mm, up_mm = box.width_mm / columns, box.height_mm / rows
    spots = [
        (box.x_min_mm + (i + 0.5) * across_mm, box.y_min_mm + (j + 0.5) * up_mm)
        for i in range(columns)
        for j in range(rows)
    ]
    return sorted(spots, key=lambda at: (round(hypot(at[0] - middle[0], at[1] - middle[1]), 3), at))


def _arrow_words(job: TemplateJob, room: Room) -> list[Saying]:
    """Arrows for up and for the grain, each with its word beside it; flat ones lie along the paper's width."""
    found = []
    for words, flat in _arrows(job):
        half_mm = max(18.0, measured_mm(words, TEXT_MM)) / 2
        half_w, half_h = (half_mm, TEXT_MM) if flat else (TEXT_MM, half_mm)
        for x, y in _spots(job.outline.extents):
            box = (x - half_w - 1, y - half_h - 1, x + half_w + 1, y + half_h + 1)
            if room.is_clear(box) and job.outline.holds((x, y)):
                room.add(box, WORDS)
                found.append(Saying(box, (*_arrow_at(x, y, words, half_mm, flat),)))
                break
    return found


def _arrow_at(x: float, y: float, words: str, half_mm: float, flat: bool) -> list[Item]:
    if flat:
        text = Text((x, y + 1.5), words, TEXT_MM, Pen.NOTE, Anchor.MIDDLE, centred=True)
        return [text, *arrow((x + half_mm, y - 2.5), (x - half_mm, y - 2.5))]
    text = Text((x - 1.5, y), words, TEXT_MM, Pen.NOTE, Anchor.MIDDLE, 90.0, centred=True)
    return [text, *arrow((x + 2.5, y - half_mm), (x + 2.5, y + half_mm))]
