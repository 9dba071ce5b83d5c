"""Gets, masses, totals and what a machine takes."""

from __future__ import annotations

from math import pi

import pytest

from scantling.build.demand import Need, machine_needs, place_needs
from scantling.build.gets import gets_of, plastic_of
from scantling.build.masses import MOVING_MASS, piece_mass, place_mass
from scantling.build.meshes import mesh_choice, print_estimate
from scantling.build.missing import MissingFigureError, NotDescribedError
from scantling.build.rails import RAIL_POWER
from scantling.build.reader import Reader
from scantling.build.reference import carry_over, reference_build
from scantling.build.totals import read_total, term_units, total_needs
from scantling.model.build import Key
from scantling.quantities import Grade
from scantling.shapes.mesh import MeshFacts

CUBE = MeshFacts("cube", 12, 2400.0, (0.0, 0.0, 0.0), (20.0, 20.0, 20.0), 1, True, 8000.0)
MESHES = {"block-8.stl": CUBE, "block-10.stl": CUBE}
BLOCK = {"parts.block.mass": None}


# -- how parts are got


@pytest.mark.parametrize(
    ("place", "part", "gets"),
    [
        ("y-rod", "rod-8", ("cut",)),
        ("z-screw", "tr8x8", ("cut",)),
        ("y-belt", "belt-6", ("cut",)),
        ("front-panel", "ply-9", ("made",)),
        ("bed", "plate", ("bought",)),
        ("bed", "ply-9", ("bought",)),  # not a sheet place: the board itself is used
        ("bed", "rod-8", ("bought",)),  # no length at this place
        ("y-bearing", "block", ("printed PETG",)),
    ],
)
def test_ways_of_getting_a_part(make_case, place, part, gets):
    project = make_case().project
    assert gets_of(project, place, project.design.parts[part]) == gets


def test_plastics_are_those_of_part_bed_and_filaments_in_the_parts_order(make_case):
    both = {"parts.pla": {"kind": "filament", "plastic": "PLA"}}
    assert make_case(both).gets("y-bearing", "block") == ("printed PLA", "printed PETG")
    assert make_case(both, workshop={"print-bed.plastics": ["PETG"]}).gets("y-bearing", "block") == ("printed PETG",)
    assert make_case(workshop={"print-bed": None}).gets("y-bearing", "block") == ("bought",)


@pytest.mark.parametrize("where", ["offers", "stock"])
def test_a_printed_part_that_is_offered_can_be_bought_too(make_case, where):
    entry = {"offers": {"vendor": "yard", "part": "block", "price": "4"}, "stock": {"part": "block", "quantity": "2"}}
    assert make_case(workshop={where: [entry[where]]}).gets("y-bearing", "block") == ("printed PETG", "bought")


def test_the_plastic_of_a_get():
    assert (plastic_of("printed PETG"), plastic_of("bought")) == ("PETG", None)


# -- masses


@pytest.mark.parametrize(
    ("place", "part", "mass_g"),
    [
        # steel 7850 kg/m3: 8 mm round, 329 mm long
        ("y-rod", "rod-8", pi / 4 * 64 * 329 * 7.85e-3),
        # M6 by its pitch diameter 5.350, 235 mm long
        ("z-screw", "m6-rod", pi / 4 * 5.3505**2 * 235 * 7.85e-3),
        ("y-belt", "belt-6", 0.8 * 8),
        # 120 x 90 x 9 mm of 680 kg/m3
        ("front-panel", "ply-9", 120 * 90 * 9 * 0.68e-3),
        ("bed", "plate", 300),
        ("y-bearing", "bushing-ball", 16),
    ],
)
def test_masses_of_pieces(read, place, part, mass_g):
    assert read(parts={place: part}).derive(piece_mass, place).value * 1000 == pytest.approx(mass_g, rel=1e-3)


def test_a_closed_belt_weighs_what_its_teeth_make(read):
    assert read({"parts.belt-6.closed-teeth": "200"}).derive(piece_mass, "y-belt").value == pytest.approx(0.4 * 8e-3)


