"""The rows of a plan: orders and their four totals, cuts, holes by bit, parts, prints, steps; safe text in tables."""

import csv
import io
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from planskit import hand_purchase, line, order, plotter_case, plotter_plan

from scantling.build.holes import sheet_holes
from scantling.build.reference import reference_build
from scantling.choosing.result import Cut, Purchase, Supply
from scantling.model.build import Key
from scantling.plans.csv_text import ENCODING, csv_bytes, safe_cell
from scantling.plans.cutting import bar_plans
from scantling.plans.dates import purchase_dates
from scantling.plans.drilling import NO_BIT, drill_lines, hole_letters, mark_letter
from scantling.plans.file_names import file_names, safe_stem
from scantling.plans.landed import four_totals, landed_lines
from scantling.plans.orders import order_table, pack_text
from scantling.plans.steps import kit_text, step_plans, total_minutes


@pytest.fixture(scope="module")
def plan():
    return plotter_plan()


def test_four_totals_add_up_to_the_cent(plan):
    totals = plan.totals
    # post: 17.20 + 3.60 + 4.10 + 19.60 + 11.70 + 15.80 + 2.30 = 74.30, tax 14.86, shipping 8.30; yard 8.70
    assert totals.outlay == 7430 + 1486 + 830 + 870 == 10616
    assert totals.used * 2 + totals.left == totals.outlay
    assert totals.next_builder == 8123


def test_value_used_in_one_machine_is_its_share_of_what_was_paid(plan):
    landed = {row.part: row.landed_minor for sheet in plan.orders for row in sheet.rows}
    rod, belt = 4 * 312_000, 2 * 718_000  # µm cut out of 2 × 1 m of rod and 2 m of belt
    used = landed["motor-17"] + landed["pulley-20"] + landed["ply-6"]
    used += Fraction(landed["rod-8-hardened"] * rod, 2_000_000) + Fraction(landed["belt-6"] * belt, 2_000_000)
    used += Fraction(landed["bushing-8-ball"] * 8, 12) + Fraction(landed["petg"] * 116, 1000)
    used += Fraction(landed["M3 lock nut"] * 4, 50) + Fraction(landed["M3 washer"] * 16, 25)
    used += Fraction(landed["M3x10 socket head screw"] * 8, 10) + Fraction(landed["M3x16 socket head screw"] * 4, 10)
    assert plan.totals.used == pytest.approx(float(used / 2), abs=0.5)


PART = st.sampled_from(["a", "b", "c"])


@given(
    lines=st.lists(
        st.tuples(PART, st.integers(1, 9), st.integers(1, 50), st.integers(0, 5000)), min_size=1, max_size=8
    ),
    shipping=st.integers(0, 3000),
    share=st.fractions(0, 1),
    copies=st.integers(1, 6),
    rate=st.sampled_from([Fraction(1), Fraction(17, 10), Fraction(2, 3)]),
)
def test_totals_add_up_whatever_is_bought(lines, shipping, share, copies, rate):
    rows = [line(f"o{k}", part, packs, pack, price) for k, (part, packs, pack, price) in enumerate(lines)]
    foreign = order("v", rows, 7, shipping, rate=rate, home=round(sum(r.goods_minor for r in rows) * rate) + shipping)
    bought = {part: sum(r.packs * r.pack for r in rows if r.part == part) for part in "abc"}
    supplies = [Supply(p, "piece", int(n * share), 0, 0, n) for p, n in bought.items() if n]
    purchase = Purchase((foreign,), tuple(supplies), (), "EUR")
    assert sum(amount for _, amount in landed_lines(foreign)) == foreign.home_minor
    totals = four_totals(purchase, copies, None)
    assert totals.used * copies + totals.left == totals.outlay == foreign.home_minor
    assert 0 <= totals.used * copies <= totals.outlay + copies


def test_what_was_in_hand_costs_nothing():
    in_hand = Supply("motor-17", "piece", 2, 0, 2, 0)
    assert four_totals(Purchase((), (in_hand,), (), "EUR"), 2, None).used == 0


