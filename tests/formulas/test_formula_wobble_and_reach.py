"""Wobble of screws, soft couplers, reach and end switches, against a frame library, tables and published examples."""

from __future__ import annotations

from fractions import Fraction
from math import cos, pi, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.formulas import couplers, motors, power_screws, reach, resolution, wobble
from scantling.formulas.kinematics import distance_to_speed_mm

LENGTH_MM, MODULUS_MPA, SECOND_MM4 = 240.0, 205_000.0, 44.918
HELD = [("pinned", "pinned"), ("clamped", "free"), ("clamped", "pinned"), ("pinned", "clamped"), ("clamped", "clamped")]
_SUPPORT = {"clamped": (True, True), "pinned": (True, False), "free": (False, False)}
places = st.floats(0.05, 0.95)


def library_sag_mm(low: str, top: str, at_mm: float, force_n: float) -> float:
    """Return how far an independent frame library bends such a beam at its load."""
    model = pytest.importorskip("Pynite").FEModel3D()
    for name, x_mm in (("low", 0.0), ("nut", at_mm), ("top", LENGTH_MM)):
        model.add_node(name, x_mm, 0, 0)
    model.add_material("steel", MODULUS_MPA, 79_000, 0.3, 7.85e-9)
    model.add_section("round", 24.0, SECOND_MM4, SECOND_MM4, 2 * SECOND_MM4)
    for first, second in (("low", "nut"), ("nut", "top")):
        model.add_member(first + second, first, second, "steel", "round")
    for name, end in (("low", low), ("top", top)):
        across, turn = _SUPPORT[end]
        model.def_support(name, name == "low", across, across, name == "low", turn, turn)
    model.add_node_load("nut", "FY", -force_n)
    model.analyze_linear()
    return -model.nodes["nut"].DY["Combo 1"]


@pytest.mark.outside
@pytest.mark.parametrize(("low", "top"), HELD)
@pytest.mark.parametrize("share", [0.2, 0.5, 0.8])
def test_sideways_stiffness_is_that_of_a_frame_library(low, top, share):
    # Source: the Python library PyNiteFEA 3.2 (MIT)
    sag_mm = library_sag_mm(low, top, share * LENGTH_MM, 10.0)
    ours = wobble.sideways_stiffness_n_mm(low, top, share * LENGTH_MM, LENGTH_MM, MODULUS_MPA, SECOND_MM4)
    assert ours == pytest.approx(10.0 / sag_mm, rel=1e-4)


@pytest.mark.outside
@pytest.mark.parametrize(
    ("low", "top", "factor"),
    # Source: beam tables, load in the middle: F L³ / 48, 7 F L³ / 768 and F L³ / 192 over E I; at the tip F L³ / 3
    [("pinned", "pinned", 48), ("clamped", "pinned", 768 / 7), ("clamped", "clamped", 192)],
)
def test_sideways_stiffness_in_the_middle_is_that_of_beam_tables(low, top, factor):
    ours = wobble.sideways_stiffness_n_mm(low, top, LENGTH_MM / 2, LENGTH_MM, MODULUS_MPA, SECOND_MM4)
    assert ours == pytest.approx(factor * MODULUS_MPA * SECOND_MM4 / LENGTH_MM**3)
    tip = wobble.sideways_stiffness_n_mm("clamped", "free", LENGTH_MM, LENGTH_MM, MODULUS_MPA, SECOND_MM4)
    assert tip == pytest.approx(3 * MODULUS_MPA * SECOND_MM4 / LENGTH_MM**3)


