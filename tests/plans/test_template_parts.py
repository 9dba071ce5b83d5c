"""What templates are made of: printer's correction, care map, corners drilled first, mirrored sheets, one drawing."""

from datetime import date
from math import hypot, pi, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from planskit import board_job, hole, motor_holes

from scantling.drawing.record import record
from scantling.errors import FaultsError, Where
from scantling.model.workshop import Paper, Printer, Workshop
from scantling.plans.sheets.care import care_distances
from scantling.plans.sheets.corners import corner_holes
from scantling.plans.sheets.correction import LIMIT_RATIO, printer_correction
from scantling.plans.sheets.datums import edge_lengths_mm, from_edges
from scantling.plans.sheets.frame import stop_mm, stop_words
from scantling.plans.sheets.labels import hole_label
from scantling.plans.sheets.panel import check_marks
from scantling.plans.templates import check_paper, drawn_holes, page_lay, single_template
from scantling.quantities import Figure
from scantling.shapes.outline import Circle, Outline, polygon_loop, rectangle_loop
from scantling.tables.bits import bit_set

HERE = Where("village.yaml", 11, 10)


def printer(bar=None, across=None, along=None, **more):
    """Return a printer with its readings."""
    lengths = {"bar_mm": bar, "across_mm": across, "along_mm": along}
    return Printer(**{name: Figure.exact(value) for name, value in lengths.items() if value is not None}, **more)


def test_a_bar_that_came_out_short_is_stretched():
    got = printer_correction(printer(100.0, 99.6, 100.2, name="hall printer", read_on=date(2026, 2, 20)), HERE)
    assert got.across_ratio == pytest.approx(100 / 99.6)
    assert got.along_ratio == pytest.approx(100 / 100.2)
    assert got.words == "Corrected for hall printer: across × 1.00402, along × 0.998, read on 2026-02-20."


def test_one_reading_corrects_one_direction_and_says_so():
    got = printer_correction(printer(100.0, 99.5), HERE)
    assert got.along_ratio == 1.0
    assert "along not read, not corrected" in got.words


def test_without_readings_the_page_says_what_to_do():
    got = printer_correction(Printer(), HERE)
    assert (got.across_ratio, got.along_ratio) == (1.0, 1.0)
    assert "print this page first" in got.words


@pytest.mark.parametrize(
    ("readings", "code", "words"),
    [
        ({"bar": 100.0, "across": 96.0, "along": 96.0}, "PAPER-01", "4 % too short"),
        ({"bar": 100.0, "across": 100.0, "along": 102.5}, "PAPER-01", "2.5 % too long"),
        ({"across": 99.0}, "PAPER-02", "without the length of the bar"),
    ],
)
def test_an_error_beyond_what_paper_does_is_refused(readings, code, words):
    with pytest.raises(FaultsError) as caught:
        page_lay(Paper(), printer(**readings), HERE)
    assert {fault.code for fault in caught.value.faults} == {code}
    assert words in str(caught.value)
    assert str(caught.value).startswith("village.yaml:11:10")
    if code == "PAPER-01":
        assert "actual size" in caught.value.faults[0].mend


def test_both_directions_are_refused_at_once():
    with pytest.raises(FaultsError) as caught:
        printer_correction(printer(100.0, 96.0, 97.0), HERE)
    assert len(caught.value.faults) == 2


def test_an_unknown_paper_is_refused_with_those_that_are_known():
    with pytest.raises(FaultsError, match="A4"):
        page_lay(Paper(size="A9"), Printer(), HERE)
    workshop = Workshop(name="x", currency="EUR", paper=Paper(size="foolscap"))
    with pytest.raises(FaultsError, match="PAPER-03"):
        check_paper(workshop, HERE)


@given(st.floats(1 - LIMIT_RATIO, 1 + LIMIT_RATIO), st.floats(1 - LIMIT_RATIO, 1 + LIMIT_RATIO))
def test_what_is_drawn_comes_out_as_long_as_it_should(across, along):
    got = printer_correction(printer(200.0, 200 * across, 200 * along), HERE)
    assert got.across_ratio * across == pytest.approx(1.0)
    assert got.along_ratio * along == pytest.approx(1.0)


