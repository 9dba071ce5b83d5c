"""Wires of an invented printer: feed, bed, head, motor, mains and earth; supplies that fold back."""

from __future__ import annotations

import pytest

from scantling.findings import NotLookedAt, Verdict

PARTS = {
    **{f"heater-{w}": {"kind": "heater", "power": f"{w} W", "voltage": "24 V"} for w in (80, 150, 240)},
    "supply": {"kind": "supply", "power": "350 W", "voltage": "24 V", "limit-current": "17 A", "needs-earth": "yes"},
    "supply-small": {"kind": "supply", "power": "120 W", "voltage": "24 V", "limit-current": "6 A"},
    "supply-unsaid": {"kind": "supply", "power": "350 W", "voltage": "24 V"},
    "motor": {
        "kind": "motor",
        "frame-size": "17",
        "shaft-diameter": "5 mm",
        "current": "1.5 A",
        "current-basis": "rms",
    },
    "motor-peak": {
        "kind": "motor",
        "frame-size": "17",
        "shaft-diameter": "5 mm",
        "current": "2.8 A",
        "current-basis": "peak",
    },
    "board": {"kind": "board", "ports": [{"does": "heater", "name": "bed", "current": "12 A", "fused": "15 A"}]},
    "wire-15": {"kind": "wire", "area": "1.5 mm2", "insulation": "180 °C"},
    "wire-075": {"kind": "wire", "area": "0.75 mm2", "insulation": "180 °C"},
    "wire-16-gauge": {"kind": "wire", "gauge": 16},
    "wire-025": {"kind": "wire", "area": "0.25 mm2", "cores": 4},
    "wire-1": {"kind": "wire", "area": "1 mm2"},
    "fuse-10": {"kind": "fuse", "current": "10 A", "speed": "quick"},
    "fuse-20": {"kind": "fuse", "current": "20 A", "speed": "quick"},
    "fuse-mains": {"kind": "fuse", "current": "3.15 A"},
    "plug-15": {"kind": "terminal", "form": "plug", "current": "15 A", "smallest": "0.5 mm2", "largest": "1.5 mm2"},
    "plug-5": {"kind": "terminal", "form": "plug", "current": "5 A", "smallest": "0.5 mm2", "largest": "1.5 mm2"},
    "plug-unsaid": {"kind": "terminal", "form": "plug"},
    "ferrule-075": {"kind": "terminal", "form": "ferrule", "smallest": "0.75 mm2", "largest": "0.75 mm2"},
    "ferrule-15": {"kind": "terminal", "form": "ferrule", "smallest": "1.5 mm2", "largest": "1.5 mm2"},
    "inlet": {"kind": "thing"},
    "ply": {"kind": "thing"},
    "aluminium": {"kind": "thing", "needs-earth": "yes"},
}
LOOM = {
    "feed": {"from": "supply", "to": "board", "wire": "feed-wire", "length": "500 mm", "rail": "main"},
    "bed": {
        "from": "board.other",
        "to": "heater",
        "wire": "feed-wire",
        "length": "1000 mm",
        "rail": "main",
        "load": "heater",
        "from-end": "plug",
        "to-end": "ferrule",
    },
    "motor": {"from": "board", "to": "motor", "wire": "motor-wire", "length": "600 mm", "load": "motor", "bundled": 4},
    "line": {
        "from": "inlet",
        "to": "supply",
        "wire": "mains-wire",
        "length": "400 mm",
        "carries": "mains",
        "rail": "main",
    },
    "earth": {"from": "inlet", "to": "supply", "wire": "earth-wire", "length": "400 mm", "carries": "earth"},
}


