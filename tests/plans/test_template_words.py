"""Words on templates: whole, large enough, over nothing; and that they say what a maker at a bench must know."""

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from planskit import board_job, hole, motor_holes, portal_job

from scantling.drawing.compound import text_corners
from scantling.drawing.primitives import Pen
from scantling.drawing.record import record
from scantling.drawing.strokes import Lettering, strokes
from scantling.model.workshop import Paper, Printer
from scantling.plans.sheets.pages import make_template
from scantling.plans.templates import page_lay
from scantling.quantities import Figure

ARMS_LENGTH_MM = 3.0  # height of capitals that can be read standing at a bench; common practice, no source
CROOKED = Printer(bar_mm=Figure.exact(200.0), across_mm=Figure.exact(201.0), along_mm=Figure.exact(199.0))


def template(job, paper="A4", printer=None):
    return make_template(job, page_lay(Paper(size=paper), printer or Printer()))


def all_words(job, **options):
    return " ".join(word for page in template(job, **options).pages for word in record(page).words)


JOBS = {
    "portal": portal_job,
    "small": lambda: board_job(90, 90, [*motor_holes(45, 58, "m"), hole("C1", 15, 18, 8.0, care=True, group="r")]),
    "long": lambda: board_job(600, 60, [hole(f"A{k}", 20 + 40 * k, 30, 5.0) for k in range(15)]),
    "bare": lambda: board_job(100, 100),
}


@pytest.mark.parametrize("paper", ["A4", "Letter", "A5"])
@pytest.mark.parametrize("job", JOBS)
def test_no_word_is_cut_and_none_is_small(job, paper):
    for page in template(JOBS[job](), paper, CROOKED).pages:
        letterings = [stroke for stroke in strokes(page) if isinstance(stroke, Lettering)]
        assert len(letterings) > 3
        for lettering in letterings:
            assert lettering.window is None, f"{lettering.text.text!r} runs out of its page"
            assert lettering.text.height_mm > ARMS_LENGTH_MM * 0.99, lettering.text.text


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("job", ["portal", "small", "long"])
def test_no_word_stands_on_another(job, paper):
    for page in template(JOBS[job](), paper).pages:
        boxes = [(text.text, _box(text)) for text in record(page).texts]
        for (one, a), (other, b) in combinations(boxes, 2):
            width, height = min(a[2], b[2]) - max(a[0], b[0]), min(a[3], b[3]) - max(a[1], b[1])
            assert min(width, height) < 0.2, f"{one!r} stands on {other!r}"


def _box(text):
    corners = text_corners(text, 0.0)
    xs, ys = [x for x, _ in corners], [y for _, y in corners]
    return (min(xs), min(ys), max(xs), max(ys))


def test_every_hole_carries_its_mark_size_and_bits():
    words = all_words(portal_job())
    for label in ("A1 Ø3.4 bit 3.5 pilot 2", "C1 Ø10 pilot 2", "D3 Ø4.5 pilot 2", "E1 Ø4.5×12.5 pilot 2"):
        assert label in words
    assert "B1 Ø22.5" in words
    assert "no bit" in words


def test_distances_that_must_hold_are_boxed_with_their_tolerance():
    drawn = [record(page).with_pen(Pen.CARE) for page in template(portal_job()).pages]
    figures = [word for got in drawn for word in got.words if "±" in word]
    assert "292.0 ±0.2 measure!" in figures
    assert figures.count("31.0 ±0.3") == 6
    assert figures.count("43.8 ±0.3") == 2  # 31 √2
    boxes = [polygon for got in drawn for polygon in got.polygons if len(polygon.points) == 4 and not polygon.filled]
    assert len(boxes) >= len(figures)


def test_the_sheet_says_what_must_be_known():
    words = all_words(portal_job(uses=("04", "11"), drilled_with="Back panel"))
    for said in (
        "Portal",
        "Test, revision 2",
        "plywood, 9 mm nominal: measure your board",
        "1 in one machine",
        "face up: outside face",
        "OUTSIDE FACE UP",
        "up: the crosspiece",
        "grain",
        "drilled together with Back panel",
        "used in step 04, 11",
        "400.0 mm along edge A",
        "548.3",  # the diagonal: √(400² + 375²)
        "stop under 547.2 or over 549.4",  # 0.2 % of 548.3 is 1.1
        "Not corrected for your printer",
        "Eye protection on",
        "country come first",
        "edge A",
        "edge B",
    ):
        assert said in words, said


def test_the_order_of_work_drills_before_it_saws():
    words = all_words(portal_job())
    drill, saw = words.index("drill the pilots through all holes"), words.index("Saw outside of the line")
    assert words.index("Join the pages on a flat board") < drill < words.index("Open the holes to size") < saw


def test_a_board_without_holes_is_not_told_to_drill():
    words = all_words(JOBS["bare"]())
    assert "pilots" not in words
    assert "Join the pages" not in words
    assert "Saw outside of the line" in words


def test_measured_thickness_is_not_measured_again():
    assert "7.8 mm measured" in all_words(portal_job(thickness="7.8 mm measured"))
    assert "measure your board" not in all_words(portal_job(thickness="7.8 mm measured"))


def test_pages_to_join_name_their_neighbours():
    pages = template(portal_job()).pages
    words = [" ".join(record(page).words) for page in pages]
    cut = sum(text.count("goes below") for text in words)
    laid = sum(text.count("is laid on up to this line") for text in words)
    assert cut == laid == 4  # five pages around an open window, joined in a row of three with one below each end
    assert "5 pages to join" in words[0]


def test_a_small_panel_shares_its_page_with_the_words():
    pages = template(JOBS["bare"]()).pages
    assert len(pages) == 1
    assert "Order of work" in " ".join(record(pages[0]).words)


def test_a_page_is_saved_where_the_words_fit_above_the_panel():
    assert len(template(JOBS["small"]()).pages) == 2


@settings(max_examples=20)
@given(
    width=st.floats(30, 700),
    height=st.floats(30, 500),
    places=st.lists(st.tuples(st.floats(0.05, 0.95), st.floats(0.05, 0.95)), max_size=8),
    paper=st.sampled_from(["A4", "Letter"]),
)
def test_any_board_is_drawn_with_all_its_holes(width, height, places, paper):
    holes = [hole(f"A{k}", x * width, y * height, 3.0 + k) for k, (x, y) in enumerate(places)]
    got = template(board_job(width, height, holes), paper)
    drawn = [curve for page in got.pages for curve in record(page).curves if curve.sweep_deg == 360.0]
    for one in holes:
        assert any(abs(curve.radius_x_mm - one.diameter_mm / 2) < 1e-6 for curve in drawn)
    marks = " ".join(word for page in got.pages for word in record(page).words)
    assert all(f"{one.mark} " in marks for one in holes)
