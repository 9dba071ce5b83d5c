"""What wires carry, glass points, zones, insulating layers, limits of wires and heat."""

from __future__ import annotations

from itertools import pairwise

import pytest

from scantling.errors import LookUpError
from scantling.tables.csv_table import rows
from scantling.tables.electric_limits import electric_limit
from scantling.tables.heats import conductivity_w_m_k, glass_point_c, zone_rise_k
from scantling.tables.wires import bundling_ratio, carried_a, wire


@pytest.mark.outside
@pytest.mark.parametrize(
    ("area", "amperes", "free"),
    # Source: DIN VDE 0298-4 table 11, columns 5 and 2 (extract of 2023); below 0.75 mm² a published table of groups
    [
        (0.14, 2, 3.5),
        (0.25, 4.5, 6),
        (0.34, 6, 9),
        (0.5, 9, 12),
        (0.75, 12, 15),
        (1, 15, 19),
        (1.5, 18, 24),
        (2.5, 26, 32),
        (4, 34, 42),
        (6, 44, 54),
    ],
)
def test_what_wires_carry(area, amperes, free):
    row = next(row for row in rows("wire_currents") if float(row["area_mm2"]) == area)
    assert (float(row["on_a_surface_a"]), float(row["free_in_air_a"])) == (amperes, free)
    assert carried_a(area) == amperes


@pytest.mark.outside
@pytest.mark.parametrize(
    ("circuits", "factor"),
    # Source: DIN VDE 0298-4 table 21, bundled on a wall or in a duct, as printed in two extracts
    [
        (1, 1.0),
        (2, 0.8),
        (3, 0.7),
        (4, 0.65),
        (5, 0.6),
        (6, 0.57),
        (7, 0.54),
        (8, 0.52),
        (9, 0.5),
        (10, 0.48),
        (20, 0.38),
    ],
)
def test_bundles(circuits, factor):
    assert bundling_ratio(circuits) == factor


def test_rules_of_wire_currents_and_wire_bundles():
    """Tables wire_currents and wire_bundles: thicker wires carry more, more circuits less."""
    assert all(float(a["on_a_surface_a"]) < float(b["on_a_surface_a"]) for a, b in pairwise(rows("wire_currents")))
    assert all(float(row["on_a_surface_a"]) < float(row["free_in_air_a"]) for row in rows("wire_currents"))
    assert all(float(a["factor_ratio"]) > float(b["factor_ratio"]) for a, b in pairwise(rows("wire_bundles")))
    assert carried_a(0.75) < carried_a(0.823) < carried_a(1.0)
    assert bundling_ratio(11) == bundling_ratio(12)
    assert wire(1.5).flexible_ohm_km == 13.3
    with pytest.raises(LookUpError):
        carried_a(16.0)


@pytest.mark.outside
@pytest.mark.parametrize(
    ("plastic", "seen"),
    # Source: published sheets and material tables: PLA 59.1, PETG 77.4, ABS 105, ASA 98 and 100, PC 143 and 150 °C
    [("PLA", 59.1), ("PETG", 77.4), ("ABS", 105), ("ASA", 98), ("ASA", 100), ("PC", 143), ("PC", 150)],
)
def test_glass_points_hold_what_sheets_say(plastic, seen):
    found = glass_point_c(plastic)
    assert found.low <= seen <= found.high


def test_rules_of_glass_points_zones_and_insulations():
    """Tables glass_points, zones and insulations: every value in its band."""
    for row in rows("glass_points"):
        assert float(row["low_c"]) <= float(row["glass_c"]) <= float(row["high_c"])
    for row in rows("zones"):
        assert 0 < float(row["low_k"]) <= float(row["rise_k"]) <= float(row["high_k"])
    for row in rows("insulations"):
        assert 0 < float(row["low_w_m_k"]) <= float(row["conductivity_w_m_k"]) <= float(row["high_w_m_k"])
    assert glass_point_c("petg") == glass_point_c("PETG")
    assert glass_point_c("mystery") is None
    assert conductivity_w_m_k(None) is None
    assert zone_rise_k("cool").is_exact
    with pytest.raises(LookUpError):
        zone_rise_k("volcano")


@pytest.mark.outside
@pytest.mark.parametrize(
    ("material", "seen"),
    # Source: published tables of conductivities: cork 0.05, felt 0.05 and 0.057, silicone foam 0.12 and 0.17
    [("cork", 0.05), ("felt", 0.05), ("felt", 0.057), ("silicone foam", 0.12), ("silicone foam", 0.17)],
)
def test_conductivities_hold_what_tables_say(material, seen):
    found = conductivity_w_m_k(material)
    assert found.low <= seen <= found.high


@pytest.mark.outside
def test_limits_of_electric_limits():
    """Table electric_limits."""
    # Source: IEC 60364-5-52 annex G, 3 and 5 %; ISO 6946, 0.10 and 0.17 m² K/W; a guide to fuses, 29 % for 10 000
    assert (electric_limit("voltage drop wished").value, electric_limit("voltage drop").value) == (3, 5)
    assert electric_limit("face upwards").value == pytest.approx(1 / 0.10)
    assert electric_limit("face downwards").value == pytest.approx(1 / 0.17, abs=0.02)
    assert electric_limit("pulse of a mains fuse").value == 29
    for row in rows("electric_limits"):
        found = electric_limit(row["limit"])
        assert found.low <= found.value <= found.high
        assert row["about"]
        assert row["checks"]
    with pytest.raises(LookUpError):
        electric_limit("nothing")
