"""The words of a template: what the panel is, what must be measured, what is drilled, in which order to work."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from scantling.drawing.primitives import Anchor, Item, Pen, Text
from scantling.plans.sheets.datums import edge_lengths_mm, from_edges
from scantling.plans.sheets.flow import (
    BODY_MM,
    LINE_MM,
    Row,
    drawn,
    gap,
    heading,
    height_mm,
    line,
    paragraph,
    shortened,
    table,
)
from scantling.plans.sheets.frame import MapCell, PageLay, page_map, stop_words
from scantling.plans.sheets.job import NOMINAL, TemplateHole, TemplateJob
from scantling.plans.sheets.panel import PanelDrawing
from scantling.quantities import show_number
from scantling.shapes.edges import Extents
from scantling.tables.bits import bit

DIAGONAL_MM = 0.5
"""By how much the two diagonals of a panel as glued may differ (common practice, no source)."""

_MAP_WIDTH_MM, _MAP_HEIGHT_MM = 60.0, 34.0

CAUTION = (
    "Eye protection on, hair and sleeves tied back, no gloves at a drill. Clamp the board on a waste board before "
    "every hole and every cut; fit the guards. Dust from sheet materials harms: extract it or wear a mask. "
    "Rules of your school, workshop and country come first."
)


def facts_rows(
    job: TemplateJob, drawing: PanelDrawing, lay: PageLay, cells: Sequence[MapCell], lie_badly: str = ""
) -> list[Row]:
    """Return all words of a template, the most needed first.

    job : the panel as designed, not as laid on paper    cells : the map of pages; none for a panel on one page
    lie_badly : what the seams could not be kept off
    """
    width_mm = lay.content.usable_width_mm
    return [
        *_title(job, cells, width_mm),
        *_checks(job, drawing, lay, len(cells)),
        *(paragraph(lie_badly, width_mm) if lie_badly else []),
        *_care(job, drawing, width_mm),
        *_drilling(job, drawing, width_mm),
        *_order_of_work(job, drawing, len(cells), width_mm),
        *_caution(width_mm),
    ]


def _title(job: TemplateJob, cells: Sequence[MapCell], width_mm: float) -> list[Row]:
    room_mm = width_mm - (_MAP_WIDTH_MM + 4.0 if cells else 0.0)
    rows = [line(shortened(job.title, room_mm, 5.0, True), 5.0, bold=True, keep=True)]
    if job.hand:
        rows += paragraph(job.hand.upper(), room_mm, bold=True, pen=Pen.CARE)
    rows += [row for fact in _facts(job) if fact for row in paragraph(fact, room_mm)]
    return [_beside(rows, cells, width_mm)] if cells else rows


def _facts(job: TemplateJob) -> list[str]:
    measure = ": measure your board" if job.thickness.endswith(NOMINAL) else ""
    return [
        ", ".join(text for text in (job.machine, f"revision {job.revision}" if job.revision else "") if text),
        ", ".join(text for text in (job.material, job.thickness) if text) + measure,
        job.copies,
        f"face up: {job.face_up}" if job.face_up else "",
        f"arrow up: {job.up}" if job.up else "",
        {"x": "grain along edge A", "y": "grain along edge B"}.get(job.grain, ""),
        f"drilled together with {job.drilled_with}" if job.drilled_with else "",
        f"used in step {', '.join(job.uses)}" if job.uses else "",
    ]


def _beside(rows: Sequence[Row], cells: Sequence[MapCell], width_mm: float) -> Row:
    """The title with the map of pages on its right."""
    tall_mm = max(height_mm(rows), _MAP_HEIGHT_MM + LINE_MM + 1.0)

    def draw(x: float, y: float) -> list[Item]:
        right = x + width_mm
        box = Extents(right - _MAP_WIDTH_MM, y - LINE_MM - _MAP_HEIGHT_MM, right, y - LINE_MM)
        words = f"{len(cells)} pages to join"
        text = Text((right, y - LINE_MM + 1.5), words, BODY_MM, Pen.NOTE, Anchor.END, bold=True)
        return [*drawn(rows, x, y), text, *page_map(cells, box, None, True)]

    return Row(tall_mm, draw)


def _checks(job: TemplateJob, drawing: PanelDrawing, lay: PageLay, pages: int) -> list[Row]:
    width_mm = lay.content.usable_width_mm
    along_a, along_b = edge_lengths_mm(job)
    first, second = drawing.marks.diagonals_mm
    glued = "After gluing the pages: " if pages > 1 else ""
    alike = abs(first - second) < 0.05
    ways = [("P to R and Q to S", first)] if alike else [("P to R", first), ("Q to S", second)]
    diagonals = "; ".join(f"{way} {length:.1f} mm, stop {stop_words(length)}" for way, length in ways)
    same = f", or where they differ by more than {DIAGONAL_MM} mm" if alike else ""
    sizes = f"{glued}{along_a:.1f} mm along edge A, {along_b:.1f} mm along edge B; {diagonals}{same}."
    bars = "Both check bars of every page, from the middle of one line to the middle of the other."
    return [
        *heading("Measure before you drill"),
        *paragraph(f"{bars} {lay.correction.said(lay.bars_mm[0])}", width_mm),
        *paragraph(sizes, width_mm),
    ]


def _care(job: TemplateJob, drawing: PanelDrawing, width_mm: float) -> list[Row]:
    if not drawing.care:
        return []
    rows = [
        [
            f"{job.holes[one.first].mark} – {job.holes[one.second].mark}",
            f"{one.length_mm:.1f}",
            f"±{show_number(one.slack_mm, 2)}",
            "__________",
        ]
        for one in drawing.care
    ]
    others = len(job.holes) - sum(hole.care for hole in job.holes)
    words = "Between centres, after the pilots and again at the end. "
    words += "All other distances may be off by half a millimetre." if others else ""
    return [
        *heading("Distances that must hold: measure!"),
        *paragraph(words, width_mm),
        *table(["holes", "mm", "may be off by", "measured"], rows, min(width_mm, 110.0)),
    ]


def _drilling(job: TemplateJob, drawing: PanelDrawing, width_mm: float) -> list[Row]:
    rows: list[Row] = []
    if job.holes:
        rows += [
            *heading("Drill, the smallest bit first"),
            *table(["bit", "holes", "marks"], _by_bit(job.holes), width_mm),
            *heading("Holes, from the two edges to the centre"),
            *table(["mark", "from B", "from A", "hole", "bit", "first", "for"], _each(job), width_mm),
        ]
    if drawing.corners and not job.holes:
        rows += heading("Inside corners")
    if drawing.corners:
        bits: dict[str, int] = {}
        for corner in drawing.corners:
            bits[corner.bit] = bits.get(corner.bit, 0) + 1
        words = ", ".join(f"{count} with bit {bit}" for bit, count in bits.items())
        rows += paragraph(f"Dashed circles in the waste let the saw turn: {words}.", width_mm)
    return rows


def _by_bit(holes: Sequence[TemplateHole]) -> list[list[str]]:
    """The drill schedule of one panel: pilots first, then bit by bit, the smallest first."""
    stages: dict[tuple[int, float, str], list[str]] = {}
    for hole in holes:
        for number, name in enumerate(hole.before):
            key = (0 if number == 0 else 1, bit(name).diameter_mm, f"{name} {'pilot' if number == 0 else 'to open'}")
            stages.setdefault(key, []).append(hole.mark)
        last = hole.bit or f"Ø{show_number(hole.diameter_mm, 2)}, no bit in hand"
        stages.setdefault((1, hole.drawn_mm, last), []).append(hole.mark)
    return [[name, str(len(marks)), " ".join(marks)] for (_, _, name), marks in sorted(stages.items(), key=_stage)]


def _stage(pair: tuple[tuple[int, float, str], list[str]]) -> tuple[int, float, str]:
    return pair[0]


def _each(job: TemplateJob) -> list[list[str]]:
    return [
        [
            hole.mark,
            f"{x:.1f}",
            f"{y:.1f}",
            _size(hole),
            hole.bit or "–",
            ", ".join(hole.before) or "–",
            hole.purpose,
        ]
        for hole, (x, y) in zip(job.holes, from_edges(job, job.holes), strict=True)
    ]


def _size(hole: TemplateHole) -> str:
    size = f"Ø{show_number(hole.diameter_mm, 2)}"
    return f"{size} × {show_number(hole.diameter_mm + hole.slot_mm, 2)} long" if hole.slot_mm else size


def _order_of_work(job: TemplateJob, drawing: PanelDrawing, pages: int, width_mm: float) -> list[Row]:
    steps = [text for text in _steps(job, drawing, pages) if text]
    rows = heading("Order of work")
    for number, text in enumerate(steps, 1):
        rows += paragraph(text, width_mm, hanging=f"{number}.")
    return rows


def _steps(job: TemplateJob, drawing: PanelDrawing, pages: int) -> list[str]:
    joined = "Join the pages on a flat board: cut on the seam lines, lay cross on cross, tape from behind."
    glued = "Dust the board, then stick the paper on with a glue stick, never with wet glue: it stretches paper. "
    together = (
        f" Lay both boards together and drill them in one go with {job.drilled_with}." if job.drilled_with else ""
    )
    pricked = f"Prick every centre with an awl, then drill the pilots through all holes, on a waste board.{together}"
    care = "Measure the boxed distances from pilot to pilot; draw a hole right with a round file before you open it."
    opened = "Open the holes to size, the smallest bit first, while the board is still large and square."
    corners = "Drill the dashed circles in the waste, then cut inside corners and windows from hole to hole."
    return [
        joined if pages > 1 else "",
        "Read P to R and Q to S; stop where they are wrong.",
        glued + "Lay edge A along a straight edge of the board.",
        pricked if job.holes else "",
        care if drawing.care else "",
        opened if job.holes else "",
        corners if drawing.corners else "",
        "Saw outside of the line, on the hatched side, 1 mm off; file and sand to the line.",
        "Take the paper off last; write the panel's name and its upper edge on the wood.",
    ]


def _caution(width_mm: float) -> list[Row]:
    return [replace(gap(2.6), keep=True), *paragraph(f"Caution. {CAUTION}", width_mm, bold=True)]
