"""Supplies and heaters of an invented printer: bed 80, 120 or 150 W, head 40, motors 18, rest 8 W, 24 V."""

from __future__ import annotations

import pytest

from scantling.findings import Verdict

PARTS = {
    **{f"heater-{w}": {"kind": "heater", "power": f"{w} W", "voltage": "24 V"} for w in (80, 120, 150)},
    **{f"supply-{w}": {"kind": "supply", "power": f"{w} W", "voltage": "24 V"} for w in (200, 250, 350)},
    "heater-12v": {"kind": "heater", "power": "120 W", "voltage": "12 V"},
    "plate": {"kind": "thing", "heat-capacity": "539 J/K"},
}
LOADS = [
    {"place": "heater"},
    {"power": "40 W", "for": "head"},
    {"power": "18 W", "for": "motors"},
    {"power": "8 W", "for": "rest"},
]
WARMING = {
    "heater": "heater",
    "stores": ["plate"],
    "loss": "0.70 W/K (0.55..0.9)",
    "room": "22 °C",
    "target": "90 °C",
    "within": "8 min",
}


@pytest.fixture
def machine(bench):
    """Open the electric half of a printer; a warming and parts may be changed."""

    def make(warming=None, parts=None, headroom="25 %"):
        return bench.case(
            parts={**PARTS, **(parts or {})},
            places={
                "heater": bench.options("heater-120", "heater-80", "heater-150", "heater-12v"),
                "supply": bench.options("supply-250", "supply-200", "supply-350"),
                "plate": "plate",
            },
            rails={"main": {"supply": "supply", "voltage": "24 V", "headroom": headroom, "loads": LOADS}},
            warmings={"bed": {**WARMING, **(warming or {})}},
        )

    return make


class TestRail:
    @pytest.mark.parametrize(
        ("heater", "supply", "watts", "verdict"),
        [
            ("heater-120", "supply-250", 232.5, Verdict.SOUND),
            ("heater-120", "supply-200", 232.5, Verdict.UNSOUND),
            ("heater-150", "supply-250", 270, Verdict.UNSOUND),
            ("heater-150", "supply-350", 270, Verdict.SOUND),
            ("heater-80", "supply-200", 182.5, Verdict.SOUND),
        ],
    )
    def test_a_supply_needs_head_room(self, bench, machine, heater, supply, watts, verdict):
        finding = bench.said(machine(), "RAIL-01", "rail main", heater=heater, supply=supply)
        assert (finding.value, finding.verdict) == (watts, verdict)

    def test_a_quarter_is_usual(self, bench, machine):
        finding = bench.said(machine(headroom=None), "RAIL-01", "rail main")
        assert (finding.value, finding.assumed) == (232.5, ("head-room",))

    def test_voltages_must_agree(self, bench, machine):
        assert bench.said(machine(), "RAIL-02", "rail main/heater").verdict is Verdict.SOUND
        finding = bench.said(machine(), "RAIL-02", "rail main/heater", heater="heater-12v")
        assert (finding.verdict, finding.value) == (Verdict.UNSOUND, 12)
        assert bench.said(machine(), "RAIL-02", "rail main/supply").verdict is Verdict.SOUND


class TestWarming:
    # Source: energy balance, -(C / k) ln(1 - k ΔT / P), by hand for 539 J/K, 0.70 W/K, 68 K
    @pytest.mark.outside
    @pytest.mark.parametrize(
        ("heater", "minutes", "verdict"),
        [("heater-80", 11.6, Verdict.UNSOUND), ("heater-120", 6.5, Verdict.SOUND), ("heater-150", 4.9, Verdict.SOUND)],
    )
    def test_time_to_warm_up(self, bench, machine, heater, minutes, verdict):
        finding = bench.said(machine(), "WARM-01", "warming bed", heater=heater)
        assert finding.value == pytest.approx(minutes, abs=0.06)
        assert finding.verdict is verdict

    def test_a_loss_known_to_a_band_makes_it_marginal(self, bench, machine):
        finding = bench.said(machine({"within": "7 min"}), "WARM-01", "warming bed")
        assert finding.verdict is Verdict.MARGINAL
        assert "Hangs on loss of warming bed" in finding.because

    # Source: specific heats 897 J/(kg K) of aluminium and 830 of glass (material table); 0.324 and 0.2 kg
    @pytest.mark.outside
    def test_the_store_follows_from_masses_and_materials(self, bench, machine):
        parts = {"plate": {"kind": "thing", "material": "aluminium", "mass": "324 g"}}
        finding = bench.said(machine(parts=parts), "WARM-01", "warming bed")
        assert "291 J/K" in finding.because or "290.63 J/K" in finding.because
        assert finding.assumed == ("heat store of warming bed",)

    def test_a_store_without_either_is_not_looked_at(self, bench, machine):
        finding = bench.said(machine(parts={"plate": {"kind": "thing"}}), "WARM-01", "warming bed")
        assert finding.needs == ("parts.plate.heat-capacity (or a mass and a material)",)

    def test_a_temperature_that_is_never_reached(self, bench, machine):
        never = {"target": "150 °C", "loss": "0.9 W/K"}
        assert bench.said(machine(never), "WARM-01", "warming bed", heater="heater-80").value == 600
        finding = bench.said(machine(never), "WARM-02", "warming bed", heater="heater-80")
        assert (finding.verdict, finding.value) == (Verdict.UNSOUND, pytest.approx(22 + 80 / 0.9))
        assert "stuck switch" in finding.because
