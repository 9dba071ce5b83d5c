"""What is found in a drawing and in a mesh, and that the entries only want names."""

import re
from pathlib import Path

import pytest

from scantling.api.inspecting import inspect_file, inspect_files
from scantling.api.opening import open_design
from scantling.errors import FaultsError

EXAMPLES = Path(__file__).parents[2] / "examples"


def rows(inspected, what):
    return [row[1:] for row in inspected.rows if row[0] == what]


def test_a_drawing_is_told_in_a_makers_words(motor_plate_dxf):
    """All sizes are those that the fixture draws."""
    found = inspect_file(motor_plate_dxf)
    assert (found.file, found.kind, found.size) == ("motor-plate.dxf", "drawing", "80 × 60 mm, drawn in mm")
    assert [size for size, _, _ in rows(found, "round holes")] == ["1 × 22.5 mm", "3 × 4.5 mm", "4 × 3.4 mm"]
    ((square, where, fit),) = rows(found, "square")
    assert square.startswith("4 holes of 3.4 mm, 31 × 31 mm, around a hole of 22.5 mm")
    assert "as the face of a motor of frame 17" in square
    assert (where, fit) == ("around 30, 30", "exact")
    assert rows(found, "row") == [("3 holes of 4.5 mm, pitch 20 mm, turned 90 deg", "around 70, 30", "exact")]
    ((slot, where, _),) = rows(found, "slot")
    assert slot == "4 × 24 mm, lets a bolt move 20 mm"
    assert where == "57, 30, turned 90 deg"


def test_the_entries_of_a_drawing_make_a_design_once_they_are_named(motor_plate_dxf):
    found = inspect_file(motor_plate_dxf)
    names = {"MATERIAL": "birch plywood", "THICKNESS": "6 mm"}
    text = re.sub(r"\b[A-Z]{4,}\b", lambda word: names.get(word[0], word[0].lower()), found.entries)
    folder = motor_plate_dxf.parent
    (folder / "design.yaml").write_text("format: 1\nmachine: {name: Named}\n" + text)
    sheet = open_design(folder).case.project.design.sheets["panel"]
    wanted = {(3.4, 4), (4.5, 3), (22.5, 1), (4.0, 1)}
    assert {(hole.diameter_mm.value, 1 + len(hole.repeat)) for hole in sheet.holes} == wanted
    (slot,) = [hole for hole in sheet.holes if hole.slot_mm]
    assert (slot.slot_mm, slot.at) == ("20 mm", ("57 mm", "30 mm"))


def test_the_unnamed_entries_say_only_what_is_missing(motor_plate_dxf):
    """Pasted as they are, only the thickness is refused: a name in capitals is a name."""
    (motor_plate_dxf.parent / "design.yaml").write_text(
        "format: 1\nmachine: {name: Unnamed}\n" + inspect_file(motor_plate_dxf).entries
    )
    with pytest.raises(FaultsError) as caught:
        open_design(motor_plate_dxf.parent)
    assert [fault for fault in caught.value.faults if "THICKNESS" in str(fault)]


def test_a_mesh_is_told_with_its_bores_and_walls():
    """The carriage has two bores of 15 mm 60 apart and two screw holes of 3.4 mm (make_files.py beside it)."""
    found = inspect_file(EXAMPLES / "plotter" / "meshes" / "carriage.stl")
    assert found.kind == "mesh"
    assert [size.split(",")[0] for size, _, _ in rows(found, "bore")] == ["15 mm", "15 mm", "3.4 mm", "3.4 mm"]
    assert ("9 mm", "across z", "") in rows(found, "thickness")
    assert any("60 mm apart" in size for size, _, _ in rows(found, "pair"))
    assert any("taken as mm" in note for note in found.notes)


def test_the_entries_of_a_mesh_make_a_design_once_they_are_named(tmp_path):
    mesh = tmp_path / "block.stl"
    mesh.write_bytes((EXAMPLES / "plotter" / "meshes" / "carriage.stl").read_bytes())
    found = inspect_file(mesh)
    text = (
        found.entries.replace("PLASTIC", "PETG").replace("PRINTED-PART", "carriage-block").replace("PLACE", "carriage")
    )
    (tmp_path / "design.yaml").write_text("format: 1\nmachine: {name: Named}\n" + text)
    part = open_design(tmp_path).case.project.design.parts["carriage-block"]
    assert part.kind == "printed"
    assert part.sizes["WALL-2"].value == 9.0
    assert part.sizes["BORE-1"].value == pytest.approx(15.0, abs=0.02)  # a mesh's bore is narrower between its corners


def test_every_example_file_can_be_looked_at():
    paths = sorted(
        p for p in EXAMPLES.glob("*/*/*") if p.suffix in (".dxf", ".svg", ".stl", ".3mf") and "out" not in p.parts
    )
    assert len(paths) >= 20
    for found in inspect_files(paths):
        assert found.rows
        assert found.size


def test_several_parts_in_one_drawing_give_no_entries(tmp_path, dxf_of):
    def two(space):
        for x in (0, 100):
            space.add_lwpolyline([(x, 0), (x + 50, 0), (x + 50, 20), (x, 20)], close=True)

    path = tmp_path / "two.dxf"
    path.write_bytes(dxf_of(two))
    found = inspect_file(path)
    assert found.kind == "drawing of 2 parts"
    assert found.entries == ""
    assert any("one part in a file" in note for note in found.notes)
    assert {row[0] for row in found.rows} == {"part 1: outline", "part 2: outline"}


def test_a_unit_that_the_file_lacks_can_be_said(tmp_path, dxf_of):
    path = tmp_path / "bare.dxf"
    path.write_bytes(dxf_of(lambda space: space.add_lwpolyline([(0, 0), (2, 0), (2, 1), (0, 1)], close=True), None))
    with pytest.raises(FaultsError, match="unit"):
        inspect_file(path)
    found = inspect_file(path, "in")
    assert found.size.startswith("50.8 × 25.4 mm")
    assert "unit: in" in found.entries


def test_all_bad_files_are_told_at_once(tmp_path):
    (tmp_path / "a.dxf").write_bytes(b"no drawing")
    (tmp_path / "b.txt").write_bytes(b"text")
    with pytest.raises(FaultsError) as caught:
        inspect_files([tmp_path / "a.dxf", tmp_path / "b.txt", tmp_path / "gone.stl"])
    assert len({fault.where.file for fault in caught.value.faults}) == 3
