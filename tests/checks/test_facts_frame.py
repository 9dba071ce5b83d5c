"""Facts of the trade about frames, with the reason in numbers, on the example of a portal of plywood."""

from __future__ import annotations

from pathlib import Path

import pytest

from scantling.api.opening import open_design, read_changes, start_build
from scantling.build.reference import carry_over
from scantling.checks.all import CHECKS, run_check
from scantling.findings import Verdict

ALDER = Path(__file__).parents[2] / "examples" / "alder"
RULES = {check.code: check for check in CHECKS if check.code.startswith("FRAME-")}


@pytest.fixture(scope="module")
def session():
    return open_design(ALDER, "village")


@pytest.fixture(scope="module")
def said(session):
    """Say what a check finds of the example's frame, with other parts at some places."""

    def ask(code, *changes):
        build = start_build(session)
        if changes:
            build = carry_over(session.case, build, read_changes(session, changes))
        return run_check(RULES[code], session.case.reader(build))[0]

    return ask


def test_an_inch_rod_stands_in_for_m8_in_a_frame(said):
    """Common practice, no source: 5/16 in for M8 where strength is far from the limit; it gives 7 % more."""
    metric, inch = said("FRAME-02"), said("FRAME-02", "frame-rod=frame-rod-5-16")
    assert inch.verdict is Verdict.SOUND
    assert inch.value == pytest.approx(1.07 * metric.value, rel=0.02)
    assert metric.high - metric.low > 5 * abs(inch.value - metric.value)  # far less than what joints leave open


def test_legs_alone_are_not_the_frame(said):
    """The naive estimate of open legs is several times too kind: rods and joints below give as much as the legs."""
    legs, whole = said("FRAME-01"), said("FRAME-02")
    assert legs.value < 0.2
    assert whole.low > 3 * legs.value


def test_sheets_rank_by_stiffness_not_by_name(said):
    """9 mm of plywood before 9 mm of fibreboard; 4 mm of aluminium before both; 5 mm of acrylic behind all."""
    sheets = ("alu-4", "ply-9", "ply-8", "mdf-9", "ply-6", "mdf-6", "acrylic-5")
    gives = [said("FRAME-02", f"portal={sheet}").value for sheet in sheets]
    assert gives == sorted(gives)
    assert gives[1] * 1.5 < gives[3]


def test_joints_matter_less_the_softer_the_sheet(said):
    """Common practice, no source: more screws help a stiff frame and do nothing for a soft one."""
    bands = {sheet: said("FRAME-02", f"portal={sheet}") for sheet in ("ply-9", "acrylic-5")}
    width = {sheet: (f.high - f.low) / f.value for sheet, f in bands.items()}
    assert width["ply-9"] > 2 * width["acrylic-5"]


@pytest.mark.parametrize("workshop", ["village", "harbour"])
def test_the_example_stands(workshop):
    session = open_design(ALDER, workshop)
    reader = session.case.reader(start_build(session))
    found = run_check(RULES["FRAME-02"], reader)[0]
    assert found.verdict is Verdict.SOUND
    assert "triangles of half the size change it by" in found.because
