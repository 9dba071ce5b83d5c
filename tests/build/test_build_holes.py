"""Holes of sheets, their bits, and what makes a drawing another one."""

from __future__ import annotations

from dataclasses import replace
from math import hypot, sqrt

import pytest

from scantling.build.bits_at_hand import best_bit, bits_at_hand, drilling_steps
from scantling.build.holes import entry_holes, sheet_drawing, sheet_holes, sheet_outline
from scantling.build.missing import NotDescribedError
from scantling.model.workshop import Workshop
from scantling.shapes.outline import Circle, Outline, rectangle_loop
from scantling.tables.bits import bit, bit_set

SHEET = "back-panel"


def holes_of(reader, purpose: str):
    return [hole for hole in reader.derive(sheet_holes, SHEET) if hole.purpose == purpose]


@pytest.mark.outside
@pytest.mark.parametrize(("motor", "side_mm"), [("motor-flat", 31.0), ("motor-small", 26.0)])
def test_the_square_follows_the_motor(read, motor, side_mm):
    # Source: published table of motor faces: frame 17 has a square of 31.0 mm (1.220 in); frame 14 of 26 mm from memory
    screws = holes_of(read(parts={"y-motor": motor}), "clearance")
    assert len(screws) == 4
    assert {round(hypot(h.x_mm - 60, h.y_mm - 40), 4) for h in screws} == {round(side_mm / sqrt(2), 4)}
    first, second = screws[0], screws[1]
    assert hypot(first.x_mm - second.x_mm, first.y_mm - second.y_mm) == pytest.approx(side_mm, abs=1e-5)


def test_a_turned_square_stands_on_its_corner(read):
    points = {(h.x_mm, h.y_mm) for h in holes_of(read(), "clearance")}
    assert (60.0, 40 + round(31 / sqrt(2), 6) - 0.0) in {(x, round(y, 6)) for x, y in points}
    straight = read({f"sheets.{SHEET}.holes": [{"for": "y-motor.face", "at": ["60 mm", "40 mm"]}]})
    assert {(h.x_mm, h.y_mm) for h in holes_of(straight, "clearance")} == {
        (44.5, 24.5),
        (75.5, 24.5),
        (75.5, 55.5),
        (44.5, 55.5),
    }


def test_the_collar_clears_and_no_bit_at_hand_makes_it(read):
    (collar,) = holes_of(read(), "collar")
    assert (collar.diameter_mm, collar.least_mm, collar.bit, collar.steps) == (22.5, 22.0, None, ())


def test_clearance_holes_take_the_bit_at_hand_that_is_nearest_but_never_too_small(read):
    # ISO 273 M3: close 3.2, medium 3.4
    assert {h.bit for h in holes_of(read(), "clearance")} == {"3.4"}
    metric = holes_of(read(workshop={"bits": ["metric 0.5"]}), "clearance")[0]
    assert (metric.bit, metric.error_mm) == ("3.5", pytest.approx(0.1))
    inch = holes_of(read(workshop={"bits": ["inch fraction"]}), "clearance")[0]
    assert (inch.bit, inch.error_mm) == ("9/64", pytest.approx(3.571875 - 3.4))  # 1/8 in = 3.175 is too small
    none = holes_of(read(workshop={"bits": ["3 mm", "2 mm"]}), "clearance")[0]
    assert (none.bit, none.bit_mm, none.error_mm) == (None, None, None)


def test_a_seat_follows_the_rod(read):
    assert [(h.x_mm, h.y_mm, h.diameter_mm, h.bit) for h in holes_of(read(), "seat")] == [
        (20, 20, 8.0, "8"),
        (100, 20, 8.0, "8"),
    ]
    inch = holes_of(read(parts={"y-rod": "rod-516"}), "seat")[0]
    assert (inch.diameter_mm, inch.bit, inch.error_mm) == (7.9375, "8", pytest.approx(0.0625))


def test_a_seat_is_never_narrower_than_what_goes_in(read):
    wide = read({"parts.rod-8.diameter": "8 mm ± 0.2 mm"})
    assert holes_of(wide, "seat")[0].least_mm == pytest.approx(8.2)
    assert holes_of(wide, "seat")[0].bit == "8.5"


