"""Mesh files measured: closed forms, a second library, and files that cannot be used."""

import io
import zipfile
from math import pi, sin

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from meshkit import CUBE_POINTS, cube, plate, ring, stl, text_stl, three_mf

from scantling.errors import FaultsError
from scantling.shapes import mesh_files
from scantling.shapes.mesh import make_mesh, measure, require_closed
from scantling.shapes.mesh_files import read_mesh

CUBE_TRIANGLES = [(0, 2, 3), (0, 3, 1), (4, 5, 7), (4, 7, 6), (0, 1, 5), (0, 5, 4)]
CUBE_TRIANGLES += [(2, 6, 7), (2, 7, 3), (0, 4, 6), (0, 6, 2), (1, 3, 7), (1, 7, 5)]


def facts(data, file="part.stl", unit=None):
    (mesh,) = read_mesh(data, file, unit).meshes
    return measure(mesh)


def fault(data, file="part.stl", unit=None):
    with pytest.raises(FaultsError) as caught:
        read_mesh(data, file, unit)
    (one,) = caught.value.faults
    assert one.where.file == file
    return one


def seven_eighths(size):
    """A cube of 2 x 2 x 2 blocks without one: the walls between blocks cancel, so they are left out."""
    half = size / 2
    blocks = [(half * x, half * y, half * z) for x in (0, 1) for y in (0, 1) for z in (0, 1) if (x, y, z) != (1, 1, 1)]
    walls = {}
    for at in blocks:
        for triangle in cube(half, at):
            key = tuple(sorted(map(tuple, triangle)))
            walls[key] = None if key in walls else triangle
    # the two triangles of a wall between blocks may be split the other way: then they stay and cancel in the volume
    return [triangle for triangle in walls.values() if triangle]


@pytest.mark.parametrize("write", [stl, text_stl])
def test_a_cube(write):
    got = facts(write(cube(10, (5, -3, 2))))
    assert (got.volume_mm3, got.area_mm2, got.triangles, got.bodies) == (pytest.approx(1000), pytest.approx(600), 12, 1)
    assert got.closed
    assert (got.low, got.high, got.size_mm) == ((5, -3, 2), (15, 7, 12), (10, 10, 10))


@pytest.mark.outside
def test_seven_eighths_of_a_cube():
    # Source: trimesh models (public repository mikedh/trimesh), 7_8ths_cube.stl: volume 7/8 of 40 cubed = 56000
    got = facts(stl(seven_eighths(40)))
    assert got.volume_mm3 == pytest.approx(56000, rel=1e-6)
    assert got.size_mm == (40, 40, 40)


@pytest.mark.outside
def test_a_ball_and_a_ring_against_a_second_library():
    # Source: trimesh 5 volume and area of the same triangles; the exact ball has 4/3 pi r3
    import trimesh

    for shape, exact in (
        (trimesh.creation.icosphere(subdivisions=4, radius=10), 4 / 3 * pi * 1000),
        (trimesh.creation.torus(10, 3, 96, 48), 2 * pi**2 * 10 * 9),
        (trimesh.creation.annulus(5, 10, 7, sections=128), pi * (100 - 25) * 7),
    ):
        got = facts(shape.export(file_type="stl"))
        assert got.volume_mm3 == pytest.approx(shape.volume, rel=1e-6)
        assert got.area_mm2 == pytest.approx(shape.area, rel=1e-6)
        assert got.volume_mm3 == pytest.approx(exact, rel=0.01)
        assert (got.closed, got.bodies) == (shape.is_watertight, shape.body_count)


@pytest.mark.outside
def test_other_writers_files_are_read():
    # Source: trimesh 5 writing text STL, OBJ and 3MF
    import trimesh

    shape = trimesh.creation.capsule(height=20, radius=4)
    for kind in ("stl_ascii", "obj", "3mf"):
        data = shape.export(file_type=kind)
        got = facts(data if isinstance(data, bytes) else data.encode(), f"part.{kind.partition('_')[0]}")
        assert got.volume_mm3 == pytest.approx(shape.volume, rel=1e-4), kind


