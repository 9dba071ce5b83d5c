"""A switch stuck on, insulation, growth, zones; mains fuse, inrush, duty, work on the mains. All invented."""

from __future__ import annotations

import pytest

from scantling.build.reference import reference_build
from scantling.checks.all import CHECKS
from scantling.findings import NotLookedAt, Verdict
from scantling.model.build import Key

PARTS = {
    **{
        f"heater-{w}": {"kind": "heater", "power": f"{w} W", "voltage": "24 V", "stands": "150 °C"}
        for w in (40, 120, 240)
    },
    "plate": {"kind": "thing", "heat-capacity": "539 J/K", "material": "aluminium"},
    "cork": {"kind": "thing", "material": "cork", "sizes": {"thickness": "6 mm"}, "stands": "140 °C"},
    "felt": {"kind": "thing", "material": "felt", "sizes": {"thickness": "5 mm"}, "stands": "200 °C"},
    "foam": {"kind": "thing", "material": "mystery", "sizes": {"thickness": "5 mm"}},
    "cut-out-128": {"kind": "cut-out", "trips": "128 °C", "current": "10 A"},
    "cut-out-85": {"kind": "cut-out", "trips": "85 °C", "current": "10 A"},
    "cut-out-weak": {"kind": "cut-out", "trips": "128 °C", "current": "2 A"},
    "supply": {"kind": "supply", "power": "350 W", "voltage": "24 V", "inrush": "40 A"},
    "supply-hard": {"kind": "supply", "power": "350 W", "voltage": "24 V", "inrush": "90 A"},
    "supply-unsaid": {"kind": "supply", "power": "350 W", "voltage": "24 V"},
    "fuse-t3": {"kind": "fuse", "current": "3.15 A"},
    "fuse-t6": {"kind": "fuse", "current": "6.3 A"},
    "fuse-quick": {"kind": "fuse", "current": "3.15 A", "speed": "quick", "melting": "2 A2s"},
    "inlet": {"kind": "thing"},
}
WARMING = {
    "heater": "heater",
    "stores": ["plate"],
    "loss": "0.70 W/K",
    "room": "22 °C",
    "target": "90 °C",
    "within": "8 min",
    "near": ["insulation", "heater"],
}


@pytest.fixture
def machine(bench):
    """Open the hot half of a printer."""

    def make(warming=None, loads=None, mains="230 V", steps=None, **rail):
        described = {key: value for key, value in {**WARMING, **(warming or {})}.items() if value is not None}
        return bench.case(
            workshop={"mains-voltage": mains} if mains else {},
            parts=PARTS,
            places={
                "heater": bench.options("heater-120", "heater-40", "heater-240"),
                "plate": "plate",
                "insulation": bench.options("cork", "felt", "foam"),
                "cut-out": bench.options("cut-out-128", "cut-out-85", "cut-out-weak"),
                "supply": bench.options("supply", "supply-hard", "supply-unsaid"),
                "fuse": bench.options("fuse-t3", "fuse-t6", "fuse-quick"),
                "inlet": "inlet",
            },
            rails={
                "main": {
                    "supply": "supply",
                    "voltage": "24 V",
                    "inlet": "inlet",
                    "mains-fuse": "fuse",
                    "loads": loads or [{"place": "heater"}, {"power": "80 W", "for": "the rest"}],
                    **rail,
                }
            },
            warmings={"bed": described},
            steps=steps or {},
        )

    return make


class TestStuck:
    def test_at_24_volts_too_a_cut_out_is_required(self, bench, machine):
        """The naive answer: 24 V is harmless and the controller watches. The switch that it works through is stuck."""
        finding = bench.said(machine(), "WARM-03", "warming bed")
        assert finding.value == pytest.approx(22 + 120 / 0.70)
        assert (finding.limit, finding.verdict) == (140, Verdict.UNSOUND)
        assert "cork at insulation stands" in finding.because
        assert "independent thermal cut-out below 140 °C" in finding.mend
        assert "24 V too" in finding.mend
        reached = bench.said(machine(), "WARM-02", "warming bed")
        assert reached.verdict is Verdict.SOUND  # all the while the wanted temperature is reached well

    def test_one_that_opens_in_time_makes_it_sound(self, bench, machine):
        finding = bench.said(machine({"cut-out": "cut-out"}), "WARM-03", "warming bed")
        assert (finding.value, finding.verdict) == (128, Verdict.SOUND)

    def test_a_weak_heater_needs_none(self, bench, machine):
        finding = bench.said(machine(), "WARM-03", "warming bed", heater="heater-40")
        assert (finding.verdict, finding.value) == (Verdict.SOUND, pytest.approx(22 + 40 / 0.70))

    def test_a_loss_known_to_a_band_leaves_it_open(self, bench, machine):
        finding = bench.said(machine({"loss": "0.9 W/K (0.8..1.2)"}), "WARM-03", "warming bed")
        assert finding.verdict is Verdict.MARGINAL

    def test_one_that_opens_at_work_or_welds_shut_is_none(self, bench, machine):
        case = machine({"cut-out": "cut-out"})
        low = bench.said(case, "WARM-03", "warming bed", cut_out="cut-out-85")
        assert (low.verdict, "would reach" in low.because) == (Verdict.UNSOUND, True)
        weak = bench.said(case, "WARM-03", "warming bed", cut_out="cut-out-weak")
        assert (weak.verdict, "weld shut" in weak.because) == (Verdict.UNSOUND, True)

    def test_what_does_not_say_what_it_stands_is_unknown(self, bench, machine):
        finding = bench.said(machine(), "WARM-03", "warming bed", insulation="foam")
        assert (finding.verdict, finding.missing) == (Verdict.UNKNOWN, ("parts.foam.stands",))

    def test_without_neighbours_it_is_not_looked_at(self, bench, machine):
        assert bench.said(machine({"near": None}), "WARM-03", "warming bed").needs == ("warmings.bed.near",)


