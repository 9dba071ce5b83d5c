"""Features of flat parts: what was drawn is what is told, turned and mirrored too, and near misses are not."""

from math import cos, pi, radians, sin, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.shapes.circle_fit import fit_circle, regular_polygon, true_circle
from scantling.shapes.edges import Arc
from scantling.shapes.hole_patterns import Hole, find_patterns
from scantling.shapes.outline import Circle, Loop, Outline, bulged_loop, polygon_loop, rectangle_loop
from scantling.shapes.recognise import merged, recognise_outline


def around(centre, radius_mm, count, phase_deg=0.0):
    turns = [radians(phase_deg) + 2 * pi * k / count for k in range(count)]
    return [(centre[0] + radius_mm * cos(t), centre[1] + radius_mm * sin(t)) for t in turns]


def holes(points, diameter_mm):
    return [Hole(point, diameter_mm) for point in points]


def square(centre, pitch_mm, turn_deg=0.0):
    return around(centre, pitch_mm / sqrt(2), 4, turn_deg + 45)


def slot(width_mm, travel_mm):
    r, t = width_mm / 2, travel_mm / 2
    return bulged_loop([(-t, -r, 0), (t, -r, 1), (t, r, 0), (-t, r, 1)])


@given(st.floats(10, 80), st.floats(-180, 180), st.tuples(st.floats(-200, 200), st.floats(-200, 200)))
def test_a_motor_face_in_any_turn(pitch_mm, turn_deg, centre):
    found = find_patterns([*holes(square(centre, pitch_mm, turn_deg), 3.2), Hole(centre, 22)])
    assert [pattern.kind for pattern in found] == ["square"]
    (face,) = found
    assert face.pitch_mm == pytest.approx(pitch_mm, abs=1e-6)
    assert face.centre == pytest.approx(centre, abs=1e-6)
    assert (face.bore_mm, face.diameter_mm, face.count) == (22, pytest.approx(3.2), 4)
    assert face.residual_mm < 1e-6
    off_deg = (face.turn_deg - turn_deg) % 90
    assert min(off_deg, 90 - off_deg) < 1e-6
    assert 0 <= face.turn_deg < 90


def test_two_motor_faces_and_odd_holes():
    points = [*square((0, 0), 31), *square((100, 10), 31, 45), (50, 50), (60, 80)]
    found = find_patterns([*holes(points, 3.2), Hole((0, 0), 22), Hole((100, 10), 22)])
    assert [pattern.kind for pattern in found] == ["pair", "square", "square", "pair"]
    assert {round(pattern.centre[0]) for pattern in found if pattern.kind == "square"} == {0, 100}
    assert found[0].pitch_mm == pytest.approx(sqrt(100**2 + 10**2))


def test_a_rectangle_tells_both_pitches_and_its_turn():
    corners = [(0, 0), (40, 0), (40, 25), (0, 25)]
    (found,) = find_patterns(holes(corners, 4))
    assert (found.kind, found.pitch_mm, found.across_mm, found.turn_deg) == ("rectangle", 40, 25, 0)
    upright = [(y, x) for x, y in corners]
    assert find_patterns(holes(upright, 4))[0].turn_deg == pytest.approx(90)


@pytest.mark.parametrize("count", [3, 5, 6, 8, 12])
def test_circles_of_bolts(count):
    found = find_patterns([*holes(around((10, 20), 25, count, 17), 5), Hole((10, 20), 30)])
    assert [(p.kind, p.count) for p in found] == [("circle", count)]
    assert found[0].pitch_mm == pytest.approx(50)
    assert found[0].turn_deg == pytest.approx(17)
    assert found[0].bore_mm == 30


def test_a_circle_with_a_hole_missing_is_none():
    found = find_patterns(holes(around((0, 0), 25, 7)[:-1], 5))
    assert "circle" not in {p.kind for p in found}


def test_rows_and_grids():
    row = [(3 + 12 * k, 4 + 5 * k) for k in range(5)]
    (found,) = find_patterns(holes(row, 3))
    assert (found.kind, found.count, found.pitch_mm) == ("row", 5, pytest.approx(13))
    grid = [(20 * i, 15 * j) for i in range(4) for j in range(3)]
    (found,) = find_patterns(holes(grid, 3))
    assert (found.kind, found.count) == ("grid", 12)
    assert sorted([found.pitch_mm, found.across_mm]) == pytest.approx([15, 20])


def test_residuals_are_told_and_near_misses_are_not_patterns():
    points = square((0, 0), 31)
    moved = [(points[0][0] + 0.03, points[0][1]), *points[1:]]
    (found,) = find_patterns(holes(moved, 3))
    assert found.kind == "square"
    assert 0.01 < found.residual_mm < 0.03
    assert [p.kind for p in find_patterns(holes([(points[0][0] + 0.4, points[0][1]), *points[1:]], 3))] == []


def test_sizes_are_kept_apart():
    points = square((0, 0), 31)
    assert (
        find_patterns([Hole(points[0], 3.2), Hole(points[1], 3.2), Hole(points[2], 3.4), Hole(points[3], 3.4)])[0].kind
        == "pair"
    )


