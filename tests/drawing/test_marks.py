"""Marks: where they point, on which side the waste lies, how words are read."""

import pytest

from scantling.drawing.marks import (
    arrow,
    longest_bar_mm,
    waste_strokes,
)
from scantling.drawing.primitives import Pen


def test_longest_bars():
    assert longest_bar_mm(199.9) == 190
    assert longest_bar_mm(200) == 200


@pytest.mark.parametrize(
    ("end", "turn_deg"), [((10, 0), 0), ((-10, 0), 0), ((0, 10), 90), ((0, -10), 90), ((-5, -5), 45)]
)
def test_words_on_an_arrow_are_read_from_below_or_right(end, turn_deg):
    text = arrow((0, 0), end, "up")[-1]
    assert text.turn_deg == pytest.approx(turn_deg)


def test_an_arrow_ends_in_its_tip():
    line, head, tail, _ = arrow((0, 0), (30, 0), "grain", both_ends=True)
    assert line.end == head.points[0] == (30, 0)
    assert tail.points[0] == (0, 0)
    assert max(x for x, _ in tail.points) == pytest.approx(3.5)


def test_waste_lies_on_the_side_asked_for():
    way = [(0, 0), (60, 0), (60, 60)]
    for left in (True, False):
        strokes = waste_strokes(way, left=left)
        assert len(strokes) == 20
        for stroke in strokes:
            along_x = stroke.start[1] == 0
            off = stroke.end[1] - stroke.start[1] if along_x else stroke.start[0] - stroke.end[0]
            assert (off > 0) == left
        assert {stroke.pen for stroke in strokes} == {Pen.WASTE}
    assert waste_strokes([(0, 0), (0, 0)]) == ()
