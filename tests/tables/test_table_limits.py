"""Limits of size, against printed tables and an independent library."""

from __future__ import annotations

import ast
from importlib.util import find_spec
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.errors import LookUpError
from scantling.tables.csv_table import rows
from scantling.tables.limits import GRADES, HOLES, SHAFTS, limits_um, tolerance_um

sizes = st.floats(min_value=0.5, max_value=50)

# Source: ISO 286-2 as printed in two published tables (µm, lower and upper deviation)
PRINTED = {
    (5, "h6"): (-8, 0),
    (5, "g6"): (-12, -4),
    (5, "h7"): (-12, 0),
    (5, "H7"): (0, 12),
    (5, "H8"): (0, 18),
    (5, "F7"): (10, 22),
    (5, "G6"): (4, 12),
    (8, "h6"): (-9, 0),
    (8, "g6"): (-14, -5),
    (8, "h7"): (-15, 0),
    (8, "H7"): (0, 15),
    (8, "H8"): (0, 22),
    (8, "F7"): (13, 28),
    (8, "G6"): (5, 14),
    (12, "h6"): (-11, 0),
    (12, "g6"): (-17, -6),
    (12, "h7"): (-18, 0),
    (12, "H7"): (0, 18),
    (12, "H8"): (0, 27),
    (12, "F7"): (16, 34),
    (12, "G6"): (6, 17),
    (20, "h6"): (-13, 0),
    (20, "g6"): (-20, -7),
    (20, "h7"): (-21, 0),
    (20, "H7"): (0, 21),
    (20, "H8"): (0, 33),
    (20, "F7"): (20, 41),
    (20, "G6"): (7, 20),
}


@pytest.mark.outside
def test_printed_limits():
    assert {key: limits_um(*key) for key in PRINTED} == PRINTED


@pytest.mark.outside
@pytest.mark.parametrize(("zone", "at_6", "at_10"), [("h6", -8, -9), ("g6", -12, -14), ("h7", -12, -15)])
def test_a_limit_size_belongs_to_the_smaller_range(zone, at_6, at_10):
    # Source: ISO 286-1, "over 3 up to and including 6", as printed in two published tables
    assert limits_um(6, zone)[0] == at_6
    assert limits_um(10, zone)[0] == at_10
    assert limits_um(6.001, zone)[0] == at_10


def library_limits():
    """Every zone of an independent library over 3 to 50 mm; its own module clashes with names of ours, so no import."""
    spec = find_spec("isofits")
    if spec is None or spec.origin is None:
        pytest.skip("the limits library is not installed")
    tree = ast.parse((Path(spec.origin).parent / "data.py").read_text(encoding="utf-8"))
    for statement in tree.body:
        table = ast.literal_eval(statement.value)
        for zone, column in table.items():
            for over, up_to, cell in zip(table["over"], table["inc."], column, strict=True):
                if zone not in ("over", "inc.") and float(up_to) <= 50:
                    upper, lower = (float(part) for part in cell.split("\n"))
                    yield zone, (float(over) + float(up_to)) / 2, lower, upper


@pytest.mark.outside
def test_every_zone_of_a_library_agrees():
    # Source: the Python library isofits 1.0 (MIT), all its zones over 3 to 50 mm that this table holds
    compared, differ = 0, []
    for zone, size_mm, lower, upper in library_limits():
        if zone.rstrip("0123456789") in SHAFTS + HOLES:
            compared += 1
            if limits_um(size_mm, zone) != (lower, upper):
                differ.append((zone, size_mm, lower, upper))
    assert compared > 350
    # the library prints K6 over 6 to 10 as 8 µm wide; IT6 is 9 µm there
    assert differ == [("K6", 8.0, -6.0, 2.0)]


def test_by_rule():
    # K7 = −1 + Δ with Δ = IT7 − IT6; P7 = −15 + Δ, at 8 mm; N9 = 0 above 3 mm; all by hand from ISO 286-1
    assert limits_um(8, "K7") == (-10, 5)
    assert limits_um(8, "P7") == (-24, -9)
    assert limits_um(8, "N9") == (-36, 0)
    assert limits_um(8, "js7") == (-7.5, 7.5)
    assert limits_um(2, "N9") == (-29, -4)
    assert limits_um(8, "k8") == (0, 22)


@given(sizes, st.sampled_from(SHAFTS), st.sampled_from(GRADES))
def test_widths_and_signs(size_mm, letter, grade):
    lower, upper = limits_um(size_mm, f"{letter}{grade}")
    assert upper - lower == pytest.approx(tolerance_um(size_mm, grade))
    assert upper <= 0 or letter > "h"
    assert lower >= 0 or letter < "k"


@given(sizes, st.sampled_from(["d", "e", "f", "g", "h"]), st.sampled_from(GRADES))
def test_a_hole_mirrors_its_shaft(size_mm, letter, grade):
    lower, upper = limits_um(size_mm, f"{letter}{grade}")
    assert limits_um(size_mm, f"{letter.upper()}{grade}") == (-upper, -lower)


def test_it_grades_and_shaft_deviations_ascend():
    for row in rows("it_grades"):
        widths = [float(row[f"it{grade}_um"]) for grade in GRADES]
        assert widths == sorted(widths)
    for table in ("it_grades", "shaft_deviations"):
        ends = [(row["size_from_mm"], row["size_to_mm"]) for row in rows(table)]
        assert all(a[1] == b[0] for a, b in pairwise(ends))
    for row in rows("shaft_deviations"):
        shifts = [float(row[f"{letter}_um"]) for letter in SHAFTS if letter != "js"]
        assert shifts == sorted(shifts)
    for grade in GRADES:
        widths = [float(row[f"it{grade}_um"]) for row in rows("it_grades")]
        assert widths == sorted(widths)


@pytest.mark.parametrize(
    ("size_mm", "zone", "mend"),
    [
        (8, "j6", "did you mean"),
        (8, "g2", "grades 3 to 14"),
        (8, "6g", "did you mean"),
        (8, "Js7", "did you mean"),
        (60, "h6", "up to 50 mm"),
        (0, "h6", "up to 50 mm"),
        (float("nan"), "h6", "up to 50 mm"),
    ],
)
def test_what_is_outside_says_so(size_mm, zone, mend):
    with pytest.raises(LookUpError) as caught:
        limits_um(size_mm, zone)
    assert mend in caught.value.mend