def test_a_joint_has_clearance_where_it_passes_and_a_thread_where_it_is_held(read):
    entry = {"for": "joint:motor-to-panel", "at": ["30 mm", "60 mm"]}
    passed = read({f"sheets.{SHEET}.holes": [entry]}).derive(sheet_holes, SHEET)[0]
    assert (passed.purpose, passed.diameter_mm) == ("clearance", 3.4)
    kinds = {}
    for holds in ("metal", "panel", "plastic", "insert"):
        into = {"place": SHEET, "depth": "9 mm", "holds": holds}
        changes = {f"sheets.{SHEET}.holes": [entry], "joints.motor-to-panel.into": into}
        found = read(changes).derive(sheet_holes, SHEET)[0]
        kinds[holds] = (found.purpose, round(found.diameter_mm, 3))
    # ISO 2306 tap drill 2.5; pilot 0.85 to 0.9 of 3 mm; hole for an insert 4.0
    assert kinds == {
        "metal": ("tapping", 2.5),
        "panel": ("pilot", 2.625),
        "plastic": ("pilot", 2.625),
        "insert": ("insert", 4.0),
    }


@pytest.mark.parametrize(
    ("fit", "diameter_mm"), [("clearance fine", 3.2), ("clearance coarse", 3.6), ("tapping", 2.5), ("pilot", 2.625)]
)
def test_a_fit_that_is_said_wins(read, fit, diameter_mm):
    entry = {"for": "joint:motor-to-panel", "at": ["30 mm", "60 mm"], "fit": fit}
    assert read({f"sheets.{SHEET}.holes": [entry]}).derive(sheet_holes, SHEET)[0].diameter_mm == pytest.approx(
        diameter_mm
    )


def test_a_joint_that_falls_away_leaves_no_hole(read):
    entry = {"for": "joint:holder-to-bed", "at": ["30 mm", "60 mm"]}
    changes = {f"sheets.{SHEET}.holes": [entry]}
    assert len(read(changes).derive(sheet_holes, SHEET)) == 1
    assert read(changes, parts={"y-bearing": "block"}).derive(sheet_holes, SHEET) == ()


def test_an_empty_place_leaves_no_hole(read):
    changes = {f"sheets.{SHEET}.holes": [{"for": "bed-heater.seat", "at": ["30 mm", "60 mm"]}]}
    assert read(changes, parts={"bed-heater": ""}).derive(sheet_holes, SHEET) == ()


def test_a_bearing_s_seat_is_its_outside(read):
    changes = {f"sheets.{SHEET}.holes": [{"for": "y-bearing.seat", "at": ["30 mm", "60 mm"]}]}
    assert read(changes).derive(sheet_holes, SHEET)[0].diameter_mm == 15.0


def test_holes_of_one_entry_read_only_what_it_is_for(read):
    whole = read().derive(sheet_holes, SHEET)
    seats = read()
    found = seats.derive(entry_holes, SHEET, 1)
    assert [replace(hole, web_mm=None) for hole in whole if hole.purpose == "seat"] == list(found)
    assert {key.subject for key in seats.trail} == {"y-rod"}


def test_positions_are_sizes_and_slots_are_longer_than_wide(read):
    entry = {
        "diameter": "5 mm",
        "at": ["2 * back-panel.thickness", "30 mm"],
        "slot": "back-panel.thickness",
        "slot-turn": "90 deg",
    }
    hole = read({f"sheets.{SHEET}.holes": [entry]}).derive(sheet_holes, SHEET)[0]
    assert (hole.x_mm, hole.y_mm, hole.slot_mm, hole.slot_turn_deg) == (18, 30, 9, 90)
    thinner = read({f"sheets.{SHEET}.holes": [entry]}, parts={SHEET: "ply-6"}).derive(sheet_holes, SHEET)[0]
    assert (thinner.x_mm, thinner.slot_mm) == (12, 6)


def test_distances_to_edges_and_between_holes(read):
    # the sheet is 120 x 90
    typed = holes_of(read(), "typed")[0]
    assert typed.edge_mm == 10
    seats = holes_of(read(), "seat")
    assert seats[0].edge_mm == 20
    two = [{"diameter": "5 mm", "at": ["30 mm", "60 mm"]}, {"diameter": "8 mm", "at": ["40 mm", "60 mm"]}]
    webs = [h.web_mm for h in read({f"sheets.{SHEET}.holes": two}).derive(sheet_holes, SHEET)]
    assert webs == pytest.approx([3.5, 3.5])
    alone = read({f"sheets.{SHEET}.holes": two[:1]}).derive(sheet_holes, SHEET)[0]
    assert alone.web_mm is None


def test_a_hole_outside_the_sheet_is_told_by_its_distance(read):
    entry = {"diameter": "5 mm", "at": ["130 mm", "60 mm"]}
    assert read({f"sheets.{SHEET}.holes": [entry]}).derive(sheet_holes, SHEET)[0].edge_mm == pytest.approx(-10)


