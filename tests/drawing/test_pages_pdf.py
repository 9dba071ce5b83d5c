"""PDFs measured by readers that are not ours: true scale by vectors and by pixels, same bytes, any paper."""

import io

import pdfplumber
import pypdfium2
import pytest

from scantling.drawing.pdf import to_pdf
from scantling.drawing.primitives import Arc, HoleMark, Line, Page, Pen, Polygon, Text, View, Window

PT_MM = 25.4 / 72  # a PDF's unit is 1/72 in
MM_PER_M = 0.02  # the promised looseness over a metre


def opened(pages, title=""):
    return pdfplumber.open(io.BytesIO(to_pdf(pages, title)))


def bars(page, length_mm, along_y=False, at=(10, 20)):
    x, y = at
    return Line(at, (x, y + length_mm) if along_y else (x + length_mm, y), Pen.CHECK)


@pytest.mark.outside
@pytest.mark.parametrize(("width_mm", "height_mm"), [(210, 297), (215.9, 279.4), (1220, 914), (420, 1400)])
def test_bars_are_true_over_a_metre(width_mm, height_mm):
    # Source: pdfplumber and pdfminer, an independent reader of PDF vectors; 1 pt = 1/72 in (ISO 32000-1, 8.3.2)
    long_mm, tall_mm = width_mm - 20, height_mm - 40
    page = Page(width_mm, height_mm, (bars(0, long_mm), bars(0, tall_mm, along_y=True)))
    with opened([page]) as pdf:
        (sheet,) = pdf.pages
        assert sheet.width * PT_MM == pytest.approx(width_mm, abs=0.01)
        assert sheet.height * PT_MM == pytest.approx(height_mm, abs=0.01)
        across, upright = sorted(sheet.lines, key=lambda line: line["x1"] - line["x0"], reverse=True)
        assert (across["x1"] - across["x0"]) * PT_MM == pytest.approx(long_mm, abs=MM_PER_M)
        assert (upright["y1"] - upright["y0"]) * PT_MM == pytest.approx(tall_mm, abs=MM_PER_M)
        assert across["x0"] * PT_MM == pytest.approx(10, abs=MM_PER_M)
        assert across["y0"] * PT_MM == pytest.approx(20, abs=MM_PER_M)


@pytest.mark.outside
def test_a_bar_of_100_mm_in_pixels():
    # Source: pdfium (pypdfium2) renders the page at 600 dpi; 100 mm = 2362.2 pixels
    page = Page(140, 60, (Polygon(((20, 20), (120, 20), (120, 40), (20, 40)), Pen.CHECK, filled=True),))
    bitmap = pypdfium2.PdfDocument(to_pdf([page]))[0].render(scale=600 / 72).to_numpy()
    dark = bitmap[..., :3].min(axis=2) < 128
    columns, rows = dark.any(axis=0).nonzero()[0], dark.any(axis=1).nonzero()[0]
    per_mm = 600 / 25.4
    assert columns[-1] - columns[0] + 1 == pytest.approx(100 * per_mm, abs=1)
    assert rows[-1] - rows[0] + 1 == pytest.approx(20 * per_mm, abs=1)
    assert columns[0] == pytest.approx(20 * per_mm, abs=1)


@pytest.mark.outside
def test_holes_stand_where_they_should():
    # Source: pdfplumber, boxes of the drawn curves
    holes = [(30, 40, 3.2), (90, 40, 8.4), (150.5, 200.25, 22)]
    page = Page(210, 297, tuple(HoleMark((x, y), d) for x, y, d in holes))
    with opened([page]) as pdf:
        curves = sorted(pdf.pages[0].curves, key=lambda curve: curve["x1"] - curve["x0"])
        assert len(curves) == 3
        for curve, (x, y, diameter) in zip(curves, holes, strict=True):
            assert (curve["x0"] + curve["x1"]) / 2 * PT_MM == pytest.approx(x, abs=0.01)
            assert (curve["y0"] + curve["y1"]) / 2 * PT_MM == pytest.approx(y, abs=0.01)
            assert (curve["x1"] - curve["x0"]) * PT_MM == pytest.approx(diameter, abs=0.01)


