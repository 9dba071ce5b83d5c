"""A drawing larger than the paper as pages: each shows its part, where it belongs, and bars that prove its scale."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from scantling.drawing.lettering import text_width_mm
from scantling.drawing.marks import bar_words, check_bar, longest_bar_mm, registration_cross, tile_map
from scantling.drawing.primitives import Item, Line, Page, Pen, Point, Polygon, Text, View, Window

STRIP_LEFT_MM, STRIP_BOTTOM_MM, STRIP_TOP_MM = 11.0, 13.0, 13.0
"""What a page sets aside inside the printer's margins for bars and words; ``Frame`` asks for it."""

STOP_RATIO = 0.002


@dataclass(frozen=True)
class Correction:
    """By how much a page is stretched so that a printer's own error is made good."""

    x_ratio: float = 1.0
    y_ratio: float = 1.0

    @property
    def words(self) -> str:
        """What the page says of it."""
        if self == Correction():
            return "not corrected for the printer"
        return f"corrected for the printer: x × {self.x_ratio:.5f}, y × {self.y_ratio:.5f}"


def correction_from(bar_x_mm: float, read_x_mm: float, bar_y_mm: float, read_y_mm: float) -> Correction:
    """Return the correction that two read bars ask for: a bar that came out short is stretched."""
    return Correction(bar_x_mm / read_x_mm, bar_y_mm / read_y_mm)


@dataclass(frozen=True)
class TileWindow:
    """A sheet's name and the part of the drawing that it shows."""

    name: str
    window: Window


@dataclass(frozen=True)
class Frame:
    """A sheet of paper: what the printer reaches of it, and inside that, beside the strips, the drawing."""

    width_mm: float
    height_mm: float
    reach: Window

    @property
    def at(self) -> Point:
        """Lower left corner of the drawing's part."""
        return (self.reach.x_min_mm + STRIP_LEFT_MM, self.reach.y_min_mm + STRIP_BOTTOM_MM)


@dataclass(frozen=True)
class Heading:
    """What stands over every page: one line large, one small; the page says its own name and count itself."""

    title: str
    detail: str = ""


def tile_pages(
    items: tuple[Item, ...],
    tiles: Sequence[TileWindow],
    frame: Frame,
    heading: Heading,
    seams: Sequence[tuple[Point, Point]] = (),
    crosses: Sequence[Point] = (),
    correction: Correction | None = None,
    stop_ratio: float = STOP_RATIO,
) -> tuple[Page, ...]:
    """Return one page for every tile.

    items : the drawing, in its own coordinates, in which tiles, seams and crosses are given too
    correction : stretches everything on the page, the bars as well, about the middle of the paper
    stop_ratio : how far a bar may be off before the sheet is not to be used
    """
    fix = correction or Correction()
    marks: list[Item] = [Line(a, b, Pen.SEAM) for a, b in seams]
    marks += [part for point in crosses for part in registration_cross(point)]
    return tuple(_page((*items, *marks), tiles, index, frame, heading, fix, stop_ratio) for index in range(len(tiles)))


def _page(
    items: tuple[Item, ...],
    tiles: Sequence[TileWindow],
    index: int,
    frame: Frame,
    heading: Heading,
    fix: Correction,
    stop_ratio: float,
) -> Page:
    tile = tiles[index]
    shown = _shown_at(tile, frame)
    # paper edge first, so that letters of the drawing never lie over the bars
    content = (
        View(items, tile.window, frame.at),
        _box(shown),
        *_head(tiles, index, frame, heading, fix),
        *_bars(frame, stop_ratio),
    )
    middle = (frame.width_mm / 2, frame.height_mm / 2)
    whole = Window(0.0, 0.0, frame.width_mm, frame.height_mm)
    corner = (middle[0] * (1 - fix.x_ratio), middle[1] * (1 - fix.y_ratio))
    title = f"{heading.title}, sheet {tile.name}, {index + 1} of {len(tiles)}"
    return Page(frame.width_mm, frame.height_mm, (View(content, whole, corner, fix.x_ratio, fix.y_ratio),), title)


def _shown_at(tile: TileWindow, frame: Frame) -> Window:
    x, y = frame.at
    return Window(x, y, x + tile.window.width_mm, y + tile.window.height_mm)


def _box(window: Window) -> Polygon:
    x0, y0, x1, y1 = window.x_min_mm, window.y_min_mm, window.x_max_mm, window.y_max_mm
    return Polygon(((x0, y0), (x1, y0), (x1, y1), (x0, y1)), Pen.FRAME)


def _head(tiles: Sequence[TileWindow], index: int, frame: Frame, heading: Heading, fix: Correction) -> tuple[Item, ...]:
    """Title, sheet and count, correction, and the map of all sheets at the right."""
    reach, name = frame.reach, tiles[index].name
    left_mm, top_mm = frame.at[0], reach.y_max_mm
    sheet = f"sheet {name}, {index + 1} of {len(tiles)}"
    small = f"{heading.detail + ' · ' if heading.detail else ''}print at 100 % · {fix.words}"
    after_mm = left_mm + text_width_mm(heading.title, 3.2, bold=True) + 4
    lines = (
        Text((left_mm, top_mm - 4.4), heading.title, 3.2, bold=True),
        Text((after_mm, top_mm - 4.4), sheet, 2.6),
        Text((left_mm, top_mm - 9.4), small, 2.1),
    )
    if len(tiles) == 1:
        return lines
    windows = [(tile.name, tile.window) for tile in tiles]
    room_mm = STRIP_TOP_MM - 1.5
    return (*lines, *tile_map(windows, name, (reach.x_max_mm - 24, top_mm - room_mm), 24, room_mm))


def _bars(frame: Frame, stop_ratio: float) -> tuple[Item, ...]:
    """The longest bars that the printer reaches, in both directions, along the foot and the left edge."""
    reach, (x, y) = frame.reach, frame.at
    across_mm, up_mm = longest_bar_mm(reach.x_max_mm - x), longest_bar_mm(reach.y_max_mm - STRIP_TOP_MM - y)
    level = check_bar((x, y - 2.0), across_mm, False, bar_words("x", across_mm, stop_ratio))
    return (*level, *check_bar((x - 2.0, y), up_mm, True, bar_words("y", up_mm, stop_ratio)))
