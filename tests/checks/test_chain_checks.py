"""Chains of sizes, holes that must meet, and the share of whole machines: what the checks say and propose."""

from __future__ import annotations

import re

import pytest

from scantling.findings import NotLookedAt, Verdict
from scantling.shapes.outline import Loop, Outline, Segment

GAP = [{"size": "60 mm", "tolerance": "0.5 mm"}, {"size": "59.5 mm", "sign": "-", "tolerance": "0.1 mm"}]
ROD = {"kind": "rod", "diameter": "8 mm", "material": "steel"}


def square(wide: float, high: float) -> Outline:
    """Return a rectangular outline."""
    corners = ((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high))
    return Outline(Loop(tuple(Segment(a, b) for a, b in zip(corners, (*corners[1:], corners[0]), strict=True))))


@pytest.fixture
def chained(bench):
    """Say what a check finds of a chain of sizes."""

    def judge(code: str, terms=None, **chain):
        case = bench.case(chains={"gap": {"terms": terms or GAP, **chain}})
        return bench.said(case, code, "chain gap")

    return judge


class TestYield:
    def test_sound_says_what_spreads_most(self, chained):
        finding = chained("CHAIN-02", **{"at-least": "-0.2 mm"})
        assert (finding.verdict, finding.mend) == (Verdict.SOUND, "")
        # 0.5² / (0.5² + 0.1²) = 96 %
        assert "Most of the spread, 96 %, comes from 60 mm." in finding.because

    def test_unsound_proposes_a_slot_and_the_tolerance_to_tighten(self, chained):
        finding = chained("CHAIN-02", **{"at-least": "0.3 mm", "at-most": "0.9 mm"})
        assert finding.verdict is Verdict.UNSOUND
        move, longer = (float(one) for one in re.findall(r"([\d.]+) mm", finding.mend)[:2])
        tight = float(re.search(r"hold 60 mm to ± ([\d.]+) mm", finding.mend)[1])
        # exact: σ = √(0.5² + 0.1²) / 3 = 0.16997; central 99.7 % need ± 2.9677 σ = ± 0.5044, so 1.0088 - 0.6 of slot
        assert move == pytest.approx(0.1, abs=0.003)
        assert longer == pytest.approx(0.409, abs=0.01)
        assert "longer and give its slot" in finding.mend
        assert 0 < tight < 0.5
        served = chained(
            "CHAIN-02",
            [{"size": f"{60 + move} mm", "tolerance": "0.5 mm"}, GAP[1]],
            **{"at-least": f"{0.3 - longer / 2} mm", "at-most": f"{0.9 + longer / 2} mm"},
        )
        assert served.value == pytest.approx(99.7, abs=0.05)
        held = chained(
            "CHAIN-02",
            [{"size": "60 mm", "tolerance": f"{tight} mm"}, GAP[1]],
            **{"at-least": "0.3 mm", "at-most": "0.9 mm"},
        )
        assert held.value == pytest.approx(99.7, abs=0.05)

    def test_where_no_size_alone_is_enough_all_are_held_tighter(self, chained):
        limits = {"at-least": "0.4 mm", "at-most": "0.6 mm"}
        terms = [{"size": "60 mm", "tolerance": "0.5 mm"}, {"size": "59.5 mm", "sign": "-", "tolerance": "0.4 mm"}]
        share = re.search(r"hold every size to (\d+) % of its tolerance", chained("CHAIN-02", terms, **limits).mend)
        held = [{**term, "tolerance": f"{float(term['tolerance'][:3]) * int(share[1]) / 100} mm"} for term in terms]
        assert chained("CHAIN-02", held, **limits).value == pytest.approx(99.7, abs=0.2)

    @pytest.mark.outside
    @pytest.mark.parametrize(
        ("spread", "share"),
        # Source: of ± 0.3 within ± 0.15: normal 2 Φ(1.5) - 1; even a half; cut off (2 Φ(1) - 1) / (2 Φ(2) - 1)
        [("normal", 86.639), ("even", 50.0), ("cut off", 68.269 / 0.95450)],
    )
    def test_spreads(self, chained, spread, share):
        terms = [{"size": "10 mm", "tolerance": "0.3 mm", "spread": spread}]
        assert chained("CHAIN-02", terms, **{"at-least": "9.85 mm", "at-most": "10.15 mm"}).value == pytest.approx(
            share, abs=0.2
        )

    def test_sizes_read_on_pieces(self, chained):
        terms = [{"size": "8 mm", "samples": ["7.94 mm", "7.95 mm", "7.96 mm", "8.01 mm"]}]
        finding = chained("CHAIN-02", terms, **{"at-most": "8 mm"})
        assert finding.value == pytest.approx(75, abs=0.2)
        worst = chained("CHAIN-01", terms, **{"at-most": "8 mm"})
        assert (worst.low, worst.high) == pytest.approx((7.94, 8.01))

    def test_pieces_measured_in_the_workshop(self, bench):
        actual = {"part": "rod", "size": "diameter", "samples": ["7.94 mm", "7.95 mm", "7.96 mm", "8.01 mm"]}
        chains = {"gap": {"terms": ["+ rod.diameter"], "at-most": "8 mm"}}
        case = bench.case(parts={"rod": ROD}, places={"rod": "rod"}, chains=chains, workshop={"actuals": [actual]})
        assert bench.said(case, "CHAIN-02", "chain gap").value == pytest.approx(75, abs=0.2)

    def test_uneven_tolerance_of_a_term(self, chained):
        finding = chained("CHAIN-01", [{"size": "10 mm", "tolerance": "+0.3/-0.1 mm"}], **{"at-most": "10.3 mm"})
        assert (finding.low, finding.high) == pytest.approx((9.9, 10.3))
        same = chained("CHAIN-01", ["+ 10 mm +0.3/-0.1 mm"], **{"at-most": "10.3 mm"})
        assert (same.low, same.high) == pytest.approx((9.9, 10.3))

    def test_what_is_common_cancels_or_adds(self, chained):
        apart = [
            {"size": "300 mm", "common": {"scale": "0.3 %"}},
            {"size": "300 mm", "sign": "-", "common": {"scale": "0.3 %"}},
        ]
        finding = chained("CHAIN-01", apart, **{"at-least": "0 mm"})
        assert (finding.low, finding.high) == (0, 0)
        same_way = [{"size": "300 mm", "common": {"scale": "0.3 %"}}, {"size": "300 mm", "common": {"scale": "0.3 %"}}]
        finding = chained("CHAIN-01", same_way, **{"at-least": "0 mm"})
        assert (finding.low, finding.high) == pytest.approx((598.2, 601.8))
        seam = [{"size": "300 mm", "common": {"seam": "0.3 mm"}}]
        assert chained("CHAIN-02", seam, **{"at-least": "299.9 mm"}).value == pytest.approx(84.13, abs=0.2)  # Φ(1)

    def test_a_size_made_to_a_template_shares_its_scale(self, bench):
        parts = {
            "ply": {"kind": "sheet", "material": "birch plywood", "thickness": "6 mm", "sizes": {"width": "300 mm"}}
        }
        chains = {"gap": {"terms": ["+ a.width", "- b.width"], "at-least": "-1 mm"}}
        places = {"a": "ply", "b": "ply"}
        sheets = {name: {"outline": f"{name}.dxf"} for name in places}
        case = bench.case(
            parts=parts, places=places, chains=chains, sheets=sheets, outlines=dict.fromkeys(places, square(300, 100))
        )
        finding = bench.said(case, "CHAIN-01", "chain gap")
        assert (finding.low, finding.high) == pytest.approx((-1, 1))  # ± 0.5 by hand each; the scale cancels


