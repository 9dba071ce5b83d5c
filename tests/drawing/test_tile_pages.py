"""Tiled pages: holes in their design place on every sheet, bars in both directions, nothing beyond reach."""

import io

import pdfplumber
import pytest

from scantling.drawing.pdf import to_pdf
from scantling.drawing.primitives import HoleMark, Line, Pen, Polygon, Text, Window
from scantling.drawing.record import record
from scantling.drawing.strokes import Lettering, strokes
from scantling.drawing.tiles import (
    STRIP_BOTTOM_MM,
    STRIP_LEFT_MM,
    STRIP_TOP_MM,
    Correction,
    Frame,
    Heading,
    TileWindow,
    correction_from,
    tile_pages,
)

PT_MM = 25.4 / 72
FRAME = Frame(210, 297, Window(5, 5, 205, 292))
# the room for the drawing is 200 - 11 by 287 - 26 = 189 x 261; two tiles side by side with 12 mm in common
TILES = (TileWindow("A1", Window(-20, -30, 169, 231)), TileWindow("B1", Window(157, -30, 346, 231)))
SEAM = ((163.0, -24.0), (163.0, 225.0))
HOLES = ((30.0, 40.0, 8.4), (163.0, 100.0, 5.0), (300.0, 200.0, 3.2))
ITEMS = (
    Polygon(((0, 0), (320, 0), (320, 220), (0, 220)), Pen.CUT),
    *(HoleMark((x, y), d, f"{d:g}") for x, y, d in HOLES),
    Text((150, 50), "a text that runs over the edge of the sheet", 4),
)


def pages(**options):
    return tile_pages(ITEMS, TILES, FRAME, Heading("back panel", "ply 9 mm"), (SEAM,), SEAM, **options)


def test_strips_and_reach_make_up_the_window():
    assert (FRAME.reach.width_mm - STRIP_LEFT_MM, FRAME.reach.height_mm - STRIP_BOTTOM_MM - STRIP_TOP_MM) == (189, 261)
    assert FRAME.at == (16, 18)


@pytest.mark.outside
@pytest.mark.parametrize("fix", [Correction(), Correction(1.0025, 0.9985)])
def test_holes_lie_in_their_place_across_the_seam(fix):
    # Source: pdfplumber, middles of the drawn circles; the promise is 0.02 mm
    with pdfplumber.open(io.BytesIO(to_pdf(pages(correction=fix)))) as pdf:
        for tile, sheet in zip(TILES, pdf.pages, strict=True):
            seen = []
            for curve in sheet.curves:
                if curve["x1"] - curve["x0"] < 3 / PT_MM or curve["x1"] - curve["x0"] > 9 / PT_MM:
                    continue  # rings of crosses are 4 mm: counted below by their own size
                x_mm, y_mm = (curve["x0"] + curve["x1"]) / 2 * PT_MM, (curve["y0"] + curve["y1"]) / 2 * PT_MM
                # back through the correction about the middle of the paper, then into the drawing
                x_mm, y_mm = 105 + (x_mm - 105) / fix.x_ratio, 148.5 + (y_mm - 148.5) / fix.y_ratio
                seen.append((x_mm - 16 + tile.window.x_min_mm, y_mm - 18 + tile.window.y_min_mm))
            for x, y, d in HOLES:
                inside = tile.window.x_min_mm + d <= x <= tile.window.x_max_mm - d
                near = [p for p in seen if abs(p[0] - x) < 0.02 and abs(p[1] - y) < 0.02]
                assert bool(near) == inside, (tile.name, x, y)


def test_every_page_has_bars_in_both_directions_and_says_when_to_stop():
    for page in pages():
        got = record(page).with_pen(Pen.CHECK)
        (level,) = [line for line in got.lines if line.start[1] == line.end[1] and line.end[0] - line.start[0] > 50]
        (upright,) = [line for line in got.lines if line.start[0] == line.end[0] and line.end[1] - line.start[1] > 50]
        assert level.end[0] - level.start[0] == 180
        assert upright.end[1] - upright.start[1] == 260
        words = " ".join(got.words)
        assert "x: 180 mm" in words
        assert "under 179.6 or over 180.4" in words
        assert "y: 260 mm" in words
        assert "under 259.5 or over 260.5" in words


@pytest.mark.outside
def test_bars_are_corrected_too_and_the_page_says_so():
    # Source: pdfplumber; bars read as 179.6 and 259.2 instead of 180 and 260
    fix = correction_from(180, 179.6, 260, 259.2)
    with pdfplumber.open(io.BytesIO(to_pdf(pages(correction=fix)))) as pdf:
        for sheet in pdf.pages:
            lengths = sorted([(line["x1"] - line["x0"]) * PT_MM for line in sheet.lines], reverse=True)
            heights = sorted([(line["y1"] - line["y0"]) * PT_MM for line in sheet.lines], reverse=True)
            assert any(abs(length - 180 * 180 / 179.6) < 0.02 for length in lengths)
            assert any(abs(height - 260 * 260 / 259.2) < 0.02 for height in heights)
            assert "corrected for the printer: x × 1.00223, y × 1.00309" in sheet.extract_text()


def test_an_uncorrected_page_says_so_too():
    assert any("not corrected for the printer" in word for word in record(pages()[0]).words)


def test_nothing_lies_beyond_the_printer_s_reach():
    reach = FRAME.reach
    for page in pages():
        got = record(page)
        points = [point for line in got.lines for point in (line.start, line.end)]
        points += [point for polygon in got.polygons for point in polygon.points]
        points += [
            (curve.centre[0] + dx, curve.centre[1])
            for curve in got.curves
            for dx in (-curve.radius_x_mm, curve.radius_x_mm)
            if abs(curve.sweep_deg) == 360
        ]
        assert points
        for x, y in points:
            assert reach.x_min_mm <= x <= reach.x_max_mm + 1e-9
            assert reach.y_min_mm <= y <= reach.y_max_mm + 1e-9


def test_seams_and_crosses_are_on_both_sheets():
    for page in pages():
        got = record(page)
        assert len(got.with_pen(Pen.SEAM).lines) == 1
        rings = [curve for curve in got.curves if curve.pen is Pen.NOTE and curve.radius_x_mm == 2]
        assert len(rings) == 2


def test_the_map_fills_this_sheet_only():
    for page, name in zip(pages(), ("A1", "B1"), strict=True):
        got = record(page)
        filled = [polygon for polygon in got.with_pen(Pen.FRAME).polygons if polygon.filled]
        assert len(filled) == 1
        (label,) = [text for text in got.texts if text.pen is Pen.PAPER]
        assert label.text == name
        assert f"sheet {name}, " in " ".join(got.words)
        assert page.title.startswith(f"back panel, sheet {name}")


def test_one_sheet_needs_no_map():
    (page,) = tile_pages((Line((0, 0), (10, 10)),), TILES[:1], FRAME, Heading("x"))
    assert not [polygon for polygon in record(page).polygons if polygon.filled]


def test_the_text_over_the_edge_is_cut_off_there():
    cut = [s for s in strokes(pages()[0]) if isinstance(s, Lettering) and "runs over" in s.text.text]
    assert [s.window for s in cut] == [Window(16, 18, 205, 279)]
