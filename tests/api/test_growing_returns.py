"""A tenth of a description must already pay: each step of what a maker writes gives its answer."""

import csv
import io
from pathlib import Path

import openpyxl
import pytest
import yaml

from scantling.api.alone import plan_file
from scantling.api.checking import check_design
from scantling.api.opening import open_design
from scantling.api.planning import files_of_plan, make_design_plan
from scantling.api.starting import FIRST, starting_files
from scantling.findings import Verdict

FIRST_VERDICT_LINES = 12
FIRST_CHOICE_LINES = 60

DESIGN = """\
machine: {name: Bench plotter}
parts:
  motor-flat: {kind: motor, frame-size: 17, shaft-diameter: 5 mm, holding-torque: 0.14 N m,
               current: 1.0 A, current-basis: rms}
  motor-mid: {kind: motor, frame-size: 17, shaft-diameter: 5 mm, holding-torque: 0.26 N m,
              current: 1.3 A, current-basis: rms}
  pulley-20: {kind: pulley, teeth: 20, profile: 2 mm round, bore: 5 mm}
  pulley-16: {kind: pulley, teeth: 16, profile: 2 mm round, bore: 5 mm}
  belt-6: {kind: belt, profile: 2 mm round, width: 6 mm}
  rod-soft: {kind: rod, diameter: 8 mm, fit: h6, material: steel, surface-hardness: 20 HRC}
  rod-hard: {kind: rod, diameter: 8 mm, fit: h6, material: steel, surface-hardness: 60 HRC}
  ball: {kind: bushing, lining: ball, bore: 8 mm, length: 24 mm, ball-diameter: 1.5 mm, friction: 0.005, drag: 0.3 N}
  polymer: {kind: bushing, lining: polymer, bore: 8 mm, length: 24 mm, friction: 0.25, drag: 0.3 N}
places:
  x-motor: {reference: motor-mid, stand-ins: [motor-flat]}
  x-pulley: {reference: pulley-20, stand-ins: [pulley-16]}
  x-belt: {reference: belt-6}
  x-rod: {quantity: 2, length: 320 mm, reference: rod-hard, stand-ins: [rod-soft]}
  x-bushing: {quantity: 4, reference: ball, stand-ins: [polymer]}
axes:
  x:
    drive: belt
    motor: x-motor
    pulley: x-pulley
    belt: x-belt
    axles: 330 mm
    clamping: 30 mm
    guide: {rods: x-rod, bearings: x-bushing, free: 300 mm, spacing: 60 mm}
    moves: [{mass: 700 g, for: carriage and pen}]
    needs: {speed: 150 mm/s, acceleration: 2000 mm/s2, resolution: 0.05 mm}
"""
WORKSHOP = """\
name: My workshop
currency: EUR
vendors:
  town: {name: Hardware in town, shipping: 0 EUR, lead-days: 1}
  post: {name: Parts by post, shipping: 5.90 EUR, free-above: 60 EUR, lead-days: 6}
offers: offers.csv
"""
OFFERS = """\
vendor,part,pack,price,length
post,motor-mid,1,7.90,
post,motor-flat,1,5.80,
post,pulley-20,2,3.10,
post,pulley-16,2,3.00,
post,belt-6,1,2.40,1 m
town,rod-soft,1,4.80,1 m
post,rod-hard,1,9.80,1 m
post,ball,4,4.20,
post,polymer,4,5.60,
"""


def folder_of(tmp_path: Path, **files: bytes | str) -> Path:
    for name, content in files.items():
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content.encode() if isinstance(content, str) else content)
    return tmp_path


def small(tmp_path: Path) -> Path:
    return folder_of(
        tmp_path, **{"design.yaml": DESIGN, "workshops/mine.yaml": WORKSHOP, "workshops/offers.csv": OFFERS}
    )


def test_a_dozen_lines_give_a_first_verdict_of_a_motion(tmp_path):
    files = starting_files()
    assert len(files[FIRST].decode().splitlines()) <= FIRST_VERDICT_LINES
    plan = check_design(open_design(folder_of(tmp_path, **files), "mine"))
    (torque,) = [finding for finding in plan.findings if finding.code == "BELT-03"]
    assert torque.verdict is Verdict.SOUND
    assert torque.value is not None
    (steps,) = [setting for setting in plan.settings if setting.key == "axis.x.steps-per-mm"]
    assert steps.value == "80"  # 200 full steps x 16 microsteps / (20 teeth x 2 mm)
    assert plan.not_looked_at  # and it says what it did not look at
    assert plan.unlocking