def test_a_plate_with_holes_in_closed_form():
    holes = [ring((20, 20), 4, 64), ring((60, 20), 2, 48)]
    got = facts(stl(plate([(0, 0), (80, 0), (80, 40), (0, 40)], holes, 0, 6)))
    area = 3200 - 64 / 2 * 16 * sin(2 * pi / 64) - 48 / 2 * 4 * sin(2 * pi / 48)
    assert got.volume_mm3 == pytest.approx(6 * area, rel=1e-6)
    assert got.closed


def test_units_are_taken_as_stated():
    file = read_mesh(stl(cube()), "part.stl")
    assert [note.code for note in file.notes] == ["SHAPE-64"]
    assert facts(stl(cube()), unit="in").volume_mm3 == pytest.approx(25.4**3)
    assert fault(stl(cube()), unit="furlong").code == "SHAPE-05"


def test_bodies_are_counted():
    got = facts(stl(cube(1) + cube(2, (5, 0, 0)) + cube(1, (0, 9, 0))))
    assert (got.bodies, got.closed) == (3, True)
    assert got.volume_mm3 == pytest.approx(10)
    assert [note.code for note in got.notes] == ["SHAPE-63"]


def test_a_mesh_with_a_hole_has_no_volume():
    got = facts(stl(cube(10)[1:]))
    assert (got.closed, got.volume_mm3, got.open_edges) == (False, None, 3)
    with pytest.raises(FaultsError, match=r"SHAPE-35") as caught:
        require_closed(got, "part.stl")
    assert "is not closed: 3 open or turned edges, one at (" in caught.value.faults[0].what
    require_closed(facts(stl(cube(10))), "part.stl")


def test_a_turned_triangle_is_found():
    triangles = cube(10)
    triangles[4] = triangles[4][::-1]
    assert not facts(stl(triangles)).closed


def test_an_inside_out_mesh_is_turned_and_told():
    got = facts(stl([t[::-1] for t in cube(10)]))
    assert got.volume_mm3 == pytest.approx(1000)
    assert [note.code for note in got.notes] == ["SHAPE-62"]


def test_corners_that_only_rounding_keeps_apart_are_joined():
    triangles = cube(100)
    triangles[3] = [(x * (1 + 3e-7), y, z + 1e-5) for x, y, z in triangles[3]]
    assert facts(stl(triangles)).closed
    triangles[3] = [(x, y, z + 0.01) for x, y, z in triangles[3]]
    assert not facts(stl(triangles)).closed


def test_flat_triangles_are_dropped():
    got = facts(stl([*cube(10), [(0, 0, 0), (10, 0, 0), (10, 0, 0)]]))
    assert (got.triangles, got.closed) == (12, True)


def test_obj_with_polygons_and_backward_numbers():
    quads = [
        "f 1 3 4 2",
        "f 5//1 6//1 8//2 7//3",
        "f 1/1/1 2/2/2 6/3/3 5/4/4",
        "f 3 7 8 4",
        "f -8 -4 -2 -6",
        "f 2 4 8 6",
    ]
    text = "# cube\no cube\n" + "\n".join(f"v {x} {y} {z}" for x, y, z in CUBE_POINTS) + "\n" + "\n".join(quads)
    got = facts(text.encode(), "part.obj")
    assert (got.volume_mm3, got.closed, got.triangles) == (pytest.approx(1), True, 12)


def test_3mf_units_objects_and_places():
    objects = [("block", CUBE_POINTS, CUBE_TRIANGLES)]
    items = [(1, "2 0 0 0 2 0 0 0 2 10 0 0"), (1, "")]
    file = read_mesh(three_mf(objects, "inch", items), "part.3mf")
    big, small = (measure(mesh) for mesh in file.meshes)
    assert (file.unit, big.name) == ("in", "block")
    assert big.volume_mm3 == pytest.approx(8 * 25.4**3)
    assert small.volume_mm3 == pytest.approx(25.4**3)
    assert big.low == pytest.approx((254, 0, 0))
    stated = read_mesh(three_mf(objects, "inch"), "part.3mf", "mm")
    assert measure(stated.meshes[0]).volume_mm3 == pytest.approx(1)
    assert [note.code for note in stated.notes] == ["SHAPE-58"]


