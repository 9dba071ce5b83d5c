"""Limits of motion and class values of screws and tube, against published values."""

from __future__ import annotations

import pytest

from scantling.errors import LookUpError
from scantling.tables.csv_table import rows
from scantling.tables.motion_limits import motion_limit, screw_make, soft_tube
from scantling.tables.sources import cite


@pytest.mark.outside
def test_lead_screws_as_a_guide_to_them_prints():
    # Source: a published guide to lead screws: straight within 0.010 in on a foot, ground ones 0.001 in; lead within
    #   0.006 in on a foot
    make = screw_make("trapezoidal")
    assert make.bow_mm.high == pytest.approx(0.010 * 25.4 * 300 / 304.8, abs=0.001)
    assert make.bow_mm.low == pytest.approx(0.001 * 25.4 * 300 / 304.8, abs=0.001)
    assert make.lead_error_mm.high == pytest.approx(0.006 * 25.4 * 300 / 304.8, abs=0.001)


@pytest.mark.outside
def test_threaded_rod_is_as_straight_as_drawn_bar():
    # Source: EN 10278 as printed in two published tables: round bars of mild steel straight within 1.0 mm on a metre
    assert screw_make("metric coarse").bow_mm.high == pytest.approx(1.0 * 300 / 1000)


@pytest.mark.outside
def test_tie_of_two_and_a_half_millimetres():
    # Source: two published tables of cable ties: at least 80 N for ties of 2 to 3 mm, 8 kg for 2.5 mm
    assert soft_tube().clamp_force_n.high == 80


@pytest.mark.outside
def test_friction_of_soft_tube():
    # Source: two stored pages on the friction of silicone rubber: from less than 0.25 to more than 0.75
    assert (soft_tube().friction_ratio.low, soft_tube().friction_ratio.high) == (0.25, 0.75)


def test_every_band_ascends_and_every_limit_can_be_cited():
    for make in ("trapezoidal", "unified fine"):
        for band in (screw_make(make).bow_mm, screw_make(make).lead_error_mm):
            assert 0 < band.low <= band.typical <= band.high
    assert all(motion_limit(row["limit"]).amount > 0 and cite(row["source"]) for row in rows("motion_limits"))
    with pytest.raises(LookUpError):
        motion_limit("wobbel")


def test_makes_of_screws_and_soft_tubes():
    """Rules of ``screw_makes`` and ``soft_tubes``: bands rise, and rod made to tie is less true than rod to drive."""
    drives, ties = screw_make("trapezoidal"), screw_make("metric")
    for make in (drives, ties):
        assert 0 < make.bow_mm.low < make.bow_mm.typical < make.bow_mm.high
        assert 0 < make.lead_error_mm.low < make.lead_error_mm.typical < make.lead_error_mm.high
    assert ties.bow_mm.typical > drives.bow_mm.typical
    tube = soft_tube()
    for band in (tube.modulus_mpa, tube.friction_ratio, tube.clamp_force_n):
        assert 0 < band.low < band.typical < band.high
