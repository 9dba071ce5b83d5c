"""Features read off meshes: what was modelled is told, in any turn, and round things that are no bores are not."""

from math import cos, pi, sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from meshkit import counterbore, cube, plate, pocket, ring, stl, turned

from scantling.shapes import mesh_features
from scantling.shapes.mesh_chains import Axis
from scantling.shapes.mesh_features import recognise_mesh
from scantling.shapes.mesh_files import read_mesh

BOX = [(-30, -25), (40, -25), (40, 25), (-30, 25)]
FACE = [ring((5 + x, y), 1.6, 32) for x in (-15.5, 15.5) for y in (-15.5, 15.5)] + [ring((5, 0), 11, 64)]
SINGLE = 2e-5  # STL keeps seven digits


def features(triangles, unit="mm"):
    (mesh,) = read_mesh(stl(triangles), "part.stl", unit).meshes
    return recognise_mesh(mesh)


def points_of(area):
    """Corners of a shapely polygon, anticlockwise."""
    import shapely

    return [(float(x), float(y)) for x, y in shapely.geometry.polygon.orient(area).exterior.coords[:-1]]


def test_a_motor_plate():
    found = features(plate(BOX, FACE, 0, 6))
    assert [round(bore.diameter_mm, 3) for bore in found.bores] == [22, 3.2, 3.2, 3.2, 3.2]
    large, *small = found.bores
    assert large.centre == pytest.approx((5, 0, 3), abs=SINGLE)
    assert (large.axis, large.facets, large.ends) == ((0, 0, 1), 64, ("open", "open"))
    assert large.depth_mm == pytest.approx(6)
    assert small[0].across_facets_mm == pytest.approx(3.2 * cos(pi / 32), abs=SINGLE)
    assert max(bore.residual_mm for bore in found.bores) < SINGLE
    ((axis, face),) = found.patterns
    assert (axis, face.kind, face.count, face.bore_mm) == ((0, 0, 1), "square", 4, pytest.approx(22, abs=1e-3))
    assert face.pitch_mm == pytest.approx(31, abs=SINGLE)
    assert face.centre == pytest.approx((5, 0), abs=SINGLE)
    assert (found.bosses, found.partial, found.hexagons) == ((), (), ())
    thick = found.thicknesses[0]
    assert (thick.thickness_mm, thick.axis) == (pytest.approx(6), (0, 0, 1))
    assert sorted(round(t.thickness_mm) for t in found.thicknesses) == [6, 50, 70]


@given(st.tuples(*[st.floats(-1, 1)] * 3).filter(lambda a: sum(x * x for x in a) > 0.1), st.floats(0, 6.28))
@settings(max_examples=25, deadline=None)
def test_a_motor_plate_in_any_turn(axis, angle):
    found = features(turned(plate(BOX, FACE, 0, 6), axis, angle))
    assert [round(bore.diameter_mm, 2) for bore in found.bores] == [22, 3.2, 3.2, 3.2, 3.2]
    (face,) = [pattern for _, pattern in found.patterns]
    assert (face.kind, face.count) == ("square", 4)
    assert face.pitch_mm == pytest.approx(31, abs=1e-3)
    assert min(abs(t.thickness_mm - 6) for t in found.thicknesses) < 1e-3
    assert found.partial == ()


@pytest.mark.parametrize("count", [8, 12, 24, 36, 90, 180])
def test_bores_of_any_fineness(count):
    found = features(plate(BOX, [ring((0, 0), 4, count, 0.1)], 0, 9))
    (bore,) = found.bores
    assert bore.diameter_mm == pytest.approx(8, abs=SINGLE)
    assert bore.across_facets_mm == pytest.approx(8 * cos(pi / count), abs=SINGLE)
    assert bore.facets == count
    assert bore.concave


def test_a_blind_hexagon_for_a_nut():
    found = features(pocket(BOX, ring((3, 4), 5.5 / sqrt(3), 6, 0.2), 0, 4, 9))
    (nut,) = found.hexagons
    assert nut.across_flats_mm == pytest.approx(5.5, abs=SINGLE)
    assert nut.centre == pytest.approx((3, 4, 6.5), abs=SINGLE)
    assert (nut.concave, nut.ends) == (True, ("floor", "open"))
    assert nut.depth_mm == pytest.approx(5)
    assert found.bores == ()
    assert {round(t.thickness_mm) for t in found.thicknesses} >= {9, 4}


def test_a_blind_bore_has_a_floor():
    (bore,) = features(pocket(BOX, ring((3, 4), 6, 48), 0, 2, 9)).bores
    assert (bore.ends, bore.depth_mm) == (("floor", "open"), pytest.approx(7))


def test_a_counterbore_has_a_step():
    found = features(counterbore(BOX, ring((0, 0), 1.7, 32), ring((0, 0), 3, 32), 0, 6, 10))
    wide, narrow = found.bores
    assert (wide.diameter_mm, wide.depth_mm, wide.ends) == (pytest.approx(6), pytest.approx(4), ("step", "open"))
    assert (narrow.diameter_mm, narrow.depth_mm, narrow.ends) == (
        pytest.approx(3.4),
        pytest.approx(6),
        ("open", "open"),
    )