@pytest.fixture
def loom(bench):
    """Open the wiring; entries of a wire may be changed, None takes a key out, further wires may be added."""

    def make(mains="230 V", rail=None, **changes):
        rows = {n: {**row, **one} for n, row in LOOM.items() if (one := changes.pop(n, {})) is not None}
        rows |= changes
        rows = {
            name: {key: value for key, value in row.items() if value is not None} for name, row in rows.items() if row
        }
        return bench.case(
            workshop={"mains-voltage": mains} if mains else {},
            parts=PARTS,
            places={
                "supply": bench.options("supply", "supply-small", "supply-unsaid"),
                "board": "board",
                "heater": bench.options("heater-150", "heater-80", "heater-240"),
                "motor": bench.options("motor", "motor-peak"),
                "feed-wire": bench.options("wire-15", "wire-075", "wire-16-gauge"),
                "motor-wire": "wire-025",
                "mains-wire": bench.options("wire-1", "wire-15"),
                "earth-wire": bench.options("wire-1", "wire-075"),
                "bed-fuse": bench.options("fuse-10", "fuse-20"),
                "mains-fuse": "fuse-mains",
                "plug": bench.options("plug-15", "plug-5", "plug-unsaid"),
                "ferrule": bench.options("ferrule-15", "ferrule-075"),
                "inlet": "inlet",
                "frame": bench.options("ply", "aluminium"),
            },
            rails={
                "main": {
                    "supply": "supply",
                    "voltage": "24 V",
                    "inlet": "inlet",
                    "mains-fuse": "mains-fuse",
                    "loads": [{"place": "heater"}, {"power": "40 W"}],
                    **(rail or {}),
                }
            },
            loom=rows,
        )

    return make


class TestCurrent:
    @pytest.mark.parametrize(
        ("wire", "heater", "verdict"),
        [
            ("wire-15", "heater-150", Verdict.SOUND),
            ("wire-075", "heater-150", Verdict.SOUND),
            ("wire-075", "heater-240", Verdict.SOUND),
        ],
    )
    def test_a_wire_alone_carries_its_load(self, bench, loom, wire, heater, verdict):
        finding = bench.said(loom(), "WIRE-01", "wire bed", feed_wire=wire, heater=heater)
        assert finding.verdict is verdict

    # Source: DIN VDE 0298-4: 12 A of 0.75 mm² on a surface, 0.57 of it in a bundle of six circuits: 6.84 A
    @pytest.mark.outside
    def test_in_a_bundle_it_carries_less(self, bench, loom):
        case = loom(bed={"bundled": 6})
        finding = bench.said(case, "WIRE-01", "wire bed", feed_wire="wire-075", heater="heater-240")
        assert finding.verdict is Verdict.UNSOUND
        assert finding.value == 10
        assert finding.limit == pytest.approx(6.84)
        assert bench.said(case, "WIRE-01", "wire bed", heater="heater-240").verdict is Verdict.SOUND

    def test_where_it_is_as_hot_as_its_insulation_it_carries_nothing(self, bench, loom):
        finding = bench.said(loom(motor={"room": "70 °C"}), "WIRE-01", "wire motor")
        assert (finding.verdict, finding.limit) == (Verdict.UNSOUND, 0)

    def test_peak_current_warms_as_its_rms(self, bench, loom):
        finding = bench.said(loom(), "WIRE-01", "wire motor", motor="motor-peak")
        assert finding.value == pytest.approx(2.8 / 2**0.5)

    def test_a_feed_carries_all_that_its_supply_is_rated_for(self, bench, loom):
        assert bench.said(loom(), "WIRE-01", "wire feed").value == pytest.approx(350 / 24)
        finding = bench.said(loom(), "WIRE-01", "wire feed", feed_wire="wire-075")
        assert finding.verdict is Verdict.UNSOUND

    def test_gauges_are_read(self, bench, loom):
        finding = bench.said(loom(), "WIRE-01", "wire bed", feed_wire="wire-16-gauge")
        assert "1.31 mm²" in finding.because

    def test_without_a_rail_a_power_cannot_be_told(self, bench, loom):
        finding = bench.said(loom(bed={"rail": None}), "WIRE-01", "wire bed")
        assert finding.needs == ("loom.bed.rail",)


