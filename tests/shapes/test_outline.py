"""Outlines against closed forms, against a second reader of plane geometry, and against themselves when moved."""

from math import cos, hypot, pi, radians, sin, sqrt, tau

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.shapes.edges import (
    Arc,
    Segment,
    Similarity,
    arc_from_bulge,
    arc_steps,
    mirror_at,
    scale_by,
    shift_by,
    turn_by,
)
from scantling.shapes.outline import Circle, Loop, Outline, bulged_loop, polygon_loop, rectangle_loop

nm = 1e-6
um = 1e-3

PLATE = Outline(
    rectangle_loop(100, 60, 10),
    (Circle((20, 20), 4), bulged_loop([(50, 20, 0), (70, 20, 1), (70, 28, 0), (50, 28, 1)])),
)
SICKLE = bulged_loop([(0, 0, -0.5), (10, 0, 1.4), (12, 12, 0.3), (-3, 8, 0)])


def test_areas_and_lengths_in_closed_form():
    # a rounded rectangle lacks four corner pieces of r2 - pi r2 / 4; a slot is a rectangle and a full circle
    assert PLATE.boundary.area_mm2 == pytest.approx(6000 - (4 - pi) * 100, abs=nm)
    assert PLATE.boundary.perimeter_mm == pytest.approx(2 * (80 + 40) + tau * 10, abs=nm)
    assert PLATE.windows[0].area_mm2 == pytest.approx(20 * 8 + pi * 16, abs=nm)
    assert PLATE.area_mm2 == pytest.approx(6000 - (4 - pi) * 100 - 16 * pi - 160 - 16 * pi, abs=nm)


@pytest.mark.outside
def test_a_plate_with_a_round_end():
    # Source: trimesh models (public repository mikedh/trimesh), single_arc.dxf: exact area 8 + pi/2, length 10 + pi
    loop = bulged_loop([(0, 0, 0), (2, 0, 0), (2, 4, 1), (0, 4, 0)])
    assert loop.area_mm2 == pytest.approx(8 + pi / 2, abs=nm)
    assert loop.perimeter_mm == pytest.approx(10 + pi, abs=nm)
    assert (loop.extents.width_mm, loop.extents.height_mm) == pytest.approx((2, 5), abs=nm)


@pytest.mark.outside
@pytest.mark.parametrize("shape", [PLATE.boundary, PLATE.windows[0], SICKLE, Circle((3, -2), 7.5)])
def test_areas_centroids_and_boxes_against_a_second_library(shape):
    # Source: shapely 2, polygon of the same shape flattened to a tenth of a micrometre
    other = Outline(shape).polygon(1e-4)
    assert shape.area_mm2 == pytest.approx(other.area, rel=3e-5)  # inscribed chords lose 4 s / 3 r
    assert shape.centroid == pytest.approx((other.centroid.x, other.centroid.y), abs=um)
    assert shape.perimeter_mm == pytest.approx(other.length, rel=1e-5)
    box = shape.extents
    assert (box.x_min_mm, box.y_min_mm, box.x_max_mm, box.y_max_mm) == pytest.approx(other.bounds, abs=um)


@pytest.mark.outside
def test_inside_and_distance_against_a_second_library():
    # Source: shapely 2, contains and distance on the same shapes flattened to a tenth of a micrometre
    from shapely.geometry import Point

    for outline in (PLATE, Outline(SICKLE), PLATE.turned(radians(33)), Outline(SICKLE).mirrored()):
        other, box = outline.polygon(1e-4), outline.extents
        for i in range(31):
            for j in range(31):
                point = (box.x_min_mm - 1 + i * (box.width_mm + 2) / 30, box.y_min_mm + j * box.height_mm / 30)
                edge_mm = outline.edge_distance_mm(point)
                assert edge_mm == pytest.approx(other.boundary.distance(Point(point)), abs=2e-4)
                if edge_mm > um:
                    assert outline.holds(point) == other.contains(Point(point)), point


def test_points_on_a_chord_are_not_miscounted():
    disc = bulged_loop([(-5, 0, 1), (5, 0, 1)])
    lens = bulged_loop([(0, -5, 1), (0, 5, 1)])
    for shape in (disc, lens, bulged_loop([(5, 0, 1), (-5, 0, 1)]), bulged_loop([(0, 5, -1), (0, -5, -1)])):
        for point in ((0, 0), (1, 0), (-1, 0), (0, 1), (0, -1)):
            assert Outline(shape).holds(point), (shape, point)
        assert not Outline(shape).holds((6, 0))
        assert not Outline(shape).holds((-6, 0))


def test_edges_belong_to_the_material_and_holes_do_not():
    assert PLATE.holds((0, 30))
    assert PLATE.holds((24, 20))
    assert not PLATE.holds((20, 20))
    assert not PLATE.holds((60, 24))
    assert PLATE.edge_distance_mm((20, 20)) == pytest.approx(4)
    assert PLATE.boundary.distance_mm((20, 20)) == pytest.approx(20)


