"""Pairs that must go together: shafts, rods, threads, belts, faces, couplers."""

from __future__ import annotations

import pytest

from scantling.checks.pairs import pairs
from scantling.findings import Verdict

ROD = "mate y.rods-bearings"


class TestPairs:
    def test_they_follow_from_the_axes(self, bench):
        found = {pair.identifier: (pair.place, pair.in_place) for pair in pairs(bench.belt().project.design)}
        assert found == {
            "y.rods-bearings": ("y-rod", "y-bearing"),
            "y.motor-pulley": ("y-motor", "y-pulley"),
            "y.belt-pulley": ("y-belt", "y-pulley"),
        }
        of_screw = {pair.identifier for pair in pairs(bench.screw().project.design)}
        assert of_screw == {"z.rods-bearings", "z.screw-nut", "z.motor-coupler", "z.screw-coupler"}

    def test_one_that_is_listed_stands_for_the_one_that_follows(self, bench):
        mate = {"kind": "shaft in bore", "a": "y-motor.shaft", "b": "y-pulley.bore", "fit": "locates"}
        found = {pair.identifier: pair.fit for pair in pairs(bench.belt(mates={"tight": mate}).project.design)}
        assert found["tight"] == "locates"
        assert "y.motor-pulley" not in found


class TestShaft:
    # Source: ISO 286-2, 5 mm: h7 0/-12 µm, H8 +18/0 µm (a published table and the library isofits)
    @pytest.mark.outside
    def test_the_play_of_h7_in_h8_is_that_of_the_standard(self, bench):
        finding = bench.said(bench.belt(), "MATE-01", "mate y.motor-pulley")
        assert (finding.low, finding.high, finding.value, finding.unit) == (0, 30, 15, "µm")
        assert (finding.limit, finding.limit_high) == (0, 48)  # H8 on h9 by the same standard: 18 + 30
        assert finding.verdict is Verdict.SOUND

    def test_a_bore_for_another_shaft_is_unsound_both_ways(self, bench):
        wide = bench.belt(parts={"pulley-20": {**bench.parts["pulley-20"], "bore": "1/4 in"}})
        finding = bench.said(wide, "MATE-01", "mate y.motor-pulley")
        assert (finding.verdict, finding.value) == (Verdict.UNSOUND, 1367)  # 6.35 mm, H8 and h7 in their middle
        narrow = bench.belt(parts={"pulley-20": {**bench.parts["pulley-20"], "bore": "4 mm"}})
        assert bench.said(narrow, "MATE-01", "mate y.motor-pulley").value < -900

    @pytest.mark.parametrize(
        ("fit", "bore_fit", "verdict"),
        [
            ("locates", "H7", Verdict.SOUND),
            ("locates", "H8", Verdict.MARGINAL),
            ("press", "H8", Verdict.UNSOUND),
            ("press", "S7", Verdict.SOUND),
            ("slides", "P7", Verdict.MARGINAL),
        ],
    )
    def test_each_fit_has_its_range(self, bench, fit, bore_fit, verdict):
        mate = {"kind": "shaft in bore", "a": "y-motor.shaft", "b": "y-pulley.bore", "fit": fit}
        parts = {name: {**bench.parts[name], "bore-fit": bore_fit} for name in ("pulley-20",)}
        parts |= {"motor-full": {**bench.parts["motor-full"], "shaft-fit": "h6"}}
        case = bench.belt(parts=parts, mates={"m": mate})
        assert bench.said(case, "MATE-01", "mate m").verdict is verdict

    def test_a_measured_shaft_counts_as_measured(self, bench):
        actual = {"part": "motor-full", "size": "shaft-diameter", "value": "4.90 mm ± 0.005 mm"}
        case = bench.belt(workshop={"actuals": [actual]})
        finding = bench.said(case, "MATE-01", "mate y.motor-pulley")
        assert (finding.verdict, finding.low, finding.high) == (Verdict.UNSOUND, 95, 123)

    def test_an_empty_place_has_nothing_to_fit(self, bench):
        place = bench.options("pulley-20", **{"may-be-empty": "yes"})
        finding = bench.said(bench.belt(places={"y-pulley": place}), "MATE-01", "mate y.motor-pulley", y_pulley="")
        assert (finding.verdict, finding.because) == (Verdict.SOUND, "y-pulley stays empty: nothing has to fit.")


class TestRod:
    def test_a_ground_rod_runs_in_balls(self, bench):
        finding = bench.said(bench.belt(), "MATE-02", ROD)
        assert (finding.verdict, finding.low, finding.high) == (Verdict.SOUND, -9, 9)
        assert finding.assumed == ("bore of y-bearing",)

    # Source: ISO 286-2, 8 mm: g6 -5/-14, h6 0/-9, h9 0/-36 µm (a published table and the library isofits)
    @pytest.mark.outside
    @pytest.mark.parametrize(("fit", "low", "high"), [("g6", -4, 14), ("h6", -9, 9), ("h9", -9, 36)])
    def test_play_in_a_ball_bushing_follows_the_rod(self, bench, fit, low, high):
        case = bench.belt(parts={"rod-hard": {**bench.parts["rod-hard"], "fit": fit}})
        finding = bench.said(case, "MATE-02", ROD)
        assert (finding.low, finding.high) == (low, high)

    def test_an_inch_rod_is_62_um_loose_and_too_loose_for_balls(self, bench):
        finding = bench.said(bench.belt(), "MATE-02", ROD, y_rod="rod-inch")
        assert (finding.verdict, finding.value) == (Verdict.UNSOUND, 62.5)  # 8 mm less 5/16 in, by definition
        assert "62.5 µm (53.5–71.5)" in finding.because

    def test_in_a_plain_lining_it_is_marginal_and_says_what_to_measure(self, bench):
        finding = bench.said(bench.belt(), "MATE-02", ROD, y_rod="rod-inch", y_bearing="polymer")
        assert finding.verdict is Verdict.MARGINAL
        assert "Hangs on bore of y-bearing" in finding.because

    def test_a_rod_without_a_fit_is_taken_as_bar_is_drawn(self, bench):
        case = bench.belt(parts={"rod-soft": {**bench.parts["rod-soft"], "fit": None}})
        finding = bench.said(case, "MATE-02", ROD, y_rod="rod-soft")
        assert finding.high == 58  # h10 of 8 mm is 0/-58 µm
        assert "diameter of y-rod" in finding.assumed


