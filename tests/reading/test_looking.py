"""One file alone: what is found in it, and entries that a design takes once they have a name."""

from __future__ import annotations

from pathlib import Path

import ezdxf
import pytest

from scantling.errors import FaultsError
from scantling.reading.looking import look_at, read_outline
from scantling.reading.project import read_project

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.fixture
def face(tmp_path) -> Path:
    """A plate with the square of a motor's face, off the origin."""
    drawing = ezdxf.new("R2010", units=ezdxf.units.MM)
    space = drawing.modelspace()
    space.add_lwpolyline([(100, 50), (180, 50), (180, 110), (100, 110)], close=True)
    for x, y in ((-15.5, -15.5), (15.5, -15.5), (15.5, 15.5), (-15.5, 15.5)):
        space.add_circle((140 + x, 80 + y), 1.7)
    space.add_circle((140, 80), 11.25)
    path = tmp_path / "motor face.dxf"
    drawing.saveas(path)
    return path


def rows(look, what):
    """The rows of one kind of thing."""
    return [feature for feature in look.features if feature.what == what]


def test_holes_and_their_square_are_found(face):
    look = look_at(face)
    assert look.kind == "drawing"
    assert look.size.startswith("80 × 60 mm")
    bore, corners = rows(look, "round holes")
    assert (bore.size, bore.where) == ("1 × 22.5 mm", "40, 30")  # from the lower left corner, as in a design
    assert corners.size == "4 × 3.4 mm"
    (square,) = rows(look, "square")
    assert "31 × 31 mm, around a hole of 22.5 mm" in square.size
    assert square.fit == "exact"
    assert "M3" not in look.entries  # a thread is never guessed


def test_a_drawing_becomes_a_sheet(face, plotter):
    entries = look_at(face).entries
    (plotter.folder / face.name).write_bytes(face.read_bytes())
    for word, name in (("STOCK", "ply"), ("PANEL", "face"), ("MATERIAL", "birch plywood"), ("THICKNESS", "6 mm")):
        entries = entries.replace(word, name)
    for section in ("parts", "places", "sheets"):
        lines = entries.split(f"{section}:\n")[1].split("\n")
        entry = "".join(f"{line}\n" for line in lines[: next(i for i, x in enumerate(lines) if not x.startswith(" "))])
        text = (plotter.folder / "design.yaml").read_text(encoding="utf-8")
        head, _, rest = text.partition(f"\n{section}:")
        remark, _, body = rest.partition("\n")
        plotter.write("design.yaml", f"{head}\n{section}:{remark}\n{entry}{body}")
    assert plotter.faults() == ()
    holes = read_project(plotter.folder, "village").design.sheets["face"].holes
    assert {hole.at for hole in holes} == {("24.5 mm", "14.5 mm"), ("40 mm", "30 mm")}


def test_a_mesh_is_measured():
    look = look_at(EXAMPLES / "plotter" / "meshes" / "carriage.stl")
    assert look.kind.startswith("mesh")
    assert look.size.startswith("60 × 84 × 38 mm")
    words = " ".join(f"{feature.what} {feature.size}" for feature in look.features)
    for size in ("15 mm", "3.4 mm", "12 mm"):
        assert size in words
    assert "kind: printed" in look.entries


def test_a_stated_unit_wins(plotter, dxf):
    path = plotter.folder / "inches.dxf"
    path.write_text(dxf(["0 0 2 0", "2 0 2 1", "2 1 0 1", "0 1 0 0"], units=""))
    with pytest.raises(FaultsError, match="SHAPE-04"):
        look_at(path)
    look = look_at(path, "in")
    assert look.size.startswith("50.8 × 25.4 mm")
    assert "unit: in" in look.entries
    assert read_outline(path, "in").extents.width_mm == pytest.approx(50.8)


@pytest.mark.parametrize(
    ("name", "code"), [("none.dxf", "READ-01"), ("notes.txt", "READ-13"), ("empty.stl", "READ-05")]
)
def test_a_file_that_is_neither(name, code, tmp_path):
    path = tmp_path / name
    if name != "none.dxf":
        path.write_text("words" if name == "notes.txt" else "")
    with pytest.raises(FaultsError) as told:
        look_at(path)
    assert [fault.code for fault in told.value.faults] == [code]


def test_every_drawing_and_mesh_of_the_plotter_can_be_looked_at():
    files = [
        path for path in sorted((EXAMPLES / "plotter").rglob("*")) if path.suffix in (".dxf", ".svg", ".stl", ".3mf")
    ]
    assert len(files) == 2
    for path in files:
        assert look_at(path).features
