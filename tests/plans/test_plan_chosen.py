"""A plan of what was really chosen and bought: the thread through all rooms, on the plotter."""

import json

import pytest
from planskit import opened, plotter_case

from scantling.checks.all import CHECKS, run_checks
from scantling.choosing.choose import choose, open_choice
from scantling.choosing.result import Choice
from scantling.plans.files import plan_files
from scantling.plans.making import make_plan
from scantling.plans.next_builder import next_builder_cost


@pytest.fixture(scope="module")
def plan():
    case = plotter_case()
    found = choose(open_choice(case, CHECKS, 2))
    assert isinstance(found, Choice)
    report = run_checks(case, found.build)
    alone = next_builder_cost(case, found.build)
    return make_plan(case, found.build, report, found.purchase, choice=found, next_builder=alone)


def test_the_four_totals_of_a_choice(plan):
    totals = plan.totals
    assert totals.outlay == plan.choice.cost_minor == sum(sheet.home_minor for sheet in plan.orders)
    assert totals.used * 2 + totals.left == totals.outlay
    assert 0 < totals.used <= totals.next_builder, "one machine bought alone costs no less than its parts"
    for sheet in plan.orders:
        assert sum(row.landed_minor for row in sheet.rows) == sheet.home_minor


def test_bars_hold_their_pieces_and_what_is_left(plan):
    assert plan.bars
    for bar in plan.bars:
        if bar.whole:
            assert [piece.length_um for piece in bar.pieces] == [bar.bar_um]
            continue
        rest = bar.bar_um - bar.pieces[-1].ends_um
        assert max(0, rest - bar.kerf_um) == bar.left_um
        assert all(piece.rough_um >= piece.length_um for piece in bar.pieces)
        assert all(piece.places for piece in bar.pieces)


def test_every_piece_that_is_cut_is_on_the_parts_list(plan):
    cut = {}
    for bar in plan.bars:
        for piece in bar.pieces:
            cut[bar.part, piece.length_um] = cut.get((bar.part, piece.length_um), 0) + bar.times
    for (part, length_um), count in cut.items():
        words = f", {length_um / 1000:g} mm long"
        (line,) = [one for one in plan.parts if one.reference == part and one.designation.endswith(words)]
        assert count >= line.for_all


def test_its_files_carry_the_proof_and_the_chosen_holes(plan):
    files = plan_files(plan, {})
    data = json.loads(files["plan.json"])
    assert data["choice"]["proven"] is True
    assert data["verdict"] in ("sound", "marginal")
    assert "proven: no sound choice costs less" in files["summary.txt"].decode()
    with opened(files["templates/panel.pdf"]) as pdf:
        words = pdf.pages[0].extract_text()
    letters = {mark for line in plan.drills for mark in line.letters}
    assert letters
    assert all(mark in words for mark in letters)
