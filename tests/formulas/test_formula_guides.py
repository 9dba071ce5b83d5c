"""Rods held partly, carriages off the middle, guides held too often, the best of a lot."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.formulas import beams, binding, carriages, held_beams, holders, selection
from scantling.formulas.sections import round_second_moment_mm4

STEEL_MPA = 205_000.0
SPAN_MM = 332.0
ROD_MM4 = round_second_moment_mm4(8)
shares = st.floats(0.02, 0.98)
fixities = st.floats(0.0, 1.0)


def frame_of(turning_nmm_rad: float):
    """A rod of 8 mm in an independent frame program, its ends on springs against turning; mm and N."""
    from Pynite import FEModel3D

    model = FEModel3D()
    model.add_material("steel", STEEL_MPA, STEEL_MPA / 2.6, 0.3, 0.0)
    model.add_section("rod", 1e9, ROD_MM4, ROD_MM4, 2 * ROD_MM4)
    for name, x in (("A", 0.0), ("B", SPAN_MM)):
        model.add_node(name, x, 0.0, 0.0)
        model.def_support(name, True, True, True, True, False, False)
        model.def_support_spring(name, "RZ", turning_nmm_rad)
    model.add_member("M", "A", "B", "steel", "rod")
    return model


@pytest.mark.outside
@pytest.mark.parametrize("turning_nmm_rad", [1e4, 3.7e5, 5e6])
@pytest.mark.parametrize(("load_at", "seen_at"), [(0.5, 0.5), (0.3, 0.5), (0.3, 0.2), (0.7, 0.9), (0.2, 0.7)])
def test_rods_held_partly_against_a_frame_program(turning_nmm_rad, load_at, seen_at):
    # Source: the Python library PyNiteFEA 3.2 (MIT), a beam on two supports with springs against turning
    model = frame_of(turning_nmm_rad)
    model.add_member_pt_load("M", "Fy", -20.0, load_at * SPAN_MM)
    model.analyze_linear()
    theirs = -model.members["M"].deflection("dy", seen_at * SPAN_MM)
    fixity = held_beams.fixity_ratio(turning_nmm_rad, SPAN_MM, STEEL_MPA, ROD_MM4)
    places = load_at * SPAN_MM, seen_at * SPAN_MM
    ours = held_beams.held_sag_at_mm(20.0, *places, SPAN_MM, STEEL_MPA, ROD_MM4, fixity)
    assert ours == pytest.approx(theirs, rel=1e-3)


@pytest.mark.outside
def test_a_lone_bushing_against_a_frame_program():
    # Source: the Python library PyNiteFEA 3.2 (MIT): one rod with a load of 7.2 N, one with two of 3.6 N 110 mm apart
    centre, tool, spacing = 76.0, SPAN_MM / 2, 110.0
    places = (centre - spacing / 2, centre + spacing / 2)
    lone, pair = frame_of(1e-3), frame_of(1e-3)
    lone.add_member_pt_load("M", "Fy", -7.2, centre)
    for place in places:
        pair.add_member_pt_load("M", "Fy", -3.6, place)
    for model in (lone, pair):
        model.analyze_linear()
    low, high = (-pair.members["M"].deflection("dy", place) for place in places)
    theirs = -lone.members["M"].deflection("dy", centre) + (high - low) / spacing * (tool - centre)
    ours = carriages.lone_drop_mm(7.2, centre, tool, spacing, SPAN_MM, STEEL_MPA, ROD_MM4, 0.0)
    assert ours == pytest.approx(theirs, rel=1e-3)


@pytest.mark.outside
@pytest.mark.parametrize(("fixity", "sag"), [(0.0, 0.6470), (1.0, 0.1617)])
def test_both_ends_of_the_range_are_those_of_the_tables(fixity, sag):
    # Source: structural analysis tables, P L³ / 48 E I and P L³ / 192 E I, d 8, L 400, 20 N, E 205 GPa
    ours = held_beams.held_sag_at_mm(20, 200, 200, 400, STEEL_MPA, ROD_MM4, fixity)
    assert ours == pytest.approx(sag, abs=6e-5)


@given(shares, shares)
def test_the_ends_of_the_range_agree_anywhere(a, x):
    places = a * SPAN_MM, x * SPAN_MM
    beam = SPAN_MM, STEEL_MPA, ROD_MM4
    assert held_beams.held_sag_at_mm(10, *places, *beam, 0.0) == pytest.approx(
        beams.supported_sag_at_mm(10, *places, *beam)
    )
    clamped = beams.clamped_sag_at_mm(10, *places, *beam)
    assert held_beams.held_sag_at_mm(10, *places, *beam, 1.0) == pytest.approx(clamped, rel=1e-6, abs=1e-12)


@given(shares, shares, fixities)
def test_slope_is_the_derivative_of_the_sag(a, x, fixity):
    beam = SPAN_MM, STEEL_MPA, ROD_MM4, fixity
    load, seen, step = a * SPAN_MM, x * SPAN_MM, 1e-3
    rise = held_beams.held_sag_at_mm(10, load, seen + step, *beam) - held_beams.held_sag_at_mm(
        10, load, seen - step, *beam
    )
    assert held_beams.held_slope_at_rad(10, load, seen, *beam) == pytest.approx(rise / 2 / step, abs=1e-7)


@given(shares, fixities, fixities)
def test_firmer_ends_sag_less(a, one, other):
    loose, firm = sorted((one, other))
    place = a * SPAN_MM
    sag = [held_beams.held_sag_at_mm(10, place, place, SPAN_MM, STEEL_MPA, ROD_MM4, r) for r in (loose, firm)]
    assert 0 < sag[1] <= sag[0] * (1 + 1e-9)
    stiff = held_beams.held_stiffness_n_mm(place, SPAN_MM, STEEL_MPA, ROD_MM4, firm)
    assert stiff == pytest.approx(10 / sag[1])


def test_fixity_goes_from_nothing_to_all():
    assert held_beams.fixity_ratio(0, SPAN_MM, STEEL_MPA, ROD_MM4) == 0
    assert held_beams.fixity_ratio(1e15, SPAN_MM, STEEL_MPA, ROD_MM4) == pytest.approx(1)


@pytest.mark.outside
def test_a_long_stub_is_a_beam_on_an_elastic_foundation():
    # Source: beam on an elastic foundation, end slope of a half-endless beam under an end moment 4 M λ³ / k
    #   (Hetényi); solved here by finite differences as an independent computation
    numpy = pytest.importorskip("numpy")
    bed, length, n = 1328.0, 200.0, 4000
    h = length / n
    rigidity = STEEL_MPA * ROD_MM4
    matrix = numpy.zeros((n + 5, n + 5))
    right = numpy.zeros(n + 5)
    for row in range(n + 1):
        matrix[row, row : row + 5] = [1, -4, 6 + bed * h**4 / rigidity, -4, 1]
    for row, node, moment in ((n + 1, 2, 1.0), (n + 2, n + 2, 0.0)):
        matrix[row, node - 1 : node + 2] = [1, -2, 1]
        right[row] = moment * h**2 / rigidity
    for row, node in ((n + 3, 2), (n + 4, n + 2)):
        matrix[row, node - 2 : node + 3] = [-1, 2, 0, -2, 1]
    sag = numpy.linalg.solve(matrix, right)
    slope = (sag[3] - sag[1]) / 2 / h
    ours = holders.gripped_turning_nmm_rad(bed, length, STEEL_MPA, ROD_MM4)
    assert ours == pytest.approx(abs(1 / slope), rel=5e-3)


def test_a_short_stub_is_rigid_in_its_springs():
    # k s³ / 12: springs of 100 N/mm² over 10 mm, by hand
    assert holders.gripped_turning_nmm_rad(100, 10, STEEL_MPA, ROD_MM4) == pytest.approx(100 * 1000 / 12)
    assert holders.gripped_turning_nmm_rad(0, 10, STEEL_MPA, ROD_MM4) == 0


@pytest.mark.parametrize(("offset", "level", "stacked"), [(0, 0.5, 0.5), (30, 0.7, 0.5385), (-30, 0.7, 0.5385)])
def test_rods_share_a_load_that_lies_off_the_middle(offset, level, stacked):
    # moments about one rod, 150 mm apart, and the resultant of half the weight and e / b of it: by hand
    assert carriages.side_by_side_share_ratio(offset, 150) == pytest.approx(level)
    assert carriages.stacked_share_ratio(offset, 150) == pytest.approx(stacked, abs=1e-4)


@pytest.mark.outside
def test_forces_of_rods_out_of_parallel_against_a_frame_program():
    # Source: the Python library PyNiteFEA 3.2 (MIT): supports of a rod at both bushings moved by 0.1 mm, reactions read
    centre, spacing = 140.0, 110.0
    beam = centre, spacing, SPAN_MM, STEEL_MPA, ROD_MM4, 0.0
    for moves, formula in (((0.1, 0.1), "shift_stiffness_n_mm"), ((0.1, -0.1), "twist_stiffness_n_mm")):
        from Pynite import FEModel3D

        model = FEModel3D()
        model.add_material("steel", STEEL_MPA, STEEL_MPA / 2.6, 0.3, 0.0)
        model.add_section("rod", 1e9, ROD_MM4, ROD_MM4, 2 * ROD_MM4)
        xs = (0.0, centre - spacing / 2, centre + spacing / 2, SPAN_MM)
        for name, x in zip("ABCD", xs, strict=True):
            model.add_node(name, x, 0.0, 0.0)
            model.def_support(name, name == "A", True, True, True, False, False)
        for name, move in zip("BC", moves, strict=True):
            model.def_node_disp(name, "DY", move)
        for near, far in ("AB", "BC", "CD"):
            model.add_member(near + far, near, far, "steel", "rod")
        model.analyze_linear()
        first, second = (model.nodes[name].RxnFY["Combo 1"] for name in "BC")
        theirs = first + second if moves[0] == moves[1] else (first - second) / 2
        ours = 0.1 * getattr(binding, formula)(binding.pair_compliances_mm_n(*beam))
        assert ours == pytest.approx(theirs, rel=1e-3)


@pytest.mark.outside
def test_turning_of_a_rod_at_a_bushing_against_a_frame_program():
    # Source: the Python library PyNiteFEA 3.2 (MIT): a unit moment at the middle one of three supports
    from Pynite import FEModel3D

    model = FEModel3D()
    model.add_material("steel", STEEL_MPA, STEEL_MPA / 2.6, 0.3, 0.0)
    model.add_section("rod", 1e9, ROD_MM4, ROD_MM4, 2 * ROD_MM4)
    for name, x in (("A", 0.0), ("B", 50.0), ("C", 160.0)):
        model.add_node(name, x, 0.0, 0.0)
        model.def_support(name, name == "A", True, True, True, False, False)
    model.def_support_spring("A", "RZ", 4e5)
    model.add_member("AB", "A", "B", "steel", "rod")
    model.add_member("BC", "B", "C", "steel", "rod")
    model.add_node_load("B", "MZ", 1000.0)
    model.analyze_linear()
    theirs = 1000.0 / model.nodes["B"].RZ["Combo 1"]
    fixity = held_beams.fixity_ratio(4e5, 50.0, STEEL_MPA, ROD_MM4)
    assert binding.bushing_turning_nmm_rad(50, 110, STEEL_MPA, ROD_MM4, fixity) == pytest.approx(theirs, rel=1e-3)


@pytest.mark.outside
@pytest.mark.parametrize(
    ("length", "factor"),
    # Source: a bushing maker's table of equivalent factors of single bushings (1/mm), for rods of 6, 8, 10, 12, 16, 20
    #   mm; of the European lengths 8, 12, 16 mm
    [
        (19, 0.553),
        (24, 0.442),
        (29, 0.389),
        (30, 0.389),
        (37, 0.279),
        (42, 0.257),
        (25, 0.514),
        (32, 0.389),
        (36, 0.343),
    ],
)
def test_what_a_moment_does_to_balls(length, factor):
    assert binding.moment_load_n(1.0, length, 11.0) == pytest.approx(factor, rel=0.15)


def test_what_play_takes_is_not_forced():
    assert binding.squeeze_n(0.02, 0.03, 100, 100) == 0
    assert binding.forced_moment_nmm(0.001, 0.002, 1e6, 1e6) == 0
    assert binding.binding_drag_n(0, 0, 4, 0, 24, 0.25) == 0


# Source: published tables of expected normal order statistics (Harter 1961): largest of 2, 3, 5, 10, 20; second and
#   third of 10; half the expected range, as control charts use it (1.128, 1.693, 2.326, 3.078, 3.735 / 2)
@pytest.mark.outside
@pytest.mark.parametrize(
    ("rank", "size", "mean"),
    [
        (2, 2, 0.56419),
        (3, 3, 0.84628),
        (5, 5, 1.16296),
        (10, 10, 1.53875),
        (9, 10, 1.00136),
        (8, 10, 0.65606),
        (20, 20, 1.86748),
    ],
)
def test_expected_order_statistics(rank, size, mean):
    assert selection.normal_order_mean(rank, size) == pytest.approx(mean, abs=6e-6)
    assert selection.normal_order_mean(size + 1 - rank, size) == pytest.approx(-mean, abs=6e-6)


@pytest.mark.outside
def test_expected_range_of_five():
    # Source: published documentation of a statistics program, its constant d2 of five: 2.3259289473
    assert 2 * selection.normal_order_mean(5, 5) == pytest.approx(2.3259289473, abs=1e-8)


def test_order_statistics_agree_with_sampling():
    numpy = pytest.importorskip("numpy")
    draws = numpy.sort(numpy.random.default_rng(5).normal(10, 3, (200_000, 15)), axis=1)
    assert selection.worst_of_best_um(10, 3, 12, 15) == pytest.approx(draws[:, 11].mean(), abs=0.02)


def test_picking_from_more_gives_less_play():
    plays = [selection.worst_of_best_um(10, 3, 12, 12 + spares) for spares in range(6)]
    assert plays == sorted(plays, reverse=True)
    assert plays[0] - plays[-1] > 3


@pytest.mark.outside
def test_spares_of_a_class():
    # Source: binomial distribution, worked by hand for a workshop: 12 machines of 12 bushings, 10 % bad: a pool of 23
    #   spares gives 95 %, each machine for itself needs 5 (60 in all); for one machine 3 give 94 %
    assert selection.spares_for(144, 0.1, 0.95) == 23
    assert selection.enough_ratio(12, 17, 0.1) ** 12 == pytest.approx(0.95, abs=0.01)
    assert selection.enough_ratio(12, 15, 0.1) == pytest.approx(0.944, abs=5e-4)
    scipy_stats = pytest.importorskip("scipy.stats")
    assert selection.enough_ratio(12, 15, 0.1) == pytest.approx(scipy_stats.binom.sf(11, 15, 0.9))


def test_spares_are_worth_what_running_short_costs():
    worth = [selection.spares_worth(12, 0.1, 190, loss) for loss in (0, 500, 2000, 20_000)]
    assert worth == sorted(worth)
    assert worth[0] == 0 < worth[-1]
    assert selection.spares_for(3, 0.999, 0.99) is None
    for rank in (0, 4):
        with pytest.raises(ValueError, match="there is no number"):
            selection.uniform_order_mean_ratio(rank, 3)
        with pytest.raises(ValueError, match="there is no number"):
            selection.normal_order_mean(rank, 3)


def test_the_median_of_an_odd_number_is_the_mean():
    assert selection.normal_order_mean(3, 5) == pytest.approx(0, abs=1e-9)
    assert selection.uniform_order_mean_ratio(3, 5) == 0.5