def test_a_place_weighs_its_pieces_and_what_they_bring(read):
    assert read().derive(place_mass, "y-bearing").value == pytest.approx(0.048)
    block = read(parts={"y-bearing": "block"}).derive(place_mass, "y-bearing")
    assert 0.083 < block.value < 0.085  # two of 40 g and four M3x12 of about 1 g each
    assert read(parts={"y-bearing": "block"}).derive(place_mass, "y-holder").value == 0


def test_windows_of_a_sheet_do_not_weigh(read, make_case):
    from scantling.shapes.outline import Outline, rectangle_loop

    framed = Outline(rectangle_loop(120.0, 90.0), (rectangle_loop(60.0, 45.0, at=(10.0, 10.0)),))
    reader = read(outlines={"front-panel": framed})
    assert reader.derive(piece_mass, "front-panel").value == pytest.approx(120 * 90 * 9 * 0.68e-6 * 0.75)


def test_a_mass_that_is_usual_is_marked(read):
    figure = read({"parts.ply-9.density": None}).derive(piece_mass, "front-panel")
    assert figure.grade is Grade.TYPICAL
    assert figure.low < figure.value < figure.high


@pytest.mark.parametrize(
    ("changes", "place", "need"),
    [
        ({"parts.plate.mass": None}, "bed", "parts.plate.mass"),
        ({"parts.rod-8.material": "unobtainium"}, "y-rod", "parts.rod-8.material"),
        ({"parts.ply-9.density": None, "parts.ply-9.material": "soap"}, "front-panel", "parts.ply-9.density"),
    ],
)
def test_a_mass_that_is_not_known_is_named(read, changes, place, need):
    with pytest.raises(NotDescribedError) as caught:
        read(changes).derive(piece_mass, place)
    assert caught.value.needs[0].startswith(need)


# -- printed parts


def test_a_printed_part_is_walls_and_infill(read):
    # cube of 20: skin 3 walls of 0.45 on 2400 mm2 = 3240, a fifth of the other 4760: 4192 mm3 of 1.27 mg each
    reader = read(BLOCK, parts={"y-bearing": "block"}, meshes=MESHES)
    found = reader.derive(print_estimate, "y-bearing")
    assert found.mass_kg.value == pytest.approx(4192 * 1.27e-6)
    assert (found.mass_kg.low, found.mass_kg.high) == pytest.approx((4192 * 0.85 * 1.27e-6, 4192 * 1.15 * 1.27e-6))
    assert (found.fits_bed, found.time_s, found.plastic) == (True, None, "PETG")


def test_thick_walls_fill_a_small_part(read):
    changes = {**BLOCK, "parts.block.walls": "20"}
    found = read(changes, parts={"y-bearing": "block"}, meshes=MESHES).derive(print_estimate, "y-bearing")
    assert found.mass_kg.high == pytest.approx(8000 * 1.27e-6)


def test_the_time_follows_the_beds_rate(read):
    reader = read(BLOCK, parts={"y-bearing": "block"}, meshes=MESHES, workshop={"print-bed.rate": "10 g/h"})
    found = reader.derive(print_estimate, "y-bearing")
    assert found.time_s is not None
    assert found.time_s.value == pytest.approx(found.mass_kg.value * 1000 / 10 * 3600)


@pytest.mark.parametrize(
    ("bed", "fits"),
    [(("30 mm", "19 mm", "50 mm"), False), (("20 mm", "30 mm", "20 mm"), True), (("30 mm", "30 mm", "19 mm"), False)],
)
def test_what_fits_the_bed(read, bed, fits):
    sides = dict(zip(("print-bed.width", "print-bed.depth", "print-bed.height"), bed, strict=True))
    reader = read(BLOCK, parts={"y-bearing": "block"}, meshes=MESHES, workshop=sides)
    assert reader.derive(print_estimate, "y-bearing").fits_bed is fits


