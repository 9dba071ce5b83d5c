"""Rules of belt axes, on an invented moving bed of 1.47 kg with 2000 mm/s2; expected numbers by hand."""

from __future__ import annotations

import pytest

from scantling.findings import NotLookedAt, Verdict

AXIS = "axis y"


class TestResolution:
    # Source: arithmetic, 200 full steps × 16 / (teeth × 2 mm): 80 and 100 steps to a millimetre
    @pytest.mark.outside
    @pytest.mark.parametrize(("pulley", "step", "per_mm"), [("pulley-20", 0.0125, "80"), ("pulley-16", 0.01, "100")])
    def test_a_micro_step_against_what_is_needed(self, bench, pulley, step, per_mm):
        finding = bench.said(bench.belt(), "BELT-01", AXIS, y_pulley=pulley)
        assert (finding.verdict, finding.value, finding.limit) == (Verdict.SOUND, step, 0.02)
        assert f"{per_mm} to a millimetre" in finding.because

    def test_too_coarse_is_unsound_and_not_asked_for_is_not_looked_at(self, bench):
        assert bench.said(bench.belt({"microsteps": 4}), "BELT-01", AXIS).verdict is Verdict.UNSOUND
        unasked = bench.said(bench.belt({"needs.resolution": None}), "BELT-01", AXIS)
        assert unasked == NotLookedAt("BELT-01", AXIS, "Resolution of a belt axis", ("axes.y.needs.resolution",))


class TestMesh:
    # Source: published example, 20 on 60 teeth of 2 mm, axles 80 mm apart: 8.98 teeth in mesh (exact)
    @pytest.mark.outside
    def test_a_large_idler_leaves_fewer_teeth(self, bench):
        parts = {"pulley-60": {"kind": "pulley", "teeth": "60", "profile": "2 mm round"}}
        case = bench.belt({"idler": "y-idler", "axles": "80 mm"}, parts, places={"y-idler": "pulley-60"})
        finding = bench.said(case, "BELT-02", AXIS)
        assert (finding.value, finding.verdict) == (8, Verdict.SOUND)
        assert "8.98" in finding.because

    def test_ten_teeth_keep_five(self, bench):
        case = bench.belt(parts={"pulley-20": {**bench.parts["pulley-20"], "teeth": "10"}})
        assert bench.said(case, "BELT-02", AXIS).verdict is Verdict.UNSOUND
        assert bench.said(case, "BELT-04", AXIS).verdict is Verdict.UNSOUND

    def test_without_axles_it_is_not_looked_at(self, bench):
        assert bench.said(bench.belt({"axles": None}), "BELT-02", AXIS).needs == ("axes.y.axles",)