def test_many_holes_take_no_age():
    points = [(17.3 * (k % 20) + (k * k % 7), 13.1 * (k // 20) + (k * 3 % 5)) for k in range(300)]
    assert isinstance(find_patterns(holes(points, 3)), list)


@given(st.floats(3, 12), st.floats(1, 60), st.floats(0, 179))
def test_slots_in_any_turn(width_mm, travel_mm, turn_deg):
    window = Outline(slot(width_mm, travel_mm)).turned(radians(turn_deg)).shifted(50, 60).boundary
    found = recognise_outline(Outline(rectangle_loop(300, 300, at=(-100, -100)), (window,)))
    (one,) = found.slots
    assert (one.width_mm, one.length_mm) == (pytest.approx(width_mm), pytest.approx(width_mm + travel_mm))
    assert one.travel_mm == pytest.approx(travel_mm)
    assert one.centre == pytest.approx((50, 60), abs=1e-6)
    off_deg = (one.turn_deg - turn_deg) % 180
    assert min(off_deg, 180 - off_deg) < 1e-5
    assert (found.other_windows, found.sharp_inside, found.roundings) == (0, (), ())


def test_windows_corners_and_roundings():
    boundary = bulged_loop(
        [(0, 0, 0), (100, 0, 0), (100, 50, 0), (60, 50, 0), (60, 80, 0), (10, 80, 0.41421356237), (0, 70, 0)]
    )
    windows = (rectangle_loop(20, 10, 0, (10, 10)), rectangle_loop(15, 12, 3, (50, 20)))
    found = recognise_outline(Outline(boundary, windows))
    assert found.sharp_inside[0] == (60, 50)
    assert len(found.sharp_inside) == 5
    assert [(r.radius_mm, r.inside, r.count) for r in found.roundings] == [(3, True, 4), (10, False, 1)]
    sizes = [(r.width_mm, r.height_mm, r.turn_deg, r.radius_mm) for r in found.rectangles]
    assert sizes == [pytest.approx((20, 10, 0, 0)), pytest.approx((15, 12, 0, 3))]
    assert (found.width_mm, found.height_mm, found.other_windows) == (100, 80, 0)


def test_a_turned_rectangle():
    window = Outline(rectangle_loop(20, 10, 2)).turned(radians(30)).shifted(50, 50).boundary
    (found,) = recognise_outline(Outline(rectangle_loop(100, 100), (window,))).rectangles
    assert (found.width_mm, found.height_mm, found.turn_deg) == pytest.approx((20, 10, 30))


def test_hexagons_and_coarse_circles_are_told_as_polygons():
    windows = (polygon_loop(around((20, 20), 5.5 / sqrt(3), 6)), polygon_loop(around((60, 20), 4, 16)))
    found = recognise_outline(Outline(rectangle_loop(100, 50), windows)).polygons
    assert [(p.corners, p.across_flats_mm) for p in found] == [
        (6, pytest.approx(5.5)),
        (16, pytest.approx(8 * cos(pi / 16))),
    ]
    assert found[1].across_corners_mm == pytest.approx(8)
    assert (
        recognise_outline(
            Outline(rectangle_loop(100, 50), (polygon_loop([(20, 20), (30, 20), (27, 30), (25, 33), (20, 31)]),))
        ).other_windows
        == 1
    )


def test_fine_chords_are_a_circle_and_a_hexagon_is_not():
    fine = polygon_loop(Circle((5, 6), 4).flattened(0.01))
    assert true_circle(fine) == Circle(pytest.approx((5, 6)), pytest.approx(4))
    assert true_circle(polygon_loop(around((0, 0), 4, 6))) == polygon_loop(around((0, 0), 4, 6))
    assert isinstance(true_circle(polygon_loop(around((0, 0), 400, 12))), Loop)
    squashed = [(x, 0.95 * y) for x, y in fine.flattened()]
    assert isinstance(true_circle(polygon_loop(squashed)), Loop)
    assert regular_polygon(polygon_loop(squashed)) is None


@given(st.floats(-500, 500), st.floats(-500, 500), st.floats(0.5, 300))
def test_the_fit_finds_the_circle(x_mm, y_mm, radius_mm):
    fit = fit_circle(around((x_mm, y_mm), radius_mm, 9, 10))
    assert fit.centre == pytest.approx((x_mm, y_mm), abs=1e-6)
    assert fit.radius_mm == pytest.approx(radius_mm)
    assert fit_circle([(0, 0), (1, 1), (2, 2), (5, 5)]) is None


def test_split_edges_are_merged():
    loop = bulged_loop([(0, 0, 0), (4, 0, 0), (10, 0, 0.2), (12, 5, 0), (0, 5, 0), (0, 2, 0)])
    assert len(merged(loop).edges) == 4
    half = Loop(
        (
            Arc((0, 0), 5, 0, pi / 3),
            Arc((0, 0), 5, pi / 3, 2 * pi / 3),
            *polygon_loop([(-5, 0), (0, 0), (5, 0)]).edges[:2],
        )
    )
    assert len(merged(half).edges) == 2
    assert merged(half).area_mm2 == pytest.approx(12.5 * pi)
