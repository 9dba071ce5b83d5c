"""The files of a plan: which there are, that they say the same every time, and that nothing empty is written."""

import csv
import hashlib
import io
import json
import os
import subprocess
import sys
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from planskit import opened, plotter_case, plotter_plan

from scantling.build.case import Case
from scantling.build.reference import reference_build
from scantling.checks.all import run_checks
from scantling.choosing.result import Choice, Concern, Conflict, Infeasible, Miss, Waived
from scantling.errors import FaultsError
from scantling.findings import Finding, Verdict
from scantling.model.build import Build, Key
from scantling.model.design import Design
from scantling.model.kinds import Belt
from scantling.model.project import Project
from scantling.model.workshop import Printer, Workshop
from scantling.plans.files import plan_files
from scantling.plans.instead import chosen_instead, pack_price
from scantling.plans.making import make_plan
from scantling.plans.summary import CALCULATION, days_words, last_words, summarise
from scantling.plans.summary_text import WIDTH, summary_text
from scantling.quantities import Figure
from scantling.reading.lock import read_lock

SOFT = {Key("part", "x-rod"): "rod-8-soft"}


@pytest.fixture(scope="module")
def plan():
    return plotter_plan()


@pytest.fixture(scope="module")
def files(plan):
    return plan_files(plan, SOFT)


def test_all_files_of_a_plan(files):
    assert list(files) == [
        "cut-list.csv",
        "drill-schedule.csv",
        "findings.json",
        "orders/post.csv",
        "orders/yard.csv",
        "parts-list.csv",
        "plan.json",
        "plan.lock",
        "print-list.csv",
        "setting-up.json",
        "steps.csv",
        "summary.txt",
        "templates/panel.pdf",
    ]
    assert all(files.values())


def test_tables_are_square(files):
    for name, data in files.items():
        if name.endswith(".csv"):
            rows = list(csv.reader(io.StringIO(data.decode("utf-8-sig"), newline="")))
            assert len(rows) > 1
            assert {len(row) for row in rows} == {len(rows[0])}, name
            assert all(rows[0]), name


def test_data_for_programs(plan, files):
    data = json.loads(files["plan.json"])
    assert data["verdict"] == "marginal"  # holes made by hand: HOLE-03
    assert data["answers"]["part x-motor"] == "motor-17"
    assert data["pinned"] == {"part x-rod": "rod-8-soft"}
    assert data["totals"]["outlay"] == plan.totals.outlay
    assert [step["id"] for step in data["steps"]] == list(plan.step_order)
    assert data["purchase"]["orders"][0]["vendor"] == "post"
    assert json.loads(files["setting-up.json"])["axis.x.steps-per-mm"]["value"] == "80"
    found = json.loads(files["findings.json"])
    assert {one["code"] for one in found["findings"]} >= {"BELT-01", "JOINT-01", "ROD-01"}


def test_the_lock_is_read_back(files, plan, tmp_path):
    path = tmp_path / "plan.lock"
    path.write_bytes(files["plan.lock"])
    lock = read_lock(path)
    assert dict(lock.answers) == dict(plan.build.answers)
    assert dict(lock.pinned) == SOFT
    assert lock.copies == 2
    assert lock.packs["post-bushing"] == 3


def test_same_plan_same_bytes(files):
    assert plan_files(plotter_plan(), SOFT) == files


def test_same_bytes_in_another_process(files, tmp_path):
    script = (
        "import sys, hashlib; sys.path.insert(0, sys.argv[1])\n"
        "from planskit import plotter_plan\n"
        "from scantling.plans.files import plan_files\n"
        "from scantling.model.build import Key\n"
        "files = plan_files(plotter_plan(), {Key('part', 'x-rod'): 'rod-8-soft'})\n"
        "print({name: hashlib.sha256(data).hexdigest() for name, data in files.items()})\n"
    )
    wanted = str({name: hashlib.sha256(data).hexdigest() for name, data in files.items()})
    command = [sys.executable, "-c", script, str(Path(__file__).parent)]
    done = subprocess.run(
        command, capture_output=True, text=True, check=True, env={**os.environ, "PYTHONHASHSEED": "4711"}, cwd=tmp_path
    )
    assert done.stdout.strip() == wanted


def test_without_a_purchase_nothing_is_ordered_or_cut():
    names = set(plan_files(plotter_plan(bought=False), {}))
    assert not any(name.startswith("orders/") for name in names)
    assert "cut-list.csv" not in names
    assert {"parts-list.csv", "templates/panel.pdf", "plan.lock"} <= names


def test_a_design_of_one_part_has_files_too():
    design = Design.model_validate(
        {
            "machine": {"name": "=cmd()"},
            "parts": {"b": Belt(id="b", profile="2 mm round", width_mm=Figure.exact(6.0))},
            "places": {"belt": {"reference": "b"}},
        }
    )
    case = Case(Project(design, Workshop(name="bench", currency="EUR")))
    build = reference_build(case, 1)
    files = plan_files(make_plan(case, build, run_checks(case, build)), {})
    assert sorted(files) == ["findings.json", "parts-list.csv", "plan.json", "plan.lock", "summary.txt"]


def test_a_printer_that_shrinks_pages_is_refused():
    shrunk = Printer(bar_mm=Figure.exact(100.0), across_mm=Figure.exact(96.0), along_mm=Figure.exact(96.0))
    with pytest.raises(FaultsError, match="PAPER-01") as caught:
        plan_files(plotter_plan(printer=shrunk), {})
    assert caught.value.faults[0].where.file == "workshops/village.yaml"


