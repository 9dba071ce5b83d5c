"""Tables ``tolerances`` and ``general_tolerances``."""

from __future__ import annotations

import pytest

from scantling.errors import LookUpError
from scantling.quantities import Grade
from scantling.tables.csv_table import rows
from scantling.tables.tolerances import general_tolerance_mm, tolerance


@pytest.mark.outside
@pytest.mark.parametrize(
    ("size_mm", "half_mm"),
    # Source: ISO 2768-1, class m, as two published copies of its table print it
    [(2, 0.1), (3, 0.1), (6, 0.1), (6.01, 0.2), (30, 0.2), (31, 0.3), (120, 0.3), (400, 0.5), (1000, 0.8), (1500, 1.2)],
)
def test_general_tolerances(size_mm, half_mm):
    assert general_tolerance_mm(size_mm) == half_mm
    assert general_tolerance_mm(-size_mm) == half_mm


def test_beyond_the_table_its_end_counts():
    assert general_tolerance_mm(9000) == 2


def test_every_way_of_making_has_a_band_and_says_that_it_is_typical():
    for row in rows("tolerances"):
        found = tolerance(row["tolerance"])
        assert 0 < found.low < found.high
        assert found.low <= found.value <= found.high
        assert found.grade is Grade.TYPICAL


def test_a_scale_is_a_share():
    assert tolerance("scale unread").value == pytest.approx(0.003)
    with pytest.raises(LookUpError):
        tolerance("hole by laser")