@given(places, st.floats(0.01, 2.0))
def test_a_bow_keeps_its_ends(share, bow):
    beside = {held: wobble.beside_mm(*held, bow, share * LENGTH_MM, LENGTH_MM) for held in HELD}
    assert 0 <= beside["pinned", "pinned"] <= bow * (1 + 1e-12)
    assert beside["clamped", "clamped"] == 0  # clamped ends straighten an even curve
    assert wobble.beside_mm("pinned", "free", bow, share * LENGTH_MM, LENGTH_MM) == 0  # follows the nut
    assert beside["clamped", "free"] <= 4 * bow
    assert 0 <= beside["clamped", "pinned"] < beside["pinned", "pinned"] + 1e-12
    mirrored = wobble.beside_mm("pinned", "clamped", bow, (1 - share) * LENGTH_MM, LENGTH_MM)
    assert mirrored == pytest.approx(beside["clamped", "pinned"])


def test_a_bow_held_at_one_end_and_led_at_the_other_by_superposition():
    # curvature 8 bow / L² from a clamped end, less the deflection by the reaction that leads the tip back (beam tables)
    bow, at = 0.4, 0.3 * LENGTH_MM
    curve = 8 * bow / LENGTH_MM**2
    reaction_over_ei = 3 * (curve * LENGTH_MM**2 / 2) / LENGTH_MM**3
    led = curve * at**2 / 2 - reaction_over_ei * at**2 * (3 * LENGTH_MM - at) / 6
    assert wobble.beside_mm("clamped", "pinned", bow, at, LENGTH_MM) == pytest.approx(abs(led))


@given(places, st.floats(0.0, 1.0), st.floats(0.0, 0.5), st.floats(1.0, 1e4), st.floats(1.0, 1e4))
def test_a_stiffer_guide_and_a_looser_seat_let_less_through(share, beside, give, screw, guide):
    found = wobble.transferred_mm(beside, give, screw, guide)
    assert 0 <= found <= beside
    assert wobble.transferred_mm(beside, give, screw, 2 * guide) <= found
    assert wobble.transferred_mm(beside, give + 0.1, screw, guide) <= found
    assert wobble.transferred_mm(beside, give, 0.0, guide) == 0


@pytest.mark.outside
def test_bow_of_a_foot():
    # Source: a published guide to lead screws: 0.010 in on a foot; on two feet an even curve has four times as much
    assert wobble.bow_mm(0.254 * (300 / 304.8) ** 2, 2 * 304.8) == pytest.approx(4 * 0.254)


@pytest.mark.outside
def test_modulus_of_tube_lies_in_the_published_band():
    # Source: a published table of materials: silicone tube of 50 to 78 Shore A has 2.1 to 4 MPa, the soft one least;
    #   and Ruess's rule as quoted, log10 E = 0.0235 · 30 - 0.6403 = 0.0647
    assert 2.1 < couplers.shore_modulus_mpa(50) < 4
    assert couplers.shore_modulus_mpa(30) == pytest.approx(10**0.0647)


@pytest.mark.outside
def test_winding_of_a_tube(unit_registry):
    # Source: the Python library pint 0.25 (BSD), the textbook's torsion T L / (G J) with units
    unit = unit_registry
    polar = pi / 32 * ((9 * unit.mm) ** 4 - (5 * unit.mm) ** 4)
    angle = 10 * unit.N * unit.mm * 8 * unit.mm / (6 / 3 * unit.MPa * polar)
    assert couplers.tube_winding_rad(10, 8, 9, 5, 6) == pytest.approx(angle.to("dimensionless").magnitude)
    way = angle.to("dimensionless").magnitude / (2 * pi) * 8
    assert couplers.turned_back_mm(couplers.tube_winding_rad(10, 8, 9, 5, 6), 8) == pytest.approx(way)


@pytest.fixture(scope="module")
def unit_registry():
    """The registry of units of an independent library."""
    return pytest.importorskip("pint").UnitRegistry()


@given(st.floats(1, 200), st.floats(0.1, 1.0), st.floats(2, 20))
def test_the_squeeze_of_a_band_is_that_of_its_small_pieces(pull, friction, diameter):
    # a band under a pull F presses with F over each radian: the sum of 1000 small pieces, each the two pulls' resultant
    pieces = 1000
    one = 2 * pull * sin(pi / pieces)
    assert couplers.clamped_slip_nmm(pull, friction, diameter) == pytest.approx(
        friction * pieces * one * diameter / 2, rel=1e-4
    )
    assert cos(pi / pieces) == pytest.approx(1, abs=1e-5)