MOTOR = {"kind": "motor", "frame-size": "17", "shaft-diameter": "5 mm"}
PLY = {"kind": "sheet", "material": "birch plywood", "thickness": "6 mm"}
BOX = {"kind": "thing", "sizes": {"wall": "4 mm"}}


def panel(bench, holes, **more):
    """Open a panel of the workshop's own make with holes for a motor and for two boxes."""
    joint = {"screw": "socket head M4", "through": ["panel.thickness", "box.wall"], "into": "lock nut", "count": 4}
    sections = {
        "parts": {"ply": PLY, "motor": MOTOR, "box": BOX},
        "places": {"panel": "ply", "motor": "motor", "box": {"reference": "box", "quantity": 2}},
        "joints": {"box": joint},
        "sheets": {"panel": {"outline": "a.dxf", "holes": holes}},
        "outlines": {"panel": square(400, 300)},
    }
    return bench.case(**{**sections, **more})


FACE = {"for": "motor.face", "at": ["100 mm", "100 mm"]}
BOXES = {"for": "joint:box", "at": ["20 mm", "20 mm"], "repeat": [[f"{x} mm", "20 mm"] for x in (60, 200, 240)]}


class TestMeetingHoles:
    def test_holes_for_a_motor_by_hand_are_marginal_and_the_wider_hole_serves(self, bench):
        finding = bench.said(panel(bench, [FACE]), "HOLE-03", "hole panel.0")
        assert finding.verdict is Verdict.MARGINAL
        assert finding.low < finding.value < finding.high
        wider = re.search(r"holes of ([\d.]+) mm", finding.mend)
        assert wider is not None
        case = panel(bench, [FACE], workshop={"bits": [f"{wider[1]} mm", "22.5 mm"]})
        served = bench.said(case, "HOLE-03", "hole panel.0")
        assert served.value > 99.6
        assert "± 0.4 mm by hand and ± 0.1 mm in motor" in finding.because

    def test_two_screws_each_forgive_more(self, bench):
        finding = bench.said(panel(bench, [BOXES]), "HOLE-03", "hole panel.0")
        assert finding.verdict is Verdict.SOUND

    def test_a_panel_not_made_here_is_not_drilled_here(self, bench):
        finding = bench.said(panel(bench, [{"diameter": "5 mm", "at": ["9 mm", "9 mm"]}]), "HOLE-03", "hole panel.0")
        assert (finding.verdict, finding.value) == (Verdict.SOUND, None)

    def test_which_holes_belong_together_must_be_said(self, bench):
        foot = {"screw": "socket head M4", "through": ["panel.thickness", "box.wall"], "into": "plain nut", "count": 2}
        box = {**foot, "count": 4}
        case = panel(bench, [BOXES], joints={"box": box, "foot": foot})
        finding = bench.said(case, "HOLE-03", "hole panel.0")
        assert isinstance(finding, NotLookedAt)
        assert finding.needs == ("sheets.panel.holes.0.per-piece",)
        said = panel(bench, [{**BOXES, "per-piece": 2}], joints={"box": box, "foot": foot})
        assert bench.said(said, "HOLE-03", "hole panel.0").verdict is Verdict.SOUND

    def test_a_pattern_wider_than_the_paper_crosses_a_seam(self, bench):
        far = {"for": "joint:box", "at": ["20 mm", "20 mm"], "repeat": [["340 mm", "20 mm"]], "per-piece": 2}
        shares = [
            bench.said(panel(bench, [far], workshop={"paper": p}), "HOLE-03", "hole panel.0").value
            for p in ("A3", "A4")
        ]
        assert shares[0] > shares[1]

    def test_a_printer_that_was_not_read_spoils_long_patterns(self, bench):
        far = {"for": "joint:box", "at": ["20 mm", "20 mm"], "repeat": [["380 mm", "20 mm"]], "per-piece": 2}
        read = {"printer": {"bar": "180 mm", "across": "180 mm", "along": "179.8 mm"}, "paper": "A2"}
        shares = [
            bench.said(panel(bench, [far], workshop=w), "HOLE-03", "hole panel.0").value
            for w in (read, {"paper": "A2"})
        ]
        assert shares[0] > shares[1] + 1


