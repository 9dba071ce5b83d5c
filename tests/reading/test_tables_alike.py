"""The same rows in YAML, CSV, .xlsx and .ods are the same parts, places, joints, holes and offers."""

from __future__ import annotations

import csv
import datetime
import io

import openpyxl
import pytest
from odf.opendocument import OpenDocumentSpreadsheet
from odf.table import Table, TableCell, TableRow
from odf.text import P

from scantling.reading.cell_text import shown_date, shown_number
from scantling.reading.collecting import Faults
from scantling.reading.csv_grid import csv_grid
from scantling.reading.project import read_project
from scantling.reading.xlsx_grid import xlsx_grid

PARTS = [
    ["id", "kind", "diameter", "fit", "material", "surface-hardness", "thickness", "grain", "sizes.flange", "note"],
    ["rod-8-hardened", "rod", "8 mm", "h6", "steel", "60 HRC", "", "", "", ""],
    ["rod-8-soft", "rod", "8 mm", "h9", "steel", "20 HRC", "", "", "", 'soft, or "bright"'],
    ["ply-6", "sheet", "", "", "birch plywood", "", "6 mm", "yes", "", ""],
    ["ply-8", "sheet", "", "", "birch plywood", "", "8 mm", "yes", "12 mm", "two\nlines"],
]
PLACES = [
    ["id", "title", "pieces", "reference", "stand-ins", "at", "face", "on", "length"],
    ["panel", "End panel", "motor-end; far-end", "ply-6", "ply-8", "0 mm; 0 mm; 0 mm", "x", "", ""],
    ["x-rod", "Guide rod", "front; back", "rod-8-hardened", "rod-8-soft", "15 mm, 18 mm, 0 mm", "", "panel",
     "span + 2 * panel.thickness"],
]  # fmt: skip
JOINTS = [
    ["id", "title", "screw", "through", "into", "into.place", "into.depth", "count", "locking", "tighten"],
    ["motor-to-panel", "Motor to panel", "socket head M3", "washer; panel.thickness", "", "x-motor",
     "x-motor.tapped-depth", "4", "", "0.25 N m"],
    ["pen-clamp", "Pen clamp", "socket head M3", "washer; carriage.clamp; washer", "lock nut", "", "", "2", "lock nut",
     ""],
]  # fmt: skip
HOLES = [
    ["for", "at", "repeat", "fit", "care"],
    ["x-motor.face", "45 mm; 58 mm", "", "", "yes"],
    ["x-rod.seat", "15 mm; 18 mm", "75 mm, 18 mm", "seat", "yes"],
]
STEPS = [
    ["id", "title", "uses", "joints", "yields", "after", "uses-results", "minutes"],
    ["motor", "Put the motor on its panel", "panel: 1; x-motor: all", "motor-to-panel", "motor panel", "", "", "10"],
    ["carriage", "Press the bushings into the carriage and fit the pen clamp", "carriage; x-bushing", "pen-clamp",
     "carriage", "", "", "25"],
    ["rods", "Slide the carriage on the rods and put the panels on", "x-rod: all; panel: 1", "", "axis",
     "motor; carriage", "motor panel; carriage", "20"],
    ["belt", "Fit pulley and belt and tension it", "x-pulley; x-belt", "", "", "rods", "axis", "15"],
]  # fmt: skip


def as_csv(rows: list[list[str]], delimiter: str = ",") -> bytes:
    """The table in CSV."""
    out = io.StringIO(newline="")
    csv.writer(out, delimiter=delimiter).writerows(rows)
    return out.getvalue().encode()


def as_xlsx(rows: list[list[str]]) -> bytes:
    """The table in a workbook, whole numbers as numbers."""
    book = openpyxl.Workbook()
    for row in rows:
        book.active.append([int(text) if text.isdigit() else text or None for text in row])
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def as_ods(rows: list[list[str]]) -> bytes:
    """The table in an OpenDocument workbook, written by another library than the one that reads it."""
    book = OpenDocumentSpreadsheet()
    table = Table(name="anything")
    book.spreadsheet.addElement(table)
    for row in rows:
        line = TableRow()
        table.addElement(line)
        for text in row:
            if text.isdigit():
                line.addElement(TableCell(valuetype="float", value=text))
                continue
            cell = TableCell(valuetype="string")
            for paragraph in text.split("\n"):
                cell.addElement(P(text=paragraph))
            line.addElement(cell if text else TableCell())
    out = io.BytesIO()
    book.write(out)
    return out.getvalue()


WRITERS = {
    "csv": as_csv,
    "semicolon.csv": lambda rows: as_csv(rows, ";"),
    "tsv": lambda rows: as_csv(rows, "\t"),
    "xlsx": as_xlsx,
    "ods": as_ods,
}


def without(text: str, *starts: str) -> str:
    """The YAML without the entries whose first line begins so, and without their continuation lines."""
    kept, drop = [], False
    for line in text.split("\n"):
        is_entry = len(line) - len(line.lstrip()) <= 2
        drop = any(line.startswith(start) for start in starts) if is_entry else drop
        kept += [] if drop else [line]
    return "\n".join(kept)


