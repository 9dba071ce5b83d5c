"""Files that are missing, too large, elsewhere, damaged or of the wrong kind."""

from __future__ import annotations

import io
import zipfile
from pathlib import Path

import openpyxl
import pytest

from scantling.errors import FaultsError
from scantling.reading.project import read_project
from scantling.reading.workshop import read_workshop

OFFERS = "workshops/offers/village.csv"
NAMED = "offers: offers/village.csv"

# what the workshop names for its offers: (text with « where the fault is, code, words)
NAMES = {
    "missing": ("«offers/vilage.csv", "READ-01", "village.csv"),
    "missing folder": ("«prices/village.csv", "READ-01", "no folder 'prices'"),
    "a folder": ("«offers", "READ-01", "is a folder"),
    "out of the folder": ("«../../other/village.csv", "READ-02", "out of the folder"),
    "of one computer": ("«/tmp/village.csv", "READ-02", "one computer"),
    "of one Windows computer": ("«C:/village.csv", "READ-02", "one computer"),
    "backslashes": ("«offers\\village.csv", "READ-02", "offers/village.csv"),
    "wrong kind": ("«../make_files.py", "READ-13", ".csv"),
    "no name": ("«'  '", "READ-01", "name of a file"),
}


@pytest.mark.parametrize("name", NAMES)
def test_a_file_that_cannot_be_used(name, plotter, says):
    text, code, *words = NAMES[name]
    where = plotter.edit("workshops/village.yaml", NAMED, f"offers: {text}")
    says(code, where, *words)


def test_a_link_out_of_the_folder(plotter, says, tmp_path):
    outside = tmp_path / "secret.csv"
    outside.write_text("vendor,part,pack,price\n")
    try:
        (plotter.folder / "workshops" / "link.csv").symlink_to(outside)
    except OSError:
        pytest.skip("links need a right here")
    where = plotter.edit("workshops/village.yaml", NAMED, "offers: «link.csv")
    says("READ-02", where, "out of the folder")


# the whole design in bytes: (bytes, code, line:column, words)
BYTES = {
    "not UTF-8": (b"machine:\n  name: M\xfcller\n", "READ-04", "2:10", "0xfc", "UTF-8"),
    "UTF-16": ("machine: {name: x}".encode("utf-16"), "READ-04", "1:1", "UTF-16"),
    "NUL": (b"machine: {name: x\0y}\n", "READ-04", "1:18", "NUL"),
    "empty": (b"", "READ-05", "1:1", "is empty"),
    "blank": (b" \n\n", "READ-05", "1:1", "is empty"),
    "only remarks": (b"# nothing yet\n", "READ-05", "1:1", "nothing but comments"),
}


@pytest.mark.parametrize("name", BYTES)
def test_a_file_that_is_no_text(name, plotter, says):
    data, code, place, *words = BYTES[name]
    (plotter.folder / "design.yaml").write_bytes(data)
    says(code, f"design.yaml:{place}", *words, workshop=None)


def test_a_byte_order_mark_is_no_fault(plotter):
    for file in ("design.yaml", OFFERS):
        path = plotter.folder / file
        path.write_bytes(b"\xef\xbb\xbf" + path.read_bytes())
    assert plotter.faults() == ()


@pytest.mark.parametrize("file", ["design.yaml", OFFERS, "drawings/panel.dxf", "meshes/carriage.stl"])
def test_a_file_of_a_hundred_megabytes(file, plotter):
    with (plotter.folder / file).open("r+b") as out:
        out.truncate(100_000_001)  # a hole in the file: nothing is written
    (fault, *others) = plotter.faults(None if file == "design.yaml" else "village")
    assert fault.code == "READ-03"
    assert "has 100 MB, the limit is" in fault.what
    assert others == []


def test_no_design(tmp_path):
    (tmp_path / "empty").mkdir()
    for folder, words in ((tmp_path / "empty", "no design.yaml"), (tmp_path / "none" / "none", "no such folder")):
        with pytest.raises(FaultsError) as told:
            read_project(folder)
        assert [fault.code for fault in told.value.faults] == ["READ-01"]
        assert words in str(told.value)


def test_no_such_workshop(plotter):
    (fault,) = plotter.faults("vilage")
    assert (fault.code, fault.mend) == ("READ-01", "did you mean village?")
    with pytest.raises(FaultsError, match="READ-01"):
        read_workshop(plotter.folder / "nowhere.yaml")


# the offers as a table: (old, new with «, code, words); rows and columns are those of the table
TABLES = {
    "unknown column": ("vendor,part,pack,", "vendor,part,packs,", "READ-14", "1:3", "'packs'", "pack"),
    "column twice": (
        "vendor,part,pack,price,levels,",
        "vendor,part,pack,price,price,",
        "READ-14",
        "1:5",
        "two columns",
    ),
    "row too long": ("post,pulley-16,2,3.40,", "post,pulley-16,2,3,40,,", "READ-15", "6:12", "under no header"),
    "quote not closed": ("yard,M3 lock nut,10,", 'yard,"M3 lock nut,10,', "READ-15", "25:1", "quotation"),
    "an error of a spreadsheet": ("yard,M3 washer,25,0.90", "yard,M3 washer,25,#REF!", "READ-15", "24:4", "#REF!"),
}