def test_the_mesh_follows_the_chosen_parts(read):
    variants = [
        {"mesh": "block-10.stl", "suits": {"y-rod.diameter": "10 mm"}},
        {"mesh": "block-8.stl", "suits": {"y-rod.diameter": "8 mm"}},
    ]
    changes = {
        **BLOCK,
        "parts.block.meshes": variants,
        "parts.rod-10": {"kind": "rod", "diameter": "10 mm"},
        "parts.rod-6": {"kind": "rod", "diameter": "6 mm"},
        "places.y-rod.stand-ins": ["rod-10", "rod-6", "rod-516"],
    }
    chosen = {
        rod: read(changes, parts={"y-bearing": "block", "y-rod": rod}, meshes=MESHES).derive(mesh_choice, "y-bearing")
        for rod in ("rod-8", "rod-10", "rod-516", "rod-6")
    }
    assert {rod: v and v.mesh for rod, v in chosen.items()} == {
        "rod-8": "block-8.stl",
        "rod-10": "block-10.stl",
        "rod-516": "block-8.stl",
        "rod-6": None,
    }


def test_an_open_mesh_is_taken_as_its_walls(read):
    open_cube = MeshFacts("cube", 10, 2000.0, (0.0, 0.0, 0.0), (20.0, 20.0, 20.0), 1, False, None)
    reader = read(BLOCK, parts={"y-bearing": "block"}, meshes={"block-8.stl": open_cube})
    found = reader.derive(print_estimate, "y-bearing")
    assert found.volume_mm3 is None
    assert found.mass_kg.value == pytest.approx(2000 * 3 * 0.45 * 1.27e-6)
    assert found.mass_kg.high > 1.9 * found.mass_kg.value


def test_what_is_not_printed_has_no_mesh(read):
    with pytest.raises(NotDescribedError, match="a printed part"):
        read().derive(mesh_choice, "bed")


# -- totals


def test_the_moving_mass_is_the_sum_of_what_moves(read):
    # plate 300 ± 10, three bushings of 16, three holders of 9, cable 80 ± 20
    total = read_total(read(), "moving-mass", "axis y")
    assert total.value == pytest.approx(0.455)
    assert total.low < 0.425 < 0.485 < total.high
    assert read_total(read(), "moving-mass", "y") == total


def test_the_band_of_a_total_does_not_depend_on_the_build(read):
    totals = [read_total(read(parts={"y-bearing": b}), "moving-mass", "axis y") for b in ("bushing-ball", "block")]
    assert totals[0].high - totals[0].value == pytest.approx(totals[1].high - totals[1].value)
    assert totals[1].value == pytest.approx(0.38 + 0.084, abs=1e-3)


def test_what_is_only_estimated_marks_the_total(read):
    given = read_total(read(), "moving-mass", "axis y")
    printed = read_total(read(BLOCK, meshes=MESHES), "moving-mass", "axis y")  # two blocks of 5.3 g ± 15 % may stand in
    assert printed.value == given.value
    assert printed.grade is Grade.TYPICAL
    exact = {"places.y-bearing.stand-ins": ["bushing-polymer"]}
    assert read_total(read(exact), "moving-mass", "axis y").grade is Grade.GIVEN


def test_a_total_may_count_only_some_pieces(read):
    moves = ["bed", {"place": "y-bearing", "count": "2"}]
    assert read_total(read({"axes.y.moves": moves}), "moving-mass", "axis y").value == pytest.approx(0.332)
    many = ["bed", {"place": "y-bearing", "count": "2"}, {"place": "y-bearing", "count": "5"}]
    assert read_total(read({"axes.y.moves": many}), "moving-mass", "axis y").value == pytest.approx(0.348)


def test_a_trial_stands_for_the_sum(make_case):
    reader = Reader(make_case(), {}, {"moving-mass": 1.0})
    assert read_total(reader, "moving-mass", "axis y").value == pytest.approx(1.08)
    assert reader.trail == {}


def test_the_trial_at_the_true_sum_is_the_total(make_case):
    case = make_case()
    answers = reference_build(case).as_dict()
    for total in (MOVING_MASS, RAIL_POWER):
        for subject in total.subjects(case.project.design):
            reader = Reader(case, answers)
            units = sum(reader.derive(term_units, total.name, subject, p) for p in total.terms(reader.design, subject))
            trial = read_total(Reader(case, answers, {total.name: units / total.scale}), total.name, subject)
            assert trial == read_total(Reader(case, answers), total.name, subject)