class TestDrop:
    # Source: IEC 60228, 13.3 ohm/km of 1.5 mm² at 20 °C, 1.1965 of that at 70 °C; out and back over 1.3 m
    @pytest.mark.outside
    def test_of_a_bed(self, bench, loom):
        finding = bench.said(loom(), "WIRE-02", "wire bed")
        volts = 6.25 * 13.3e-3 * 1.1965 * 2 * 1.3
        assert finding.value == pytest.approx(100 * volts / 24, rel=1e-6)
        assert finding.verdict is Verdict.SOUND

    def test_thin_and_long_wires_lose_too_much(self, bench, loom):
        long = loom(bed={"length": "1700 mm"})
        assert bench.said(long, "WIRE-02", "wire bed", feed_wire="wire-075").verdict is Verdict.MARGINAL
        far = loom(bed={"length": "3 m"})
        finding = bench.said(far, "WIRE-02", "wire bed", feed_wire="wire-075", heater="heater-240")
        assert finding.verdict is Verdict.UNSOUND

    def test_a_driver_does_not_mind(self, bench, loom):
        assert "driver" in bench.said(loom(), "WIRE-02", "wire motor").because


class TestWhatLasts:
    def test_the_supply_alone(self, bench, loom):
        assert bench.said(loom(), "WIRE-03", "wire feed").verdict is Verdict.SOUND  # 17 A into 18 A
        finding = bench.said(loom(), "WIRE-03", "wire feed", feed_wire="wire-075")
        assert (finding.verdict, finding.value, finding.limit) == (Verdict.UNSOUND, 17, 12)
        small = bench.said(loom(), "WIRE-03", "wire feed", feed_wire="wire-075", supply="supply-small")
        assert (small.verdict, small.value) == (Verdict.SOUND, 6)

    def test_a_fuse_that_never_blows_protects_nothing(self, bench, loom):
        """The naive answer sees a fuse before the wire and is content; the supply folds back before it blows."""
        case = loom(bed={"fuse": "bed-fuse"})
        naive = {"feed_wire": "wire-075", "bed_fuse": "fuse-20"}
        load_a, fuse_a, limit_a, carries_a = 6.25, 20.0, 17.0, 12.0
        assert 1.25 * load_a <= fuse_a  # "a fuse is there, and it carries the load"
        assert limit_a < fuse_a  # but it is never asked to blow
        finding = bench.said(case, "WIRE-03", "wire bed", **naive)
        assert (finding.verdict, finding.value, finding.limit) == (Verdict.UNSOUND, limit_a, carries_a)
        good = bench.said(case, "WIRE-03", "wire bed", feed_wire="wire-075", bed_fuse="fuse-10")
        assert (good.verdict, good.value) == (Verdict.SOUND, 10)

    def test_a_fuse_on_the_board_counts_for_its_port(self, bench, loom):
        finding = bench.said(loom(bed={"from": "board.bed"}), "WIRE-03", "wire bed")
        assert (finding.value, finding.verdict) == (15, Verdict.SOUND)
        assert "the fuse of port bed" in finding.because

    def test_a_limit_that_nobody_says_is_usual(self, bench, loom):
        finding = bench.said(loom(), "WIRE-03", "wire feed", supply="supply-unsaid")
        assert finding.verdict is Verdict.MARGINAL
        assert finding.assumed[0] == "limit of supply-unsaid"

    def test_mains_hold_to_their_fuse(self, bench, loom):
        finding = bench.said(loom(), "WIRE-03", "wire line")
        assert (finding.value, finding.verdict) == (3.15, Verdict.SOUND)
        bare = bench.said(loom(rail={"mains-fuse": None}), "WIRE-03", "wire line")
        assert bare.verdict is not Verdict.SOUND

    def test_behind_a_driver_it_is_not_asked(self, loom):
        from scantling.checks.wire_protection import CHECK

        assert "wire motor" not in CHECK.subjects(loom().project.design)


