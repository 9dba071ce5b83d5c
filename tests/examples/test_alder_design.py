"""Alder is as large as a real machine, and whole: every piece and every screw in exactly the steps that need it."""

from __future__ import annotations

from collections import Counter

from scantling.build.sizes import size
from scantling.build.steps import coverage, step_circle
from scantling.model.kinds import Printed, SheetStock
from scantling.tables.fastener_names import head_and_thread


def test_it_is_large(village):
    design = village.project.design
    assert len(design.places) >= 45
    assert sum(bool(place.stand_ins) for place in design.places.values()) >= 25
    assert len(design.joints) >= 40
    assert len(design.steps) >= 30
    assert len(design.chains) >= 5


def test_sheets_are_drawn_in_dxf_and_in_svg(village):
    design = village.project.design
    kinds = Counter(sheet.outline.rpartition(".")[2] for sheet in design.sheets.values())
    assert sum(kinds.values()) >= 5
    assert min(kinds["dxf"], kinds["svg"]) >= 3
    stocks = {name: village.part(design.places[name].reference.part) for name in design.sheets}
    assert all(isinstance(part, SheetStock) for part in stocks.values())


def test_holes_follow_motor_joints_and_rods(village):
    purposes = {hole.what.split(":")[0] for sheet in village.project.design.sheets.values() for hole in sheet.holes}
    assert {"joint", "y-motor.face", "y-rod.seat", "frame-rod.bore"} <= purposes


def test_printed_parts_have_meshes_of_both_kinds(village):
    printed = [part for part in village.project.design.parts.values() if isinstance(part, Printed)]
    kinds = Counter(variant.mesh.rpartition(".")[2] for part in printed for variant in part.meshes)
    assert len(printed) >= 8
    assert min(kinds["stl"], kinds["3mf"]) >= 4
    assert any(len(part.meshes) > 1 for part in printed)


def test_joints_use_many_threads_and_holds(village):
    joints = village.project.design.joints.values()
    assert {"M2.5", "M3", "M4", "M5", "M8"} <= {head_and_thread(joint.screw)[1] for joint in joints}
    assert {"socket", "button", "countersunk", "hexagon", "pan"} <= {head_and_thread(j.screw)[0] for j in joints}
    assert {"lock", "plain", None} <= {joint.into.nut for joint in joints}
    assert {"metal", "insert", "plastic"} <= {joint.into.holds for joint in joints}
    assert "two nuts" in {joint.locking for joint in joints}


def test_offers_are_many_in_both_workshops(village, harbour):
    for case in (village, harbour):
        shop = case.project.workshop
        assert len(shop.offers) >= 150
        assert len(shop.vendors) == 3
        assert any(offer.levels for offer in shop.offers)
    assert village.project.workshop.paper.size == "A4"
    assert harbour.project.workshop.paper.size == "Letter"
    assert {village.project.workshop.currency, harbour.project.workshop.currency} == {"EUR", "CAD"}
    sold_out = [offer.stock for offer in harbour.project.workshop.offers if offer.part == "supply-250"]
    assert sold_out == [0]


def uncovered(case, build) -> list[str]:
    """Places and joints of which the steps do not use exactly what there is."""
    return [
        f"{one.kind} {one.ident}: {one.used} of {one.needed}"
        for one in coverage(case.reader(build))
        if one.used != one.needed
    ]


def test_steps_use_every_piece_and_every_screw(village, reference, cheapest_sound, changed):
    assert step_circle(village.project.design) == ()
    for build in (
        reference,
        cheapest_sound,
        changed(reference, y_bushing="bushing-8-housed"),
        changed(reference, bed_glass="spring-steel"),
    ):
        assert uncovered(village, build) == []


def test_steps_warn_where_it_hurts(village):
    steps = village.project.design.steps.values()
    cautions = " ".join(step.caution for step in steps if step.caution)
    assert "competent person" in cautions
    assert "clamp the board" in cautions
    assert "Hot bed" in cautions
    measured = [step for step in steps if any(figure in step.check for figure in ("mm", "°", "ohm", "N"))]
    assert len(measured) >= 20


def test_boards_stand_where_the_readme_says(village, reference):
    reader = village.reader(reference)
    wanted_mm = {  # the design, 9 mm of sheet
        "y-free": 332,
        "y-rod-stick-out": 1,
        "gusset-to-back": 83,
        "bed-plate-height": 104,
        "y-rod.length": 352,
        "x-rod.length": 326,
        "z-rod.length": 250,
        "frame-rod.length": 384,
        "z-screw.length": 235,
        "y-idler to y-pulley": 330,
        "x-idler to x-pulley": 310,
    }
    assert {text: round(size(reader, text).value, 6) for text in wanted_mm} == wanted_mm
