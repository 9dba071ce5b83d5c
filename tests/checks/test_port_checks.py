"""Ports of an invented board against what an invented printer wants of it."""

from __future__ import annotations

import pytest

from scantling.findings import NotLookedAt, Verdict

DRIVERS = {"does": "driver", "count": 4, "current": "1.4 A", "plug": "four"}
BED = {"does": "heater", "name": "bed", "current": "10 A", "voltage": "24 V", "plug": "bare"}
HEAD = {"does": "heater", "name": "head", "current": "5 A", "voltage": "24 V", "plug": "bare"}
FANS = {"does": "fan", "count": 2, "current": "1 A", "voltage": "24 V", "plug": "two"}
SWITCHES = {"does": "switch", "count": 3, "plug": "three"}
MOTOR = {"kind": "motor", "frame-size": "17", "shaft-diameter": "5 mm", "current-basis": "rms", "plug": "four"}
PARTS = {
    "board": {
        "kind": "board",
        "ports": [DRIVERS, BED, HEAD, FANS, SWITCHES],
        "mounting": {"width": "78 mm", "depth": "36 mm", "hole": "3.4 mm"},
    },
    "board-small": {
        "kind": "board",
        "ports": [{**DRIVERS, "count": 3}, {**BED, "current": "5 A"}, {**FANS, "voltage": "12 V"}],
        "mounting": {"width": "80 mm", "depth": "36 mm", "hole": "3.2 mm"},
    },
    "board-unsaid": {"kind": "board"},
    "motor": {**MOTOR, "current": "1.5 A"},
    "motor-strong": {**MOTOR, "current": "2.8 A", "plug": "six"},
    **{f"heater-{w}": {"kind": "heater", "power": f"{w} W", "voltage": "24 V"} for w in (120, 240)},
    "fan-24": {"kind": "thing", "power": "2 W", "voltage": "24 V", "plug": "two"},
    "fan-12": {"kind": "thing", "power": "2 W", "voltage": "12 V", "plug": "two"},
    "switch": {"kind": "thing", "plug": "three"},
    "sheet": {"kind": "sheet", "material": "birch plywood", "thickness": "6 mm"},
}
WANTS = [
    {"does": "driver", "for": "x-motor"},
    {"does": "driver", "for": "z-motor"},
    {"does": "heater", "for": "heater", "port": "bed"},
    {"does": "fan", "for": "fan"},
    {"does": "switch", "for": "switch"},
]


@pytest.fixture
def electrics(bench):
    """Open the electrics; with further wants, or with all of them given."""

    def make(wants=(), all_wants=WANTS):
        return bench.case(
            parts=PARTS,
            places={
                "board": bench.options("board", "board-small", "board-unsaid"),
                "x-motor": bench.options("motor", "motor-strong"),
                "z-motor": bench.options("motor", quantity=2),
                "heater": bench.options("heater-120", "heater-240"),
                "fan": bench.options("fan-24", "fan-12"),
                "switch": bench.options("switch", **{"may-be-empty": "yes"}),
                "plate": "sheet",
            },
            rails={"main": {"supply": "board", "voltage": "24 V", "loads": []}},
            sheets={
                "plate": {
                    "outline": "plate.svg",
                    "holes": [
                        {
                            "for": "joint:board-to-plate",
                            "at": ["26 mm", "12 mm"],
                            "repeat": [["104 mm", "12 mm"], ["26 mm", "48 mm"], ["104 mm", "48 mm"]],
                        }
                    ],
                }
            },
            joints={"board-to-plate": {"screw": "socket head M3", "through": ["plate.thickness"], "into": "lock nut"}},
            electronics={
                "main": {
                    "board": "board",
                    "rail": "main",
                    "sheet": "plate",
                    "joint": "board-to-plate",
                    "wants": [*all_wants, *wants],
                }
            },
        )

    return make


def test_there_are_enough_ports(bench, electrics):
    finding = bench.said(electrics(), "PORT-01", "electronics main/driver")
    assert (finding.value, finding.limit, finding.verdict) == (4, 3, Verdict.SOUND)
    assert "1 for x-motor, 2 for z-motor" in finding.because
    more = electrics([{"does": "driver", "for": "switch"}])
    assert bench.said(more, "PORT-01", "electronics main/driver").verdict is Verdict.SOUND
    assert bench.said(more, "PORT-01", "electronics main/driver", board="board-small").verdict is Verdict.UNSOUND