def test_readings_at_which_to_stop():
    # 0.2 %, to a tenth of a millimetre, never less than 0.3 mm: common practice, no source
    assert stop_mm(200.0) == 0.4
    assert stop_mm(60.0) == 0.3
    assert stop_words(200.0) == "under 199.6 or over 200.4"


def test_a_motor_square_is_pinned_by_three_sides_and_a_diagonal():
    found = care_distances(motor_holes(45, 58, "m"))
    assert sorted(round(one.length_mm, 3) for one in found) == [31.0, 31.0, 31.0, round(31 * sqrt(2), 3)]
    assert {one.slack_mm for one in found} == {0.3}


def test_groups_are_joined_by_their_nearest_holes():
    holes = [hole("A1", 0, 0, 3, care=True, group="a"), hole("A2", 10, 0, 3, care=True, group="a")]
    holes += [hole("B1", 50, 0, 3, care=True, group="b"), hole("B2", 70, 0, 3, care=True, group="b")]
    holes += [hole("C1", 30, 0, 3, group="a")]
    pairs = {(holes[one.first].mark, holes[one.second].mark) for one in care_distances(holes)}
    assert pairs == {("A1", "A2"), ("B1", "B2"), ("A2", "B1")}


@given(st.lists(st.tuples(st.integers(0, 300), st.integers(0, 300), st.sampled_from("abc")), max_size=12, unique=True))
def test_distances_that_must_hold_reach_every_hole_that_matters(places):
    holes = [hole(f"A{k}", x, y, 3, care=True, group=group) for k, (x, y, group) in enumerate(places)]
    reached = {0} if holes else set()
    pairs = [(one.first, one.second) for one in care_distances(holes)]
    for _ in holes:
        reached |= {b for a, b in pairs if a in reached} | {a for a, b in pairs if b in reached}
    assert reached == set(range(len(holes)))


def window(width, height, radius=0.0):
    """A board of 200 × 200 mm with a window in it."""
    return Outline(rectangle_loop(200, 200), (rectangle_loop(width, height, radius, (50, 60)),))


def test_sharp_corners_of_a_window_are_drilled_touching_both_sides():
    job = board_job(200, 200, bits=bit_set("metric 0.5"))
    found = corner_holes(job.__class__("w", "W", window(80, 50), bits=job.bits))
    assert {one.bit for one in found} == {"10"}
    assert sorted((round(x, 6), round(y, 6)) for x, y in (one.at for one in found)) == [
        (55.0, 65.0),
        (55.0, 105.0),
        (125.0, 65.0),
        (125.0, 105.0),
    ]


def test_rounded_corners_are_drilled_with_the_bit_of_their_rounding():
    job = board_job(200, 200)
    found = corner_holes(job.__class__("w", "W", window(80, 50, 4.0), bits=bit_set("metric 0.5")))
    assert {(one.bit, len(found)) for one in found} == {("8", 4)}
    assert min(found, key=lambda one: one.at).at == pytest.approx((54.0, 64.0))


def test_an_inner_corner_of_the_edge_is_drilled_outside_of_the_panel():
    outline = Outline(polygon_loop([(0, 0), (100, 0), (100, 40), (40, 40), (40, 100), (0, 100)]))
    (found,) = corner_holes(board_job(1, 1).__class__("l", "L", outline))
    assert found.at == pytest.approx((45.0, 45.0))


@given(st.floats(12, 120), st.floats(12, 120), st.floats(0, 5))
def test_no_corner_is_drilled_into_the_panel(width, height, radius):
    outline = window(width, height, radius)
    for one in corner_holes(board_job(1, 1).__class__("w", "W", outline)):
        assert not outline.holds(one.at)
        assert outline.edge_distance_mm(one.at) >= one.bit_mm / 2 - 0.05