FACES = {"loss": None, "face": "40000 mm2", "insulation": "insulation"}


class TestInsulation:
    # Source: ISO 6946: 10 W/(m² K) upwards, 0.006 / 0.045 + 0.17 m² K/W downwards, 200 x 200 mm
    @pytest.mark.outside
    def test_the_loss_follows_from_faces(self, bench, machine):
        finding = bench.said(machine(FACES), "WARM-02", "warming bed")
        loss = 0.04 * (10 + 1 / (0.006 / 0.045 + 1 / 5.9))
        assert finding.value == pytest.approx(22 + 120 / loss, rel=1e-3)

    def test_what_it_saves(self, bench, machine):
        finding = bench.said(machine(FACES), "WARM-04", "warming bed")
        assert finding.verdict is Verdict.SOUND
        assert finding.value == pytest.approx(16.3, abs=0.1)
        assert "instead of" in finding.because
        assert isinstance(bench.said(machine(FACES), "WARM-04", "warming bed", insulation="foam"), NotLookedAt)


class TestGrowth:
    @pytest.fixture
    def chain(self, bench):
        def make(**changes):
            term = {"size": "200 mm", "tolerance": "0 mm"}
            described = {
                "terms": [{**term, "made-of": "bed"}, {**term, "sign": "-", "made-of": "carrier", "warmer": "10 K"}],
                "warmer": "80 K",
                "at-least": "-0.5 mm",
                "at-most": "0.5 mm",
                **changes,
            }
            parts = {
                "aluminium": {"kind": "thing", "material": "aluminium"},
                "acrylic": {"kind": "thing", "material": "acrylic"},
                "ply": {"kind": "sheet", "material": "birch plywood", "thickness": "6 mm"},
                "unsaid": {"kind": "thing"},
            }
            places = {"bed": bench.options("aluminium", "acrylic", "unsaid"), "carrier": "ply"}
            return bench.case(parts=parts, places=places, chains={"bed": described})

        return make

    # Source: 23e-6 1/K of aluminium, 6e-6 of plywood along its grain (table of materials): 0.368 - 0.012 mm
    @pytest.mark.outside
    def test_a_bed_of_aluminium_grows_out_of_its_holes(self, bench, chain):
        finding = bench.said(chain(), "WARM-05", "chain bed")
        assert (finding.value, finding.verdict) == (pytest.approx(0.356, abs=0.001), Verdict.SOUND)
        assert bench.said(chain(**{"at-most": "0.3 mm"}), "WARM-05", "chain bed").verdict is Verdict.UNSOUND
        plastic = bench.said(chain(), "WARM-05", "chain bed", bed="acrylic")
        assert plastic.verdict is Verdict.UNSOUND

    def test_cold_the_same_chain_is_well(self, bench, chain):
        """The naive answer adds the sizes as they are on the bench."""
        tight = chain(**{"at-most": "0.3 mm"})
        assert bench.said(tight, "CHAIN-01", "chain bed").verdict is Verdict.SOUND
        assert bench.said(tight, "WARM-05", "chain bed").verdict is Verdict.UNSOUND

    def test_what_it_is_made_of_must_be_said(self, bench, chain):
        assert bench.said(chain(), "WARM-05", "chain bed", bed="unsaid").needs == ("parts.unsaid.material",)
        bare = chain(terms=[{"size": "200 mm", "tolerance": "0 mm"}])
        assert bench.said(bare, "WARM-05", "chain bed").needs == ("chains.bed.terms.0.made-of",)