@pytest.mark.parametrize("name", TABLES)
def test_a_table_that_cannot_be_read(name, plotter):
    old, new, code, place, *words = TABLES[name]
    plotter.edit(OFFERS, old, new)
    faults = [fault for fault in plotter.faults() if fault.code == code]
    assert [str(fault.where) for fault in faults] == [f"{OFFERS}:{place}"]
    assert all(word in str(faults[0]) for word in words)


@pytest.mark.parametrize("table", ["vendor,part" + ",x" * 300, "vendor\n" + "a\n" * 100_001])
def test_a_table_beyond_reason(table, plotter):
    plotter.write(OFFERS, table)
    assert [fault.code for fault in plotter.faults()] == ["READ-12"]


def test_a_row_without_an_id(plotter, says):
    plotter.write("more.csv", "id,size\ngap,4 mm\n,5 mm\nrim\n")
    plotter.edit("design.yaml", "sizes:\n  span: 300 mm ", "sizes: [{span: 300 mm}, more.csv] ")
    faults = plotter.faults()
    assert [(str(fault.where), fault.code) for fault in faults] == [
        ("more.csv:3:1", "READ-15"),
        ("more.csv:4:1", "READ-15"),
    ]
    assert "no id" in faults[0].what
    assert "no size" in faults[1].what


def test_the_same_part_in_two_files(plotter, says):
    plotter.write("parts.csv", "id,kind,plastic\npetg,filament,PETG\n")
    plotter.edit("design.yaml", "parts:\n", "parts:\n- parts.csv\n- parts.yaml\n- dummy:\n")
    text = (plotter.folder / "design.yaml").read_text(encoding="utf-8")
    start, end = text.index("- dummy:\n"), text.index("\nsizes:")
    plotter.write("parts.yaml", "\n".join(line[2:] for line in text[start:end].split("\n")[1:]))
    plotter.write("design.yaml", text[:start] + text[end:])
    faults = plotter.faults()
    assert [fault.code for fault in faults] == ["READ-08"]
    assert "'petg' stands twice (first at parts.csv:2:1)" in faults[0].what
    assert faults[0].where.file == "parts.yaml"


def workbook(rows: list[list[object]], *more: list[list[object]]) -> bytes:
    """A workbook with a sheet for each list of rows."""
    book = openpyxl.Workbook()
    for number, sheet_rows in enumerate((rows, *more)):
        sheet = book.active if number == 0 else book.create_sheet()
        for row in sheet_rows:
            sheet.append(row)
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


HEADER: list[object] = ["vendor", "part", "pack", "price"]


def with_member(data: bytes, name: str, content: bytes) -> bytes:
    """The workbook with one member added or replaced."""
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as new:
        for member in old.namelist():
            if member != name:
                new.writestr(member, old.read(member))
        new.writestr(name, content)
    return out.getvalue()


BOMB = b'<?xml version="1.0"?><!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;">]><x>&b;</x>'
BOOKS = {
    "no workbook": ("xlsx", b"PK\x03\x04 nothing", "READ-16", "cannot be opened"),
    "entities": ("xlsx", with_member(workbook([HEADER]), "xl/sharedStrings.xml", BOMB), "READ-16", "entities"),
    "entities in an ods": ("ods", with_member(workbook([HEADER]), "content.xml", BOMB), "READ-16", "entities"),
    "no table in an ods": ("ods", with_member(workbook([HEADER]), "x.xml", b"<x/>"), "READ-16", "cannot be read"),
    "unpacks without end": (
        "xlsx",
        with_member(workbook([HEADER]), "big.xml", b"0" * 101_000_000),
        "READ-16",
        "100 MB",
    ),
    "a formula never worked out": ("xlsx", workbook([HEADER, ["yard", "M3 washer", 25, "=1+1"]]), "READ-15", "'=1+1'"),
    "several sheets": ("xlsx", workbook([HEADER], [HEADER]), "READ-14", "call the one that counts 'offers'"),
    "nothing in it": ("xlsx", workbook([]), "READ-05", "no table"),
}


@pytest.mark.parametrize("name", BOOKS)
def test_a_workbook_that_cannot_be_read(name, plotter):
    ending, data, code, *words = BOOKS[name]
    (plotter.folder / "workshops" / f"book.{ending}").write_bytes(data)
    plotter.edit("workshops/village.yaml", NAMED, f"offers: book.{ending}")
    faults = plotter.faults()
    told = "\n".join(map(str, faults))
    assert [fault.code for fault in faults] == [code], told
    assert faults[0].where.file == f"workshops/book.{ending}"
    assert all(word in told for word in words), told