class TestThread:
    @pytest.mark.parametrize(
        ("screw", "nut", "verdict", "word"),
        [
            ("m6", "nut-m6", Verdict.SOUND, "both M6"),
            ("inch-screw", "nut-m6", Verdict.UNSOUND, "pitch 1.27 mm against 1 mm"),
            ("tr8x8", "nut-tr8x2", Verdict.UNSOUND, "4 against 1 starts"),
            ("tr8x2", "nut-tr8x8", Verdict.UNSOUND, "a lead of 2 mm against 8 mm"),
            ("m6", "nut-tr8x2", Verdict.UNSOUND, "another form of thread"),
        ],
    )
    def test_size_pitch_form_and_starts_must_agree(self, bench, screw, nut, verdict, word):
        finding = bench.said(bench.screw(), "MATE-03", "mate z.screw-nut", z_screw=screw, z_nut=nut)
        assert finding.verdict is verdict
        assert word in finding.because


class TestBelt:
    @pytest.mark.parametrize(
        ("profile", "width", "verdict"),
        [
            ("2 mm round", "6 mm", Verdict.SOUND),
            ("2mm Round", "7 mm", Verdict.SOUND),
            ("2 mm round", "9 mm", Verdict.UNSOUND),
            ("2.032 mm trapezoidal", "6 mm", Verdict.UNSOUND),
            ("2 mm trapezoidal", "6 mm", Verdict.UNSOUND),
        ],
    )
    def test_profile_and_width_must_agree(self, bench, profile, width, verdict):
        case = bench.belt(parts={"belt-6": {"kind": "belt", "profile": profile, "width": width}})
        assert bench.said(case, "MATE-04", "mate y.belt-pulley").verdict is verdict

    def test_a_pulley_without_a_width_is_judged_by_its_profile(self, bench):
        case = bench.belt(parts={"pulley-20": {**bench.parts["pulley-20"], "belt-width": None}})
        finding = bench.said(case, "MATE-04", "mate y.belt-pulley")
        assert finding.verdict is Verdict.SOUND
        assert "width is not described" in finding.because

    def test_a_smooth_idler_takes_any_belt(self, bench):
        bearing = {"kind": "ball-bearing", "bore": "3 mm", "outer-diameter": "10 mm", "width": "8 mm"}
        case = bench.belt({"idler": "y-idler"}, {"bearing": bearing}, places={"y-idler": "bearing"})
        assert bench.said(case, "MATE-04", "mate y.belt-idler").verdict is Verdict.SOUND


class TestFace:
    @pytest.mark.parametrize(
        ("square", "verdict"), [("31 mm", Verdict.SOUND), ("31.3 mm", Verdict.SOUND), ("26 mm", Verdict.UNSOUND)]
    )
    def test_the_bracket_must_have_the_motors_square(self, bench, square, verdict):
        bracket = {"kind": "thing", "sizes": {"square": square}}
        mate = {"kind": "face on pattern", "a": "y-motor.face", "b": "bracket.square"}
        case = bench.belt(parts={"bracket": bracket}, places={"bracket": "bracket"}, mates={"face": mate})
        finding = bench.said(case, "MATE-05", "mate face")
        assert finding.verdict is verdict
        assert finding.limit == pytest.approx(0.4)  # M3 in 3.4 mm


class TestCoupler:
    def test_a_slit_closes_a_little_on_both_ends(self, bench):
        assert bench.said(bench.screw(), "MATE-06", "mate z.motor-coupler").verdict is Verdict.SOUND
        finding = bench.said(bench.screw(), "MATE-06", "mate z.screw-coupler")
        assert finding.verdict is Verdict.SOUND
        assert finding.low == 26  # the outside of M6 begins 26 µm below 6 mm (ISO 965-1, zone 6g)

    def test_the_wrong_bore_is_unsound(self, bench):
        thick = bench.said(bench.screw(), "MATE-06", "mate z.screw-coupler", z_screw="tr8x2")
        loose = bench.said(bench.screw(), "MATE-06", "mate z.screw-coupler", z_coupler="coupler-5-8")
        inch = bench.said(bench.screw(), "MATE-06", "mate z.screw-coupler", z_screw="inch-screw")
        assert [f.verdict for f in (thick, loose, inch)] == [Verdict.UNSOUND] * 3
        assert thick.value < 0 < loose.value

    def test_set_screws_do_not_close(self, bench):
        parts = {"coupler-5-6": {**bench.parts["coupler-5-6"], "grip": "set-screw"}}
        finding = bench.said(bench.screw(parts=parts), "MATE-06", "mate z.screw-coupler")
        assert finding.verdict is not Verdict.SOUND
        assert finding.limit_high == 48  # H8 on h9 of 6 mm
