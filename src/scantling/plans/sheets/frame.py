"""What every page of a template carries: check bars both ways, whose it is, and where it lies among the others."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from scantling.drawing.marks import longest_bar_mm
from scantling.drawing.primitives import Anchor, Item, Line, Page, Pen, Polygon, Text, View, Window
from scantling.plans.sheets.correction import Correction
from scantling.plans.sheets.flow import shortened
from scantling.plans.sheets.widths import width_mm as measured_mm
from scantling.shapes.edges import Extents
from scantling.shapes.paper import Paper

LEFT_STRIP_MM = 11.0
FOOT_STRIP_MM = 17.0
TEXT_MM = 3.0
STOP_RATIO = 0.002
"""A bar that is off by more than this spoils a panel: 0.4 mm on 200 mm (common practice, no source)."""

LEAST_STOP_MM = 0.3
_MAP_MM = (13.0, 9.0)


@dataclass(frozen=True)
class MapCell:
    """One page in the map of pages; row 0 is the upper one."""

    column: int
    row: int
    page: int


@dataclass(frozen=True)
class PageLay:
    """How pages are laid out: the sheet before the printer stretches it, and its correction."""

    paper: Paper
    correction: Correction

    @property
    def content(self) -> Paper:
        """The sheet with the strips for bars and words set aside too."""
        return self.paper.with_strips(left_mm=LEFT_STRIP_MM, bottom_mm=FOOT_STRIP_MM)

    @property
    def corner(self) -> tuple[float, float]:
        """Lower left corner of what is left for the drawing."""
        return (self.content.left_mm, self.content.bottom_mm)

    @property
    def bars_mm(self) -> tuple[float, float]:
        """Lengths of the bars across and along: the longest whole centimetres, measured at the margins."""
        content = self.content
        return (longest_bar_mm(content.usable_width_mm), longest_bar_mm(content.usable_height_mm))


def stop_mm(length_mm: float) -> float:
    """Return by how much a reading may be off, to a tenth of a millimetre."""
    return max(LEAST_STOP_MM, round(length_mm * STOP_RATIO, 1))


def stop_words(length_mm: float, decimals: int = 1) -> str:
    """Return the two readings at which to stop."""
    off_mm = stop_mm(length_mm)
    return f"under {length_mm - off_mm:.{decimals}f} or over {length_mm + off_mm:.{decimals}f}"


def framed(
    lay: PageLay, inside: Sequence[Item], title: str, number: int, of: int, cells: Sequence[MapCell] = ()
) -> Page:
    """Return a whole page: ``inside`` is drawn in millimetres of the sheet, everything is corrected for the printer."""
    paper, correction = lay.paper, lay.correction
    items = (*inside, *bars(lay), *_foot(lay, title, number, of, cells))
    window = Window(0.0, 0.0, paper.width_mm, paper.height_mm)
    view = View(items, window, (0.0, 0.0), correction.across_ratio, correction.along_ratio)
    width_mm, height_mm = paper.width_mm * correction.across_ratio, paper.height_mm * correction.along_ratio
    return Page(round(width_mm, 4), round(height_mm, 4), (view,), f"{title}, page {number} of {of}")


def bars(lay: PageLay) -> list[Item]:
    """Return the two check bars with room for their readings and the readings at which to stop."""
    across_mm, along_mm = lay.bars_mm
    x, y = lay.corner
    bar_y, bar_x = y - 4.0, x - 3.6
    items: list[Item] = [
        Line((x, bar_y), (x + across_mm, bar_y), Pen.CHECK),
        Line((bar_x, y), (bar_x, y + along_mm), Pen.CHECK),
    ]
    for k in range(round(across_mm / 10) + 1):
        half_mm = _tick_mm(k, round(across_mm / 10))
        items.append(Line((x + 10 * k, bar_y - half_mm), (x + 10 * k, bar_y + half_mm), Pen.CHECK))
    for k in range(round(along_mm / 10) + 1):
        half_mm = 2.2 if 10 * k == across_mm else _tick_mm(k, round(along_mm / 10))
        items.append(Line((bar_x - half_mm, y + 10 * k), (bar_x + half_mm, y + 10 * k), Pen.CHECK))
    if across_mm < along_mm:  # both readings are of one length, so that one figure says what they should have been
        mark = Text((bar_x - 2.6, y + across_mm), f"{across_mm:.0f}", TEXT_MM, Pen.CHECK, Anchor.MIDDLE, 90.0)
        items.append(mark)
    room_mm = lay.content.usable_width_mm - _MAP_MM[0] - 3.0
    items.append(Text((x, y - 10.6), _bar_words("across", across_mm, room_mm), TEXT_MM, Pen.CHECK))
    along = _bar_words("along", along_mm, lay.content.usable_height_mm)
    items.append(Text((x - 6.8, y), along, TEXT_MM, Pen.CHECK, turn_deg=90.0))
    return items


def _tick_mm(k: int, last: int) -> float:
    return 2.2 if k in (0, last) else 1.4 if k % 5 == 0 else 0.8


def _bar_words(way: str, length_mm: float, room_mm: float) -> str:
    words = f"{way}: {length_mm:.0f} mm   measured ____________   stop {stop_words(length_mm)}"
    if measured_mm(words, TEXT_MM) <= room_mm:
        return words
    return shortened(f"{way} {length_mm:.0f}, stop {stop_words(length_mm)}, read ______", room_mm)


def _foot(lay: PageLay, title: str, number: int, of: int, cells: Sequence[MapCell]) -> list[Item]:
    """The line at the foot of the page and the small map in its corner."""
    x, y = lay.corner
    right = lay.paper.width_mm - lay.paper.right_mm
    page = f"page {number} of {of}"
    room_mm = right - x - (_MAP_MM[0] + 3.0 if cells else 0.0)
    page_mm = measured_mm(page, TEXT_MM, True)
    words = shortened(title, room_mm - page_mm - 4.0)
    end = x + room_mm
    items: list[Item] = [
        Text((x, y - 16.0), words, TEXT_MM, Pen.NOTE),
        Text((end, y - 16.0), page, TEXT_MM, Pen.NOTE, Anchor.END, bold=True),
    ]
    box = Extents(right - _MAP_MM[0], y - 16.6, right, y - 16.6 + _MAP_MM[1])
    return [*items, *page_map(cells, box, number, False)] if cells else items


def page_map(cells: Sequence[MapCell], box: Extents, here: int | None, numbered: bool) -> list[Item]:
    """Return the map of pages in a box, the present one filled; numbers where they can be read."""
    columns, rows = 1 + max(cell.column for cell in cells), 1 + max(cell.row for cell in cells)
    width_mm = min(box.width_mm / columns, box.height_mm / rows / 1.3)
    height_mm = min(box.height_mm / rows, width_mm * 1.4)
    left, top = box.x_max_mm - columns * width_mm, box.y_max_mm
    items: list[Item] = []
    for cell in cells:
        x, y = left + cell.column * width_mm, top - (cell.row + 1) * height_mm
        corners = ((x, y), (x + width_mm, y), (x + width_mm, y + height_mm), (x, y + height_mm))
        if cell.page == here:
            items.append(Polygon(corners, Pen.FRAME, filled=True))
        items.append(Polygon(corners, Pen.NOTE))
        if numbered:
            middle = (x + width_mm / 2, y + height_mm / 2)
            items.append(Text(middle, str(cell.page), TEXT_MM, Pen.NOTE, Anchor.MIDDLE, bold=True, centred=True))
    return items