def test_every_line_of_the_first_dozen_is_needed_or_a_comment(tmp_path):
    """Without any one part, place or the axis there is a fault or no verdict of a motion: nothing is there for show."""
    tree = yaml.load(starting_files()[FIRST], yaml.BaseLoader)
    for section, name in [(s, n) for s in ("parts", "places", "axes") for n in tree[s]]:
        less = {key: {n: v for n, v in value.items() if (key, n) != (section, name)} for key, value in tree.items()}
        folder_of(tmp_path, **{FIRST: yaml.safe_dump(less)})
        try:
            codes = {finding.code for finding in check_design(open_design(tmp_path)).findings}
        except ValueError:
            codes = set()
        assert "BELT-03" not in codes


def test_three_stand_ins_and_a_few_offers_give_a_proven_choice(tmp_path):
    """The cheapest parts together are not sound: soft rods groove under balls. Sums by hand, see the offers."""
    folder = small(tmp_path)
    assert len((DESIGN + WORKSHOP + OFFERS).splitlines()) <= FIRST_CHOICE_LINES
    session = open_design(folder, "mine")
    plan = make_design_plan(session)
    assert plan.choice is not None
    assert plan.choice.proven
    chosen = {key.subject: answer for key, answer in plan.build.answers if key.kind == "part"}
    assert chosen == {
        "x-motor": "motor-flat",
        "x-pulley": "pulley-16",
        "x-belt": "belt-6",
        "x-rod": "rod-soft",
        "x-bushing": "polymer",
    }
    assert plan.choice.cost_minor == 580 + 300 + 240 + 480 + 560 + 590  # the last is the shipping of the post
    cheapest = {"x-motor": "motor-flat", "x-pulley": "pulley-16", "x-rod": "rod-soft", "x-bushing": "ball"}
    changes = {session.case.part_key(place): part for place, part in cheapest.items()}
    assert check_design(session, changes).verdict is Verdict.UNSOUND
    assert {"orders/post.csv", "orders/town.csv", "cut-list.csv", "plan.lock", "summary.txt"} <= set(
        files_of_plan(plan)
    )


def test_a_list_alone_gives_orders_and_its_match_is_remembered(tmp_path):
    folder = small(tmp_path)
    path = folder / "list.csv"
    path.write_text("Item;Qty;Description\n1;2;Motor middle\n2;1;pulley-20\n3;1;belt-6\n")
    shop = str(folder / "workshops" / "mine.yaml")
    asked = plan_file(path, shop, 3)
    assert not asked.whole
    assert any("'Motor middle'" in line for line in asked.lines)
    (kept,) = asked.beside
    assert kept == "list.match.yaml"
    path.with_name(kept).write_bytes(asked.beside[kept] + b"parts: {'Motor middle': motor-mid}\n")
    known = plan_file(path, shop, 3)
    assert known.whole
    # 6 motors, 3 pulleys in packs of 2, 3 belts: 47.40 + 6.20 + 7.20 = 60.80, so the shipping is free
    assert "outlay for 3: 60.80 EUR" in known.lines
    rows = list(csv.DictReader(io.StringIO(known.files["orders/post.csv"].decode("utf-8-sig"))))
    assert {row["part"]: row["packs"] for row in rows if row["part"]} == {
        "motor-mid": "6",
        "pulley-20": "2",
        "belt-6": "3",
    }


@pytest.mark.parametrize("ending", ["xlsx", "ods"])
def test_a_list_may_be_a_spreadsheet(tmp_path, ending):
    folder = small(tmp_path)
    path = folder / f"list.{ending}"
    rows = [["Part", "Quantity"], ["motor-mid", "1"], ["pulley-20", "2"]]
    if ending == "xlsx":
        book = openpyxl.Workbook()
        for row in rows:
            book.active.append(row)
        book.save(path)
    else:
        write_ods(path, rows)
    alone = plan_file(path, str(folder / "workshops" / "mine.yaml"))
    assert "outlay for 1: 16.90 EUR" in alone.lines  # 7.90 + 3.10 + 5.90 shipping


