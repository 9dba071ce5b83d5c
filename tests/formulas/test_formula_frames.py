"""Frames, plates, heat and power."""

from __future__ import annotations

from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.formulas import frame, heat, plates, power
from scantling.formulas.sections import rectangle_second_moment_mm4

# the invented demonstration machine: portal 400 x 375, window 280 open at the foot, legs 60, crosspiece from 312 up,
# gussets 180 high: free leg 130; sway per 10 N as computed by hand for it
FREE_MM, LEG_MM = 130.0, 60.0
SHEETS = {
    "MDF 6": (6, 3_000, 1.13),
    "acrylic 5": (5, 3_000, 1.95),
    "plywood 6": (6, 7_000, 0.48),
    "MDF 9": (9, 3_000, 0.33),
    "plywood 8": (8, 7_000, 0.20),
    "plywood 9": (9, 7_000, 0.14),
    "aluminium 4": (4, 70_000, 0.16),
}


@pytest.mark.parametrize("sheet", SHEETS)
def test_sway_of_the_invented_portal(sheet):
    thickness, modulus, by_hand = SHEETS[sheet]
    sway = frame.leg_sway_mm(10, FREE_MM, LEG_MM, thickness, modulus, 2)
    assert sway == pytest.approx(by_hand, abs=0.006)


def grid_frame():
    """The same portal as a space frame in an independent program: legs, crosspiece and foot as plates on edge."""
    from Pynite import FEModel3D

    model = FEModel3D()
    model.add_material("ply", 7_000.0, 600.0, 0.3, 0.0)
    weak, strong = rectangle_second_moment_mm4(LEG_MM, 9), rectangle_second_moment_mm4(9, LEG_MM)
    model.add_section("leg", LEG_MM * 9, strong, weak, 4 * weak)
    beam_weak, beam_strong = rectangle_second_moment_mm4(63, 9), rectangle_second_moment_mm4(9, 63)
    model.add_section("beam", 63 * 9.0, beam_strong, beam_weak, 4 * beam_weak)
    for side, x in (("L", 0.0), ("R", 340.0)):
        model.add_node(f"{side}0", x, 0.0, 0.0)
        model.add_node(f"{side}1", x, FREE_MM, 0.0)
        model.def_support(f"{side}0", True, True, True, True, True, True)
        model.add_member(f"leg{side}", f"{side}0", f"{side}1", "ply", "leg", rotation=90.0)
    model.add_member("beam", "L1", "R1", "ply", "beam", rotation=90.0)
    return model


@pytest.mark.outside
@pytest.mark.parametrize("direction", ["FZ", "FX"])
def test_portal_against_a_frame_program(direction):
    # Source: the Python library PyNiteFEA 3.2 (MIT), a space frame of two legs and a crosspiece
    model = grid_frame()
    for node in ("L1", "R1"):
        model.add_node_load(node, direction, 5.0)
    model.analyze_linear()
    sway = max(abs(getattr(model.nodes[node], "D" + direction[1])["Combo 1"]) for node in ("L1", "R1"))
    weak, strong = rectangle_second_moment_mm4(LEG_MM, 9), rectangle_second_moment_mm4(9, LEG_MM)
    candidates = {
        "FZ": frame.leg_sway_mm(10, FREE_MM, LEG_MM, 9, 7_000, 2),
        "FX": frame.portal_sway_mm(10, FREE_MM, 340, strong, rectangle_second_moment_mm4(9, 63), 7_000),
    }
    assert weak < strong
    assert sway == pytest.approx(candidates[direction], rel=0.03)


def test_limits_of_the_portal_formula():
    # a stiff crosspiece: two clamped-guided legs, F h³ / 24 E I; a limp one: two cantilevers, F h³ / 6 E I
    assert frame.portal_sway_mm(24, 10, 10, 1, 1e12, 1_000) == pytest.approx(1.0)
    assert frame.portal_sway_mm(6, 10, 10, 1, 1e-12, 1_000) == pytest.approx(1.0)


def test_joints_soften():
    second_moment = rectangle_second_moment_mm4(LEG_MM, 9)
    softer = frame.joint_softening_ratio(1e6, 7_000, second_moment, FREE_MM)
    stiffer = frame.joint_softening_ratio(1e7, 7_000, second_moment, FREE_MM)
    assert frame.JOINT_SOFTENING_LOW_RATIO < stiffer < softer < frame.JOINT_SOFTENING_HIGH_RATIO
    # by hand: root turns F L / k, tip moves L times that
    force, stiff = 5.0, frame.leg_sway_mm(10, FREE_MM, LEG_MM, 9, 7_000, 2)
    assert stiff * softer == pytest.approx(stiff + force * FREE_MM**2 / 1e6)


@given(st.floats(1, 20), st.floats(1, 20), st.floats(50, 400), st.floats(50, 400))
def test_thicker_and_shorter_legs_sway_less(a, b, c, d):
    thin, thick = sorted((a, b))
    short, long = sorted((c, d))
    sway = frame.leg_sway_mm(10, long, 60, thin, 7_000, 2)
    assert frame.leg_sway_mm(10, long, 60, thick, 7_000, 2) <= sway
    assert frame.leg_sway_mm(10, short, 60, thin, 7_000, 2) <= sway


