"""Pages of one template: facts and drawing on one sheet where they fit, else facts first and then the pages to join."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import pi

from scantling.drawing.primitives import Anchor, Item, Line, Page, Pen, Polygon, Text, View, Window
from scantling.plans.sheets.facts import facts_rows
from scantling.plans.sheets.flow import Row, drawn, height_mm, parted
from scantling.plans.sheets.frame import MapCell, PageLay, framed
from scantling.plans.sheets.job import TemplateJob
from scantling.plans.sheets.panel import CROSS_MM, PanelDrawing, draw_panel
from scantling.plans.sheets.placing import Box, is_whole
from scantling.shapes.edges import Extents, Point
from scantling.shapes.tiling import OVERLAP_MM, SEAM_MM, Spot, Tile, Tiling, tile

ROUND_MM = 4.5
"""Free room around a panel, for the strokes on its waste side and the crosses at its corners."""

_ROOMY_MM = 70.0
"""So much room above a panel is worth filling with the most needed words."""

_COARSE_MM, _FINE_MM = 10.0, 5.0
# where crosses stand on a seam, from its middle: clear of the words there
_UPRIGHT, _LEVEL = (-100.0, -55.0, 55.0, 100.0), (-70.0, -55.0, 55.0, 70.0)


@dataclass(frozen=True)
class Template:
    """A template as pages, with what a list of sheets says of it.

    pages : of the whole file    pieces : pages to join    near_seams : marks of holes too near to a seam
    split_groups : groups of holes that do not lie on one page
    """

    name: str
    title: str
    pages: tuple[Page, ...]
    pieces: int
    near_seams: tuple[str, ...] = ()
    split_groups: tuple[str, ...] = ()


def make_template(job: TemplateJob, lay: PageLay, overlap_mm: float | None = None) -> Template:
    """Return the pages of a template; raises ``FaultsError`` (SHAPE-17) where it takes far too many."""
    content = lay.content
    for turned in (False, True):
        laid = job.at_origin(pi / 2 if turned else 0.0)
        box = laid.outline.extents
        wide_mm, high_mm = box.width_mm + 2 * ROUND_MM, box.height_mm + 2 * ROUND_MM
        if wide_mm <= content.usable_width_mm and high_mm <= content.usable_height_mm:
            return _on_one(job, laid, lay)
    return _on_many(job, *_tiled(job, lay, overlap_mm or OVERLAP_MM), lay)


def _on_one(job: TemplateJob, laid: TemplateJob, lay: PageLay) -> Template:
    """A panel on one page: the most needed words above it, the rest behind; all before it where it fills the page."""
    content, box = lay.content, laid.outline.extents
    left_mm = (content.usable_width_mm - box.width_mm) / 2
    right_mm, top_mm = content.usable_width_mm - left_mm, box.height_mm + ROUND_MM
    window = Extents(-left_mm, -ROUND_MM, right_mm, top_mm)
    drawing = draw_panel(laid, [window])
    rows = facts_rows(job, drawing, lay, ())
    free_mm = content.usable_height_mm - box.height_mm - 2 * ROUND_MM
    shown, title = _shown(drawing, window, lay), _title(job)
    if free_mm >= _ROOMY_MM or height_mm(rows) <= free_mm:
        first, *rest = _fact_pages(rows, lay, free_mm)
        sheets = [[*shown, *first], *rest]
    else:
        sheets = _fact_pages(rows, lay)
        last = parted(rows, content.usable_height_mm)[-1]
        sheets = [*sheets[:-1], [*shown, *sheets[-1]]] if height_mm(last) <= free_mm else [*sheets, shown]
    of = len(sheets)
    pages = tuple(framed(lay, items, title, number, of) for number, items in enumerate(sheets, 1))
    return Template(job.name, job.title, pages, 1)


def _fact_pages(rows: Sequence[Row], lay: PageLay, first_mm: float | None = None) -> list[list[Item]]:
    content = lay.content
    top = lay.corner[1] + content.usable_height_mm
    return [drawn(part, lay.corner[0], top) for part in parted(rows, content.usable_height_mm, first_mm)]


def _title(job: TemplateJob) -> str:
    hand = f" ({job.hand})" if job.hand else ""
    machine = f"{job.machine} revision {job.revision}" if job.machine and job.revision else job.machine
    face = f"{job.face_up} up" if job.face_up else ""
    material = ", ".join(text for text in (job.material, job.thickness) if text)
    return " · ".join(text for text in (job.title + hand, face, material, machine) if text)


def _tiled(job: TemplateJob, lay: PageLay, overlap_mm: float) -> tuple[TemplateJob, Tiling]:
    """The better of upright and turned: fewer pages, then whole groups, then holes off the seams.

    The grid is tried by centimetres; by half centimetres where holes still lie badly.
    """
    best: tuple[tuple[int, int, int], TemplateJob, Tiling] | None = None
    for step_mm in (_COARSE_MM, _FINE_MM):
        for turned in (False, True):
            laid = job.at_origin(pi / 2 if turned else 0.0)
            found = _grid(laid, lay, overlap_mm, step_mm)
            score = (len(found.tiles), len(found.split_groups), len(found.near_seams))
            if best is None or score < best[0]:
                best = (score, laid, found)
        if best is not None and best[0][1:] == (0, 0):
            break
    if best is None:
        raise AssertionError("two ways to lie were tried")
    return best[1], best[2]


def _grid(job: TemplateJob, lay: PageLay, overlap_mm: float, step_mm: float) -> Tiling:
    runs = [[*shape.flattened(), shape.flattened()[0]] for shape in (job.outline.boundary, *job.outline.inner)]
    groups = _that_fit(job, lay, overlap_mm)
    spots = [Spot(hole.at, hole.reach_mm, hole.group if hole.group in groups else "") for hole in job.holes]
    return tile(runs, spots, [lay.content], overlap_mm, SEAM_MM, step_mm)


def _that_fit(job: TemplateJob, lay: PageLay, overlap_mm: float) -> set[str]:
    """Groups that one page can hold: no search helps the others."""
    width_mm, height_mm = lay.content.usable_width_mm - overlap_mm, lay.content.usable_height_mm - overlap_mm
    members: dict[str, list[Point]] = {}
    for hole in job.holes:
        members.setdefault(hole.group, []).append(hole.at)
    return {
        group for group, points in members.items() if _spread(points, 0) <= width_mm and _spread(points, 1) <= height_mm
    }


def _spread(points: Sequence[Point], axis: int) -> float:
    values = [point[axis] for point in points]
    return max(values) - min(values)


def _on_many(job: TemplateJob, laid: TemplateJob, tiling: Tiling, lay: PageLay) -> Template:
    drawing = draw_panel(laid, [one.window for one in tiling.tiles], _kept(tiling))
    count, facts, cells = 0, [], []
    for _ in range(3):  # the map names pages by number, and its own page may be among those before them
        cells = [MapCell(one.column, one.row, count + k) for k, one in enumerate(tiling.tiles, 1)]
        rows = facts_rows(job, drawing, lay, cells, _lie_badly(laid, tiling))
        facts = _fact_pages(rows, lay)
        if len(facts) == count:
            break
        count = len(facts)
    of, title = count + len(cells), _title(job)
    pages = [framed(lay, items, title, number, of) for number, items in enumerate(facts, 1)]
    for one, cell in zip(tiling.tiles, cells, strict=True):
        joints = _joints(one, tiling, {(c.column, c.row): c.page for c in cells})
        shown = _shown(drawing, one.window, lay, joints)
        pages.append(framed(lay, shown, title, cell.page, of, cells))
    marks = {hole.at: hole.mark for hole in laid.holes}
    near = tuple(marks[spot.at] for spot in tiling.near_seams)
    return Template(job.name, job.title, tuple(pages), len(cells), near, tiling.split_groups)


def _lie_badly(job: TemplateJob, tiling: Tiling) -> str:
    """What the seams could not be kept off, as marks."""
    split = [hole.mark for hole in job.holes if hole.group in tiling.split_groups]
    near_spots = {spot.at for spot in tiling.near_seams}
    near = [hole.mark for hole in job.holes if hole.at in near_spots]
    together = f"{' '.join(split)} belong together but lie on several pages: measure between them once joined. "
    beside = f"{' '.join(near)} lie on a seam: join the pages with care there."
    return (together if split else "") + (beside if near else "")


def _shown(drawing: PanelDrawing, window: Extents, lay: PageLay, more: Sequence[Item] = ()) -> list[Item]:
    """What one page shows of a panel: strokes cut at its edge, and the words that are whole on it."""
    words = [item for saying in drawing.words if is_whole(saying.box, window) for item in saying.items]
    frame = Window(window.x_min_mm, window.y_min_mm, window.x_max_mm, window.y_max_mm)
    return [View((*drawing.strokes, *words, *more), frame, lay.corner)]


def _joints(one: Tile, tiling: Tiling, page_of: dict[tuple[int, int], int]) -> list[Item]:
    """Seam lines, crosses to lay on one another, and which page goes over which; upper and left pages lie on top."""
    items: list[Item] = []
    cell, window = one.cell, one.window
    middle_x, middle_y = (cell.x_min_mm + cell.x_max_mm) / 2, (cell.y_min_mm + cell.y_max_mm) / 2
    half_mm = tiling.overlap_mm / 2
    right = page_of.get((one.column + 1, one.row))
    left = page_of.get((one.column - 1, one.row))
    below = page_of.get((one.column, one.row + 1))
    above = page_of.get((one.column, one.row - 1))
    if right:
        items += _upright(cell.x_max_mm, window, middle_y, half_mm / 2, f"cut along this line, page {right} goes below")
    if left:
        items += _upright(cell.x_min_mm, window, middle_y, -half_mm / 2, f"page {left} is laid on up to this line")
    if below:
        items += _level(cell.y_min_mm, window, middle_x, -half_mm / 2, f"cut along this line, page {below} goes below")
    if above:
        items += _level(cell.y_max_mm, window, middle_x, half_mm / 2, f"page {above} is laid on up to this line")
    return items


def _kept(tiling: Tiling) -> list[Box]:
    """Where the words and the crosses of the seams stand."""
    half_mm, boxes = tiling.overlap_mm / 2, []
    for (ax, ay), (bx, by) in tiling.seams:
        across, up = (half_mm, 0.0) if ax == bx else (0.0, half_mm)
        boxes.append((min(ax, bx) - across, min(ay, by) - up, max(ax, bx) + across, max(ay, by) + up))
    return boxes


def _upright(x: float, window: Extents, middle: float, off_mm: float, words: str) -> list[Item]:
    seam: list[Item] = [Line((x, window.y_min_mm), (x, window.y_max_mm), Pen.SEAM)]
    crosses = [_cross((x, middle + k)) for k in _UPRIGHT]
    text = Text((x + off_mm, middle), words, 3.0, Pen.SEAM, Anchor.MIDDLE, 90.0, backed=True, centred=True)
    return [*seam, *(item for cross in crosses for item in cross), text]


def _level(y: float, window: Extents, middle: float, off_mm: float, words: str) -> list[Item]:
    seam: list[Item] = [Line((window.x_min_mm, y), (window.x_max_mm, y), Pen.SEAM)]
    crosses = [_cross((middle + k, y)) for k in _LEVEL]
    text = Text((middle, y + off_mm), words, 3.0, Pen.SEAM, Anchor.MIDDLE, backed=True, centred=True)
    return [*seam, *(item for cross in crosses for item in cross), text]


def _cross(point: Point) -> list[Item]:
    """A cross in a diamond, unlike the cross of a hole."""
    (x, y), r = point, CROSS_MM
    diamond = Polygon(((x - r / 2, y), (x, y + r / 2), (x + r / 2, y), (x, y - r / 2)), Pen.NOTE)
    return [Line((x - r, y), (x + r, y), Pen.NOTE), Line((x, y - r), (x, y + r), Pen.NOTE), diamond]
