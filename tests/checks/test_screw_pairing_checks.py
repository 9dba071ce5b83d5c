"""Rules of screws and what they are joined to: efficiency, wobble, backlash, step, couplers. All invented."""

from __future__ import annotations

import pytest

from scantling.findings import NotLookedAt, Verdict

AXIS = "axis z"
HELD = {"ends": "supported-supported", "guide.stops": "5 mm"}


def part(bench, name, **changes):
    """Return a part of the bench with some entries changed."""
    return {name: {**bench.parts[name], **{key.replace("_", "-"): value for key, value in changes.items()}}}


class TestEfficiency:
    # Source: machine design textbook's formulas worked in another program: Tr8x2, f 0.15, 100 N a screw: raising
    #   87.42 N·mm, efficiency 0.364; Tr8x8(P2): raising 192.55, lowering -69.07, efficiency 0.661
    @pytest.mark.outside
    @pytest.mark.parametrize(
        ("screw", "nut", "up", "down", "efficiency"),
        [("tr8x2", "nut-tr8x2", "175 N·mm", None, "36.4 %"), ("tr8x8", "nut-tr8x8", "385 N·mm", "-138 N·mm", "66.1 %")],
    )
    def test_work_that_arrives(self, bench, screw, nut, up, down, efficiency):
        case = bench.screw({"friction": "0 N", "moves": [{"mass": "20.394 kg", "for": "weights"}]})
        finding = bench.said(case, "SCREW-08", AXIS, z_screw=screw, z_nut=nut, z_coupler="coupler-5-8")
        assert f"{up} to raise" in finding.because
        assert f"{efficiency} of the work" in finding.because
        assert down is None or f"{down} to lower" in finding.because
        assert (finding.verdict, finding.margin) == (Verdict.SOUND, None)

    @pytest.mark.parametrize(
        ("friction", "words"),
        [
            ("0.15 (0.12..0.2)", "the thread alone holds"),
            ("0.09 (0.06..0.14)", "on both sides of 1"),
            ("0.05 (0.03..0.07)", "the load turns it back"),
        ],
    )
    def test_self_locking_goes_by_the_band_of_friction(self, bench, friction, words):
        case = bench.screw({"screw-friction": friction})
        assert words in bench.said(case, "SCREW-08", AXIS, z_screw="tr8x2", z_nut="nut-tr8x2").because

    def test_a_level_axis_takes_the_same_both_ways(self, bench):
        level = {"vertical": "no", "needs.holds-itself": None}
        assert "to push back" in bench.said(bench.screw(level), "SCREW-08", AXIS).because


class TestWobble:
    def test_a_free_top_on_a_coupler_that_bends_follows_its_nut(self, bench):
        finding = bench.said(bench.screw(), "SCREW-09", AXIS, z_coupler="bending-5-6")
        assert (finding.value, finding.verdict) == (0, Verdict.SOUND)
        assert "follows its nut" in finding.because

    def test_a_stiff_coupler_lets_a_part_of_the_bow_through(self, bench):
        finding = bench.said(bench.screw(), "SCREW-09", AXIS, z_coupler="rigid-5-6")
        assert 0 < finding.value < 0.03

    def test_a_held_top_on_a_thick_screw_beside_thin_rods_is_marginal_or_worse(self, bench):
        thick = part(bench, "inch-screw", thread="3/8-16", bow_300="0.4 mm")
        thin = part(bench, "rod-10", diameter="6 mm")
        finding = bench.said(bench.screw(HELD, thick | thin), "SCREW-09", AXIS, z_screw="inch-screw")
        assert finding.verdict is Verdict.UNSOUND
        assert "held supported-supported" in finding.because
        assert "For every tenth of a millimetre that its top is held beside the guide" in finding.because

    def test_where_the_bow_is_not_measured_it_hangs_on_that(self, bench):
        case = bench.screw({**HELD, "free": "300 mm", "guide.free": "300 mm"}, part(bench, "rod-10", diameter="6 mm"))
        finding = bench.said(case, "SCREW-09", AXIS, z_screw="tr8x2")
        assert finding.verdict is Verdict.MARGINAL
        assert "bow of z-screw" in finding.because

    def test_a_nut_that_shifts_in_its_seat_lets_it_go(self, bench):
        thick = part(bench, "tr8x2", bow_300="0.3 mm") | part(bench, "nut-tr8x2", float="0.5 mm")
        case = bench.screw({**HELD, "guide.ends": "supported"}, thick | part(bench, "rod-10", diameter="6 mm"))
        assert bench.said(case, "SCREW-09", AXIS, z_screw="tr8x2", z_nut="nut-tr8x2").value == 0

    def test_without_a_free_length_nothing_is_said(self, bench):
        finding = bench.said(bench.screw({"free": None}), "SCREW-09", AXIS)
        assert isinstance(finding, NotLookedAt)
        assert finding.needs == ("axes.z.free",)