@pytest.mark.parametrize("ending", WRITERS)
def test_tables_hold_what_yaml_holds(ending, plotter):
    plain = read_project(plotter.folder, "village").design
    write = WRITERS[ending]
    tables = {"parts": PARTS, "places": PLACES, "joints": JOINTS, "holes": HOLES, "steps": STEPS}
    for name, rows in tables.items():
        (plotter.folder / f"{name}.{ending}").write_bytes(write(rows))
    text = (plotter.folder / "design.yaml").read_text(encoding="utf-8")
    text = without(text, "  rod-8-", "  ply-", "  panel: {", "  x-rod: {", "  motor-to", "  pen-clamp")
    text = without(text, "  motor: {", "  rods: {", "  belt: {title", "  carriage: {title: Press")
    start, end = text.index("    holes:\n"), text.index("\njoints:")
    text = text[:start] + f"    holes: holes.{ending}\n" + text[end:]
    for section in ("parts", "places"):
        head, _, rest = text.partition(f"\n{section}:")
        body, gap, tail = rest.partition("\n\n")
        (plotter.folder / f"{section}.yaml").write_text("\n".join(line[2:] for line in body.split("\n")[1:]))
        text = f"{head}\n{section}: [{section}.yaml, {section}.{ending}]{gap}{tail}"
    text = text.replace("\njoints:\n", f"\njoints: joints.{ending}\n").replace(
        "\nsteps:\n", f"\nsteps: steps.{ending}\n"
    )
    plotter.write("design.yaml", text)
    design = read_project(plotter.folder, "village").design
    flange = design.parts["ply-8"].sizes.pop("flange")
    notes = {name: part.note for name, part in design.parts.items() if part.note}
    assert flange.value == 12
    assert notes == {"rod-8-soft": 'soft, or "bright"', "ply-8": "two\nlines"}
    assert {name: part.model_copy(update={"note": ""}) for name, part in design.parts.items()} == plain.parts
    for section in ("places", "joints", "sheets", "steps"):
        assert getattr(design, section) == getattr(plain, section), section


@pytest.mark.parametrize("ending", ["xlsx", "ods", "semicolon.csv"])
def test_offers_in_a_workbook(ending, plotter):
    plain = read_project(plotter.folder, "village").workshop.offers
    text = (plotter.folder / "workshops/offers/village.csv").read_text(encoding="utf-8")
    rows = list(csv.reader(text.splitlines()))
    (plotter.folder / "workshops" / f"offers.{ending}").write_bytes(WRITERS[ending](rows))
    plotter.edit("workshops/village.yaml", "offers: offers/village.csv", f"offers: offers.{ending}")
    project = read_project(plotter.folder, "village")
    assert project.workshop.offers == plain
    assert str(project.where("workshop", "offers", 3, "price")) == f"workshops/offers.{ending}:5:4"


def test_offers_beside_each_other_in_yaml_and_files(plotter):
    plain = read_project(plotter.folder, "village").workshop.offers
    more = "  - {vendor: yard, part: M3 nut, pack: 25, price: 0.80, levels: ['4: 0.70']}\n"
    plotter.edit("workshops/village.yaml", "offers: offers/village.csv\n", f"offers:\n  - offers/village.csv\n{more}")
    offers = read_project(plotter.folder, "village").workshop.offers
    assert offers[:-1] == plain
    assert (offers[-1].part, offers[-1].levels[0].packs, offers[-1].levels[0].price) == ("M3 nut", 4, "0.70")


# what a spreadsheet shows under a number format (from memory)
SHOWN = [
    (8, "General", "8"),
    (7.9, "General", "7.9"),
    (0.1 + 0.2, "General", "0.3"),
    (1.1, "0.00", "1.10"),
    (12, "000", "012"),
    (2.5, "0", "3"),
    (-2.5, "0.0", "-2.5"),
    (-2.5, "0.0;(0.0)", "(2.5)"),
    (1234.5, "#,##0.00", "1234.50"),
    (0.19, "0%", "19%"),
    (0.195, "0.0 %", "19.5 %"),
    (8, '0.0" mm"', "8.0 mm"),
    (8, r"0\ \m\m", "8 mm"),
    (4.8, '#,##0.00\\ [$€-407]', "4.80 €"),
    (4.8, '[Red]0.00" EUR"', "4.80 EUR"),
    (0.375, "# ?/?", "3/8"),
    (3.375, "# ??/??", "3 3/8"),
    (2, "# ?/?", "2"),
    (1.5e-7, "0.00E+00", "0.00000015"),
    (5, "@", "5"),
]  # fmt: skip


@pytest.mark.parametrize(("value", "number_format", "shown"), SHOWN)
def test_a_number_is_read_as_it_is_shown(value, number_format, shown):
    assert shown_number(value, number_format) == shown


def test_shown_forms_that_we_make_plainer():
    assert shown_number(0.5, "#.##") == "0.5"  # a spreadsheet shows .5
    assert shown_number(0.5, "# ?/8") == "1/2"  # a spreadsheet shows 4/8


def test_dates_and_truths_of_a_workbook():
    assert shown_date(datetime.datetime(2026, 3, 2)) == "2026-03-02"
    assert shown_date(datetime.date(2026, 3, 2)) == "2026-03-02"
    assert shown_date(datetime.datetime(2026, 3, 2, 12, 30)) == "2026-03-02 12:30:00"
    book = openpyxl.Workbook()
    book.active.append(["a", "b", "c"])
    book.active.append([datetime.datetime(2026, 3, 2), True, 1.5])
    book.active["C2"].number_format = "0.000"
    out = io.BytesIO()
    book.save(out)
    grid = xlsx_grid(out.getvalue(), "b.xlsx", "x", Faults())
    assert [cell.text for cell in grid.rows[1]] == ["2026-03-02", "yes", "1.500"]


def test_rows_keep_their_numbers():
    text = '# a remark\n\nid,note\na,"two\nlines"\n,\nb,x\n'
    grid = csv_grid(text.encode(), "t.csv", Faults())
    assert [(row[0].text, row[0].row) for row in grid.rows] == [("id", 3), ("a", 4), ("b", 7)]
