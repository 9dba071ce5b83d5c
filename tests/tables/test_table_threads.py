"""Threads by name, against published tables and by the rules of their standards."""

from __future__ import annotations

from fractions import Fraction
from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.errors import LookUpError
from scantling.tables.csv_table import rows
from scantling.tables.threads import known_threads, thread

ONE_UNIT_OF_THE_LAST_DIGIT = 0.005


@pytest.mark.outside
@pytest.mark.parametrize(
    ("name", "pitch"),
    # Source: ISO 261/262 coarse pitches as printed in a published table of cap screws
    [("M2.5", "0.45"), ("M3", "0.5"), ("M4", "0.7"), ("M5", "0.8"), ("M6", "1"), ("M8", "1.25"), ("M10", "1.5")],
)
def test_coarse_pitches(name, pitch):
    assert thread(name).pitch_mm == Fraction(pitch)


@pytest.mark.outside
@pytest.mark.parametrize(
    ("name", "pitch_diameter", "hole", "root", "bore"),
    # Source: ISO 2904 as printed in a published table of trapezoidal threads: d2, D4 (not used here), d3, D1
    [("Tr8x1.5", 7.25, 8.3, 6.2, 6.5), ("Tr10x2", 9, 10.5, 7.5, 8)],
)
def test_trapezoidal_geometry(name, pitch_diameter, hole, root, bore):
    found = thread(name)
    clearance = (hole - found.major_mm) / 2
    assert found.pitch_diameter_mm == pytest.approx(pitch_diameter, abs=1e-9)
    assert found.minor_diameter_mm == pytest.approx(root, abs=1e-9)
    assert found.minor_diameter_mm == pytest.approx(found.major_mm - float(found.pitch_mm) - 2 * clearance, abs=1e-9)
    assert found.nut_minor_diameter_mm == pytest.approx(bore, abs=1e-9)


def test_tr8x2_follows_the_rule():
    # not in the standard's table; d − P/2, d − P − 2·0.25, d − P by hand
    found = thread("Tr8x2")
    assert (found.pitch_diameter_mm, found.minor_diameter_mm, found.nut_minor_diameter_mm) == (7.0, 5.5, 6.0)


@pytest.mark.outside
def test_unified_stress_areas_follow_from_size_and_pitch():
    # Source: ASME B1.1, tensile stress areas as printed in two published thread tables
    # 0.7854 (d − 0.9743/n)² with the printed major diameter; one unit of the last digit (5/16-24 prints 0.0580)
    printed = [row for row in rows("unified_threads") if row["stress_area_in2"]]
    assert len(printed) == 6
    for row in printed:
        area = pi / 4 * (float(row["major_in"]) - 0.9743 / int(row["threads_per_inch"])) ** 2
        assert area == pytest.approx(float(row["stress_area_in2"]), abs=1e-4), row["thread"]


@pytest.mark.outside
def test_metric_stress_areas_follow_from_size_and_pitch():
    # Source: ISO 898-1, stress areas as printed in two published bolt tables
    printed = [row for row in rows("metric_threads") if row["stress_area_mm2"]]
    assert len(printed) == 7
    for row in printed:
        area = pi / 4 * (float(row["major_mm"]) - 0.9382 * float(row["pitch_mm"])) ** 2
        digits = len(row["stress_area_mm2"].partition(".")[2])
        assert area == pytest.approx(float(row["stress_area_mm2"]), abs=0.51 * 10**-digits), row["thread"]


def test_inch_pitches_are_exact():
    assert thread("1/4-20").pitch_mm == Fraction(127, 100)
    assert thread("5/16-18").pitch_mm == Fraction(127, 90)
    assert thread("#6-32").major_mm == pytest.approx(3.5052, abs=1e-12)
    assert thread("#10-24").is_inch
    assert not thread("M5").is_inch


@pytest.mark.parametrize("name", known_threads())
def test_every_thread_of_metric_threads_unified_threads_and_trapezoidal_threads_is_coherent(name):
    found = thread(name)
    assert found.name == name
    assert found.lead_mm == found.pitch_mm * found.starts
    assert 0 < found.minor_diameter_mm < found.nut_minor_diameter_mm < found.pitch_diameter_mm < found.major_mm
    # the root of a V-thread: d3 = d − 1.22687 P, ISO 68-1 from memory
    if found.flank_half_angle_deg == 30:
        assert found.minor_diameter_mm == pytest.approx(found.major_mm - 1.22687 * float(found.pitch_mm), abs=1e-4)
        assert found.pitch_diameter_mm == pytest.approx(found.major_mm - 0.649519 * float(found.pitch_mm), abs=1e-4)


@pytest.mark.parametrize("table", ["metric_threads", "unified_threads", "trapezoidal_threads"])
def test_names_agree_with_their_columns(table):
    for row in rows(table):
        if table == "unified_threads":
            assert row["thread"].endswith(f"-{row['threads_per_inch']}")
        elif row.get("series") == "coarse":
            assert row["thread"] == f"M{row['major_mm']}"
        else:
            assert row["thread"].endswith(f"{row['major_mm']}x{row['pitch_mm']}")


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("m 5", "M5"),
        ("M5x0.8", "M5"),
        ("M8 × 1", "M8x1"),
        ("M8x1.0", "M8x1"),
        ("1/4-20 UNC", "1/4-20"),
        ("10-24", "#10-24"),
        ("tr 8x8 (P2)", "Tr8x8(P2)"),
        ("Tr8x8P2", "Tr8x8(P2)"),
        ("Tr8x2(P2)", "Tr8x2"),
    ],
)
def test_other_spellings(written, meant):
    assert thread(written).name == meant


def test_several_starts():
    found = thread("Tr8x8(P2)")
    assert (found.starts, found.pitch_mm, found.lead_mm) == (4, 2, 8)
    assert found.minor_diameter_mm == thread("Tr8x2").minor_diameter_mm


@pytest.mark.parametrize(
    ("name", "mend"),
    [
        ("M5.3", "did you mean M5"),
        ("M5x7", "M5 has the pitches 0.8, 0.5"),
        ("M3x12", "write the length apart from the thread"),
        ("1/4-21", "say 1/4-20 or 1/4-28"),
        ("#6", "say #6-32 or #6-40"),
        ("6", "say #6-32 or #6-40"),
        ("1/4", "say 1/4-20 or 1/4-28"),
        ("Tr8x8", "add the pitch: Tr8x8(P2)"),
        ("Tr8x3(P3)", "Tr8 has the pitches 1.5, 2"),
        ("Tr8x0", "Tr8 has the pitches 1.5, 2"),
        ("Tr8x5(P2)", "whole number of pitches"),
        ("Tr8x20(P2)", "at most 8"),
        ("Tr7x2", "did you mean Tr9x2"),
        ("bolt", "write M5, M8x1, 1/4-20"),
        ("", "write M5, M8x1, 1/4-20"),
        ("M", "write M5, M8x1, 1/4-20"),
    ],
)
def test_impossible_threads_say_what_would_mend_them(name, mend):
    with pytest.raises(LookUpError) as caught:
        thread(name)
    assert mend in caught.value.mend
    assert caught.value.mend in str(caught.value)


@given(st.text(alphabet="MTrxP()#/-0123456789.", max_size=12))
def test_no_text_breaks_the_reader(name):
    try:
        lead_mm = thread(name).lead_mm
    except LookUpError as error:
        lead_mm = len(error.mend)
    assert lead_mm > 0
