"""What pages hold, by the recording back end: marks, dimensions, views in views."""

from math import hypot

import pytest

from scantling.drawing.compound import CROSS_BEYOND_MM
from scantling.drawing.lettering import drawable, text_width_mm
from scantling.drawing.primitives import (
    Anchor,
    Arc,
    Dimension,
    HoleMark,
    Line,
    Page,
    Pen,
    Polygon,
    Text,
    View,
    Window,
)
from scantling.drawing.record import record


def drawn(*items, size=(200, 200)):
    return record(Page(*size, items))


def test_a_hole_is_a_true_circle_under_a_cross_longer_than_the_bit():
    got = drawn(HoleMark((50, 60), 3.2, "B 3.2", bit_mm=8))
    (circle,) = got.with_pen(Pen.HOLE).curves
    assert (circle.centre, circle.radius_x_mm, circle.sweep_deg) == ((50, 60), 1.6, 360)
    cross = got.with_pen(Pen.CENTRE).lines
    assert len(cross) == 2
    for line in cross:
        assert hypot(line.end[0] - line.start[0], line.end[1] - line.start[1]) == 8 + 2 * CROSS_BEYOND_MM
        assert ((line.start[0] + line.end[0]) / 2, (line.start[1] + line.end[1]) / 2) == (50, 60)
    assert got.words == ("B 3.2",)


def test_a_label_may_be_moved():
    (text,) = drawn(HoleMark((50, 60), 3.2, "B", label_at=(-5, 2))).texts
    assert (text.at, text.anchor) == ((45, 62), Anchor.END)


@pytest.mark.parametrize(("end", "turn_deg"), [((150, 50), 0), ((50, 150), 90), ((120, 120), 45), ((20, 50), 0)])
def test_a_dimension_reads_from_below_or_from_the_right(end, turn_deg):
    got = drawn(Dimension((50, 50), end, "70"))
    (text,) = got.texts
    assert text.turn_deg % 360 == pytest.approx(turn_deg)
    assert len(got.polygons) == 2  # two arrow heads
    assert all(polygon.filled for polygon in got.polygons)


def test_a_dimension_shows_its_length_at_its_offset():
    lines = drawn(Dimension((50, 50), (150, 50), "100", offset_mm=12)).lines
    (main,) = [line for line in lines if line.start[1] == line.end[1]]
    assert (main.start, main.end) == ((50, 62), (150, 62))
    assert {line.start[0] for line in lines if line is not main} == {50, 150}


def test_a_boxed_dimension_stands_out():
    got = drawn(Dimension((50, 50), (150, 50), "100 ± 0.2", boxed=True))
    (text,) = got.texts
    assert (text.bold, text.pen) == (True, Pen.CARE)
    boxes = [polygon for polygon in got.polygons if not polygon.filled]
    assert [box.pen for box in boxes] == [Pen.CARE]
    width_mm = max(x for x, _ in boxes[0].points) - min(x for x, _ in boxes[0].points)
    assert width_mm == pytest.approx(text_width_mm("100 ± 0.2", 2.5, bold=True) + 2)


def test_a_short_dimension_puts_its_figure_beside():
    (text,) = drawn(Dimension((50, 50), (53, 50), "3.0")).texts
    assert text.at[0] > 53


def test_views_in_views_multiply_their_scales_and_share_their_windows():
    inner = View((Line((0, 0), (100, 0)), Arc((5, 0), 2)), Window(0, -10, 50, 10), (10, 20), 2, 3)
    outer = View((inner,), Window(0, 0, 60, 60), (100, 100), 0.5, 0.5)
    got = drawn(outer)
    # inner x = 0 … 25 is what the outer window lets through: 10 + 2 x <= 60
    assert got.lines == (Line((105, 125), (130, 125), Pen.NOTE),)
    (curve,) = got.curves
    assert curve.centre == (110, 125)
    assert (curve.radius_x_mm, curve.radius_y_mm) == (2, 3)


def test_a_polygon_over_the_edge_becomes_lines_and_a_filled_one_an_area():
    square = ((-10, 10), (20, 10), (20, 20), (-10, 20))
    assert len(drawn(Polygon(square)).lines) == 3
    (area,) = drawn(Polygon(square, filled=True)).polygons
    assert min(x for x, _ in area.points) == 0
    assert drawn(Polygon(((5, 5), (6, 5), (6, 6)))).polygons[0].points == ((5, 5), (6, 5), (6, 6))


def test_texts_outside_are_dropped():
    assert drawn(Text((300, 10), "out"), Text((10, 10), "in"), Text((195, 100), "half out")).words == ("in", "half out")


def test_a_backed_text_has_paper_under_it():
    got = drawn(Text((50, 50), "hello", backed=True))
    (paper,) = got.polygons
    assert (paper.pen, paper.filled) == (Pen.PAPER, True)


@pytest.mark.outside
def test_widths_of_letters():
    # Source: advance widths in the typeface's own hmtx table, read by fontTools: H 652, i 246, space 200 of 1000
    assert text_width_mm("H", 6.6) == pytest.approx(6.52)
    assert text_width_mm("Hi H", 6.6) == pytest.approx((652 + 246 + 200 + 652) / 100)
    assert text_width_mm("H", 6.6, bold=True) > text_width_mm("H", 6.6)


def test_signs_that_no_page_can_hold():
    assert drawable("a\tb\x00c⌀\ud800") == "a bcØ"
