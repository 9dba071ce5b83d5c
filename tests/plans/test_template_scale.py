"""Templates measured by a reader that is not ours: bars on every page, holes in their place across seams."""

import re
from functools import cache
from math import hypot

import pytest
from planskit import EXACT_MM, PT_MM, board_job, diamonds, hole, longest, opened, rings

from scantling.drawing.pdf import to_pdf
from scantling.model.workshop import Paper, Printer
from scantling.plans.sheets.pages import make_template
from scantling.plans.templates import page_lay
from scantling.quantities import Figure

PAPERS = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4), "A3": (297.0, 420.0)}  # ISO 216; ANSI/ASME Y14.1 A
CROOKED = Printer(
    name="hall printer",
    bar_mm=Figure.exact(100.0),
    across_mm=Figure.exact(99.6),
    along_mm=Figure.exact(100.2),
)
PRINTERS = {"true": Printer(), "crooked": CROOKED}
# sixteen holes of sixteen sizes, so that each is known by its diameter wherever it is drawn
SIZES = [round(3.0 + 0.5 * k, 1) for k in range(16)]
POINTS = [(15.0 + 25.3 * k, (20.0, 150.0, 255.0)[k % 3]) for k in range(16)]


def spread_job():
    """A board of 410 × 270 mm: several pages on every paper but one."""
    return board_job(410, 270, [hole(f"A{k}", *POINTS[k], size) for k, size in enumerate(SIZES)])


JOBS = {"spread": spread_job, "small": lambda: board_job(90, 60)}


def pages_of(job, paper, printer):
    return make_template(job, page_lay(Paper(size=paper), PRINTERS[printer])).pages


@cache
def printed(job, paper, printer):
    """The pages of a template as the other reader sees them; read once for all tests."""
    return opened(to_pdf(pages_of(JOBS[job](), paper, printer))).pages


@pytest.mark.outside
@pytest.mark.parametrize(
    ("job", "paper", "printer"), [("spread", "A4", "crooked"), ("spread", "Letter", "true"), ("small", "A4", "crooked")]
)
def test_every_page_has_true_bars_in_both_directions(job, paper, printer):
    # Source: pdfplumber, an independent reader of PDF vectors; 1 pt = 1/72 in (ISO 32000-1, 8.3.2)
    across, along = (100 / 99.6, 100 / 100.2) if printer == "crooked" else (1.0, 1.0)
    for page in printed(job, paper, printer):
        assert (page.width * PT_MM, page.height * PT_MM) == pytest.approx(PAPERS[paper], abs=0.01)
        words = _all_text(page)
        said = [float(re.search(rf"{way}: (\d+) mm", words).group(1)) for way in ("across", "along")]
        assert words.count("measured __") == 2
        assert longest(page, upright=False) == pytest.approx(said[0] * across, abs=EXACT_MM)
        assert longest(page, upright=True) == pytest.approx(said[1] * along, abs=EXACT_MM)
        assert said[0] >= 180
        assert said[1] >= 240


def _all_text(page):
    """The text of a page, level lines first, then those that are read from the right."""
    level = sorted((c for c in page.chars if abs(c["matrix"][1]) < 0.1), key=lambda c: (round(c["top"]), c["x0"]))
    turned = sorted((c for c in page.chars if abs(c["matrix"][1]) > 0.1), key=lambda c: (round(c["x0"]), -c["top"]))
    return "".join(c["text"] for c in [*level, *turned])


@pytest.mark.outside
@pytest.mark.parametrize(("paper", "printer"), [("A4", "crooked"), ("Letter", "true")])
def test_holes_are_in_their_place_on_the_joined_pages(paper, printer):
    # Source: pdfplumber, middles of the circles; pages laid cross on cross as a maker does, the promise is 0.02 mm
    across, along = (100 / 99.6, 100 / 100.2) if printer == "crooked" else (1.0, 1.0)
    pieces = [page for page in printed("spread", paper, printer) if diamonds(page)]
    assert len(pieces) >= 4
    seen = _joined(pieces, across, along)
    assert sorted(seen) == SIZES
    for first, a in zip(SIZES, POINTS, strict=True):
        for second, b in zip(SIZES, POINTS, strict=True):
            for one in seen[first]:
                for other in seen[second]:
                    wanted = hypot(a[0] - b[0], a[1] - b[1])
                    assert hypot(one[0] - other[0], one[1] - other[1]) == pytest.approx(wanted, abs=EXACT_MM)


