"""Sheets as plates: every row is a material of the other table, and soft through the thickness."""

from __future__ import annotations

import pytest

from scantling.tables.csv_table import rows
from scantling.tables.materials import material
from scantling.tables.panels import panel_material


def test_rules_of_panels():
    for row in rows("panels"):
        found, board = material(row["material"], 9.0), panel_material(row["material"])
        assert board.fibrous
        assert board.through_mpa < found.cross_modulus_mpa.low or row["material"] == "softwood"
        assert board.shear_mpa is None or board.shear_mpa < found.modulus_mpa.low / 2
        assert 0 < board.poisson_ratio < 0.5


# Source: EN 338, C24: mean shear modulus 690, across the grain 370 MPa; EN 12369-1: OSB/3 1080 in its plane
@pytest.mark.outside
def test_published_moduli():
    assert (panel_material("softwood").shear_mpa, panel_material("softwood").through_mpa) == (690.0, 370.0)
    assert panel_material("OSB").shear_mpa == 1080.0


def test_metal_is_alike_all_ways():
    assert panel_material("aluminium") is None