def test_two_motors_on_one_driver_take_one_port_and_twice_the_current(bench, electrics):
    each = bench.said(electrics(), "PORT-02", "electronics main/driver/z-motor")
    assert each.value == 75  # 0.7 of 1.5 A, of 1.4 A
    wants = [{**want, "shared": "yes"} if want["for"] == "z-motor" else want for want in WANTS]
    together = bench.said(electrics(all_wants=wants), "PORT-02", "electronics main/driver/z-motor")
    assert (together.value, together.verdict) == (150, Verdict.UNSOUND)
    assert bench.said(electrics(all_wants=wants), "PORT-01", "electronics main/driver").limit == 2


def test_a_port_that_is_missing(bench, electrics):
    finding = bench.said(electrics(), "PORT-01", "electronics main/switch", board="board-small")
    assert (finding.verdict, finding.value) == (Verdict.UNSOUND, 0)
    assert bench.said(electrics(), "PORT-01", "electronics main/switch", board="board-small", switch="").limit == 0


def test_a_heater_switch_at_its_rating(bench, electrics):
    case = electrics()
    assert bench.said(case, "PORT-02", "electronics main/heater/heater").verdict is Verdict.SOUND  # 5 of 10 A
    full = bench.said(case, "PORT-02", "electronics main/heater/heater", heater="heater-240")
    assert (full.value, full.verdict) == (100, Verdict.MARGINAL)
    weak = bench.said(case, "PORT-02", "electronics main/heater/heater", board="board-small", heater="heater-240")
    assert (weak.value, weak.verdict) == (200, Verdict.UNSOUND)


def test_without_a_port_of_its_own_the_weakest_counts(bench, electrics):
    case = electrics([{"does": "heater", "for": "fan"}])
    finding = bench.said(case, "PORT-02", "electronics main/heater/fan")
    assert "for 5 A" in finding.because


def test_a_driver_for_its_motor(bench, electrics):
    sound = bench.said(electrics(), "PORT-02", "electronics main/driver/x-motor")
    assert (sound.value, sound.verdict) == (75, Verdict.SOUND)  # 0.7 of 1.5 A, of 1.4 A
    strong = bench.said(electrics(), "PORT-02", "electronics main/driver/x-motor", x_motor="motor-strong")
    assert (strong.value, strong.verdict) == (pytest.approx(140), Verdict.UNSOUND)


def test_fans_of_the_ports_voltage(bench, electrics):
    case = electrics()
    assert bench.said(case, "PORT-03", "electronics main/fan/fan").verdict is Verdict.SOUND
    assert bench.said(case, "PORT-03", "electronics main/fan/fan", fan="fan-12").verdict is Verdict.UNSOUND
    twelve = bench.said(case, "PORT-03", "electronics main/fan/fan", fan="fan-12", board="board-small")
    assert twelve.verdict is Verdict.SOUND


def test_another_plug_is_work_not_a_fault(bench, electrics):
    assert bench.said(electrics(), "PORT-04", "electronics main/driver/x-motor").verdict is Verdict.SOUND
    finding = bench.said(electrics(), "PORT-04", "electronics main/driver/x-motor", x_motor="motor-strong")
    assert (finding.verdict, "'six'" in finding.because) == (Verdict.MARGINAL, True)


def test_mounting_holes(bench, electrics):
    good = bench.said(electrics(), "PORT-05", "electronics main")
    assert (good.value, good.verdict) == (0, Verdict.SOUND)
    bad = bench.said(electrics(), "PORT-05", "electronics main", board="board-small")
    assert (bad.value, bad.limit, bad.verdict) == (2, pytest.approx(0.2), Verdict.UNSOUND)


def test_a_board_that_lists_nothing_is_not_looked_at(bench, electrics):
    for code, subject in (("PORT-01", "electronics main/driver"), ("PORT-02", "electronics main/heater/heater")):
        found = bench.said(electrics(), code, subject, board="board-unsaid")
        assert isinstance(found, NotLookedAt)
        assert found.needs == ("parts.board-unsaid.ports",)
    assert bench.said(electrics(), "PORT-05", "electronics main", board="board-unsaid").needs == (
        "parts.board-unsaid.mounting",
    )
