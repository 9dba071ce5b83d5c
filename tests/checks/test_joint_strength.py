"""Joints under load: torque, pressure, threads in soft material, done up again, pull and slip."""

from __future__ import annotations

import pytest

from scantling.findings import NotLookedAt, Verdict

SHEETS = {"birch plywood": "9 mm", "MDF": "12 mm", "acrylic": "5 mm", "aluminium": "4 mm", "softwood": "18 mm"}


@pytest.fixture
def judged(bench):
    """Say what a check finds of a joint through a panel, into a nut or into a block."""

    def judge(code: str, material: str = "birch plywood", block: dict | None = None, **joint):
        described = {"screw": "socket head M4", "through": ["panel.thickness"], "into": "plain nut"} | joint
        usual = {"kind": "thing", "material": "birch plywood", "sizes": {"depth": "12 mm"}}
        thickness = SHEETS.get(material, "6 mm")
        parts = {
            "board": {"kind": "sheet", "material": material, "thickness": thickness},
            "block": usual | (block or {}),
        }
        case = bench.case(parts=parts, places={"panel": "board", "block": "block"}, joints={"j": described})
        return bench.said(case, code, "joint j")

    return judge


def into(holds: str, **more) -> dict:
    """Describe a thread in the block."""
    return {"place": "block", "depth": "block.depth", "holds": holds, **more}


LARGE = ["large washer", "panel.thickness", "large washer"]
PLAIN = ["washer", "panel.thickness", "washer"]


class TestTightening:
    def test_the_wood_under_the_washer_governs_not_the_screw(self, judged):
        finding = judged("JOINT-04", through=LARGE)
        # 18 MPa on a ring of 12 less 4.5 mm: 97.2 mm², 1749 N, 1386 N·mm at K = 0.198
        assert finding.value == pytest.approx(18 * 97.2, rel=0.01)
        assert "birch plywood under the large washer" in finding.because
        assert finding.verdict is Verdict.SOUND

    def test_in_metal_the_screw_governs_by_its_class(self, judged):
        soft, hard = (judged("JOINT-04", "aluminium", grade=grade) for grade in ("4.8", "8.8"))
        # stress area 8.779 mm² times proof stress 310 and 580 MPa times 0.75 (ISO 898-1; machine design textbook)
        assert soft.value == pytest.approx(0.75 * 8.779 * 310, rel=1e-3)
        assert hard.value == pytest.approx(0.75 * 8.779 * 580, rel=1e-3)
        assert "the screw itself (8.8)" in hard.because

    def test_the_lowest_class_is_taken_where_none_is_named(self, judged):
        assert judged("JOINT-04", "aluminium").value == judged("JOINT-04", "aluminium", grade="4.8").value
        inch = judged("JOINT-04", "aluminium", screw="hexagon head 1/4-20")
        assert "the screw itself (grade 1)" in inch.because

    def test_a_torque_that_the_joint_says_is_shown_with_its_clamp_load(self, judged):
        finding = judged("JOINT-04", through=LARGE, tighten="0.8 N m")
        assert finding.value == pytest.approx(800 / (0.198 * 4), rel=0.01)
        assert finding.low < finding.value < finding.high  # the friction is known to a third
        assert "says 800 N·mm" in finding.because


class TestPressure:
    @pytest.mark.parametrize(
        ("through", "verdict"),
        [(["panel.thickness"], Verdict.UNSOUND), (PLAIN, Verdict.MARGINAL), (LARGE, Verdict.SOUND)],
    )
    def test_large_washers_against_wood(self, judged, through, verdict):
        assert judged("JOINT-05", through=through).verdict is verdict

    def test_a_smaller_torque_lets_plain_washers_serve(self, judged):
        finding = judged("JOINT-05", through=PLAIN, tighten="0.5 N m")
        assert finding.verdict is Verdict.SOUND
        assert finding.value == pytest.approx(500 / (0.198 * 4) / 47.7, rel=0.01)  # ring of 9 less 4.5 mm

    def test_softer_wood_bears_less(self, judged):
        assert judged("JOINT-05", "softwood", through=PLAIN).verdict is Verdict.UNSOUND
        assert judged("JOINT-05", "MDF", through=LARGE).verdict is Verdict.MARGINAL

    def test_metal_bears_what_the_screw_gives(self, judged):
        finding = judged("JOINT-05", "aluminium")
        assert finding.verdict is Verdict.SOUND
        assert "Metal lies under head and nut" in finding.because

    def test_the_side_of_the_nut_counts_too(self, judged):
        finding = judged("JOINT-05", through=["large washer", "panel.thickness"])
        assert finding.verdict is Verdict.UNSOUND
        assert "the nut presses" in finding.because

    def test_what_it_is_made_of_must_be_said(self, judged):
        finding = judged("JOINT-05", block={"material": None}, through=["block.depth"])
        assert finding == NotLookedAt(
            "JOINT-05", "joint j", "Pressure under head, washer and nut", ("parts.block.material",)
        )


