"""Rules of screw axes, on an invented gantry of 1.05 kg on two screws."""

from __future__ import annotations

from fractions import Fraction

import pytest

from scantling.checks.screw_layers import full_steps_of
from scantling.checks.screw_speed import fastest_rev_s
from scantling.findings import Verdict

AXIS = "axis z"


class TestLead:
    # Source: arithmetic, 3200 micro-steps on a lead of 1 mm, 2 mm, 8 mm and 25.4/20 mm
    @pytest.mark.outside
    @pytest.mark.parametrize(
        ("screw", "exact", "step"),
        [
            ("m6", "3200 steps", 1 / 3200),
            ("tr8x2", "1600 steps", 1 / 1600),
            ("tr8x8", "400 steps", 1 / 400),
            ("inch-screw", "320000/127 = 2519.685 steps", 127 / 320000),
        ],
    )
    def test_steps_are_exact(self, bench, screw, exact, step):
        finding = bench.said(bench.screw(), "SCREW-01", AXIS, z_screw=screw)
        assert exact in finding.because
        assert finding.value == pytest.approx(step)
        assert (finding.verdict, finding.margin) == (Verdict.SOUND, None)

    def test_against_a_resolution_where_one_is_needed(self, bench):
        coarse = bench.screw({"needs.resolution": "0.001 mm", "microsteps": 4})
        assert bench.said(coarse, "SCREW-01", AXIS, z_screw="tr8x8").verdict is Verdict.UNSOUND


class TestTorque:
    # Source: textbook formula of power screws with 100 N: M6-like V-thread and Tr8x2 by hand below
    @pytest.mark.outside
    def test_raising_torque_is_that_of_the_textbook(self, bench):
        # Tr8x2, f 0.15, 100 N: 87.42 N·mm (worked with the textbook's formula). Here half the weight hangs on each.
        case = bench.screw({"friction": "0 N", "moves": [{"mass": "20.394 kg", "for": "weights"}]})
        finding = bench.said(case, "SCREW-02", AXIS, z_screw="tr8x2", z_nut="nut-tr8x2", z_coupler="coupler-5-8")
        assert "200 N on 2 x Tr8x2" in finding.because
        assert "175 N·mm of the" in finding.because  # 2 × 87.42

    def test_a_flat_motor_lifts_the_gantry_easily(self, bench):
        finding = bench.said(bench.screw(), "SCREW-02", AXIS, z_motor="motor-flat")
        assert finding.verdict is Verdict.SOUND
        assert finding.value < 10

    def test_a_level_screw_pushes_only_friction_and_mass(self, bench):
        level = {"vertical": "no", "needs.holds-itself": None, "needs.acceleration": "100 mm/s2"}
        lifted, pushed = bench.said(bench.screw(), "SCREW-02", AXIS), bench.said(bench.screw(level), "SCREW-02", AXIS)
        assert pushed.value < lifted.value / 2
        assert pushed.because.startswith("Pushing")


class TestHolding:
    def test_a_fine_thread_holds_whatever_the_motor(self, bench):
        finding = bench.said(bench.screw(), "SCREW-03", AXIS)
        assert (finding.verdict, finding.missing) == (Verdict.SOUND, ())

    def test_a_steep_one_hangs_on_the_detent_torque(self, bench):
        finding = bench.said(bench.screw(), "SCREW-03", AXIS, z_screw="tr8x8", z_nut="nut-tr8x8")
        assert (finding.verdict, finding.missing) == (Verdict.UNKNOWN, ("detent torque of motor-full",))

    @pytest.mark.parametrize(("detent", "verdict"), [("15 N mm", Verdict.SOUND), ("1 N mm", Verdict.UNSOUND)])
    def test_which_decides_either_way(self, bench, detent, verdict):
        parts = {"motor-full": {**bench.parts["motor-full"], "detent-torque": detent}}
        finding = bench.said(bench.screw(parts=parts), "SCREW-03", AXIS, z_screw="tr8x8", z_nut="nut-tr8x8")
        assert finding.verdict is verdict

    # Source: textbook formula, lowering torque of Tr8x8(P2) at 100 N and f 0.15: -69.07 N·mm (it drops)
    @pytest.mark.outside
    def test_friction_alone_of_a_steep_thread_is_that_of_the_textbook(self, bench):
        parts = {"motor-full": {**bench.parts["motor-full"], "detent-torque": "0 N mm"}}
        case = bench.screw({"moves": [{"mass": "20.394 kg", "for": "weights"}]}, parts)
        finding = bench.said(case, "SCREW-03", AXIS, z_screw="tr8x8", z_nut="nut-tr8x8")
        driving = 100 * 8 / 6.283185307
        assert finding.value == pytest.approx(100 * (driving - 69.07) / driving, rel=1e-3)

    def test_not_asked_for_it_is_told_all_the_same(self, bench):
        case = bench.screw({"needs.holds-itself": "no"})
        finding = bench.said(case, "SCREW-03", AXIS, z_screw="tr8x8", z_nut="nut-tr8x8")
        assert (finding.verdict, finding.margin) == (Verdict.SOUND, None)

    def test_a_level_axis_is_not_asked(self, bench):
        case = bench.screw({"vertical": "no"})
        with pytest.raises(AssertionError):
            bench.said(case, "SCREW-03", AXIS)


