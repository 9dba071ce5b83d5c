"""Labels of holes: mark, size and bits beside each hole, in one line or two, where they cover nothing."""

from __future__ import annotations

from collections.abc import Sequence
from math import atan2, cos, sin

from scantling.drawing.primitives import Anchor, Line, Pen, Text
from scantling.plans.sheets.job import TemplateHole, TemplateJob
from scantling.plans.sheets.placing import WORDS, Box, Room, Saying, is_unseen
from scantling.plans.sheets.widths import width_mm as measured_mm
from scantling.quantities import show_number

TEXT_MM = 3.0
WAYS = ((0.72, 0.72), (1.0, 0.0), (0.72, -0.72), (-0.72, 0.72), (-1.0, 0.0), (-0.72, -0.72), (0.0, 1.0), (0.0, -1.0))
"""Directions in which words stand beside a point, the best liked first."""

_PITCH_MM = 4.6
_MARGIN_MM = 0.6
_TOO_BAD = 30.0
_NEAR_MM = 2.0
_CLEAR_MM = 2.0
_OFFSETS_MM = (0.8, 3.0, 7.0, 12.0, 18.0, 25.0, 33.0)


def hole_label(hole: TemplateHole) -> tuple[str, str]:
    """Return what stands beside a hole: its mark and size, and the bits where they say more than the size."""
    size = f"Ø{show_number(hole.diameter_mm, 2)}"
    if hole.slot_mm:
        size += f"×{show_number(hole.diameter_mm + hole.slot_mm, 2)}"
    words = []
    if hole.bit is None:
        words.append("no bit")
    elif not hole.bit.replace(".", "").isdigit() or abs(hole.drawn_mm - hole.diameter_mm) > 0.005:
        words.append(f"bit {hole.bit}")
    if hole.before:
        words.append(f"pilot {hole.before[0]}")
    return f"{hole.mark} {size}", " ".join(words)


def hole_words(job: TemplateJob, room: Room) -> list[Saying]:
    """Return the label of every hole: whole in one line or in two, else mark and size, else the mark alone."""
    found = []
    for hole in job.holes:
        lines, box, is_far = _placed(room, hole)
        room.add(box, WORDS)
        lead = [_lead(hole, box)] if is_far else []
        found.append(Saying(box, (*lead, *_texts(hole, lines, box))))
    return found


def _placed(room: Room, hole: TemplateHole) -> tuple[tuple[str, ...], Box, bool]:
    """The lines of a label, its box, and whether a stroke must lead to it."""
    size, bits = hole_label(hole)
    whole = [(f"{size} {bits}",), (size, bits)] if bits else []
    forms: list[tuple[str, ...]] = [*whole, (size,), (hole.mark,)]
    for lines in forms:
        places = _places(hole, lines)
        boxes = [box for box, _ in places]
        leads = [_lead_cost(room, hole, box) if is_far else 0.0 for box, is_far in places]
        number, cost = room.best(boxes, hole.at, leads)
        if is_unseen(cost):
            number, cost = room.best(boxes, None, leads)
        if cost < _TOO_BAD or lines == forms[-1]:
            return lines, *places[number]
    raise AssertionError("a label has at least its mark")


def _places(hole: TemplateHole, lines: Sequence[str]) -> list[tuple[Box, bool]]:
    """Where a label may stand, and whether that is far off: in a large hole, beside it, then farther and farther."""
    width_mm, height_mm = _size_mm(lines)
    (x, y), inside = hole.at, []
    if hole.drawn_mm > width_mm and not hole.slot_mm:
        left, right, tall_mm = x - width_mm / 2 + 0.4, x + width_mm / 2 - 0.4, height_mm - 0.4
        inside = [(left, foot, right, foot + tall_mm) for foot in (y + 1.6, y - 1.6 - tall_mm)]
    around = [
        (_beside(hole, lines, off_mm, way), off_mm > _NEAR_MM) for off_mm in _OFFSETS_MM for way in range(len(WAYS))
    ]
    return [*((box, False) for box in inside), *around]


def _size_mm(lines: Sequence[str]) -> tuple[float, float]:
    width_mm = max(measured_mm(line, TEXT_MM) for line in lines) + 2 * _MARGIN_MM
    return width_mm, TEXT_MM + (len(lines) - 1) * _PITCH_MM + 2 * _MARGIN_MM


def _beside(hole: TemplateHole, lines: Sequence[str], off_mm: float, way: int) -> Box:
    """The box of a label in one of the directions, clear of the cross where it lies straight beside the hole."""
    dx, dy = WAYS[way]
    out_mm = max(hole.reach_mm, 0.5) + off_mm
    width_mm, height_mm = _size_mm(lines)
    beyond_mm = 3.0 if 0.0 in (dx, dy) else 0.0
    x = hole.at[0] + dx * (out_mm + beyond_mm) + (0.0 if dx > 0 else -width_mm if dx < 0 else -width_mm / 2)
    y = hole.at[1] + dy * (out_mm + beyond_mm) + (0.0 if dy > 0 else -height_mm if dy < 0 else -height_mm / 2)
    return (x, y, x + width_mm, y + height_mm)


def _texts(hole: TemplateHole, lines: Sequence[str], box: Box) -> list[Text]:
    """The lines in their box, set against the side that looks at the hole."""
    middle = (box[0] + box[2]) / 2
    away_mm = middle - hole.at[0]
    anchor = Anchor.START if away_mm > 1 else Anchor.END if away_mm < -1 else Anchor.MIDDLE
    x = {Anchor.START: box[0] + _MARGIN_MM, Anchor.MIDDLE: middle, Anchor.END: box[2] - _MARGIN_MM}[anchor]
    top = box[3] - _MARGIN_MM - TEXT_MM
    pen = Pen.CARE if hole.care else Pen.NOTE
    return [Text((x, top - k * _PITCH_MM), line, TEXT_MM, pen, anchor, backed=True) for k, line in enumerate(lines)]


def _lead(hole: TemplateHole, box: Box, clear_mm: float = 0.2) -> Line:
    """A thin stroke from the rim of the hole, so far off it, to its label."""
    end = (min(max(hole.at[0], box[0]), box[2]), min(max(hole.at[1], box[1]), box[3]))
    angle_rad = atan2(end[1] - hole.at[1], end[0] - hole.at[0])
    reach_mm = hole.reach_mm + clear_mm
    start = (hole.at[0] + reach_mm * cos(angle_rad), hole.at[1] + reach_mm * sin(angle_rad))
    return Line(start, end, Pen.CENTRE)


def _lead_cost(room: Room, hole: TemplateHole, box: Box) -> float:
    """How badly a stroke to a label lies: over other words, over other holes."""
    lead = _lead(hole, box, _CLEAR_MM)
    return room.line_cost(lead.start, lead.end)