class TestThread:
    def test_straight_into_panel_holds_a_gentle_tightening(self, judged):
        asked = {"screw": "socket head M3", "through": ["washer", "panel.thickness"], "into": into("panel")}
        by_feel, gentle = judged("JOINT-06", **asked), judged("JOINT-06", tighten="0.12 N m", **asked)
        assert (by_feel.verdict, gentle.verdict) == (Verdict.MARGINAL, Verdict.SOUND)
        assert "held by its own thread in birch plywood" in by_feel.because

    def test_the_edge_holds_less(self, judged):
        asked = {"screw": "socket head M3", "through": ["washer", "panel.thickness"]}
        face, edge = (judged("JOINT-06", into=into(holds), **asked) for holds in ("panel", "panel edge"))
        assert edge.value < face.value

    def test_a_short_thread_in_panel_is_drawn_out(self, judged):
        short = {"sizes": {"depth": "6 mm"}}
        asked = {"screw": "socket head M4", "through": ["washer", "panel.thickness"], "tighten": "1.5 N m"}
        assert judged("JOINT-06", block=short, into=into("panel", blind="no"), **asked).verdict is Verdict.UNSOUND

    def test_plastic_holds_more_than_panel(self, judged):
        asked = {"screw": "socket head M3", "through": ["washer", "panel.thickness"]}
        wood = judged("JOINT-06", into=into("panel"), **asked)
        plastic = judged("JOINT-06", block={"material": "PETG"}, into=into("plastic"), **asked)
        assert plastic.value > wood.value
        assert plastic.verdict is Verdict.SOUND

    def test_an_insert_is_asked_only_where_something_pulls(self, judged):
        asked = {"screw": "socket head M3", "through": ["washer", "panel.thickness"], "into": into("insert")}
        petg = {"material": "PETG", "sizes": {"depth": "5.7 mm"}}
        with pytest.raises(AssertionError):
            judged("JOINT-06", block=petg, **asked)
        assert judged("JOINT-06", block=petg, pull="100 N", **asked).verdict is Verdict.SOUND
        assert judged("JOINT-06", block=petg, pull="3 kN", **asked).verdict is Verdict.UNSOUND

    def test_what_holds_it_must_be_said(self, judged):
        finding = judged("JOINT-06", block={"material": "unobtainium"}, into=into("plastic"))
        assert isinstance(finding, NotLookedAt)
        assert finding.needs == ("places.block (wood, panel or plastic as its material)",)


class TestAgain:
    def test_about_three_times_in_panel(self, judged):
        verdicts = [judged("JOINT-07", into=into("panel"), tightened=str(n)).verdict for n in (1, 2, 3, 4, 5)]
        assert verdicts == [Verdict.SOUND] * 2 + [Verdict.MARGINAL] * 2 + [Verdict.UNSOUND]

    def test_never_where_it_is_loosened_to_align(self, judged):
        finding = judged("JOINT-07", into=into("panel edge"), aligns="yes")
        assert finding.verdict is Verdict.UNSOUND
        assert "loosened to align" in finding.because
        assert finding.mend == "a nut behind a washer, or an insert"

    def test_plastic_and_lock_nuts_bear_aligning(self, judged):
        assert judged("JOINT-07", into=into("plastic"), aligns="yes").verdict is Verdict.SOUND
        assert judged("JOINT-07", into="lock nut", aligns="yes").verdict is Verdict.SOUND
        assert judged("JOINT-07", into="lock nut", tightened="12").verdict is Verdict.UNSOUND

    def test_a_plain_nut_is_not_asked(self, judged):
        with pytest.raises(AssertionError):
            judged("JOINT-07", into="plain nut", tightened="12")


class TestGrip:
    def test_clamp_load_against_pull_and_slip(self, judged):
        small = judged("JOINT-08", through=LARGE, pull="20 N", slide="30 N")
        assert small.verdict is Verdict.SOUND
        assert small.limit == pytest.approx(20 + 30 / 0.3)  # the pull, and the sideways force over the friction
        assert judged("JOINT-08", through=LARGE, slide="150 N").verdict is Verdict.MARGINAL
        assert judged("JOINT-08", through=LARGE, slide="1200 N").verdict is Verdict.UNSOUND

    def test_wood_loses_a_part_of_its_clamp_load(self, judged):
        wood, metal = (
            judged("JOINT-08", one, through=LARGE, slide="30 N", tighten="0.8 N m")
            for one in ("birch plywood", "aluminium")
        )
        assert wood.value == pytest.approx(0.65 / 0.9 * metal.value)

    def test_asked_only_where_a_load_is_said(self, judged):
        with pytest.raises(AssertionError):
            judged("JOINT-08")


class TestOwnLimits:
    """The design may set its own limit, with a reason."""

    @pytest.fixture
    def accepted(self, bench):
        """Say what a check finds of a joint with a limit of the design's own."""

        def judge(code: str, limit: str, **joint):
            described = {"screw": "socket head M4", "through": PLAIN, "into": "plain nut"} | joint
            parts = {
                "board": {"kind": "sheet", "material": "birch plywood", "thickness": "9 mm"},
                "block": {"kind": "thing", "material": "birch plywood", "sizes": {"depth": "12 mm"}},
            }
            own = {"code": code, "subject": "joint j", "limit": limit, "because": "tried on scrap"}
            places = {"panel": "board", "block": "block"}
            case = bench.case(parts=parts, places=places, joints={"j": described}, accepted=[own])
            return bench.said(case, code, "joint j")

        return judge

    @pytest.mark.parametrize(
        ("code", "tight", "wide", "joint"),
        [
            ("JOINT-05", "10 MPa", "60 MPa", {}),
            ("JOINT-07", "2", "9", {"into": into("panel"), "tightened": "4"}),
            ("JOINT-08", "9 kN", "1 N", {"slide": "30 N"}),
        ],
    )
    def test_it_counts_and_is_told(self, accepted, code, tight, wide, joint):
        strict, lenient = accepted(code, tight, **joint), accepted(code, wide, **joint)
        assert (strict.verdict, lenient.verdict) == (Verdict.UNSOUND, Verdict.SOUND)
        assert "The limit is the design's own: tried on scrap." in lenient.because
