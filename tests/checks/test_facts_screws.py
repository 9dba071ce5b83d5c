"""What is said in the trade about screw axes, come out of the checks with its reason in numbers; and what misleads."""

from __future__ import annotations

import pytest

from scantling.checks.all import CHECKS
from scantling.findings import Finding, Verdict
from scantling.formulas.power_screws import self_locking_ratio

AXIS = "axis z"
FINE = {"z_screw": "m6", "z_nut": "nut-m6", "z_coupler": "tube-5"}
STEEP = {"z_screw": "tr8x8", "z_nut": "nut-tr8x8", "z_coupler": "coupler-5-8"}
SPEED, HOLDS, SLIP, WINDS = "SCREW-07", "SCREW-03", "SCREW-12", "SCREW-13"


def of_axis(bench, case, **chosen):
    """Return all findings on the screw axis."""
    codes = [c.code for c in CHECKS if c.code.startswith("SCREW") and AXIS in c.subjects(case.project.design)]
    words = [bench.said(case, code, AXIS, **chosen) for code in codes]
    return {word.code: word for word in words if isinstance(word, Finding)}


def reached_mm_s(finding) -> float:
    """Return the speed that the sentence says the axis would reach."""
    return float(finding.because.rpartition("would reach ")[2].split()[0])


class TestFineThreadedRod:
    # common practice, no source: a fine threaded rod makes a slower but sound vertical axis
    @pytest.mark.parametrize("motor", ["motor-full", "motor-flat"])
    def test_all_its_checks_are_sound_and_it_is_several_times_slower_than_a_steep_screw(self, bench, motor):
        case = bench.screw({"needs.acceleration": "60 mm/s2"})
        fine, steep = of_axis(bench, case, **FINE, z_motor=motor), of_axis(bench, case, **STEEP, z_motor=motor)
        assert {word.verdict for word in fine.values()} == {Verdict.SOUND}
        assert {"SCREW-02", HOLDS, "SCREW-04", "SCREW-05", SPEED, "SCREW-09", "SCREW-10", SLIP, WINDS} <= set(fine)
        assert 4 * reached_mm_s(fine[SPEED]) < reached_mm_s(steep[SPEED])
        assert reached_mm_s(fine[SPEED]) > 6  # mm/s, what a gantry is asked for

    def test_its_reasons(self, bench):
        case = bench.screw()
        fine = of_axis(bench, case, **FINE)
        assert fine[HOLDS].low > 200  # its friction holds more than twice what drives, whatever the motor
        assert "whole" in fine["SCREW-06"].because
        assert fine["SCREW-02"].value < 10  # % of a motor's torque

    def test_it_is_shown_wrong_where_the_axis_is_long(self, bench):
        # a router's axis of a metre, held at both ends, at 40 mm/s: the thin root whirls
        long = {"free": "1000 mm", "ends": "supported-supported", "needs.speed": "40 mm/s"}
        assert bench.said(bench.screw(long), "SCREW-04", AXIS).verdict is Verdict.UNSOUND


class TestSoftTube:
    # common practice, no source: soft tube of 5 mm bore clamped on shaft and rod is a sound coupler there
    def test_it_holds_many_times_what_a_fine_thread_takes(self, bench):
        finding = bench.said(bench.screw(), SLIP, AXIS, **FINE)
        assert finding.verdict is Verdict.SOUND
        assert finding.value > 20  # times what is needed, with a tie drawn by hand

    def test_it_goes_over_shaft_and_rod(self, bench):
        for mate in ("mate z.motor-coupler", "mate z.screw-coupler"):
            assert bench.said(bench.screw(), "MATE-06", mate, **FINE).verdict is Verdict.SOUND

    def test_it_loses_less_than_a_tenth_of_a_layer_to_its_winding(self, bench):
        finding = bench.said(bench.screw(), WINDS, AXIS, **FINE)
        assert finding.verdict is Verdict.SOUND
        assert finding.value < 0.02  # mm

    def test_it_lets_a_crooked_rod_follow_its_nut(self, bench):
        assert bench.said(bench.screw(), "SCREW-09", AXIS, **FINE).value == 0

    def test_there_means_the_fine_thread_not_a_steep_one(self, bench):
        steep = {**STEEP, "z_coupler": "tube-5"}
        assert bench.said(bench.screw(), WINDS, AXIS, **steep).verdict is Verdict.MARGINAL

    def test_two_of_them_a_slip_of_one_tilts_and_a_mark_of_paint_tells(self, bench):
        # what misleads: the torque is sound by far, and the gantry is out all the same once one has slipped
        two = bench.said(bench.screw(), SLIP, AXIS, **FINE)
        assert "A slip of one tilts the gantry by 1 mm a turn" in two.because
        assert "Paint a mark" in two.because
        one = bench.said(bench.screw({"screws": 1, "motor-count": 1}), SLIP, AXIS, **FINE)
        assert "tilts" not in one.because
        metal = {"bending-5-6": {**bench.parts["bending-5-6"], "slip-torque": "0.8 N m"}}
        assert "Paint" not in bench.said(bench.screw(parts=metal), SLIP, AXIS, z_coupler="bending-5-6").because


