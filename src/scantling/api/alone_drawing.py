"""A template and a drill list from one drawing alone."""

from __future__ import annotations

from pathlib import Path

from scantling.api.alone_result import Alone
from scantling.build.bits_at_hand import bits_at_hand
from scantling.model.workshop import Workshop
from scantling.plans.csv_text import csv_bytes
from scantling.plans.sheets.job import TemplateHole
from scantling.plans.templates import drawn_holes, single_template, template_files
from scantling.quantities import show_number
from scantling.reading.looking import read_outline


def plan_drawing(path: Path, shop: Workshop) -> Alone:
    """Return the tiled template of a drawing with its drill list; raises ``FaultsError``."""
    outline = read_outline(path)
    bits = bits_at_hand(shop)
    holes = drawn_holes(outline, bits)
    template = single_template(outline, holes, shop.paper, shop.printer, path.stem, bits)
    size = outline.extents
    lines = (
        f"{show_number(size.width_mm)} × {show_number(size.height_mm)} mm, {len(holes)} round holes",
        f"template on {len(template.pages)} pages of {shop.paper.size}; print at actual size, then measure the bars",
        *(f"no bit in hand for {hole.mark}, {show_number(hole.diameter_mm)} mm" for hole in holes if hole.bit is None),
    )
    files = template_files([template]) | {"drill-list.csv": csv_bytes(_rows(holes))}
    return Alone(path.name, lines, files, all(hole.bit for hole in holes))


def _rows(holes: tuple[TemplateHole, ...]) -> list[list[str]]:
    heading = ["mark", "bit", "diameter mm", "x mm", "y mm"]
    rows = [[h.mark, h.bit or "none in hand", show_number(h.diameter_mm), *map(show_number, h.at)] for h in holes]
    return [heading, *rows]
