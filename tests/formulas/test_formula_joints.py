"""Threads under load, joints, resolution and moves."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.formulas import joints, kinematics, resolution, threads

COARSE = {"M2.5": 0.45, "M3": 0.5, "M4": 0.7, "M5": 0.8, "M6": 1.0, "M8": 1.25, "M10": 1.5}


@pytest.mark.outside
def test_stress_areas_and_loads_of_bolts(evidence):
    # Source: ISO 898-1 as printed in two published bolt tables; loads are the printed area times 580, 830, 970 and 800
    #   N/mm², rounded by the tables by up to 0.6 %
    for row in evidence("bolt_loads"):
        area = float(row["stress_area_mm2"])
        ours = threads.metric_stress_area_mm2(float(row["size"][1:]), COARSE[row["size"]])
        digits = len(row["stress_area_mm2"].partition(".")[2])
        assert ours == pytest.approx(area, abs=0.51 * 10**-digits), row["size"]
        for column, stress in (
            ("proof_8_8_n", 580),
            ("proof_10_9_n", 830),
            ("proof_12_9_n", 970),
            ("ultimate_8_8_n", 800),
        ):
            assert threads.proof_load_n(area, stress) == pytest.approx(float(row[column]), rel=0.0065), row["size"]


@pytest.mark.outside
@pytest.mark.parametrize(
    ("major_in", "per_inch", "printed_mm2"),
    # Source: ASME B1.1 stress areas as printed in two published thread tables, in mm²
    [
        (0.25, 20, 20.53),
        (0.25, 28, 23.47),
        (0.3125, 18, 33.83),
        (0.3125, 24, 37.46),
        (0.375, 16, 49.99),
        (0.375, 24, 56.66),
    ],
)
def test_unified_stress_areas(major_in, per_inch, printed_mm2):
    area = threads.unified_stress_area_mm2(25.4 * major_in, 25.4 / per_inch)
    assert area == pytest.approx(printed_mm2, abs=0.05)


@pytest.mark.outside
def test_thread_lengths():
    # Source: machine design textbook eq. 8-14, 2d + 6 up to 125 mm, + 12 to 200 mm, + 25 above; M5 16 mm
    assert threads.bolt_thread_length_mm(5, 60) == 16
    assert threads.bolt_thread_length_mm(8, 150) == 28
    assert threads.bolt_thread_length_mm(8, 250) == 41
    assert threads.bolt_thread_length_mm(8, 12) == 12
    assert threads.cap_screw_thread_length_mm(5, 60) == 22
    assert threads.cap_screw_thread_length_mm(5, 12) == 12


@pytest.mark.outside
def test_engagement_rules():
    # Source: an electronics workmanship manual: 1 d in hard metal, 1.5 d in aluminium, never less than 3 threads
    assert threads.engagement_needed_mm(3, 0.5, threads.STEEL_ENGAGEMENT_RATIO) == 3
    assert threads.engagement_needed_mm(3, 0.5, threads.ALUMINIUM_ENGAGEMENT_RATIO) == 4.5
    assert threads.engagement_needed_mm(3, 0.5, 0.2) == 1.5


@pytest.mark.outside
def test_protrusion_rule():
    # Source: a fastener maker's page on protruding threads: at least one pitch beyond the nut
    length = joints.length_for_nut_mm(12, 4.7, 0.8, joints.LEAST_PROTRUSION_RATIO)
    assert joints.protrusion_mm(length, 12, 4.7) == pytest.approx(0.8)


def test_seen_faults():
    # trade stories: M5x30 could not catch its nut where 32 was needed; a screw 1 mm too long bottoms in a motor
    assert joints.protrusion_mm(30, 26.5, 4.7) < 0 < joints.protrusion_mm(32, 26.5, 4.7)
    assert joints.room_below_mm(8, 4, 4.5) == 0.5
    assert joints.room_below_mm(9, 4, 4.5) < 0
    # a lock nut for a plain nut: 2 mm more
    assert joints.length_for_nut_mm(20, 4.0, 0.5, 1) - joints.length_for_nut_mm(20, 2.4, 0.5, 1) == pytest.approx(1.6)


@given(st.floats(4, 60), st.floats(2, 50), st.floats(2, 8), st.floats(4, 40))
def test_stacks_add_up(length, stack, nut, threaded):
    assert joints.protrusion_mm(length, stack, nut) + stack + nut == pytest.approx(length)
    inside = joints.thread_in_nut_mm(length, threaded, stack, nut)
    assert 0 <= inside <= nut + 1e-9
    if length >= stack + nut and threaded >= length:
        assert inside == pytest.approx(nut)
    assert joints.engagement_mm(length, stack, nut) <= nut


def test_what_a_clearance_hole_forgives():
    # floating and fixed fastener rule: M3 in 3.6, 0.6 mm loose, 0.3 mm into an insert
    assert joints.forgiveness_mm(3.6, 3, 2) == pytest.approx(0.6)
    assert joints.forgiveness_mm(3.6, 3, 1) == pytest.approx(0.3)
    assert joints.countersink_depth_mm(6.72, 3.0, 90) == pytest.approx(1.86)


@pytest.mark.parametrize(
    ("lead", "full_step_um", "full_steps"),
    # calculated by hand for 200 steps: travel of a full step and full steps in a layer of 0.2 mm
    [
        (Fraction(4, 5), 4.0, 50),
        (Fraction(1), 5.0, 40),
        (Fraction(5, 4), 6.25, 32),
        (Fraction(127, 90), 7.06, 28.35),
        (Fraction(127, 100), 6.35, 31.5),
        (Fraction(2), 10, 20),
        (Fraction(8), 40, 5),
    ],
)
def test_full_steps_of_screws(lead, full_step_um, full_steps):
    step = resolution.full_step_mm(lead, 200)
    assert float(step) * 1000 == pytest.approx(full_step_um, abs=0.005)
    assert float(resolution.full_steps_in_ratio(Fraction(1, 5), step)) == pytest.approx(full_steps, abs=0.005)
    assert resolution.microstep_mm(lead, 200, 16) * 16 == step


def test_travel_of_the_invented_machine():
    # rods free 332, carriage 134 over all, 18 for stops, switch and tensioner: 180; X: 242 - 54 - 8
    assert resolution.travel_mm(332, 134, 18) == 180
    assert resolution.travel_mm(242, 54, 8) == 180


@pytest.mark.outside
def test_way_to_speed():
    # Source: a published planner's figure, 300 mm/s at 3000 mm/s² takes 15 mm each way
    assert kinematics.distance_to_speed_mm(300, 3000) == 15


@given(st.floats(0.1, 1000), st.floats(1, 500), st.floats(100, 10000))
def test_moves_cover_their_distance(distance, speed, acceleration):
    peak = kinematics.peak_speed_mm_s(distance, speed, acceleration)
    time = kinematics.move_time_s(distance, speed, acceleration)
    cruise = time - 2 * peak / acceleration
    assert cruise >= -1e-9
    assert peak * cruise + peak**2 / acceleration == pytest.approx(distance)
    assert 2 * kinematics.distance_to_speed_mm(peak, acceleration) <= distance * (1 + 1e-9)
    assert kinematics.move_time_s(0.0, speed, acceleration) == 0