class TestEnds:
    def test_a_plug_needs_a_third_to_spare(self, bench, loom):
        assert bench.said(loom(), "WIRE-04", "wire bed").verdict is Verdict.SOUND  # 6.25 of 15 A
        finding = bench.said(loom(), "WIRE-04", "wire bed", plug="plug-5")
        assert (finding.verdict, finding.value) == (Verdict.UNSOUND, 125)
        edge = bench.said(loom(), "WIRE-04", "wire bed", heater="heater-240")
        assert edge.value == pytest.approx(66.667, abs=0.001)

    def test_a_plug_without_a_rating_is_never_green(self, bench, loom):
        finding = bench.said(loom(), "WIRE-04", "wire bed", plug="plug-unsaid")
        assert finding.verdict is Verdict.UNKNOWN
        assert finding.missing == ("parts.plug-unsaid.current",)

    def test_a_ferrule_is_made_for_its_wire(self, bench, loom):
        small = bench.said(loom(), "WIRE-04", "wire bed", ferrule="ferrule-075")
        assert (small.verdict, "do not go in" in small.because) == (Verdict.UNSOUND, True)
        loose = bench.said(loom(), "WIRE-04", "wire bed", feed_wire="wire-075")
        assert (loose.verdict, "slip out" in loose.because) == (Verdict.UNSOUND, True)

    def test_without_ends_it_is_not_looked_at(self, bench, loom):
        assert bench.said(loom(), "WIRE-04", "wire feed").needs == ("loom.feed.from-end", "loom.feed.to-end")


class TestEarth:
    def test_a_supply_is_tied_to_earth(self, bench, loom):
        assert bench.said(loom(), "WIRE-05", "place supply").verdict is Verdict.SOUND
        finding = bench.said(loom(earth={"to": "heater"}), "WIRE-05", "place supply")
        assert (finding.verdict, "inlet" in finding.because) == (Verdict.UNSOUND, True)

    # Source: IEC 60364-5-54: the protective conductor is as thick as the line, up to 16 mm²
    @pytest.mark.outside
    def test_as_thick_as_the_line(self, bench, loom):
        thin = bench.said(loom(), "WIRE-05", "place supply", earth_wire="wire-075")
        assert (thin.verdict, thin.value) == (Verdict.UNSOUND, 75)

    def test_a_frame_of_metal_needs_one_a_frame_of_wood_does_not(self, bench, loom):
        more = {"from": "supply", "to": "frame", "wire": "earth-wire", "length": "300 mm", "carries": "earth"}
        assert bench.said(loom(), "WIRE-05", "place frame").verdict is Verdict.SOUND
        assert bench.said(loom(), "WIRE-05", "place frame", frame="aluminium").verdict is Verdict.UNSOUND
        tied = loom(frame_earth={**more, "if-needed": "yes"})
        finding = bench.said(tied, "WIRE-05", "place frame", frame="aluminium")
        assert finding.verdict is Verdict.SOUND
        assert "frame_earth and earth" in finding.because

    def test_without_a_loom_it_is_not_looked_at(self, bench, loom):
        none = loom(**dict.fromkeys(LOOM))
        assert isinstance(bench.said(none, "WIRE-05", "place supply"), NotLookedAt)


# Source: two published fuse calculators: 1.25 times the steady current
@pytest.mark.outside
def test_a_fuse_carries_its_load_with_a_fifth_to_spare(bench, loom):
    case = loom(bed={"fuse": "bed-fuse"})
    sound = bench.said(case, "WIRE-06", "wire bed")
    assert (sound.value, sound.verdict) == (62.5, Verdict.SOUND)  # 6.25 A of 10
    full = bench.said(case, "WIRE-06", "wire bed", heater="heater-240")
    assert (full.value, full.verdict) == (100, Verdict.UNSOUND)
    assert bench.said(case, "WIRE-06", "wire bed", heater="heater-240", bed_fuse="fuse-20").verdict is Verdict.SOUND
    assert bench.said(loom(), "WIRE-06", "wire feed").because == "There is no fuse in it that could open."