class TestBacklash:
    def test_a_weight_closes_it(self, bench):
        finding = bench.said(bench.screw(parts=part(bench, "nut-m6", backlash="0.3 mm")), "SCREW-10", AXIS)
        assert (finding.value, finding.verdict) == (0, Verdict.SOUND)

    def test_a_level_axis_loses_all_of_it(self, bench):
        level = {"vertical": "no", "needs.holds-itself": None}
        loose, tight = (bench.screw(level, part(bench, "nut-m6", backlash=play)) for play in ("0.3 mm", "0.05 mm"))
        assert bench.said(loose, "SCREW-10", AXIS).verdict is Verdict.UNSOUND
        assert bench.said(tight, "SCREW-10", AXIS).verdict is Verdict.SOUND

    def test_its_own_limit_counts_where_it_is_said(self, bench):
        own = {"vertical": "no", "needs.holds-itself": None, "needs.lost-motion": "0.4 mm"}
        assert bench.said(bench.screw(own, part(bench, "nut-m6", backlash="0.3 mm")), "SCREW-10", AXIS).limit == 0.4

    def test_a_level_axis_whose_nut_says_nothing_is_not_looked_at(self, bench):
        level = {"vertical": "no", "needs.holds-itself": None}
        assert isinstance(bench.said(bench.screw(level), "SCREW-10", AXIS), NotLookedAt)

    def test_a_light_head_on_a_stiff_guide_does_not_close_it(self, bench):
        light = {"moves": [{"mass": "100 g", "for": "pen"}], "friction": "3 N"}
        finding = bench.said(bench.screw(light, part(bench, "nut-m6", backlash="0.3 mm")), "SCREW-10", AXIS)
        assert finding.verdict is Verdict.UNSOUND
        unknown = bench.said(bench.screw(light), "SCREW-10", AXIS)
        assert (unknown.verdict, unknown.missing) == (Verdict.UNKNOWN, ("play of the nut",))


class TestStep:
    # Source: definition: the rest positions of a two-phase motor repeat every four full steps: 4 · 8 mm / 200
    @pytest.mark.outside
    def test_a_steep_thread_jumps_by_more_than_a_fine_one(self, bench):
        steep, fine = (bench.said(bench.screw(), "SCREW-11", AXIS, z_screw=screw) for screw in ("tr8x8", "m6"))
        assert "out by 0.16 mm more" in steep.because
        assert "out by 0.02 mm more" in fine.because
        assert (steep.verdict, fine.verdict) == (Verdict.MARGINAL, Verdict.SOUND)

    def test_leads_that_differ_make_it_lean(self, bench):
        case = bench.screw({"screws-apart": "320 mm"}, part(bench, "m6", lead_error_300="0.3 mm"))
        finding = bench.said(case, "SCREW-11", AXIS)
        assert "out by up to 0.14 mm at the top, 0.025° of lean" in finding.because  # 0.3 · 140 / 300 on 320 mm

    def test_one_screw_is_not_asked(self, bench):
        with pytest.raises(AssertionError):
            bench.said(bench.screw({"screws": 1}), "SCREW-11", AXIS)


class TestCouplers:
    def test_a_tube_slips_far_above_what_a_fine_thread_takes(self, bench):
        finding = bench.said(bench.screw(), "SCREW-12", AXIS, z_coupler="tube-5")
        assert finding.verdict is Verdict.SOUND
        assert finding.low > 5

    def test_a_heavy_axis_on_a_steep_thread_makes_it_slip(self, bench):
        case = bench.screw({"moves": [{"mass": "40 kg", "for": "spindle"}]}, part(bench, "tube-5", clamp_force="20 N"))
        finding = bench.said(case, "SCREW-12", AXIS, z_coupler="tube-5", z_screw="tr8x8", z_nut="nut-tr8x8")
        assert finding.verdict is Verdict.UNSOUND

    def test_a_measured_torque_stands_for_the_estimate(self, bench):
        case = bench.screw(parts=part(bench, "tube-5", slip_torque="8 N mm"))
        finding = bench.said(case, "SCREW-12", AXIS, z_coupler="tube-5")
        assert "slips at 8 N·mm" in finding.because
        assert finding.verdict in (Verdict.UNSOUND, Verdict.MARGINAL)

    def test_a_metal_coupler_of_which_nothing_is_said_is_not_looked_at(self, bench):
        finding = bench.said(bench.screw(), "SCREW-12", AXIS, z_coupler="rigid-5-6")
        assert isinstance(finding, NotLookedAt)
        assert finding.needs == ("parts.rigid-5-6.slip-torque",)

    def test_a_fine_thread_hardly_sees_the_winding(self, bench):
        fine = bench.said(bench.screw(), "SCREW-13", AXIS, z_coupler="tube-5")
        steep = bench.said(bench.screw(), "SCREW-13", AXIS, z_coupler="tube-5", z_screw="tr8x8", z_nut="nut-tr8x8")
        assert fine.verdict is Verdict.SOUND
        assert steep.value > 5 * fine.value
        assert steep.verdict is Verdict.MARGINAL

    def test_a_tube_of_which_no_size_is_said_is_not_looked_at(self, bench):
        tube = {key: value for key, value in bench.parts["tube-5"].items() if key != "span"}
        finding = bench.said(bench.screw(parts={"tube-5": tube}), "SCREW-13", AXIS, z_coupler="tube-5")
        assert isinstance(finding, NotLookedAt)

    def test_a_long_soft_tube_on_a_steep_thread_is_unsound(self, bench):
        case = bench.screw(parts=part(bench, "tube-5", span="40 mm", modulus="3 MPa"))
        finding = bench.said(case, "SCREW-13", AXIS, z_coupler="tube-5", z_screw="tr8x8", z_nut="nut-tr8x8")
        assert finding.verdict is Verdict.UNSOUND

    def test_a_tube_is_stretched_over_a_thicker_rod_but_not_over_any(self, bench):
        finding = bench.said(bench.screw(), "MATE-06", "mate z.screw-coupler", z_coupler="tube-5")
        assert finding.verdict is Verdict.SOUND
        thick = bench.said(bench.screw(), "MATE-06", "mate z.screw-coupler", z_coupler="tube-5", z_screw="tr8x2")
        assert thick.verdict is Verdict.UNSOUND