def test_the_template_follows_the_workshops_printer(files):
    with opened(files["templates/panel.pdf"]) as pdf:
        words = pdf.pages[0].extract_text()
    assert "for hall printer" in words
    assert "× 1.00402" in words
    assert "6 mm nominal" in words


def test_handed_pieces_have_their_own_sheet():
    case = plotter_case()
    places = dict(case.project.design.places)
    places["panel"] = places["panel"].model_copy(update={"mirrored": ("far-end",)})
    design = case.project.design.model_copy(update={"places": places})
    handed = Case(replace(case.project, design=design))
    build = reference_build(handed, 2)
    files = plan_files(make_plan(handed, build, run_checks(handed, build)), {})
    assert {"templates/panel.pdf", "templates/panel-mirrored.pdf"} <= set(files)
    with opened(files["templates/panel-mirrored.pdf"]) as pdf:
        words = pdf.pages[0].extract_text() + pdf.pages[-1].extract_text()
    assert "MIRRORED SHEET, FOR FAR-END" in words
    assert "1 in one machine (far-end), 2 for all 2 copies" in words
    assert "A1 29.5 42.5" in words  # from the same edges of the wood as on the other sheet


def test_the_summary_says_what_matters(plan):
    text = summary_text(summarise(plan, {}))
    assert text.startswith("Sedge, revision 3, Village school workshop, 2 copies\nverdict: marginal")
    for said in (CALCULATION, "outlay for 2 copies", "106.16 EUR", "81.23 EUR", "Parts by post", "2026-03-08"):
        assert said in text
    assert max(len(line) for line in text.splitlines()) <= WIDTH + 20


def test_what_is_chosen_instead_says_why():
    plan = plotter_plan(changes={Key("part", "x-rod"): "rod-8-soft", Key("part", "x-bushing"): "bushing-8-polymer"})
    rows = {row.place: row for row in chosen_instead(plan, {Key("part", "x-bushing"): "bushing-8-polymer"})}
    assert set(rows) == {"x-rod", "x-bushing"}
    assert (rows["x-rod"].reference, rows["x-rod"].chosen) == ("rod-8-hardened", "rod-8-soft")
    assert rows["x-bushing"].why == "asked for"


def test_list_prices_count_tax_and_shares_of_bars():
    plan = plotter_plan(changes={Key("part", "x-rod"): "rod-8-soft", Key("part", "x-pulley"): "pulley-16"})
    why = {row.place: row.why for row in chosen_instead(plan)}
    # hardened 9.80 without 20 % tax a metre, soft 4.80 with it, two pieces of 312 mm: 0.624 × (11.76 − 4.80)
    assert why["x-rod"] == "4.34 EUR less"
    # two pulleys in a pack at 3.60 and 3.40 without 20 % tax: half of 0.20 × 1.2
    assert why["x-pulley"] == "0.12 EUR less"


def test_the_lowest_pack_price_counts_levels_and_tax():
    workshop = plotter_case().project.workshop
    offers = {(offer.vendor, offer.part): offer for offer in workshop.offers}
    assert pack_price(workshop, offers["post", "motor-17"]) == Fraction(860 * 6, 5)
    assert pack_price(workshop, offers["yard", "M3 washer"]) == 90
    nowhere = offers["yard", "M3 washer"].model_copy(update={"vendor": "nobody"})
    assert pack_price(workshop, nowhere) is None


def test_findings_that_are_not_sound_are_listed_worst_first(plan):
    bad = Finding("BELT-03", "axis x", "torque", Verdict.UNSOUND, "too little", "motor curve", mend="a larger motor")
    some = tuple(replace(bad, subject=f"axis {k}", verdict=Verdict.MARGINAL) for k in range(9))
    shown = summarise(replace(plan, findings=(bad, *some, *plan.findings)))
    assert shown.verdict is Verdict.UNSOUND
    assert (len(shown.worst), shown.more) == (8, 3)
    text = summary_text(shown)
    assert "mend: a larger motor" in text
    assert "and 3 more" in text


def test_a_miss_is_told_with_its_conflict(plan):
    concerns = (Concern("check", "BELT-03", "axis x"), Concern("budget"), Concern("pin", subject="part of x-rod"))
    waived = (Waived(concerns[0], 120), Waived(concerns[1], 50, 312))
    miss = Miss(plan.build, plan.purchase, waived, 10616, True)
    shown = summarise(replace(plan, infeasible=Infeasible(miss, Conflict(concerns, True))))
    assert shown.verdict is Verdict.UNSOUND
    text = summary_text(shown)
    for said in ("no fewer do", "check BELT-03 of axis x: 12 % beyond the limit", "the budget: 3.12 EUR over"):
        assert said in text


@pytest.mark.parametrize(
    ("proven", "bound", "words"),
    [(True, 10616, "proven: no sound choice costs less"), (False, 10500, "may cost up to 1.16 EUR less")],
)
def test_the_proof_is_told(plan, proven, bound, words):
    choice = Choice(Build(plan.build.answers, 2), plan.purchase, 10616, bound, proven, 1)
    assert words in summarise(replace(plan, choice=choice)).proof
    assert json.loads(plan_files(replace(plan, choice=choice), {})["plan.json"])["choice"]["proven"] is proven


def test_what_comes_last_is_named_or_counted(plan):
    assert last_words(plan) == "7 parts from Parts by post"
    assert last_words(replace(plan, dates=replace(plan.dates, deciding=("a", "b")))) == "a, b"


def test_small_words():
    assert (days_words(1), days_words(0)) == ("1 day", "0 days")