@pytest.mark.outside
def test_plate_coefficients_of_the_handbook(evidence):
    # Source: handbook of stress and strain, table 11.4 cases 1a and 1b, ν 0.3, y = α q b⁴ / E t³ and α W b² / E t³; it
    #   differs from the exact series by up to 0.5 %, so 1 % is allowed
    rigidity = plates.plate_rigidity_nmm(1, 1, 0.3)
    for row in evidence("plates"):
        ratio = float(row["sides_ratio"])
        formula = plates.supported_plate_sag_mm if row["load"] == "uniform" else plates.supported_plate_point_sag_mm
        assert formula(1, 1, ratio, rigidity) == pytest.approx(float(row["coefficient"]), rel=0.01), row


@pytest.mark.outside
def test_plate_coefficients_of_the_series():
    # Source: plate theory textbook, k q a⁴ / D: supported square 0.00406, point load 0.01160, and 0.1106 and 0.1804 in
    #   the handbook's form for sides 2 : 1, recomputed independently
    assert plates.supported_plate_sag_mm(1, 1, 1, 1) == pytest.approx(0.00406, abs=5e-6)
    assert plates.supported_plate_point_sag_mm(1, 1, 1, 1) == pytest.approx(0.01160, abs=5e-6)
    rigidity = plates.plate_rigidity_nmm(1, 1, 0.3)
    assert plates.supported_plate_sag_mm(1, 2, 1, rigidity) == pytest.approx(0.1106, abs=5e-5)
    assert plates.supported_plate_point_sag_mm(1, 2, 1, rigidity) == pytest.approx(0.1804, abs=1e-4)


@pytest.mark.outside
def test_plate_frequency():
    # Source: plate theory, supported square, λ = ω a² √(ρ h / D) = 2 π² = 19.739
    rigidity = plates.plate_rigidity_nmm(10, 210_000, 0.3)
    frequency = plates.supported_plate_frequency_hz(1000, 1000, rigidity, 10, 7800)
    assert frequency * 2 * 3.14159265 * 1000**2 * (7800e-12 * 10 / rigidity) ** 0.5 == pytest.approx(19.739, abs=5e-4)


@pytest.mark.outside
def test_warm_up_of_a_plate():
    # Source: energy balance of a 220 x 220 x 3 mm aluminium plate (2700 kg/m³, 897 J/kg K), 220 W, 80 K, recomputed
    #   independently: 0.3920 kg, 127.9 s without loss; 10 W/m² K on both faces: rise 227.3 K, 157.6 s, holding 77.4 W
    mass_kg = 2700e-9 * 220 * 220 * 3
    assert mass_kg == pytest.approx(0.3920, abs=5e-5)
    capacity = heat.heat_capacity_j_k(mass_kg, 897)
    assert heat.warm_up_s(220, capacity, 0, 80) == pytest.approx(127.9, abs=0.05)
    loss = heat.plate_loss_w_k(2 * 220 * 220, 10)
    assert heat.highest_rise_k(220, loss) == pytest.approx(227.3, abs=0.05)
    assert heat.warm_up_s(220, capacity, loss, 80) == pytest.approx(157.6, abs=0.05)
    assert heat.holding_power_w(loss, 80) == pytest.approx(77.4, abs=0.05)


@pytest.mark.parametrize(("watts", "minutes"), [(80, 11.6), (120, 6.5), (150, 4.9)])
def test_warm_up_of_the_invented_bed(watts, minutes):
    # 539 J/K, 0.70 W/K, 90 °C from a room of 22 °C
    assert heat.warm_up_s(watts, 539, 0.70, 90 - 22) / 60 == pytest.approx(minutes, abs=0.05)


@given(st.floats(10, 500), st.floats(100, 2000), st.floats(0.1, 3), st.floats(1, 100))
def test_warm_up_and_rise_are_inverse(watts, capacity, loss, rise):
    seconds = heat.warm_up_s(watts, capacity, loss, rise)
    if seconds < 1e5:
        assert heat.rise_after_k(watts, capacity, loss, seconds) == pytest.approx(rise, rel=1e-6)
    assert (seconds == inf) == (heat.holding_power_w(loss, rise) >= watts)
    assert seconds >= heat.warm_up_s(watts, capacity, 0, rise) * (1 - 1e-9)
    assert heat.warm_up_s(watts, capacity, loss, -1) == 0
    assert heat.rise_after_k(watts, capacity, 0, 10) == pytest.approx(watts * 10 / capacity)


def test_supplies_of_the_invented_machine():
    # bed 120, head 40, motors 18, rest 8, a quarter on top: 232 W, so 250; with 150 W bed 270, so 350
    assert power.supply_needed_w((120, 40, 18, 8), 0.25) == pytest.approx(232.5)
    assert power.supply_needed_w((150, 40, 18, 8), 0.25) == pytest.approx(270)
    assert power.supply_margin_ratio(200, (120, 40, 18, 8)) == pytest.approx(0.07)
    # 120 W at 12 V: 10 A and 1.2 Ω; at 24 V half the current and four times the resistance
    assert power.current_a(120, 12) == 10
    assert power.resistance_ohm(120, 12) == 1.2
    assert power.resistance_ohm(120, 24) == 4.8