SHAPES = {
    "no such drawing": ("outline: drawings/panel.dxf", "outline: «drawings/pannel.dxf", "READ-01", "panel.dxf"),
    "a drawing of a wrong kind": ("outline: drawings/panel.dxf", "outline: «meshes/carriage.stl", "READ-13", ".svg"),
    "no such mesh": ("mesh: meshes/carriage.stl", "mesh: «meshes/carriage.obj", "READ-01", "carriage.stl"),
    "a mesh of a wrong kind": ("mesh: meshes/carriage.stl", "mesh: «drawings/panel.dxf", "READ-13", ".3mf"),
}


@pytest.mark.parametrize("name", SHAPES)
def test_a_shape_that_is_not_there(name, plotter, says):
    old, new, code, *words = SHAPES[name]
    says(code, plotter.edit("design.yaml", old, new), *words)


SQUARE = ["0 0 90 0", "90 0 90 90", "90 90 0 90", "0 90 0 0"]
BOW = ["0 0 90 90", "90 90 90 0", "90 0 0 90", "0 90 0 0"]
DRAWINGS = {
    "open": (SQUARE[:3], "open"),
    "crosses itself": (BOW, "cross"),
    "far away": ([line.replace("90", "9e9") for line in SQUARE], ""),
    "nothing drawn": ([], ""),
}


def are_of_shapes(faults, file, word=""):
    """Faults of a shape carry the shape's file, a code of their own and a way to mend."""
    told = "\n".join(map(str, faults))
    assert faults
    assert all(fault.code.startswith("SHAPE-") for fault in faults), told
    assert all(fault.where.file == file and fault.mend for fault in faults), told
    assert word in told


@pytest.mark.parametrize("name", DRAWINGS)
def test_a_drawing_that_is_no_outline(name, plotter, dxf):
    lines, word = DRAWINGS[name]
    plotter.write("drawings/panel.dxf", dxf(lines))
    are_of_shapes(plotter.faults(), "drawings/panel.dxf", word)


def test_a_drawing_without_units(plotter, dxf):
    plotter.write("drawings/panel.dxf", dxf(SQUARE, units=""))
    are_of_shapes(plotter.faults(), "drawings/panel.dxf", "does not say its unit")
    plotter.edit("design.yaml", "outline: drawings/panel.dxf", "outline: drawings/panel.dxf\n    unit: mm")
    assert plotter.faults() == ()


@pytest.mark.parametrize("text", ["just words", "  0\nSECTION\n"])
def test_a_drawing_that_is_none(text, plotter):
    plotter.write("drawings/panel.dxf", text)
    are_of_shapes(plotter.faults(), "drawings/panel.dxf")


SVG = '<svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="90mm" viewBox="0 0 90 90">{}</svg>'
ENTITY = '<?xml version="1.0"?><!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/hostname">]>'
SVGS = {
    "an entity from outside": (ENTITY + SVG.format("<text>&x;</text>"), "SHAPE-14"),
    "a bomb of entities": (BOMB.decode(), "SHAPE-14"),
    "no size": ('<svg xmlns="http://www.w3.org/2000/svg"><rect width="9" height="9"/></svg>', "SHAPE-04"),
    "nothing drawn": (SVG.format(""), "SHAPE-07"),
    "no XML": ("<svg", "SHAPE-02"),
}


@pytest.mark.parametrize("name", SVGS)
def test_a_drawing_in_svg_that_cannot_be_read(name, plotter):
    text, code = SVGS[name]
    plotter.write("drawings/panel.svg", text)
    plotter.edit("design.yaml", "outline: drawings/panel.dxf", "outline: drawings/panel.svg")
    faults = plotter.faults()
    are_of_shapes(faults, "drawings/panel.svg")
    assert [fault.code for fault in faults] == [code], faults


def test_a_good_drawing_in_svg(plotter):
    plotter.write("drawings/panel.svg", SVG.format('<rect x="0" y="0" width="90" height="90"/>'))
    plotter.edit("design.yaml", "outline: drawings/panel.dxf", "outline: drawings/panel.svg")
    assert plotter.faults() == ()


def test_a_mesh_that_is_broken(plotter):
    whole = (plotter.folder / "meshes/carriage.stl").read_text(encoding="utf-8")
    first = whole.index("facet")
    plotter.write("meshes/carriage.stl", whole[:first] + whole[whole.index("facet", whole.index("endfacet") + 8) :])
    are_of_shapes(plotter.faults(), "meshes/carriage.stl", "not closed")
    plotter.write("meshes/carriage.stl", whole[: len(whole) // 2])
    are_of_shapes(plotter.faults(), "meshes/carriage.stl")


def test_the_folder_may_be_named_by_its_file(plotter):
    assert (
        read_project(plotter.folder / "design.yaml", plotter.folder / "workshops" / "village.yaml").workshop.copies == 2
    )
    assert read_project(Path(plotter.folder), "village", copies=7).workshop.copies == 7