def test_a_window_is_an_edge(read):
    framed = Outline(rectangle_loop(120.0, 90.0), (rectangle_loop(30.0, 30.0, at=(70.0, 50.0)),))
    entry = {"diameter": "5 mm", "at": ["64 mm", "60 mm"]}
    reader = read({f"sheets.{SHEET}.holes": [entry]}, outlines={SHEET: framed})
    assert reader.derive(sheet_holes, SHEET)[0].edge_mm == pytest.approx(6)


def test_circles_of_the_outline_are_holes_unless_an_entry_is_for_them(read):
    drawn = Outline(rectangle_loop(120.0, 90.0), (Circle((110.0, 70.0), 2.5), Circle((20.0, 70.0), 3.0)))
    found = read(outlines={SHEET: drawn}).derive(sheet_holes, SHEET)
    circles = [h for h in found if h.purpose == "drawn"]
    assert [(h.x_mm, h.y_mm, h.diameter_mm, h.bit) for h in circles] == [(20, 70, 6.0, "6")]
    assert next(h for h in found if h.purpose == "typed").edge_mm == 10


def test_an_outline_lies_with_its_lower_left_corner_at_the_origin(read):
    outline = sheet_outline(read(), SHEET)  # the file's is shifted by (5, 5)
    assert outline is not None
    box = outline.extents
    assert (box.x_min_mm, box.y_min_mm, box.x_max_mm, box.y_max_mm) == (0, 0, 120, 90)


def test_without_an_outline_edges_are_not_known_and_nothing_is_drawn(read):
    reader = read(outlines={})
    assert {h.edge_mm for h in reader.derive(sheet_holes, SHEET)} == {None}
    assert reader.derive(sheet_drawing, SHEET) is None


def test_a_drawing_is_touched_by_what_it_shows_and_by_nothing_else(read):
    before = read().derive(sheet_drawing, SHEET)
    assert before is not None
    assert before.holes
    for untouched in ({"y-pulley": "pulley-16"}, {"y-bearing": "bushing-polymer"}, {"bed-heater": "heater-120"}):
        assert read(parts=untouched).derive(sheet_drawing, SHEET) == before
    for touched in ({"y-motor": "motor-small"}, {"y-rod": "rod-516"}, {SHEET: "ply-6"}):
        assert read(parts=touched).derive(sheet_drawing, SHEET) != before
    assert read(workshop={"bits": ["metric 0.5"]}).derive(sheet_drawing, SHEET) != before


@pytest.mark.parametrize(
    ("entry", "need"),
    [
        ({"for": "y-motor.collar", "at": ["1 mm", "1 mm"]}, "parts.motor-flat.sizes.collar"),
        ({"for": "bed.face", "at": ["1 mm", "1 mm"]}, "places.bed"),
        ({"for": "joint:none", "at": ["1 mm", "1 mm"]}, "joints.none"),
        ({"for": "nothing.seat", "at": ["1 mm", "1 mm"]}, "sheets.back-panel.holes"),
        ({"for": "joint:motor-to-panel", "at": ["1 mm", "1 mm"], "fit": "loose-ish"}, "a fit that is known"),
        ({"for": "joint:motor-to-panel", "at": ["1 mm", "1 mm"], "fit": "clearance wild"}, "a hole for M3"),
        ({"for": "y-motor.face", "at": ["bed.width", "1 mm"]}, "parts.plate.sizes.width"),
    ],
)
def test_what_a_hole_lacks_is_named(read, entry, need):
    with pytest.raises(NotDescribedError) as caught:
        read({f"sheets.{SHEET}.holes": [entry]}).derive(sheet_holes, SHEET)
    assert any(need in one for one in caught.value.needs)


def test_bits_of_a_workshop():
    shop = Workshop.model_validate(
        {"name": "x", "currency": "EUR", "bits": ["3.4 mm", "metric 0.5", "17/64", "no bit", "3.4"]}
    )
    bits = bits_at_hand(shop)
    assert [b.diameter_mm for b in bits] == sorted({b.diameter_mm for b in bits})
    assert {"3.4", "17/64", "13"} <= {b.name for b in bits}


def test_large_holes_are_opened_in_steps():
    bits = bit_set("metric 0.5")
    assert drilling_steps(bit("10"), bits) == ("2", "5.5", "10")
    assert drilling_steps(bit("4"), bits) == ("2", "4")
    assert drilling_steps(bit("1.5"), bits) == ("1", "1.5")
    assert drilling_steps(bit("1"), bits) == ("1",)
    assert drilling_steps(bit("10"), (bit("10"),)) == ("10",)


def test_the_best_bit_keeps_both_limits():
    bits = bit_set("metric 0.5")
    assert best_bit(4.2, 4.0, 4.4, bits) == bit("4")
    assert best_bit(4.2, 4.1, 4.4, bits) is None
    assert best_bit(4.25, 4.0, None, bits) == bit("4")  # the smaller of two equally near