def test_roundings_tell_their_sweep():
    import shapely

    outline = shapely.box(-20, -10, 20, 10).buffer(5, quad_segs=8)
    found = features(
        plate(
            [(float(x), float(y)) for x, y in shapely.geometry.polygon.orient(outline).exterior.coords[:-1]], [], 0, 4
        )
    )
    assert [round(part.diameter_mm, 3) for part in found.partial] == [10] * 4
    for part in found.partial:
        assert part.sweep_deg == pytest.approx(90, abs=0.01)
        assert (part.concave, part.facets) == (False, 8)
    assert {(round(p.centre[0]), round(p.centre[1])) for p in found.partial} == {
        (x, y) for x in (-20, 20) for y in (-10, 10)
    }


def test_a_slot_has_two_half_rounds():
    import shapely

    slot = shapely.LineString([(-6, 0), (6, 0)]).buffer(2, quad_segs=12)
    found = features(plate(BOX, [points_of(slot)], 0, 4))
    assert [(round(p.diameter_mm, 3), round(p.sweep_deg), p.concave) for p in found.partial] == [(4, 180, True)] * 2
    assert found.bores == ()


@pytest.mark.outside
def test_solids_of_another_library():
    # Source: trimesh 5 creation functions: a ring with bore 10 and outside 20; balls, a torus, a capsule have no bore
    import trimesh

    (mesh,) = read_mesh(trimesh.creation.annulus(5, 10, 7, sections=64).export(file_type="stl"), "a.stl").meshes
    found = recognise_mesh(mesh)
    assert [round(bore.diameter_mm, 3) for bore in found.bores] == [10]
    assert [round(boss.diameter_mm, 3) for boss in found.bosses] == [20]
    assert [round(t.thickness_mm, 3) for t in found.thicknesses] == [7]
    for solid in (
        trimesh.creation.icosphere(3, 10),
        trimesh.creation.uv_sphere(10, count=(24, 48)),
        trimesh.creation.torus(10, 3, 64, 32),
    ):
        (mesh,) = read_mesh(solid.export(file_type="stl"), "b.stl").meshes
        found = recognise_mesh(mesh)
        assert (found.bores, found.hexagons) == ((), ())
        assert all(boss.depth_mm > 0.4 * boss.diameter_mm for boss in found.bosses)
    (mesh,) = read_mesh(trimesh.creation.capsule(30, 4, count=(24, 48)).export(file_type="stl"), "c.stl").meshes
    bosses = recognise_mesh(mesh).bosses
    assert [round(boss.diameter_mm, 2) for boss in bosses] == [8]
    assert bosses[0].depth_mm == pytest.approx(30, abs=0.01)


def test_a_bore_that_a_wall_cuts_into_is_one_bore():
    # four holes through a flange of 6; a wall of 8 stands on one edge and takes a part of two of them up to 10
    import manifold3d as m3

    solid = m3.Manifold.cube((50, 50, 6)) + m3.Manifold.cube((8, 50, 30))
    for x in (9.5, 40.5):
        for y in (9.5, 40.5):
            solid -= m3.Manifold.cylinder(12, 1.8, circular_segments=24).translate((x, y, -2))
    mesh = solid.to_mesh()
    found = features([[tuple(map(float, mesh.vert_properties[k][:3])) for k in row] for row in mesh.tri_verts])
    assert [(round(b.diameter_mm, 2), b.is_whole) for b in found.bores] == [(3.6, True)] * 4
    assert sorted(round(b.depth_mm) for b in found.bores) == [6, 6, 10, 10]
    ((_, pattern),) = found.patterns
    assert (pattern.kind, round(pattern.pitch_mm, 3)) == ("square", 31)


def test_prisms_are_not_round():
    for count in (4, 5, 7):
        assert features(plate(BOX, [ring((0, 0), 4, count)], 0, 9)).bores == ()
    assert features(cube(20)).thicknesses[0].thickness_mm == pytest.approx(20)


def test_inches_come_out_in_mm():
    (bore,) = features(plate([(0, 0), (2, 0), (2, 2), (0, 2)], [ring((1, 1), 0.25, 48)], 0, 0.5), "in").bores
    assert (bore.diameter_mm, bore.depth_mm) == (pytest.approx(12.7, abs=1e-4), pytest.approx(12.7, abs=1e-4))


def test_too_large_a_mesh_says_so(monkeypatch):
    monkeypatch.setattr(mesh_features, "_MOST_TRIANGLES", 10)
    assert not features(cube(10)).seen


@pytest.mark.parametrize("direction", [(0, 0, 1), (0, 0, -1), (1, 0, 0), (0, -1, 0), (0.6, 0.8, 0), (0.6, 0, -0.8)])
def test_an_axis_lifts_what_it_flattened(direction):
    axis = Axis.along(direction)
    point = (1.5, -2.5, 3.5)
    height = sum(a * b for a, b in zip(point, axis.direction, strict=True))
    assert axis.lifted(axis.flat(point), height) == pytest.approx(point)
    assert Axis.along((0, 0, 1)).flat(point) == (1.5, -2.5)
