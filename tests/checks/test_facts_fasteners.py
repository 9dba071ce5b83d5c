"""What the trade says of screws, washers, locking, printed parts, motors and teeth, as it comes out of the checks.

Every sentence of the trade is common practice, no source; the reasons in numbers are those of the checks.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from scantling.api.opening import open_design
from scantling.build.clamping import nut_factor, screw_friction, stress_area_mm2
from scantling.build.reference import reference_build
from scantling.build.settings import settings
from scantling.checks.all import CHECKS, run_checks
from scantling.findings import Finding, Verdict
from scantling.formulas import clamping, holding, power_screws
from scantling.formulas.beams import supported_sag_mm
from scantling.model.build import Key
from scantling.shapes.outline import Outline, rectangle_loop
from scantling.tables.clamp_limits import clamp_limit
from scantling.tables.frictions import friction
from scantling.tables.property_classes import property_class
from scantling.tables.threads import thread
from scantling.tables.washers import washer

ALDER = Path(__file__).parents[2] / "examples" / "alder"
BIRCH_RATIO = 0.68  # density of birch plywood over that of water


@pytest.fixture
def said(bench):
    """Say what a check finds of a joint in ply of 9 mm, or of the hole in it."""

    def judge(code: str, subject: str = "joint j", bits=("2.5 mm", "2.7 mm", "3.0 mm"), **joint):
        described = {"screw": "socket head M3", "through": ["washer", "2 mm"], "into": "lock nut"} | joint
        described["through"] = [{"thickness": x} if x[0].isdigit() else x for x in described["through"]]
        parts = {"ply": {"kind": "sheet", "material": "birch plywood", "thickness": "9 mm"}}
        case = bench.case(
            workshop={"bits": list(bits)},
            outlines={"panel": Outline(rectangle_loop(200, 200), ())},
            parts=parts,
            places={"panel": "ply"},
            joints={"j": described},
            sheets={"panel": {"outline": "panel.dxf", "holes": [{"for": "joint:j", "at": ["50 mm", "50 mm"]}]}},
        )
        return bench.said(case, code, subject)

    return judge


STRAIGHT = {"place": "panel", "depth": "panel.thickness", "holds": "panel", "blind": "no"}


class TestScrewsInPanel:
    """M3 straight into panel, not tapped: a bit of 2.7 mm; or through, with washer and nut."""

    def test_a_bit_of_2_7_is_taken_and_one_of_3_is_too_wide(self, said):
        assert said("HOLE-02", "hole panel.0", into=STRAIGHT, bits=["2.7 mm"]).verdict is Verdict.SOUND
        assert said("HOLE-02", "hole panel.0", into=STRAIGHT, bits=["3.0 mm"]).verdict is Verdict.MARGINAL

    def test_it_is_the_widest_at_which_the_wood_gives_way_and_not_the_thread(self):
        found, depth_mm = thread("M3"), 9.0
        wood_n = holding.panel_withdrawal_n(3.0, depth_mm, BIRCH_RATIO)
        bears_mpa = clamp_limit("birch plywood").pressure_mpa.typical

        def thread_n(bit_mm: float) -> float:
            return holding.thread_crush_n(3.0, bit_mm, float(found.pitch_mm), depth_mm, bears_mpa)

        assert thread_n(2.7) > wood_n > thread_n(2.8) > thread_n(3.0) == 0
        assert holding.overlap_ratio(3.0, found.minor_diameter_mm, 2.7) == pytest.approx(0.5, abs=0.02)

    def test_through_with_washer_and_nut_clamps_three_times_as_hard(self, said):
        straight = said("JOINT-04", through=["washer", "2 mm"], into=STRAIGHT)
        through = said("JOINT-04", through=["large washer", "panel.thickness", "large washer"], into="plain nut")
        assert "the thread in birch plywood" in straight.because
        assert through.value > 3 * straight.value


class TestPanelScrewsAgain:
    """Straight into panel: about three tightenings, and not where it must be loosened to align (trap 13)."""

    def test_the_naive_answer_is_that_a_screw_is_a_screw(self, said):
        naive = said("JOINT-01", into=STRAIGHT, through=["washer", "2 mm"])
        ours = said("JOINT-07", into=STRAIGHT, aligns="yes")
        assert naive.verdict is Verdict.SOUND  # long enough, and that is all that the naive look
        assert ours.verdict is Verdict.UNSOUND
        assert [said("JOINT-07", into=STRAIGHT, tightened=n).verdict for n in ("2", "3", "5")] == [
            Verdict.SOUND,
            Verdict.MARGINAL,
            Verdict.UNSOUND,
        ]


class TestScrewLengths:
    """Lengths over the band of the stack and of the screw, not at nominal (trap 9)."""

    def test_right_at_nominal_and_not_sure_over_the_band(self, bench):
        def judge(thickness: str) -> Finding:
            parts = {"ply": {"kind": "sheet", "material": "birch plywood", "thickness": thickness}}
            joint = {"screw": "socket head M3", "through": ["washer", "panel.thickness"], "into": "lock nut"}
            case = bench.case(parts=parts, places={"panel": "ply"}, joints={"j": joint})
            check = next(one for one in CHECKS if one.code == "JOINT-01")
            build = reference_build(case).replacing({Key("screw", "j"): "M3x12 socket head screw"})
            finding = check.run(case.reader(build), "joint j")
            assert isinstance(finding, Finding)
            return finding

        # 0.5 + 7 + 4.0 mm, a pitch of 0.5 mm wanted: 12 mm is just right at nominal
        exact, measured, bought = judge("6.8 mm"), judge("6.5 mm ± 0.1 mm"), judge("6.8 mm ± 0.5 mm")
        naive_mm = 12 - 0.5 - 6.8 - 4.0
        assert naive_mm >= 0.5  # the naive answer: it sticks out by a pitch, and is sound
        assert bought.value == pytest.approx(naive_mm)
        assert (exact.verdict, bought.verdict) == (Verdict.MARGINAL, Verdict.MARGINAL)  # the screw's own 0.35 mm tell
        assert bought.low < 0.0 < exact.low  # over the ply's band it may not even reach through its nut
        assert measured.verdict is Verdict.SOUND


class TestThreadedRod:
    """5/16 in and 3/8 in rod stand in for M8 and M10 in a frame; the lowest strength grade does."""

    def test_a_frames_load_is_far_below_what_the_lowest_grade_takes(self):
        frame_n = clamping.grip_needed_n(100, 100, 0.2)  # ten times the push of a quick bed, on one joint
        for metric, inch in (("M8", "5/16-18"), ("M10", "3/8-16")):
            proof_n = {
                name: stress_area_mm2(thread(name)) * property_class(grade).proof_mpa
                for name, grade in ((metric, "4.8"), (inch, "grade 1"))
            }
            assert proof_n[inch] > 0.6 * proof_n[metric]
            assert frame_n < 0.1 * min(proof_n.values())

    @pytest.mark.parametrize(
        "screw", ["hexagon head M8", "hexagon head 5/16-18", "hexagon head M10", "hexagon head 3/8-16"]
    )
    def test_the_wood_governs_and_any_of_them_holds_the_frame(self, said, screw):
        joint = {"screw": screw, "through": ["washer", "panel.thickness", "washer"], "into": "plain nut"}
        tight = said("JOINT-04", **joint)
        assert "birch plywood under the washer" in tight.because
        assert said("JOINT-08", pull="50 N", slide="50 N", **joint).verdict is Verdict.SOUND


class TestLargeWashers:
    """Large washers against wood."""

    def test_bare_head_plain_and_large_washer(self, said):
        bare, plain, large = (
            said("JOINT-05", screw="socket head M4", through=[*under, "panel.thickness", *under], into="plain nut")
            for under in ([], ["washer"], ["large washer"])
        )
        assert [one.verdict for one in (bare, plain, large)] == [Verdict.UNSOUND, Verdict.MARGINAL, Verdict.SOUND]
        assert bare.value > 2 * plain.value > 4 * large.value * 0.99

    def test_twice_the_area_of_a_plain_one_in_every_size(self):
        for name, hole_mm in (("M3", 3.4), ("M4", 4.5), ("M5", 5.5), ("M6", 6.6), ("M8", 9.0)):
            areas = [clamping.ring_area_mm2(washer(s, name).outer_diameter_mm, hole_mm) for s in ("plain", "large")]
            assert 1.8 < areas[1] / areas[0] < 2.9, name


class TestLocking:
    """A nylon-insert nut, two nuts jammed, or thread-locking fluid hold alike."""

    def test_the_check_takes_any_of_them(self, said):
        usual = {"through": ["washer", "panel.thickness", "washer"], "shakes": "yes"}
        ways = ({"into": "lock nut"}, {"into": "plain nut", "locking": "two nuts"}, {"locking": "threadlocker"})
        assert {said("JOINT-03", **usual, **way).verdict for way in ways} == {Verdict.SOUND}
        assert said("JOINT-03", **usual, into="plain nut").verdict is Verdict.MARGINAL

    @pytest.mark.parametrize(
        ("name", "nut_kg", "fifth_nmm"), [("M3", 0.0004, 80), ("M4", 0.0008, 120), ("M5", 0.0012, 200)]
    )
    def test_each_holds_far_more_than_shaking_can_turn(self, name, nut_kg, fifth_nmm):
        # a lock nut's torque at the fifth removal: ISO 2320 as printed in a published table, 0.08, 0.12, 0.2 N m
        found = thread(name)
        shaken_nmm = nut_kg * 50 * found.major_mm  # five times gravity on the whole nut, at a diameter's arm
        jammed_n = 0.2 * clamping.clamp_load_n(
            clamping.hand_torque_nmm(found.major_mm), found.major_mm, nut_factor(found, screw_friction().typical)
        )  # a fifth of what was given by feel is left
        low = friction("dry steel bolt").friction_ratio.low
        loosening_nmm = power_screws.lowering_torque_nmm(
            jammed_n, found.pitch_diameter_mm, float(found.pitch_mm), low, found.flank_half_angle_deg
        )
        assert fifth_nmm > 100 * shaken_nmm
        assert loosening_nmm > 10 * shaken_nmm


class TestPrintedParts:
    """Coarse or slightly warped printed parts mostly still serve."""

    def test_one_screw_pulls_a_warped_flange_flat(self):
        # a flange of PETG 40 long, 20 wide, 4 mm thick, bowed by 0.3 mm, least figures of hand and friction
        area_mm4 = 20 * 4**3 / 12
        bow_n = 0.3 / supported_sag_mm(1.0, 40.0, 2000.0, area_mm4)
        hand_nmm = clamping.hand_torque_nmm(3, clamping.HAND_LOW)
        clamp_n = clamping.clamp_load_n(hand_nmm, 3, nut_factor(thread("M3"), screw_friction().high))
        assert clamp_n > 5 * bow_n

    def test_a_coarse_flange_still_takes_the_same_screw(self, bench):
        parts = {
            "ply": {"kind": "sheet", "material": "birch plywood", "thickness": "9 mm"},
            "fine": {"kind": "thing", "sizes": {"flange": "5 mm ± 0.1 mm"}},
            "coarse": {"kind": "thing", "sizes": {"flange": "5 mm ± 0.35 mm"}},
        }
        places = {"panel": "ply", "holder": bench.options("fine", "coarse")}
        through = ["washer", "holder.flange", "panel.thickness", "washer"]
        joints = {"j": {"screw": "socket head M4", "through": through, "into": "lock nut"}}
        case = bench.case(parts=parts, places=places, joints=joints)
        for part in ("fine", "coarse"):
            build = reference_build(case).replacing({Key("part", "holder"): part, Key("screw", "j"): LONG})
            check = next(one for one in CHECKS if one.code == "JOINT-01")
            assert check.run(case.reader(build), "joint j").verdict is Verdict.SOUND, part


LONG = "M4x25 socket head screw"


@pytest.fixture(scope="module")
def alder():
    """Alder in the village."""
    return open_design(ALDER, "village", 1).case


class TestMotorsAndTeeth:
    """A size-17 motor about 40 mm long with about 0.4 N m serves every axis; 16 and 20 teeth must not be confused."""

    def test_it_serves_every_axis(self, alder):
        part = alder.part("motor-full")
        assert part.body_length_mm.value == 40
        assert part.holding_torque_nmm.value == 400
        motors = {Key("part", place): "motor-full" for place in ("x-motor", "y-motor", "z-motor")}
        report = run_checks(alder, reference_build(alder).replacing(motors), costly=False)
        of_axes = [one for one in report.findings if one.subject.startswith("axis ")]
        assert {one.subject for one in of_axes} == {"axis x", "axis y", "axis z"}
        torques = [one for one in of_axes if one.code in ("BELT-03", "SCREW-02")]
        assert len(torques) == 3
        assert {one.verdict for one in torques} == {Verdict.SOUND}
        assert all(one.admissible for one in of_axes)

    def test_16_for_20_teeth_is_a_fifth_in_every_size(self, alder):
        def steps(pulley: str) -> float:
            build = reference_build(alder).replacing({Key("part", "y-pulley"): pulley})
            found = {one.key: one.value for one in settings(alder.reader(build))}
            return float(found["axis.y.steps-per-mm"])

        assert (steps("pulley-20"), steps("pulley-16")) == (80, 100)
        assert 100 * steps("pulley-20") / steps("pulley-16") == pytest.approx(80)  # a part of 100 mm comes out at 80