def test_orders_show_lines_sums_and_dates(plan):
    post, yard = plan.orders
    assert dict(post.sums) == {"goods": "74.30 EUR", "tax": "14.86 EUR", "shipping": "8.30 EUR", "total": "97.46 EUR"}
    assert (post.title, post.lead_days, post.arrives.isoformat()) == ("Parts by post", 6, "2026-03-08")
    assert yard.rows[0].pack_text == "board 600 × 300 mm"
    table = order_table(post, "EUR")
    assert {len(row) for row in table} == {len(table[0])}
    assert [row[4] for row in table if row[2] == "rod-8-hardened"] == ["2"]
    assert plan.dates.deciding == tuple(sorted(row.part for row in post.rows))


def test_packs_in_words():
    assert pack_text(line("o", "x", 1, 100, 5)) == "100 pieces"
    assert pack_text(line("o", "x", 1, 1, 5)) == "1 piece"
    assert pack_text(line("o", "x", 1, 3, 5, "length", bar=1_000_000)) == "3 bars of 1000 mm"
    assert pack_text(line("o", "x", 1, 750, 5, "g")) == "750 g"


def test_foreign_totals_are_shown_at_home_too():
    case = plotter_case()
    build = reference_build(case, 2)
    purchase = hand_purchase(case, build)
    foreign = order("post", purchase.orders[0].lines, 0, 0, "USD", Fraction(9, 10), 6687)
    from scantling.plans.orders import order_sheets

    (sheet,) = order_sheets(case, Purchase((foreign,), (), (), "EUR"))
    assert sheet.sums[-2:] == (("total", "74.30 USD"), ("total in EUR", "66.87 EUR"))


def test_dates_without_a_day_of_ordering():
    case = plotter_case(order_on=None)
    dates = purchase_dates(case.project.workshop, hand_purchase(case, reference_build(case, 2)))
    assert (dates.lead_days, dates.ready) == (6, None)


def test_marks_along_a_bar_count_facing_and_kerf(plan):
    belt, rod = plan.bars
    assert [piece.ends_um for piece in belt.pieces] == [718_000, 1_436_000]
    # 312 finished, faced 0.5 mm at both ends, kerf 1.2 mm: 313, then 313 + 1.2 + 313
    assert [piece.ends_um for piece in rod.pieces] == [313_000, 627_200]
    assert rod.pieces[0].places == ("x-rod",)
    for bar in plan.bars:
        assert bar.bar_um - bar.pieces[-1].ends_um - bar.kerf_um == bar.left_um


def test_a_bar_as_it_comes_is_not_cut():
    case = plotter_case()
    build = reference_build(case, 2)
    whole = Cut("rod-8-hardened", "o", 312_000, ((312_000, 1),), 4, 0, whole=True)
    (bar,) = bar_plans(case, build, Purchase((), (), (whole,), "EUR"))
    assert (bar.pieces[0].rough_um, bar.kerf_um) == (312_000, 0)


def test_holes_by_bit_pilots_first_then_the_smallest(plan):
    order_ = [(one.stage, one.bit) for one in plan.drills]
    assert order_ == [("pilot", "2"), ("size", "3.5"), ("open", "4.5"), ("size", "8"), ("size", NO_BIT)]
    pilot, screws = plan.drills[0], plan.drills[1]
    assert pilot.letters == ("A1", "A2", "A3", "A4", "C1", "C2")
    assert (screws.count, screws.for_all) == (8, 16)  # four screws, two panels in a machine, two machines
    assert screws.error_mm == pytest.approx(0.1)
    assert screws.points[0] == pytest.approx((45 - 15.5, 58 - 15.5))


def test_marks_are_one_letter_for_a_purpose_and_size():
    case = plotter_case()
    reader = case.reader(reference_build(case, 1))
    assert hole_letters(reader.derive(sheet_holes, "panel")) == ("A1", "A2", "A3", "A4", "B1", "C1", "C2")
    assert [mark_letter(k) for k in (0, 7, 8, 13, 23, 24, 24 * 25)] == ["A", "H", "J", "P", "Z", "AA", "AAA"]


@given(st.integers(0, 20_000), st.integers(0, 20_000))
def test_letters_never_repeat(first, second):
    assert (mark_letter(first) == mark_letter(second)) == (first == second)


