"""Limits of guides in data/guide_limits.csv."""

from __future__ import annotations

import pytest

from scantling.errors import LookUpError
from scantling.tables.csv_table import rows
from scantling.tables.guide_limits import guide_limit
from scantling.tables.sources import all_sources


def test_every_limit_is_a_band_with_a_source_and_a_check():
    for row in rows("guide_limits"):
        figure = guide_limit(row["limit"])
        assert 0 < figure.low <= figure.value <= figure.high
        assert row["source"] in all_sources()
        assert all(code.startswith("ROD-") for code in row["checks"].split())


def test_an_unknown_limit_is_refused():
    with pytest.raises(LookUpError, match="share of a rating"):
        guide_limit("share of rating")


@pytest.mark.outside
def test_a_moment_presses_balls_harder_than_a_lining():
    # Source: a bushing maker's table of equivalent factors, 0.442 1/mm for a bushing of 24 mm, 0.389 for one of 29 mm
    balls = guide_limit("moment on balls")
    for length_mm, factor in ((24, 0.442), (29, 0.389)):
        assert balls.low <= factor * length_mm <= balls.high
    assert guide_limit("moment on a lining").value < balls.low