class TestSteps:
    @pytest.mark.outside
    def test_a_published_inch_screw(self):
        # Source: a maker's note: 3/8 in screw of twelve threads to the inch, 200 steps, 16 micro-steps: 0.010583 mm a
        #   full step, 94.48818897637 full steps a millimetre, 1511.811024 with micro-steps, stored as 1511.81: 0.128
        #   micro-step on 125 mm; layers of whole full steps begin at 0.03175 mm
        lead = Fraction(254, 120)
        step = resolution.full_step_mm(lead, 200)
        assert float(step) == pytest.approx(0.010583, abs=1e-6)
        assert float(1 / step) == pytest.approx(94.48818897637, abs=1e-10)
        exact = 3200 / lead
        assert float(exact) == pytest.approx(1511.811024, abs=1e-6)
        out_mm = power_screws.rounded_way_mm(exact, Fraction("1511.81"), 125)
        assert abs(out_mm) * float(exact) == pytest.approx(0.128, abs=0.001)
        assert resolution.full_steps_in_ratio(Fraction("0.03175"), step) == 3

    @pytest.mark.outside
    def test_a_published_metric_rod(self):
        # Source: a maker's note: M4 rod of 0.7 mm on a motor of 48 steps: 0.0145833 mm a step, layers of 0.04375 mm
        step = resolution.full_step_mm(Fraction(7, 10), 48)
        assert float(step) == pytest.approx(0.0145833, abs=1e-7)
        assert 3 * step == Fraction("0.04375")

    def test_a_metric_rod_under_inch_steps_goes_wrong_by_its_ratio(self):
        # M6 in place of 1/4-20 with the old number left in: 1 mm asked for is 1/1.27 of a millimetre
        assert power_screws.rounded_way_mm(Fraction(3200), Fraction(320_000, 127), 100) == pytest.approx(
            100 / 1.27 - 100
        )

    def test_rest_positions_repeat_every_four_full_steps(self):
        assert motors.cycle_mm(0.04) == pytest.approx(0.16)  # 8 mm of lead, 200 steps


class TestReach:
    @given(st.floats(-50, 50), st.floats(50, 300), st.floats(0, 30), st.floats(100, 300), st.floats(0, 30))
    def test_it_is_never_more_than_travel_or_free_bed(self, start, travel, low, over, high):
        found = reach.reached_mm(start, travel, low, over, high)
        assert 0 <= found <= min(travel, max(0.0, over - low - high)) + 1e-9
        assert reach.lost_by_place_mm(start, travel, low, over, high) >= -1e-9

    def test_it_is_the_count_of_places_on_a_fine_grid(self):
        start, travel, low, over, high = -12.0, 190.0, 7.0, 200.0, 9.0
        grid = [place / 100 for place in range(-5000, 30_000)]
        free = [p for p in grid if start <= p <= start + travel and low <= p <= over - high]
        assert reach.reached_mm(start, travel, low, over, high) == pytest.approx(len(free) / 100, abs=0.02)

    def test_home_positions_at_both_ends_are_a_travel_apart(self):
        low, high = (reach.home_offset_mm(end, -15.0, 210.0, 8.0) for end in ("low", "high"))
        assert (low, high - low) == (-23.0, 210.0)

    # Source: kinematics, v² / 2a: 50 mm/s at 1000 mm/s² stop in 1.25 mm
    @pytest.mark.outside
    def test_room_behind_a_switch(self):
        stopping = distance_to_speed_mm(50, 1000)
        assert stopping == pytest.approx(1.25)
        assert reach.switch_room_mm(3.0, 1.5, stopping) == pytest.approx(0.25)