class TestTorque:
    # By hand: F = 1.47 kg × 2000 mm/s² + 0.25 × 14.4 N + 0.9 N = 7.44 N; T = F × 6.366 mm + rotor 0.79 N·mm;
    # of 0.7 (pull-out) × 0.7 (driver current) × the holding torque, which the supply still makes at 4 rev/s.
    @pytest.mark.parametrize(
        ("motor", "bushing", "pulley", "percent", "verdict"),
        [
            ("motor-flat", "polymer", "pulley-20", 69, Verdict.UNSOUND),
            ("motor-flat", "polymer", "pulley-16", 55, Verdict.UNSOUND),
            ("motor-flat", "ball", "pulley-20", 37, Verdict.SOUND),
            ("motor-mid", "polymer", "pulley-20", 37, Verdict.SOUND),
            ("motor-full", "polymer", "pulley-20", 24, Verdict.SOUND),
        ],
    )
    def test_neither_the_bushing_nor_the_motor_alone_is_at_fault(self, bench, motor, bushing, pulley, percent, verdict):
        finding = bench.said(bench.belt(), "BELT-03", AXIS, y_motor=motor, y_bearing=bushing, y_pulley=pulley)
        assert finding.value == pytest.approx(percent, abs=1.8)
        assert finding.verdict is verdict

    def test_the_sentence_has_the_numbers(self, bench):
        finding = bench.said(bench.belt(), "BELT-03", AXIS, y_motor="motor-flat", y_bearing="polymer")
        for words in ("1.47 kg at 2000 mm/s²", "4.5 N of friction", "7.44 N on the belt", "68.6 N·mm", "at 4 rev/s"):
            assert words in finding.because

    @pytest.mark.parametrize("basis", ["peak", None])
    def test_a_current_that_is_not_said_to_be_rms_is_taken_the_unkind_way(self, bench, basis):
        plain = bench.said(bench.belt(), "BELT-03", AXIS)
        case = bench.belt(parts={"motor-full": {**bench.parts["motor-full"], "current-basis": basis}})
        finding = bench.said(case, "BELT-03", AXIS)
        assert finding.value == pytest.approx(plain.value * 2**0.5)
        assert "0.71 of the torque" in finding.because

    def test_a_motor_that_the_supply_cannot_drive_so_fast_is_unsound(self, bench):
        case = bench.belt({"needs.speed": "3000 mm/s", "needs.acceleration": "60000 mm/s2"})
        finding = bench.said(case, "BELT-03", AXIS)
        assert finding.verdict is Verdict.UNSOUND
        assert finding.value <= 1000

    def test_a_short_travel_never_reaches_the_speed(self, bench):
        slow = bench.said(bench.belt({"needs.speed": "2000 mm/s", "needs.travel": "10 mm"}), "BELT-03", AXIS)
        assert f"{(2000 * 10) ** 0.5 / 40:.3g} rev/s" in slow.because

    def test_two_motors_share(self, bench):
        one = bench.said(bench.belt({"moves": ["bed"]}), "BELT-03", AXIS).value
        two = bench.said(bench.belt({"moves": ["bed"], "motor-count": 2}), "BELT-03", AXIS).value
        assert one / 2 < two < one  # two rotors to turn

    def test_a_vertical_belt_lifts_its_load(self, bench):
        finding = bench.said(bench.belt({"vertical": "yes"}), "BELT-03", AXIS)
        assert finding.value > 3 * bench.said(bench.belt(), "BELT-03", AXIS).value

    def test_a_motor_without_a_holding_torque_is_unknown_and_named(self, bench):
        parts = {"motor-full": {**bench.parts["motor-full"], "holding-torque": None}}
        case = bench.belt({"needs.acceleration": "8000 mm/s2"}, parts)
        finding = bench.said(case, "BELT-03", AXIS)
        assert (finding.verdict, finding.missing) == (Verdict.UNKNOWN, ("holding torque of motor-full",))

    def test_but_not_where_the_weakest_of_its_size_would_do(self, bench):
        parts = {"motor-full": {**bench.parts["motor-full"], "holding-torque": None}}
        finding = bench.said(bench.belt({"needs.acceleration": "100 mm/s2"}, parts), "BELT-03", AXIS)
        assert (finding.verdict, finding.missing) == (Verdict.SOUND, ())

    def test_a_motor_with_little_data_takes_the_usual_of_its_size(self, bench):
        bare = {"kind": "motor", "frame-size": "17", "shaft-diameter": "5 mm", "holding-torque": "0.4 N m"}
        finding = bench.said(bench.belt(parts={"motor-full": bare}), "BELT-03", AXIS)
        assert finding.verdict is Verdict.SOUND
        assert {"current of motor-full", "inductance of motor-full", "rotor inertia of motor-full"} <= set(
            finding.assumed
        )

    def test_a_typed_friction_stands_for_the_bushings(self, bench):
        polymer = bench.said(bench.belt({"friction": "1 N"}), "BELT-03", AXIS, y_bearing="polymer")
        ball = bench.said(bench.belt({"friction": "1 N"}), "BELT-03", AXIS)
        assert polymer.value == ball.value

    def test_what_is_not_described_is_not_looked_at(self, bench):
        case = bench.belt({"needs.speed": None, "needs.acceleration": None})
        assert bench.said(case, "BELT-03", AXIS).needs == ("axes.y.needs.speed", "axes.y.needs.acceleration")

    def test_a_bed_without_a_mass_is_not_looked_at(self, bench):
        finding = bench.said(bench.belt(parts={"bed": {"kind": "thing"}}), "BELT-03", AXIS)
        assert finding.needs == ("parts.bed.mass",)

    def test_a_stand_in_alone_without_a_mass_is_unknown(self, bench):
        parts = {"bare-bed": {"kind": "thing"}}
        case = bench.belt(parts=parts, places={"bed": bench.options("bed", "bare-bed")})
        assert bench.said(case, "BELT-03", AXIS).verdict is Verdict.SOUND
        finding = bench.said(case, "BELT-03", AXIS, bed="bare-bed")
        assert (finding.verdict, finding.missing) == (Verdict.UNKNOWN, ("parts.bare-bed.mass",))

    def test_an_empty_motor_place_is_unsound(self, bench):
        place = bench.options("motor-full", **{"may-be-empty": "yes"})
        finding = bench.said(bench.belt(places={"y-motor": place}), "BELT-03", AXIS, y_motor="")
        assert (finding.verdict, finding.because) == (
            Verdict.UNSOUND,
            "y-motor stays empty, and axis y cannot do without it.",
        )


class TestLengthAndLine:
    # Source: geometry, two axles 330 mm apart with 20 teeth of 2 mm each: 2 × 330 + 40, and 30 mm held
    @pytest.mark.outside
    def test_an_open_belt_is_told(self, bench):
        finding = bench.said(bench.belt(), "BELT-05", AXIS)
        assert (finding.value, finding.verdict, finding.margin) == (730, Verdict.SOUND, None)

    @pytest.mark.parametrize(("teeth", "verdict"), [(350, Verdict.SOUND), (352, Verdict.SOUND), (360, Verdict.UNSOUND)])
    def test_a_closed_belt_must_suit_the_axles(self, bench, teeth, verdict):
        case = bench.belt(parts={"belt-6": {**bench.parts["belt-6"], "closed-teeth": teeth}})
        finding = bench.said(case, "BELT-05", AXIS)
        assert finding.verdict is verdict
        assert finding.value == pytest.approx((2 * teeth - 700) / 2)

    # Source: geometry, half the difference of 20 and 16 teeth × 2 mm / π
    @pytest.mark.outside
    def test_fewer_teeth_move_the_belts_line(self, bench):
        finding = bench.said(bench.belt(), "BELT-06", AXIS, y_pulley="pulley-16")
        assert finding.value == pytest.approx(1.273, abs=0.001)
        assert "nearer to the axle than with the 20 that were drawn" in finding.because
        assert bench.said(bench.belt(), "BELT-06", AXIS).value == 0

    def test_the_smallest_pulley_of_the_profile(self, bench):
        assert bench.said(bench.belt(), "BELT-04", AXIS, y_pulley="pulley-16").verdict is Verdict.SOUND
        strange = {name: {**bench.parts[name], "profile": "7 mm odd"} for name in ("pulley-20", "belt-6")}
        assert isinstance(bench.said(bench.belt(parts=strange), "BELT-04", AXIS), NotLookedAt)