class TestWholeMachine:
    def test_many_chains_at_three_deviations_are_not_997_in_1000_machines(self, bench):
        # naive: every chain keeps 99.73 %, so the machine is sound. Independent chances multiply: 0.9973^12 = 96.8 %
        one = {"terms": [{"size": "10 mm", "tolerance": "0.3 mm"}], "at-least": "9.7 mm", "at-most": "10.3 mm"}
        case = bench.case(chains={f"c{n}": one for n in range(12)})
        assert bench.said(case, "CHAIN-02", "chain c3").verdict is not Verdict.UNSOUND
        finding = bench.said(case, "CHAIN-03", "machine whole")
        assert finding.value == pytest.approx(96.8, abs=0.2)
        assert finding.verdict is Verdict.MARGINAL
        assert "12 of these at 99.7 % each would leave 96.5 % of machines" in finding.because

    def test_what_one_template_spoils_it_spoils_once(self, bench):
        one = {"at-least": "9.7 mm", "at-most": "10.3 mm"}
        alone, common = ({"size": "10 mm", **how} for how in ({"tolerance": "0.3 mm"}, {"common": {"scale": "0.3 mm"}}))
        shares = [
            bench.said(
                bench.case(chains={f"c{n}": {"terms": [term], **one} for n in range(12)}), "CHAIN-03", "machine whole"
            ).value
            for term in (alone, common)
        ]
        assert shares == pytest.approx([96.8, 99.73], abs=0.2)

    def test_holes_count_with_chains(self, bench):
        chains = {"c": {"terms": [{"size": "10 mm", "tolerance": "0.3 mm"}], "at-least": "9 mm"}}
        finding = bench.said(panel(bench, [FACE, BOXES], chains=chains), "CHAIN-03", "machine whole")
        alone = bench.said(panel(bench, [FACE, BOXES]), "HOLE-03", "hole panel.0")
        assert finding.value == pytest.approx(alone.value, abs=1)
        assert "Least sure: hole panel.0" in finding.because
        assert "3 patterns of holes" in finding.because

    def test_a_machine_with_nothing_to_add_up_is_not_looked_at(self, bench):
        chains = {"c": {"terms": [{"size": "10 mm", "tolerance": "0.3 mm"}], "at-least": "9 mm"}}
        assert isinstance(bench.said(bench.case(chains=chains), "CHAIN-03", "machine whole"), NotLookedAt)

    def test_sound_where_all_is_well_inside(self, bench):
        one = {"terms": [{"size": "10 mm", "tolerance": "0.1 mm"}], "at-least": "9.7 mm"}
        finding = bench.said(bench.case(chains={"a": one, "b": one}), "CHAIN-03", "machine whole")
        assert (finding.verdict, finding.value) == (Verdict.SOUND, 100)
