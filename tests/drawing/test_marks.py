"""Marks: where they point, on which side the waste lies, how words are read."""

from math import hypot

import pytest

from scantling.drawing.marks import (
    arrow,
    bar_words,
    check_bar,
    datum_mark,
    longest_bar_mm,
    registration_cross,
    tile_map,
    waste_strokes,
)
from scantling.drawing.primitives import Arc, Line, Pen, Polygon, Text, Window


def test_a_cross_meets_at_its_point():
    level, upright, ring = registration_cross((30, 40), 5)
    assert (level.start, level.end) == ((25, 40), (35, 40))
    assert (upright.start, upright.end) == ((30, 35), (30, 45))
    assert (ring.centre, ring.radius_mm) == ((30, 40), 2)


@pytest.mark.parametrize("along_y", [False, True])
def test_a_bar_runs_from_tick_to_tick(along_y):
    items = check_bar((20, 30), 240, along_y)
    lines = [item for item in items if isinstance(item, Line)]
    bar, ticks = lines[0], lines[1:]
    assert hypot(bar.end[0] - bar.start[0], bar.end[1] - bar.start[1]) == 240
    assert len(ticks) == 25
    assert {tick.start for tick in (ticks[0], ticks[-1])} == {bar.start, bar.end}
    figures = [item.text for item in items if isinstance(item, Text)]
    assert figures == ["50", "100", "150", "200", "240"]
    off = [tick.end[0] - tick.start[0] if along_y else tick.end[1] - tick.start[1] for tick in ticks]
    assert max(off) < 0


def test_longest_bars():
    assert longest_bar_mm(199.9) == 190
    assert longest_bar_mm(200) == 200
    assert bar_words("x", 200, 0.0025) == "x: 200 mm – I read ________ mm. Stop if it is under 199.5 or over 200.5."


def test_the_map_keeps_its_room_and_proportions():
    tiles = [("A1", Window(0, 100, 100, 200)), ("A2", Window(0, 0, 100, 110)), ("B2", Window(90, 0, 190, 110))]
    polygons = [item for item in tile_map(tiles, "B2", (10, 20), 24, 11) if isinstance(item, Polygon)]
    points = [point for polygon in polygons for point in polygon.points]
    assert min(x for x, _ in points) >= 10
    assert max(x for x, _ in points) == pytest.approx(34)
    assert (min(y for _, y in points), max(y for _, y in points)) == pytest.approx((20, 31))
    assert [polygon.filled for polygon in polygons].count(True) == 1


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


def test_a_datum_stands_on_its_edge():
    triangle, letter = datum_mark((20, 0), "A", -90)
    assert triangle.points[0] == (20, 0)
    assert letter.at == pytest.approx((20, -7.5))
    assert not isinstance(triangle, Arc)