@pytest.mark.outside
def test_a_corrected_view_is_stretched_by_what_was_measured():
    # Source: pdfplumber; a printer that draws 240 mm as 239.4 and 238.8 needs 1.002506 and 1.005025
    fix_x, fix_y = 240 / 239.4, 240 / 238.8
    items = (Line((0, 0), (150, 0)), Line((0, 0), (0, 150)), Arc((75, 75), 50))
    page = Page(210, 297, (View(items, Window(0, 0, 160, 160), (20, 30), fix_x, fix_y),))
    with opened([page]) as pdf:
        across, upright = sorted(pdf.pages[0].lines, key=lambda line: line["x1"] - line["x0"], reverse=True)
        assert (across["x1"] - across["x0"]) * PT_MM == pytest.approx(150 * fix_x, abs=0.01)
        assert (upright["y1"] - upright["y0"]) * PT_MM == pytest.approx(150 * fix_y, abs=0.01)
        (curve,) = pdf.pages[0].curves
        assert (curve["x1"] - curve["x0"]) * PT_MM == pytest.approx(100 * fix_x, abs=0.01)
        assert (curve["y1"] - curve["y0"]) * PT_MM == pytest.approx(100 * fix_y, abs=0.01)


def test_nothing_outside_a_window_is_drawn():
    items = (Line((-500, 50), (500, 50)), Arc((0, 0), 60), Text((90, 90), "a long text that runs out of the window", 4))
    page = Page(210, 297, (View(items, Window(0, 0, 100, 100), (50, 60)),))
    bitmap = pypdfium2.PdfDocument(to_pdf([page]))[0].render(scale=150 / 72).to_numpy()
    rows, columns = (bitmap[..., :3].min(axis=2) < 200).nonzero()
    per_mm = 150 / 25.4
    assert columns.min() >= 49.5 * per_mm
    assert columns.max() <= 150.5 * per_mm
    assert rows.min() >= (297 - 160.5) * per_mm
    assert rows.max() <= (297 - 59.5) * per_mm
    assert len(rows) > 1000


def test_papers_may_be_mixed():
    sizes = [(210, 297), (297, 210), (215.9, 279.4), (841, 1189)]
    with opened([Page(w, h, (Text((10, 10), f"{w}"),)) for w, h in sizes]) as pdf:
        got = [(round(p.width * PT_MM, 1), round(p.height * PT_MM, 1)) for p in pdf.pages]
    assert got == sizes


def test_texts_stay_texts_in_the_one_face():
    words = 'Back panel <&> "9 mm" · Ø 8.4 ± 0.1 → \\ #set $x$ Łódź Ωμέγα Ж'
    with opened(
        [Page(210, 297, (Text((10, 200), words, 4), Text((10, 180), "BOLD", 4, bold=True)))], "A # title"
    ) as pdf:
        page = pdf.pages[0]
        found = page.extract_text().splitlines()
        fonts = {char["fontname"].partition("+")[2] for char in page.chars}
        assert pdf.metadata["Title"] == "A # title"
        assert not any("date" in key.lower() for key in pdf.metadata)
    assert found == [words, "BOLD"]
    assert fonts == {"SourceSansPro-Regular", "SourceSansPro-Bold"}


def test_letters_have_the_height_asked_for():
    page = Page(100, 50, (Text((10, 20), "HHH", 5),))
    bitmap = pypdfium2.PdfDocument(to_pdf([page]))[0].render(scale=600 / 72).to_numpy()
    rows = (bitmap[..., :3].min(axis=2) < 128).any(axis=1).nonzero()[0]
    assert (rows[-1] - rows[0] + 1) * 25.4 / 600 == pytest.approx(5, abs=0.06)
    assert (bitmap.shape[0] - rows[-1]) * 25.4 / 600 == pytest.approx(20, abs=0.1)


def test_the_same_pages_give_the_same_bytes_and_ask_for_their_own_size():
    page = Page(210, 297, (HoleMark((30, 40), 5, "A 5"), Text((10, 10), "x")))
    first, second = to_pdf([page, page], "t"), to_pdf([page, page], "t")
    assert first == second
    assert b"/PrintScaling/None" in first
    place = int(first.rsplit(b"startxref\n", 1)[1].split(b"\n")[0])
    assert first[place : place + 4] == b"xref"


def test_no_page_is_no_pdf():
    with pytest.raises(ValueError, match="at least one page"):
        to_pdf([])


def test_odd_texts_do_no_harm():
    words = "]]> </text><script/> \x00\x07 \ud800 #{panic()} \u202e & %"
    with opened([Page(210, 100, (Text((10, 50), words, 3),), title=words)], words) as pdf:
        assert "script" in pdf.pages[0].extract_text()