def _joined(pieces, across, along):
    """Lay pages cross on cross as their words say, the first one first; return where each size of hole is seen."""
    marks = {page.page_number: [(x / across, y / along) for x, y in diamonds(page)] for page in pieces}
    shifts = {pieces[0].page_number: (0.0, 0.0)}
    for page in pieces:  # pages are numbered row by row, so that each lies beside or below an earlier one
        here = page.page_number
        for turned, axis, side in ((True, 0, max), (False, 1, min)):
            for there in _neighbours(page, turned):
                dx, dy = _shift(marks[here], marks[there], axis, side)
                shifts.setdefault(there, (shifts[here][0] + dx, shifts[here][1] + dy))
    assert len(shifts) == len(pieces)
    seen = {}
    for page in pieces:
        for x, y, width, height in rings(page):
            assert width / across == pytest.approx(height / along, abs=0.01)
            size, (dx, dy) = round(width / across, 1), shifts[page.page_number]
            if abs(width / across - size) < 0.01 and size in SIZES:
                seen.setdefault(size, []).append((x / across + dx, y / along + dy))
    return seen


def _neighbours(page, turned):
    """The pages that go below this one, beside it (words read from the right) or under its foot."""
    chars = [c for c in page.chars if (abs(c["matrix"][1]) > 0.1) == turned]
    chars.sort(key=(lambda c: (round(c["x0"]), -c["top"])) if turned else (lambda c: (round(c["top"]), c["x0"])))
    words = "".join(c["text"] for c in chars)
    return [int(number) for number in re.findall(r"page (\d+) goes below", words)]


def _shift(ours, theirs, axis, side):
    """By how much a page is moved so that the crosses of the seam fall on ours."""
    edge = side(mark[axis] for mark in ours)
    far = (min if side is max else max)(mark[axis] for mark in theirs)
    our_seam = sorted(mark for mark in ours if abs(mark[axis] - edge) < 0.01)
    their_seam = sorted(mark for mark in theirs if abs(mark[axis] - far) < 0.01)
    assert len(our_seam) == len(their_seam) == 4
    moves = [(a[0] - b[0], a[1] - b[1]) for a, b in zip(our_seam, their_seam, strict=True)]
    assert all(hypot(m[0] - moves[0][0], m[1] - moves[0][1]) < EXACT_MM for m in moves), "crosses do not lie on crosses"
    return moves[0]


@pytest.mark.outside
def test_a_turned_panel_keeps_its_distances():
    # Source: pdfplumber; 250 × 100 mm fits on one A4 only when it lies turned
    job = board_job(250, 100, [hole("A1", 20, 30, 4.0), hole("B1", 230, 30, 5.0), hole("C1", 230, 90, 6.0)])
    with opened(to_pdf(pages_of(job, "A4", "true"))) as pdf:
        seen = {round(w, 1): (x, y) for page in pdf.pages for x, y, w, _ in rings(page)}
    assert hypot(*(a - b for a, b in zip(seen[4.0], seen[5.0], strict=True))) == pytest.approx(210, abs=EXACT_MM)
    assert hypot(*(a - b for a, b in zip(seen[5.0], seen[6.0], strict=True))) == pytest.approx(60, abs=EXACT_MM)
    turn = (seen[5.0][0] - seen[4.0][0]) * (seen[6.0][1] - seen[5.0][1])
    turn -= (seen[5.0][1] - seen[4.0][1]) * (seen[6.0][0] - seen[5.0][0])
    assert turn > 0, "the panel is mirrored"


def test_turned_panels_name_their_edges_where_they_lie():
    template = make_template(board_job(250, 100, [hole("A1", 20, 30, 4.0)]), page_lay(Paper(), Printer()))
    with opened(to_pdf(template.pages)) as pdf:
        (page,) = [p for p in pdf.pages if any(abs(w - 4.0) < 0.01 for *_, w, _ in rings(p))]
        ring = next(r for r in rings(page) if abs(r[2] - 4.0) < 0.01)
        level = [line for line in page.lines if (line["x1"] - line["x0"]) * PT_MM > 90]
        box = [line for line in level if abs((line["x1"] - line["x0"]) * PT_MM - 100) < 0.1]
        x1 = max(line["x1"] for line in box) * PT_MM
        y0 = min(line["y0"] for line in box) * PT_MM
    # edge A is the panel's lower edge and lies on the right, edge B its left one and lies below
    assert x1 - ring[0] == pytest.approx(30, abs=EXACT_MM)
    assert ring[1] - y0 == pytest.approx(20, abs=EXACT_MM)
