"""What clamped material bears, and how often a thread may be done up: clamp_limits, tightenings."""

from __future__ import annotations

from math import sqrt

import pytest

from scantling.errors import LookUpError
from scantling.tables.clamp_limits import clamp_band, clamp_limit, tightenings
from scantling.tables.csv_table import rows
from scantling.tables.materials import material


def test_rules_of_clamp_limits():
    for row in rows("clamp_limits"):
        found = clamp_limit(row["material"])
        assert found is not None
        bands = [found.pressure_mpa] + ([found.shear_mpa] if found.shear_mpa is not None else [])
        assert all(0 < one.low < one.typical < one.high for one in bands)
        known = material(found.material, 9.0)
        assert (known.softening_c is None) == found.is_wood  # wood and panel do not soften, plastics do
        assert known.yield_mpa is None  # metals need no such limit
    assert clamp_limit("steel") is None
    assert clamp_limit("mdf") == clamp_limit("MDF")


def test_rules_of_clamp_bands():
    for row in rows("clamp_bands"):
        band = clamp_band(row["name"])
        assert 0 < band.low < band.typical <= band.high <= 1.25
    soft, hard = (clamp_band(f"clamp load that stays in {one}") for one in ("wood and plastic", "metal"))
    assert soft.high < hard.low


def test_rules_of_tightenings():
    for row in rows("tightenings"):
        count = tightenings(row["holds"]).count
        assert 1 <= count.low <= count.typical <= count.high
    assert tightenings("panel edge").count.typical < tightenings("panel").count.typical
    with pytest.raises(LookUpError, match="panel"):
        tightenings("panels")


@pytest.mark.outside
def test_softwood_bears_three_times_its_strength_across_the_grain():
    # Source: EN 338 as printed in a published table, fc,90,k 2.2 of C18, 2.5 of C24, 2.7 of C30; EN 1995-1-1 8.5.2
    band = clamp_limit("softwood").pressure_mpa
    assert (band.low, band.typical, band.high) == pytest.approx((3 * 2.2, 3 * 2.5, 3 * 2.7))


@pytest.mark.outside
@pytest.mark.parametrize(("plastic", "tensile_mpa"), [("PLA", 53), ("PETG", 50), ("ABS", 40)])
def test_printed_plastic(plastic, tensile_mpa):
    # Source: a paper of 2025 on printing parameters and strength, UTS of PLA 53, PETG 50, ABS 40 MPa; a published
    #   sheet, PLA 48 MPa along and 26 across the layers
    found = clamp_limit(plastic)
    assert found.shear_mpa.high == pytest.approx(tensile_mpa / sqrt(3), abs=0.6)
    assert found.shear_mpa.low == pytest.approx(tensile_mpa / sqrt(3) * 26 / 48, abs=1.2)
    assert found.pressure_mpa.low == pytest.approx(0.65 * tensile_mpa, abs=0.6)
    assert found.pressure_mpa.high == pytest.approx(1.1 * tensile_mpa, abs=0.6)


@pytest.mark.outside
def test_lock_nuts_keep_their_torque_for_five_removals():
    # Source: ISO 2320 as printed in two published tables: the fifth removal is the last one that is tested
    assert tightenings("lock nut").count.low == 5
