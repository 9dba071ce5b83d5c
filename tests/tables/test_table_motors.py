"""Classes of motors, their heat, and least idlers: motor_classes.csv, motor_heats.csv, belt_idlers.csv."""

from __future__ import annotations

import pytest

from scantling.tables.belt_profiles import belt_profile
from scantling.tables.csv_table import rows
from scantling.tables.motors import least_idler_mm, motor_class
from scantling.tables.sources import cite


def test_motor_classes_have_bands_in_order_and_grow_with_the_frame():
    frames = [motor_class(row["frame_size"]) for row in rows("motor_classes")]
    for one in frames:
        assert one.holding_low_nmm < one.holding_high_nmm
        for band in (one.rotor_kg_mm2, one.rise_k):
            assert 0 < band.low <= band.typical <= band.high
        assert cite(one.source)
    assert [one.holding_low_nmm for one in frames] == sorted(one.holding_low_nmm for one in frames)


def test_motor_heats_hold_the_same_frames():
    assert [row["frame_size"] for row in rows("motor_heats")] == [row["frame_size"] for row in rows("motor_classes")]


@pytest.mark.outside
def test_side_loads_are_those_of_a_makers_table():
    # Source: manual of a motor maker: size 17 bears 25 N at 5 mm from the tip, size 23 67 N
    small, large = motor_class("17").radial, motor_class("23").radial
    assert (small.limit_n, large.limit_n) == (25, 67)
    assert motor_class("14").radial is None


@pytest.mark.outside
def test_belt_idlers_are_those_of_a_makers_table():
    # Source: a belt maker's table, smooth idlers: MXL 18 and 15, 2.5 mm 18 and 18, XL and 5 mm 15 and 30 mm
    found = {row["profile"]: (float(row["inside_mm"]), float(row["back_mm"])) for row in rows("belt_idlers")}
    assert found == {
        "2.032 mm trapezoidal": (18, 15),
        "2.5 mm trapezoidal": (18, 18),
        "5 mm trapezoidal": (15, 30),
        "5.08 mm trapezoidal": (15, 30),
    }
    assert all(belt_profile(name).profile == name for name in found)
    assert least_idler_mm("2 mm round", True) is None