def test_an_empty_place_is_not_drilled():
    case = plotter_case()
    build = reference_build(case, 1).replacing({Key("part", "panel"): ""})
    assert drill_lines(case.reader(build), "panel", 1) == ()


def test_the_parts_list_counts_pieces_lengths_grams_and_panels(plan):
    lines = {line_.reference: line_ for line_ in plan.parts}
    assert [line_.item for line_ in plan.parts] == list(range(1, len(plan.parts) + 1))
    assert (lines["ply-6"].quantity, lines["ply-6"].for_all, lines["ply-6"].unit) == (2, 4, "panel")
    assert lines["rod-8-hardened"].designation == "rod-8-hardened, 312 mm long"
    assert lines["petg"].unit == "g"
    assert lines["M3 washer"].quantity == 8  # four under the motor, two on each of two pen clamps
    assert lines["M3 washer"].remarks == "for joint motor-to-panel, joint pen-clamp"


def test_prints_carry_their_band(plan):
    (one,) = plan.prints
    assert (one.mesh, one.plastic, one.count, one.for_all) == ("meshes/carriage.stl", "PETG", 1, 2)
    assert one.estimate.mass_kg.low < one.estimate.mass_kg.value < one.estimate.mass_kg.high


def test_steps_carry_their_kits_in_the_order_of_work(plan):
    steps = step_plans(plan)
    assert [step.id for step in steps] == ["motor", "carriage", "rods", "belt"]
    assert kit_text(steps[0].kit) == "1 × ply-6, 1 × motor-17, 4 × M3x10 socket head screw, 4 × M3 washer"
    assert steps[2].results == ("motor panel", "carriage")
    assert total_minutes(steps) == 70
    used = sum(item.count for step in steps for item in step.kit if item.part == "M3 washer")
    assert used == 8


def test_kits_count_equal_parts_together(plan):
    kit = step_plans(plan)[1].kit
    assert kit_text([*kit, *kit]).startswith("2 × carriage-block")
    assert total_minutes(()) is None


@pytest.mark.parametrize(
    ("text", "safe"),
    [
        ("=SUM(A1)", "'=SUM(A1)"),
        ("+49 30", "'+49 30"),
        ("-x", "'-x"),
        ("@cmd", "'@cmd"),
        ("  =1", "'  =1"),
        ("\t=1", "'\t=1"),
        ("-0.1", "-0.1"),
        ("+3,5", "+3,5"),
        ("1-2", "1-2"),
        ("", ""),
    ],
)
def test_cells_that_a_spreadsheet_would_run_are_made_harmless(text, safe):
    # Source: the usual advice against formula injection in CSV: = + - @, also behind blanks (from memory)
    assert safe_cell(text) == safe


CELL = st.text(st.characters(blacklist_categories=("Cs",), blacklist_characters="\x00\r"), max_size=12)


@given(st.lists(st.lists(CELL, min_size=2, max_size=2), min_size=1, max_size=5))
def test_tables_read_back_as_they_were(rows):
    text = csv_bytes(rows).decode(ENCODING)
    read = list(csv.reader(io.StringIO(text, newline="")))
    assert read == [[safe_cell(cell) for cell in row] for row in rows]
    assert csv_bytes(rows).startswith(b"\xef\xbb\xbf")


@given(st.lists(st.text(max_size=20), max_size=6))
def test_file_names_are_safe_and_never_alike(idents):
    names = file_names(idents, ".csv")
    assert len({name.casefold() for name in names}) == len(idents)
    for name in names:
        assert not set(name) & set('/\\:*?"<>|\0\n')
        assert name not in (".csv", "..csv")
        assert not name.startswith(".")
        assert name.partition(".")[0].casefold() not in ("con", "nul", "aux", "prn", "com1")


def test_file_names_keep_what_they_can():
    assert file_names(["y rod", "Y-rod", "../etc/passwd", "con"], ".pdf") == [
        "y-rod.pdf",
        "Y-rod-2.pdf",
        "etc-passwd.pdf",
        "con-1.pdf",
    ]
    assert safe_stem("Größe") == "Größe"