@given(st.floats(0.05, 500), st.floats(0.001, tau), st.floats(0.001, 0.5))
def test_chords_keep_within_the_tolerance(radius_mm, sweep_rad, flatten_mm):
    steps = arc_steps(radius_mm, sweep_rad, flatten_mm)
    sagitta_mm = radius_mm * (1 - cos(sweep_rad / steps / 2))
    assert sagitta_mm <= flatten_mm * (1 + 1e-6)


@given(st.floats(0.05, 4), st.booleans(), st.floats(-50, 50), st.floats(-50, 50))
def test_a_bulge_ends_where_it_should(bulge, clockwise, x_mm, y_mm):
    bulge = -bulge if clockwise else bulge
    arc = arc_from_bulge((1, 2), (x_mm, y_mm), bulge)
    chord_mm = hypot(x_mm - 1, y_mm - 2)
    assert arc.start == pytest.approx((1, 2), abs=um * max(1, chord_mm))
    assert arc.end == pytest.approx((x_mm, y_mm), abs=um * max(1, chord_mm))
    if isinstance(arc, Arc):
        # the bulge is the height of the arc over half its chord
        height_mm = arc.radius_mm * (1 - cos(arc.sweep_rad / 2))
        assert height_mm == pytest.approx(abs(bulge) * chord_mm / 2, rel=1e-6, abs=1e-9)


moves = st.builds(
    lambda ratio, turn, x, y, flip: (
        (mirror_at(3) if flip else shift_by(0, 0)).then(turn_by(turn)).then(scale_by(ratio)).then(shift_by(x, y))
    ),
    st.floats(0.1, 5),
    st.floats(-7, 7),
    st.floats(-200, 200),
    st.floats(-200, 200),
    st.booleans(),
)


@given(moves)
def test_a_move_keeps_what_a_move_must_keep(move: Similarity):
    for shape in (PLATE, Outline(SICKLE.sorted())):
        moved = shape.moved(move)
        assert moved.area_mm2 == pytest.approx(shape.area_mm2 * move.scale_ratio**2, rel=1e-9)
        assert moved.perimeter_mm == pytest.approx(shape.perimeter_mm * move.scale_ratio, rel=1e-9)
        assert moved.boundary.centroid == pytest.approx(move(shape.boundary.centroid), abs=1e-6)
        assert moved.boundary.signed_area_mm2 > 0
        for point in ((20, 20), (3, 3), (-40, 2)):
            assert moved.holds(move(point)) == shape.holds(point)


def test_moves_follow_one_another():
    one, two = mirror_at(4).then(turn_by(0.3)), mirror_at(-2).then(shift_by(5, 6))
    assert one.then(two)((7, 8)) == pytest.approx(two(one((7, 8))))
    assert turn_by(pi / 2, (1, 1))((2, 1)) == pytest.approx((1, 2))


def test_the_other_hand_fills_the_same_box():
    other = Outline(SICKLE.sorted(), (Circle((2, 5), 1),)).mirrored()
    assert other.extents.x_min_mm == pytest.approx(SICKLE.extents.x_min_mm)
    assert other.mirrored().circles[0].centre == pytest.approx((2, 5))
    assert other.circles[0].centre[0] != pytest.approx(2)


def test_arcs_reach_beyond_their_ends():
    arc = Arc((0, 0), 5, radians(45), radians(90))
    assert arc.extents.y_max_mm == pytest.approx(5)
    assert arc.extents.y_min_mm == pytest.approx(5 / sqrt(2))
    clockwise = arc.reversed()
    assert clockwise.start == pytest.approx(arc.end)
    assert clockwise.extents.y_max_mm == pytest.approx(5)
    assert clockwise.distance_mm((0, 9)) == pytest.approx(4)
    assert clockwise.distance_mm((9, 0)) == pytest.approx(hypot(9 - 5 * cos(pi / 4), 5 * sin(pi / 4)))


def test_an_open_chain_is_not_a_loop():
    with pytest.raises(ValueError, match="open at"):
        Loop((Segment((0, 0), (1, 0)), Segment((1, 0), (1, 1))))
    with pytest.raises(ValueError, match="needs edges"):
        Loop(())


def test_sorted_turns_a_clockwise_loop():
    clockwise = polygon_loop([(0, 0), (0, 1), (1, 1), (1, 0), (0, 0)])
    assert clockwise.signed_area_mm2 == pytest.approx(-1)
    assert clockwise.sorted().signed_area_mm2 == pytest.approx(1)
    assert clockwise.sorted().sorted() == clockwise.sorted()


def test_far_off_drawings_lose_no_digits():
    far = Outline(rectangle_loop(10, 10, 2)).shifted(1e6, -1e6)
    assert far.area_mm2 == pytest.approx(100 - (4 - pi) * 4, abs=1e-6)
    assert far.centroid == pytest.approx((1e6 + 5, -1e6 + 5), abs=1e-6)