def test_a_stand_in_without_a_mass_is_unknown_only_where_chosen(make_case):
    case = make_case({"parts.bushing-polymer.mass": None})
    assert total_needs(case, "moving-mass", "axis y") == ()
    build = reference_build(case)
    assert read_total(case.reader(build), "moving-mass", "axis y").value == pytest.approx(0.455)
    chosen = carry_over(case, build, {Key("part", "y-bearing"): "bushing-polymer"})
    with pytest.raises(MissingFigureError, match=r"parts\.bushing-polymer\.mass"):
        read_total(case.reader(chosen), "moving-mass", "axis y")


def test_a_place_that_nobody_weighed_is_not_described(make_case):
    case = make_case({"parts.plate.mass": None})
    assert total_needs(case, "moving-mass", "axis y") == ("parts.plate.mass",)
    for reader in (case.reader(reference_build(case)), Reader(case, {}, {"moving-mass": 1.0})):
        with pytest.raises(NotDescribedError) as caught:
            read_total(reader, "moving-mass", "axis y")
        assert not isinstance(caught.value, MissingFigureError)


def test_power_of_a_rail(read):
    # bed 80, motor 2 * 1 A^2 * 3.5 ohm at half duty = 3.5, head 40 ± 2
    total = read_total(read(), "rail-power", "rail main")
    assert (total.low, total.value, total.high) == pytest.approx((121.5, 123.5, 125.5))
    assert read_total(read(parts={"bed-heater": ""}), "rail-power", "rail main").value == pytest.approx(43.5)


def test_a_heater_on_another_voltage(read):
    # 80 W at 24 V on a 12 V rail: a quarter
    assert read_total(read({"rails.main.voltage": "12 V"}), "rail-power", "rail main").value == pytest.approx(63.5)


def test_a_peak_current_heats_half_as_much(read):
    changes = {"parts.motor-flat.current-basis": "peak"}
    assert read_total(read(changes), "rail-power", "rail main").value == pytest.approx(121.75)


def test_a_load_that_does_not_say_its_power_is_named(make_case):
    case = make_case({"rails.main.loads": [{"place": "bed"}]})
    assert total_needs(case, "rail-power", "rail main") == ("parts.plate.power",)


# -- what a machine takes


def test_needs_of_a_machine(read):
    needs = {(one.part, one.why): one for one in read().derive(machine_needs)}
    assert needs[("rod-8", "place y-rod")] == Need("rod-8", "length", 2, "place y-rod", length_um=329_000)
    assert needs[("belt-6", "place y-belt")].length_um == 800_000
    panel = needs[("ply-9", "place back-panel")]
    assert (panel.unit, panel.width_um, panel.height_um) == ("board-piece", 120_000, 90_000)
    assert needs[("bushing-ball", "place y-bearing")].amount == 3
    assert needs[("M3 washer", "joint motor-to-panel")].amount == 4
    assert not [one for one in needs.values() if one.amount <= 0]


def test_needs_of_a_stand_in_that_fills_and_brings(read):
    reader = read(BLOCK, parts={"y-bearing": "block"}, meshes=MESHES)
    own, screws = reader.derive(place_needs, "y-bearing")
    assert (own.part, own.unit, own.amount) == ("petg", "g", 11)  # two of 5.32 g, rounded up once
    assert (screws.part, screws.amount) == ("M3x12 socket head screw", 4)
    assert reader.derive(place_needs, "y-holder") == ()


@pytest.mark.parametrize(
    ("changes", "place", "need"),
    [({"places.y-rod.length": "bed.width"}, "y-rod", "parts.plate.sizes.width"), ({}, "lid", "sheets.lid.outline")],
)
def test_what_cannot_be_ordered_is_named(read, changes, place, need):
    lid = {"places.lid": {"reference": "ply-9"}, "sheets.lid": {"outline": "lid.dxf"}}
    with pytest.raises(NotDescribedError, match=need):
        read({**lid, **changes}).derive(place_needs, place)