@pytest.mark.outside
@pytest.mark.parametrize(
    ("word", "mm"),
    [("micron", 0.001), ("millimeter", 1), ("centimeter", 10), ("inch", 25.4), ("foot", 304.8), ("meter", 1000)],
)
def test_3mf_units(word, mm):
    # Source: 3MF Core Specification 1.3, ST_Unit: micron, millimeter, centimeter, inch, foot, meter
    (mesh,) = read_mesh(three_mf([("a", CUBE_POINTS, CUBE_TRIANGLES)], word), "part.3mf").meshes
    assert measure(mesh).size_mm == pytest.approx((mm, mm, mm))


@pytest.mark.parametrize(
    ("data", "file", "code"),
    [
        (b"", "part.stl", "SHAPE-02"),
        (b"hello world", "part.stl", "SHAPE-30"),
        (stl([]), "part.stl", "SHAPE-32"),
        (stl(cube())[:-60], "part.stl", "SHAPE-31"),
        (text_stl(cube())[:-40], "part.stl", "SHAPE-31"),
        (text_stl(cube()).replace(b"vertex 1.0 0.0 0.0", b"vertex 1 nix 0", 1), "part.stl", "SHAPE-30"),
        (text_stl(cube()).replace(b"vertex 1.0 0.0 0.0", b"vertex nan 0 0", 1), "part.stl", "SHAPE-33"),
        (text_stl(cube()).replace(b"vertex 1.0 0.0 0.0", b"wertex 1 0 0", 1), "part.stl", "SHAPE-31"),
        (stl(cube(1e9)), "part.stl", "SHAPE-33"),
        (b"v 0 0 0\nf 1 2 3\n", "part.obj", "SHAPE-30"),
        (b"v 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n", "part.obj", "SHAPE-30"),
        (b"v 0 0 0\n", "part.obj", "SHAPE-32"),
        (b"v 0 0 0\nf 1 1\n", "part.obj", "SHAPE-30"),
        (b"not a zip", "part.3mf", "SHAPE-30"),
        (three_mf([("a", CUBE_POINTS, CUBE_TRIANGLES)])[:-40], "part.3mf", "SHAPE-30"),
        (three_mf([("a", CUBE_POINTS, [])]), "part.3mf", "SHAPE-32"),
        (stl(cube()), "part.step", "SHAPE-34"),
    ],
)
def test_files_that_cannot_be_used(data, file, code):
    assert fault(data, file).code == code


def test_a_line_is_named_where_there_is_one():
    assert fault(b"v 0 0 0\nv 1 0 0\nv 0 x 0\nf 1 2 3\n", "part.obj").where.line == 3


def test_a_zip_that_unpacks_beyond_sense(monkeypatch):
    monkeypatch.setattr(mesh_files, "_MOST_UNPACKED", 5_000_000)
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as folder:
        folder.writestr("3D/3dmodel.model", b"0" * 6_000_000)
    one = fault(stream.getvalue(), "part.3mf")
    assert (one.code, "unpacks to 6 MB" in one.what) == ("SHAPE-30", True)


def test_too_many_triangles():
    import numpy as np

    with pytest.raises(FaultsError, match="SHAPE-36"):
        make_mesh("", np.zeros((3, 3)), np.zeros((3_000_001, 3), dtype=int), "part.stl")


FILES = {
    "part.stl": stl(cube(10)),
    "text.stl": text_stl(cube(10)),
    "part.3mf": three_mf([("a", CUBE_POINTS, CUBE_TRIANGLES)]),
    "part.obj": b"v 0 0 0\nv 1 0 0\nv 0 1 0\nv 0 0 1\nf 1 3 2\nf 1 2 4\nf 2 3 4\nf 1 4 3\n",
}


@given(
    st.sampled_from(sorted(FILES)),
    st.lists(st.tuples(st.integers(0, 5000), st.binary(min_size=1, max_size=4)), max_size=5),
)
@settings(max_examples=150, deadline=None)
def test_damaged_files_are_read_or_refused(file, damages):
    data = bytearray(FILES[file])
    for at, junk in damages:
        at %= len(data)
        data[at : at + len(junk)] = junk
    assert outcome(bytes(data), file)


def outcome(data, file):
    """Facts or coded faults; anything else is raised."""
    try:
        return [measure(mesh) for mesh in read_mesh(data, file).meshes]
    except FaultsError as error:
        return all(one.code.startswith("SHAPE-") for one in error.faults)
