"""The loom of Alder as a table and in what is ordered."""

from __future__ import annotations

from pathlib import Path

import pytest

from scantling.book.loom_chapter import loom_chapter
from scantling.build.case import Case
from scantling.build.reference import reference_build
from scantling.checks.all import run_checks
from scantling.model.build import Key
from scantling.plans.loom import HEADING, loom_lines, loom_table, loom_totals
from scantling.plans.making import make_plan
from scantling.plans.parts_list import parts_lines
from scantling.reading.project import read_project

ALDER = Path(__file__).parents[2] / "examples" / "alder"


@pytest.fixture(scope="module")
def alder() -> Case:
    """Alder in the village."""
    return Case(read_project(ALDER, "village"))


def test_one_row_a_wire(alder):
    build = reference_build(alder)
    lines = {line.wire: line for line in loom_lines(alder, build)}
    bed = lines["bed-plus"]
    assert (bed.start, bed.to, bed.copper, bed.colour) == ("board.bed", "bed-heater", "1.5 mm²", "red")
    assert (bed.route_um, bed.cut_um, bed.start_end, bed.fuse) == (1_050_000, 1_400_000, "ferrule-15", "fuse-flat-10")
    assert lines["x-motor"].copper == "4 × 0.25 mm²"
    assert lines["z-motor"].count == 2
    assert "hold both ends" in bed.note
    assert "earth-frame" not in lines  # the frame is of plywood
    metal = build.replacing({Key("part", "portal"): "alu-4"})
    assert "earth-frame" in {line.wire for line in loom_lines(alder, metal)}


def test_the_totals_are_those_of_the_parts_list(alder):
    build = reference_build(alder)
    totals = {total.part: total for total in loom_totals(alder, build)}
    listed = parts_lines(alder, build)
    for part in ("contact-25", "ferrule-15", "ring-m4"):
        assert totals[part].amount == sum(line.quantity * build.copies for line in listed if line.part == part)
    cut_mm = sum(line.cut_um * line.count for line in loom_lines(alder, build) if line.part == "wire-signal") // 1000
    assert (totals["wire-signal"].amount, totals["wire-signal"].unit) == (cut_mm * build.copies, "mm")


def test_the_table(alder):
    build = reference_build(alder)
    table = loom_table(loom_lines(alder, build), loom_totals(alder, build))
    assert table[0] == HEADING
    assert {len(row) for row in table} == {len(HEADING)}
    assert [row[0] for row in table].count("in all") == len(loom_totals(alder, build))
    assert loom_table((), ()) == [HEADING]


def test_the_chapter(alder):
    build = reference_build(alder)
    plan = make_plan(alder, build, run_checks(alder, build, costly=False))
    blocks = loom_chapter(plan)
    assert "only by a competent person" in blocks[1].text
    wires, totals = blocks[2], blocks[4]
    assert len(wires.rows) == len(plan.loom)
    assert {len(row) for row in wires.rows} == {len(wires.head)}
    assert ("wire-15", "4.7 m") in totals.rows  # 2 x 0.95 and 2 x 1.4
