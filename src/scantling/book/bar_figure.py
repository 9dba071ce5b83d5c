"""A small drawing of the bars to cut: pieces in their order, what is left shaded, lengths written in."""

from __future__ import annotations

from collections.abc import Sequence

from scantling.book.document import Figure
from scantling.drawing.lettering import text_width_mm
from scantling.drawing.primitives import Anchor, Item, Line, Page, Pen, Polygon, Text
from scantling.drawing.svg import to_svg
from scantling.plans.cutting import BarPlan
from scantling.quantities import show_number

_BAR_MM, _PITCH_MM, _TEXT_MM, _LEFT_MM = 6.0, 11.0, 2.2, 34.0


def bar_figure(bars: Sequence[BarPlan], width_mm: float) -> Figure:
    """Return the bars drawn under one another, all to one scale, as wide as the page."""
    longest_um = max(bar.bar_um for bar in bars)
    scale = (width_mm - _LEFT_MM) / (longest_um / 1000)
    height_mm = len(bars) * _PITCH_MM + 1.0
    items: list[Item] = []
    for number, bar in enumerate(bars):
        items += _bar(number + 1, bar, height_mm - number * _PITCH_MM - 3.0 - _BAR_MM, scale)
    words = "; ".join(_words(number, bar) for number, bar in enumerate(bars, 1))
    page = Page(width_mm, height_mm, tuple(items), words)
    return Figure(to_svg(page).decode(), width_mm, height_mm, words)


def _words(number: int, bar: BarPlan) -> str:
    pieces = " + ".join(show_number(piece.length_um / 1000) for piece in bar.pieces)
    return f"bar {number}: {bar.times} × {show_number(bar.bar_um / 1000)} mm of {bar.name}: {pieces}"


def _bar(number: int, bar: BarPlan, y: float, scale: float) -> list[Item]:
    label = f"{number}: {bar.times} × {show_number(bar.bar_um / 1000)}"
    items: list[Item] = [Text((0.0, y + _BAR_MM / 2), label, 2.5, Pen.NOTE, bold=True, centred=True)]
    start = _LEFT_MM
    for piece in bar.pieces:
        end = _LEFT_MM + piece.ends_um / 1000 * scale
        items.append(Polygon(_box(start, end, y), Pen.CUT))
        items += _inside(show_number(piece.length_um / 1000), start, end, y)
        start = end + bar.kerf_um / 1000 * scale
    end = _LEFT_MM + bar.bar_um / 1000 * scale
    if bar.left_um > 0 and end - start > 0.3:
        items += [Polygon(_box(start, end, y), Pen.WASTE), Line((start, y), (end, y + _BAR_MM), Pen.WASTE)]
        items += _inside(f"left {show_number(bar.left_um / 1000)}", start, end, y)
    return items


def _box(start: float, end: float, y: float) -> tuple[tuple[float, float], ...]:
    return ((start, y), (end, y), (end, y + _BAR_MM), (start, y + _BAR_MM))


def _inside(words: str, start: float, end: float, y: float) -> list[Item]:
    """A figure in its box, where it has room; the table has it in any case."""
    if text_width_mm(words, _TEXT_MM) + 1.0 > end - start:
        return []
    at = ((start + end) / 2, y + _BAR_MM / 2)
    return [Text(at, words, _TEXT_MM, Pen.NOTE, Anchor.MIDDLE, centred=True, backed=True)]
