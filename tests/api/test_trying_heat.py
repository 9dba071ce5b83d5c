"""Single questions of heat and wires, with figures by hand."""

from __future__ import annotations

import pytest

from scantling.api.trying import try_one
from scantling.findings import Verdict


def found(name, **given):
    """All findings of a question by code; ``_`` stands for a dash."""
    tried = try_one(name, {key.replace("_", "-"): text for key, text in given.items()})
    return {finding.code: finding for finding in tried.findings}


def test_a_plastic_beside_a_motor():
    assert found("plastic", plastic="ABS", beside="motor")["PRINT-03"].verdict is Verdict.SOUND
    assert found("plastic", plastic="PLA", beside="motor")["PRINT-03"].verdict is Verdict.UNSOUND
    both = found("plastic", plastic="PETG", beside="enclosure, motor")["PRINT-03"]
    assert (both.value, both.verdict) == (80, Verdict.UNSOUND)
    assert found("plastic", plastic="PETG", temperature="40 °C")["PRINT-03"].value == 40


def test_a_wire_behind_a_fuse_that_never_blows():
    wire = {"area": "0.75 mm2", "current": "5 A", "length": "1 m", "supply": "350 W", "limit": "17 A"}
    assert found("wire", **wire, fuse="20 A")["WIRE-03"].verdict is Verdict.UNSOUND
    assert found("wire", **wire, fuse="10 A")["WIRE-03"].verdict is Verdict.SOUND
    assert found("wire", **wire, plug="5 A")["WIRE-04"].value == 100
    # 26 ohm/km of 0.75 mm², 1.1965 of it warm, out and back
    assert found("wire", **wire)["WIRE-02"].value == pytest.approx(100 * 5 * 26e-3 * 1.1965 * 2 / 24)


def test_a_stuck_switch_with_and_without_a_cut_out():
    bed = {"power": "120 W", "store": "539 J/K", "loss": "0.7 W/K", "target": "90 °C", "within": "8 min"}
    assert "WARM-03" not in found("warming", **bed)
    assert found("warming", **bed, stands="140 °C")["WARM-03"].verdict is Verdict.UNSOUND
    assert found("warming", **bed, stands="140 °C", cut_out="128 °C")["WARM-03"].verdict is Verdict.SOUND
