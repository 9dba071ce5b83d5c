"""A template and a drill list from one drawing alone."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from scantling.api.alone_result import Alone
from scantling.build.bits_at_hand import bits_at_hand
from scantling.model.workshop import Workshop
from scantling.plans.csv_text import csv_bytes
from scantling.plans.sheets.job import TemplateHole
from scantling.plans.templates import drawn_holes, single_template, template_files
from scantling.quantities import show_number
from scantling.reading.looking import read_outline
from scantling.shapes.outline import Outline


def plan_drawing(path: Path, shop: Workshop) -> Alone:
    """Return the tiled template of a drawing with its drill list; raises ``FaultsError``."""
    outline = read_outline(path)
    bits = bits_at_hand(shop)
    holes = drawn_holes(outline, bits)
    template = single_template(outline, holes, shop.paper, shop.printer, path.stem, bits)
    files = template_files([template])
    if holes:
        files["drill-list.csv"] = csv_bytes(_rows(holes))
    return Alone(path.name, tuple(_lines(outline, holes, len(template.pages), shop)), files, all(h.bit for h in holes))


def _lines(outline: Outline, holes: Sequence[TemplateHole], pages: int, shop: Workshop) -> Iterator[str]:
    size = outline.extents
    yield f"{show_number(size.width_mm)} × {show_number(size.height_mm)} mm, {_counted(len(holes), 'round hole')}"
    yield f"template on {_counted(pages, 'page')} of {shop.paper.size}; print at actual size, then read the check bars"
    if not shop.printer.bar_mm:
        yield "what the bars read corrects the printer: --bars DRAWN ACROSS ALONG, or the workshop's printer"
    if holes and not shop.bits:
        yield "no bits are described: the drill list names each hole's own diameter"
    for text in dict.fromkeys(show_number(hole.diameter_mm, 2) for hole in holes if hole.bit is None):
        marks = ", ".join(h.mark for h in holes if h.bit is None and show_number(h.diameter_mm, 2) == text)
        yield f"no bit in hand for {text} mm: {marks}"


def _counted(count: int, what: str) -> str:
    return f"{count or 'no'} {what}{'' if count == 1 else 's'}"


def _rows(holes: Sequence[TemplateHole]) -> list[list[str]]:
    heading = ["mark", "bit", "diameter mm", "x mm", "y mm"]
    rows = [[h.mark, h.bit or "none in hand", show_number(h.diameter_mm), *map(show_number, h.at)] for h in holes]
    return [heading, *rows]