class TestWhirlAndBuckling:
    # Source: handbook formula of critical speed, n = 3.4 d / L² × 10⁷ rpm (one end free, the 0.8 inside)
    @pytest.mark.outside
    def test_whirl_agrees_with_the_handbook(self, bench):
        finding = bench.said(bench.screw(), "SCREW-04", AXIS)
        assert finding.limit == pytest.approx(3.4 * 4.773 / 220**2 * 1e7, rel=0.02)
        assert (finding.value, finding.verdict) == (360, Verdict.SOUND)

    def test_a_fine_thread_on_a_long_axis_whirls(self, bench):
        case = bench.screw({"free": "1000 mm", "ends": "supported-supported", "needs.speed": "40 mm/s"})
        assert bench.said(case, "SCREW-04", AXIS).verdict is Verdict.UNSOUND
        assert bench.said(case, "SCREW-04", AXIS, z_screw="tr8x8").verdict is Verdict.SOUND

    # Source: Euler, C π² E I / L² with C = 1/4 for one end free, and four fifths of it as screw makers permit
    @pytest.mark.outside
    def test_buckling_agrees_with_euler(self, bench):
        finding = bench.said(bench.screw(), "SCREW-05", AXIS)
        second_mm4 = 3.14159265 / 64 * 4.773131**4
        assert finding.limit == pytest.approx(0.8 * 0.25 * 9.8696 * 205_000 * second_mm4 / 220**2, rel=1e-3)
        assert finding.verdict is Verdict.SOUND

    def test_a_heavy_load_on_a_long_thin_screw_bows_it_out(self, bench):
        case = bench.screw({"free": "800 mm", "moves": [{"mass": "12 kg", "for": "spindle"}]})
        assert bench.said(case, "SCREW-05", AXIS).verdict is Verdict.UNSOUND


class TestLayers:
    # Source: arithmetic: 0.2 mm on 1 mm, 2 mm, 8 mm leads are 40, 20, 5 full steps; on 1/4-20 31.5
    @pytest.mark.outside
    @pytest.mark.parametrize(
        ("screw", "words"), [("m6", "is 40"), ("tr8x2", "is 20"), ("tr8x8", "is 5,"), ("inch-screw", "is 31.496")]
    )
    def test_layers_are_told_in_full_steps_and_never_a_fault(self, bench, screw, words):
        finding = bench.said(bench.screw(), "SCREW-06", AXIS, z_screw=screw)
        assert words in finding.because
        assert finding.verdict is Verdict.SOUND

    def test_the_number_of_full_steps_is_exact(self):
        assert full_steps_of(0.2, Fraction(1, 200)) == 40
        assert full_steps_of(0.1, Fraction(3, 100)) == Fraction(10, 3)


class TestSpeed:
    def test_a_small_lead_needs_many_turns(self, bench):
        finding = bench.said(bench.screw({"needs.speed": "40 mm/s"}), "SCREW-07", AXIS, z_motor="motor-flat")
        assert "40 rev/s" in finding.because
        slow = bench.said(bench.screw(), "SCREW-07", AXIS, z_motor="motor-flat")
        assert slow.value < finding.value

    def test_the_reached_speed_is_where_the_load_meets_its_limit(self):
        assert fastest_rev_s(lambda turns: 10 * turns) == pytest.approx(5, abs=1e-3)
        assert fastest_rev_s(lambda turns: 60) == 0
        assert fastest_rev_s(lambda turns: 1) == 30
