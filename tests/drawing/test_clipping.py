"""Cutting off at a window, against a second library of plane geometry and by its own invariants."""

from math import cos, hypot, radians, sin

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import LineString, Polygon, box

from scantling.drawing.clip import clip_arc, clip_area, clip_line, common
from scantling.drawing.primitives import Arc, Window

WINDOW = Window(10, 20, 60, 50)
SHAPELY = box(10, 20, 60, 50)
coordinate = st.floats(-20, 90)
point = st.tuples(coordinate, coordinate)


def arc_line(arc, steps=720):
    turns = [radians(arc.start_deg + arc.sweep_deg * k / steps) for k in range(steps + 1)]
    x, y = arc.centre
    return LineString([(x + arc.radius_mm * cos(t), y + arc.radius_mm * sin(t)) for t in turns])


@pytest.mark.outside
@given(point, point)
def test_lines_against_a_second_library(a, b):
    # Source: shapely 2, intersection of a line with a box
    kept = clip_line(a, b, WINDOW)
    expected_mm = SHAPELY.intersection(LineString([a, b])).length
    assert (hypot(kept[1][0] - kept[0][0], kept[1][1] - kept[0][1]) if kept else 0) == pytest.approx(
        expected_mm, abs=1e-6
    )


@pytest.mark.outside
@given(point, st.floats(0.5, 60), st.floats(0, 360), st.floats(-360, 360).filter(lambda s: abs(s) > 1))
@settings(deadline=None)
def test_arcs_against_a_second_library(centre, radius_mm, start_deg, sweep_deg):
    # Source: shapely 2, intersection of the same arc as 720 chords with a box
    arc = Arc(centre, radius_mm, start_deg=start_deg, sweep_deg=sweep_deg)
    kept_mm = sum(radians(abs(part.sweep_deg)) * radius_mm for part in clip_arc(arc, WINDOW))
    expected_mm = SHAPELY.intersection(arc_line(arc)).length
    assert kept_mm == pytest.approx(expected_mm, abs=0.02 * radius_mm + 0.01)
    for part in clip_arc(arc, WINDOW):
        assert SHAPELY.buffer(1e-3 * radius_mm + 1e-6).contains(arc_line(part))
        assert part.sweep_deg * sweep_deg > 0


@pytest.mark.outside
@given(st.lists(point, min_size=3, max_size=6, unique=True))
def test_areas_against_a_second_library(points):
    # Source: shapely 2, intersection of a convex polygon with a box
    hull = Polygon(points).convex_hull if len(points) > 2 else None
    if hull is None or hull.geom_type != "Polygon":
        return
    kept = clip_area(tuple(hull.exterior.coords[:-1]), WINDOW)
    area = Polygon(kept).area if len(kept) > 2 else 0
    assert area == pytest.approx(hull.intersection(SHAPELY).area, abs=1e-6)


def test_a_circle_inside_stays_one_circle_and_one_outside_goes():
    inside = Arc((30, 35), 8)
    assert clip_arc(inside, WINDOW) == [inside]
    assert clip_arc(Arc((200, 35), 8), WINDOW) == []
    assert clip_arc(Arc((35, 35), 300), WINDOW) == []


def test_a_circle_over_one_edge_is_one_arc():
    (part,) = clip_arc(Arc((60, 35), 10), WINDOW)
    assert part.sweep_deg == pytest.approx(180)
    assert part.start_deg == pytest.approx(90)
    (other,) = clip_arc(Arc((10, 35), 10), WINDOW)  # the start of the circle, to the right, lies inside
    assert other.sweep_deg == pytest.approx(180)


def test_a_circle_over_all_edges_is_four_arcs():
    parts = clip_arc(Arc((35, 35), hypot(25, 15) - 1), WINDOW)
    assert len(parts) == 4
    assert sum(part.sweep_deg for part in parts) < 360


def test_windows_share_what_both_hold():
    assert common(WINDOW, Window(0, 0, 30, 30)) == Window(10, 20, 30, 30)
    assert common(WINDOW, Window(60, 20, 80, 50)) is None