class TestMains:
    # Source: P / (η λ U) with 0.86 and 0.55: 200 W take 1.84 A from 230 V and 3.52 A from 120 V
    @pytest.mark.outside
    def test_half_the_voltage_is_twice_the_current(self, bench, machine):
        at_230 = bench.said(machine(), "RAIL-03", "rail main")
        assert at_230.value == pytest.approx(100 * 1.838 / 3.15, rel=1e-3)
        assert at_230.verdict is Verdict.SOUND
        at_120 = bench.said(machine(mains="120 V"), "RAIL-03", "rail main")
        assert at_120.value == pytest.approx(100 * 3.524 / 3.15, rel=1e-3)
        assert at_120.verdict is Verdict.UNSOUND
        assert bench.said(machine(mains="120 V"), "RAIL-03", "rail main", fuse="fuse-t6").verdict is Verdict.SOUND

    def test_the_workshop_says_its_mains(self, bench, machine):
        assert bench.said(machine(mains=None), "RAIL-03", "rail main").needs == ("workshop.mains-voltage",)

    def test_inrush(self, bench, machine):
        sound = bench.said(machine(), "RAIL-04", "rail main")
        assert sound.value == pytest.approx(100 * 0.5 * 40**2 * 0.0024 / (31.5**2 * 0.02), rel=1e-6)
        assert sound.verdict is Verdict.SOUND
        quick = bench.said(machine(), "RAIL-04", "rail main", fuse="fuse-quick")
        assert quick.verdict is Verdict.UNSOUND
        hard = bench.said(machine(), "RAIL-04", "rail main", supply="supply-hard")
        assert hard.verdict is Verdict.MARGINAL
        assert bench.said(machine(), "RAIL-04", "rail main", supply="supply-unsaid").needs == (
            "parts.supply-unsaid.inrush",
        )

    def test_a_duty_helps_the_bill_and_not_the_supply(self, bench, machine):
        """The naive answer takes a supply for the mean of loads: a heater that is on draws all it has."""
        loads = [{"place": "heater", "duty": "25 %"}, {"power": "80 W", "for": "the rest"}]
        mean = bench.said(machine(loads=loads), "RAIL-05", "rail main", heater="heater-240")
        assert mean.value == 140
        need = bench.said(machine(loads=loads, headroom="25 %"), "RAIL-01", "rail main", heater="heater-240")
        assert (need.value, need.verdict) == (400, Verdict.UNSOUND)

    def test_what_is_never_on_at_once_says_so(self, bench, machine):
        loads = [{"place": "heater"}, {"power": "80 W", "for": "what waits for the bed", "at-once": "25 %"}]
        assert bench.said(machine(loads=loads), "RAIL-01", "rail main").value == (120 + 20) * 1.25

    @pytest.mark.parametrize(
        ("caution", "verdict"),
        [
            ("Only by a competent person.", Verdict.SOUND),
            ("Mind your fingers.", Verdict.MARGINAL),
            ("", Verdict.MARGINAL),
        ],
    )
    def test_work_on_the_mains_is_for_a_competent_person(self, bench, machine, caution, verdict):
        steps = {"mains": {"title": "Inlet", "uses": ["inlet", "fuse"], "caution": caution}}
        finding = bench.said(machine(steps=steps), "RAIL-06", "rail main")
        assert finding.verdict is verdict
        assert "under the local code" in finding.because

    def test_without_steps_it_is_not_looked_at(self, bench, machine):
        assert isinstance(bench.said(machine(), "RAIL-06", "rail main"), NotLookedAt)


@pytest.fixture
def mount(bench):
    """Say how a printed mount stands where it sits."""

    def judge(zone, plastic, zones=None):
        plastics = ["PLA", "PETG", "ABS", "ASA", "PC"]
        part = {"kind": "printed", "meshes": [], "plastics": plastics, "zone": zone}
        filaments = {f"filament-{p}": {"kind": "filament", "plastic": p, "density": "1.2 g/cm3"} for p in plastics}
        bed = {"width": "180 mm", "depth": "180 mm", "height": "160 mm", "plastics": plastics}
        case = bench.case(
            workshop={"print-bed": bed},
            parts={"mount": part, **filaments},
            places={"mount": "mount"},
            zones=zones or {},
        )
        build = reference_build(case).replacing({Key("get", "mount"): f"printed {plastic}"})
        return next(check for check in CHECKS if check.code == "PRINT-03").run(case.reader(build), "place mount")

    return judge


class TestZones:
    def test_rises_add_up(self, mount):
        zones = {"corner": {"beside": ["enclosure", "sun"], "room": "30 °C"}}
        finding = mount("corner", "PETG", zones)
        assert (finding.value, finding.verdict) == (85, Verdict.UNSOUND)

    def test_a_thermometer_goes_before_the_table(self, mount):
        zones = {"corner": {"beside": ["motor"], "temperature": "41 °C ± 2 °C"}}
        finding = mount("corner", "PETG", zones)
        assert (finding.value, finding.verdict) == (41, Verdict.SOUND)
        assert mount("corner", "PLA", zones).verdict is Verdict.MARGINAL

    def test_a_data_sheets_softening_is_for_minutes(self, mount):
        """The naive answer compares 70 °C with the 77 °C that a sheet calls PETG's softening, and is content."""
        softening_c = 77.4  # a published sheet of PETG
        zones = {"corner": {"temperature": "71 °C"}}
        assert softening_c > 71
        finding = mount("corner", "PETG", zones)
        assert (finding.verdict, finding.limit) == (Verdict.UNSOUND, 61.5)

    def test_a_zone_that_nobody_describes_is_not_looked_at(self, mount):
        assert mount("attic", "PETG").needs == ("zones.attic",)
