"""What the trade says of heat and wires comes out of the checks, with the reason in numbers."""

from __future__ import annotations

import pytest

from scantling.build.reference import reference_build
from scantling.checks.all import CHECKS
from scantling.findings import Finding, Verdict
from scantling.model.build import Key

PLASTICS = ["PLA", "PETG", "ABS", "ASA"]


@pytest.fixture
def stands(bench):
    """Say how a printed part of a plastic stands in a zone."""

    def judge(zone: str, plastic: str) -> Finding:
        part = {"kind": "printed", "meshes": [], "plastics": PLASTICS, "zone": zone}
        filaments = {f"filament-{p}": {"kind": "filament", "plastic": p, "density": "1.2 g/cm3"} for p in PLASTICS}
        bed = {"width": "180 mm", "depth": "180 mm", "height": "160 mm", "plastics": PLASTICS}
        case = bench.case(workshop={"print-bed": bed}, parts={"part": part, **filaments}, places={"part": "part"})
        build = reference_build(case).replacing({Key("get", "part"): f"printed {plastic}"})
        return next(check for check in CHECKS if check.code == "PRINT-03").run(case.reader(build), "place part")

    return judge


# Common practice, no source: parts near the hot end and on the carriage take ABS or ASA, the rest PETG
def test_near_the_hot_end_petg_is_unsound_and_abs_holds(stands):
    petg, abs_ = stands("hot end", "PETG"), stands("hot end", "ABS")
    assert petg.verdict is Verdict.UNSOUND
    assert petg.value - petg.limit == pytest.approx(18.5)  # 80 °C against 61.5
    assert abs_.verdict is Verdict.MARGINAL  # 80 °C against 86.5, and up to 95 °C close by
    assert stands("hot end", "ASA").verdict is Verdict.MARGINAL


def test_on_the_carriage_petg_is_beyond_its_limit_and_abs_sound(stands):
    petg = stands("carriage", "PETG")
    assert (petg.verdict, petg.value, petg.limit) == (Verdict.UNSOUND, 65, 61.5)
    assert stands("carriage", "ABS").verdict is Verdict.SOUND
    assert stands("carriage", "ASA").verdict is Verdict.SOUND
    assert stands("carriage", "PLA").verdict is Verdict.UNSOUND


@pytest.mark.parametrize("zone", ["cool", "warm"])
def test_the_rest_takes_petg(stands, zone):
    assert stands(zone, "PETG").verdict is Verdict.SOUND


# Common practice, no source: a warm motor's mount of PLA lets the belt go slack
def test_beside_a_motor_pla_creeps(stands):
    pla, petg = stands("motor", "PLA"), stands("motor", "PETG")
    assert pla.verdict is Verdict.UNSOUND
    assert (pla.value, pla.limit) == (55, 42.5)
    assert petg.verdict is Verdict.MARGINAL  # sound where the motor stays below 55 °C
    assert stands("motor", "ABS").verdict is Verdict.SOUND


# Common practice, no source: a machine left behind a window in summer
def test_the_sun_alone_softens_pla(stands):
    assert stands("sun", "PLA").verdict is Verdict.UNSOUND
    assert stands("sun", "ABS").verdict is Verdict.SOUND


# Common practice, no source: a plug for 5 A that carries 10 A melts its own solder
def test_the_burnt_plug(bench):
    parts = {
        "heater": {"kind": "heater", "power": "120 W", "voltage": "12 V"},
        "plug": {"kind": "terminal", "form": "plug", "current": "5 A"},
        "wire": {"kind": "wire", "area": "0.75 mm2"},
        "supply": {"kind": "supply", "power": "200 W", "voltage": "12 V"},
    }
    row = {
        "from": "supply",
        "to": "bed",
        "wire": "wire",
        "length": "1 m",
        "load": "bed",
        "rail": "main",
        "to-end": "plug",
    }
    case = bench.case(
        parts=parts,
        places={"bed": "heater", "plug": "plug", "wire": "wire", "supply": "supply"},
        rails={"main": {"supply": "supply", "voltage": "12 V", "loads": [{"place": "bed"}]}},
        loom={"bed": row},
    )
    finding = bench.said(case, "WIRE-04", "wire bed")
    assert (finding.value, finding.verdict) == (200, Verdict.UNSOUND)
    # 10 A over 1.3 m of 26 ohm/km, out and back, warm: 0.8 of 12 V are lost on the way
    assert bench.said(case, "WIRE-02", "wire bed").value == pytest.approx(6.74, abs=0.01)