class TestDropping:
    """Does a vertical axis drop? Not by the lead alone, either way."""

    def hold(self, bench, screw, detent, friction, mass="1.05 kg"):
        motor = {"motor-full": {**bench.parts["motor-full"], "detent-torque": detent}}
        case = bench.screw({"screw-friction": friction, "moves": [{"mass": mass, "for": "gantry"}]}, motor)
        return bench.said(case, HOLDS, AXIS, z_screw=screw)

    def test_naive_a_steep_thread_drops_yet_detent_torque_holds_a_light_gantry(self, bench):
        assert self_locking_ratio(7, 8, 0.15, 15) < 1  # the naive word: not self-locking, so it drops
        assert self.hold(bench, "tr8x8", "15 N mm", "0.15 (0.1..0.2)").verdict is Verdict.SOUND

    def test_and_drops_where_the_motor_has_little_of_it_or_the_gantry_is_heavy(self, bench):
        assert self.hold(bench, "tr8x8", "1 N mm", "0.15 (0.1..0.2)").verdict is Verdict.UNSOUND
        assert self.hold(bench, "tr8x8", "15 N mm", "0.15 (0.1..0.2)", "6 kg").verdict is Verdict.UNSOUND

    def test_naive_a_lead_of_two_millimetres_holds_yet_well_greased_it_comes_down(self, bench):
        assert self_locking_ratio(7, 2, 0.15, 15) > 1  # the naive word: self-locking
        assert self.hold(bench, "tr8x2", "0 N mm", "0.15 (0.12..0.2)").verdict is Verdict.SOUND
        assert self.hold(bench, "tr8x2", "0 N mm", "0.05 (0.04..0.07)").verdict is Verdict.UNSOUND
        assert self.hold(bench, "tr8x2", "0 N mm", "0.1 (0.06..0.14)").verdict is Verdict.MARGINAL

    def test_the_word_hangs_on_detent_torque_only_where_friction_leaves_it_open(self, bench):
        unsaid = bench.said(bench.screw(), HOLDS, AXIS, z_screw="tr8x8")
        assert (unsaid.verdict, unsaid.missing) == (Verdict.UNKNOWN, ("detent torque of motor-full",))
        assert bench.said(bench.screw(), HOLDS, AXIS, z_screw="m6").verdict is Verdict.SOUND


class TestMisleading:
    def test_naive_the_play_of_a_nut_is_lost_yet_a_weight_closes_it(self, bench):
        loose = {"nut-m6": {**bench.parts["nut-m6"], "backlash": "0.4 mm"}}
        hung = bench.said(bench.screw(parts=loose), "SCREW-10", AXIS)
        level = bench.screw({"vertical": "no", "needs.holds-itself": None}, loose)
        assert (hung.value, hung.verdict) == (0, Verdict.SOUND)
        assert bench.said(level, "SCREW-10", AXIS).verdict is Verdict.UNSOUND

    def test_a_layer_that_is_no_whole_number_of_steps_is_no_fault(self, bench):
        finding = bench.said(bench.screw({"needs.layers": ["0.15 mm"]}), "SCREW-06", AXIS, z_screw="tr8x8")
        assert "is 3.75" in finding.because
        assert finding.verdict is Verdict.SOUND

    # Source: a maker's note on a screw of twelve threads to the inch: 94.48818897637 full steps a millimetre, stored as
    #   1511.81 where 1511.811024 are right; so for 1/4-20, 25.4 / 20 mm: 320000/127
    @pytest.mark.outside
    def test_an_inch_screw_has_exact_steps_and_rounding_them_is_told(self, bench):
        finding = bench.said(bench.screw(), "SCREW-01", AXIS, z_screw="inch-screw")
        assert "320000/127" in finding.because
        assert "Entered as 2519.69" in finding.because
        assert "Entered" not in bench.said(bench.screw(), "SCREW-01", AXIS).because