def test_marks_for_the_diagonals_lie_on_the_outline_and_alike():
    marks = check_marks(Outline(rectangle_loop(300, 200, 20)))
    first, second = marks.diagonals_mm
    assert first == pytest.approx(second, abs=0.01)
    assert first == pytest.approx(hypot(300, 200) - 2 * 20 * (sqrt(2) - 1), abs=0.5)


def test_the_other_hand_is_mirrored_within_its_box():
    job = board_job(100, 60, [hole("A1", 10, 20, 4.0, slot_mm=6.0, slot_turn_deg=30.0)], grain="x")
    other = job.other_hand("mirrored sheet, for right")
    assert other.holes[0].at == (90.0, 20.0)
    assert other.holes[0].slot_turn_deg == pytest.approx(150.0)
    assert (other.name, other.grain) == ("board-mirrored", "x")
    assert other.outline.extents == job.outline.extents


@pytest.mark.parametrize("hand", ["", "other"])
@pytest.mark.parametrize("turn_rad", [0.0, pi / 2])
def test_figures_from_the_edges_hold_however_the_panel_lies(hand, turn_rad):
    job = board_job(100, 60, [hole("A1", 10, 20, 4.0), hole("B1", 70, 50, 4.0)])
    laid = (job.other_hand("other") if hand else job).at_origin(turn_rad)
    assert [pytest.approx(at) for at in from_edges(laid, laid.holes)] == [(10.0, 20.0), (70.0, 50.0)]
    assert edge_lengths_mm(laid) == pytest.approx((100.0, 60.0))
    sides = {("", 0.0): ("bottom", "left"), ("", pi / 2): ("right", "bottom")}
    sides |= {("other", 0.0): ("bottom", "right"), ("other", pi / 2): ("right", "top")}
    assert (laid.edge_a, laid.edge_b) == sides[hand, turn_rad]


def test_grain_turns_with_the_panel():
    job = board_job(100, 60, grain="x")
    assert (job.at_origin(pi / 2).grain, job.at_origin(0.0).grain) == ("y", "x")
    assert job.at_origin(pi / 2).outline.extents.width_mm == pytest.approx(60)


def test_labels_say_the_bit_only_where_the_size_does_not():
    assert hole_label(hole("A1", 0, 0, 5.0)) == ("A1 Ø5", "pilot 2")
    assert hole_label(hole("A1", 0, 0, 5.0, bit="13/64", bit_mm=5.159)) == ("A1 Ø5", "bit 13/64 pilot 2")
    assert hole_label(hole("B2", 0, 0, 22.5, bit=None, bit_mm=None, before=())) == ("B2 Ø22.5", "no bit")
    assert hole_label(hole("C1", 0, 0, 4.5, slot_mm=6.0, before=())) == ("C1 Ø4.5×10.5", "")


def drawing_with_circles():
    circles = (Circle((20, 20), 1.6), Circle((80, 20), 1.6), Circle((50, 40), 4.05))
    return Outline(rectangle_loop(100, 60), (*circles, rectangle_loop(20, 10, 0, (40, 5))))


def test_circles_of_a_drawing_are_its_holes():
    holes = drawn_holes(drawing_with_circles(), bit_set("metric 0.5"))
    assert [(one.mark, one.diameter_mm, one.bit) for one in holes] == [
        ("A1", 3.2, "3"),
        ("A2", 3.2, "3"),
        ("B1", 8.1, "8"),
    ]
    assert [one.bit for one in drawn_holes(drawing_with_circles())] == ["3.2", "3.2", "8.1"]


def test_a_template_from_one_drawing_alone():
    template = single_template(drawing_with_circles(), name="panel")
    words = " ".join(word for page in template.pages for word in record(page).words)
    assert template.title == "panel"
    for said in ("A1 Ø3.2", "A2 Ø3.2", "B1 Ø8.1", "100.0 mm along edge A", "across: 180 mm"):
        assert said in words
    drawn = [c for page in template.pages for c in record(page).curves if c.sweep_deg == 360]
    assert sum(abs(c.radius_x_mm - 4.05) < 1e-9 for c in drawn) == 1, "a circle is drawn twice"