def write_ods(path, rows):
    from odf.opendocument import OpenDocumentSpreadsheet
    from odf.table import Table, TableCell, TableRow
    from odf.text import P

    book, sheet = OpenDocumentSpreadsheet(), Table(name="list")
    for row in rows:
        line = TableRow()
        for text in row:
            cell = TableCell()
            cell.addElement(P(text=text))
            line.addElement(cell)
        sheet.addElement(line)
    book.spreadsheet.addElement(sheet)
    book.save(str(path))


def test_a_list_that_speaks_of_packs_is_asked_about(tmp_path):
    folder = small(tmp_path)
    path = folder / "list.csv"
    path.write_text("part,quantity\npulley-20,2\nM3x10 screw (pack of 10),2\n")
    asked = plan_file(path, str(folder / "workshops" / "mine.yaml"))
    assert not asked.whole
    assert asked.files == {}
    assert any("pieces or packs?" in line and "pack of 10" in line for line in asked.lines)
    assert b"# quantity-means: pieces" in asked.beside["list.match.yaml"]


def test_a_drawing_alone_gives_a_template_and_a_drill_list(motor_plate_dxf):
    alone = plan_file(motor_plate_dxf)
    assert alone.whole
    assert "80 × 60 mm, 8 round holes" in alone.lines
    assert alone.files["motor-plate.pdf"].startswith(b"%PDF")
    rows = list(csv.DictReader(io.StringIO(alone.files["drill-list.csv"].decode("utf-8-sig"))))
    assert [row["diameter mm"] for row in rows] == ["3.4"] * 4 + ["4.5"] * 3 + ["22.5"]


def test_the_readings_of_the_bars_correct_a_template(motor_plate_dxf):
    plain, corrected = plan_file(motor_plate_dxf), plan_file(motor_plate_dxf, bars=("180 mm", "179.2 mm", "180.5 mm"))
    assert plain.files["motor-plate.pdf"] != corrected.files["motor-plate.pdf"]
    assert any("--bars" in line for line in plain.lines)
    assert not any("--bars" in line for line in corrected.lines)


def as_workbook(path: Path, text: str) -> None:
    book = openpyxl.Workbook()
    for row in csv.reader(io.StringIO(text)):
        book.active.append([cell or None for cell in row])
    book.save(path)


def test_tables_may_be_yaml_csv_or_a_workbook_alike(tmp_path):
    """The same plan to the last figure, whichever way parts, places and offers are written."""
    tree = yaml.load(DESIGN, yaml.BaseLoader)
    plans = [plan_of(small(tmp_path / "yaml"))]
    for ending in ("csv", "xlsx"):
        folder = small(tmp_path / ending)
        for section in ("parts", "places"):
            table = table_of(tree[section])
            if ending == "csv":
                (folder / f"{section}.csv").write_text(table, encoding="utf-8")
            else:
                as_workbook(folder / f"{section}.xlsx", table)
        files = {section: f"{section}.{ending}" for section in ("parts", "places")}
        (folder / "design.yaml").write_text(yaml.safe_dump({**tree, **files}))
        if ending == "xlsx":
            as_workbook(folder / "workshops" / "offers.xlsx", OFFERS)
            (folder / "workshops" / "mine.yaml").write_text(WORKSHOP.replace("offers.csv", "offers.xlsx"))
        plans.append(plan_of(folder))
    assert plans[1] == plans[0]
    assert plans[2] == plans[0]


def plan_of(folder: Path):
    plan = make_design_plan(open_design(folder, "mine"))
    return (plan.build, plan.choice.cost_minor, plan.findings, plan.settings, plan.parts, plan.bars)


def table_of(section: dict) -> str:
    """A section as a table: a column a field, lists joined by semicolons."""
    fields = list(dict.fromkeys(field for entry in section.values() for field in entry))
    text = io.StringIO()
    writer = csv.writer(text)
    writer.writerow(["id", *fields])
    for name, entry in section.items():
        cells = [entry.get(field, "") for field in fields]
        writer.writerow([name, *("; ".join(cell) if isinstance(cell, list) else cell for cell in cells)])
    return text.getvalue()
