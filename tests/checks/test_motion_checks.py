"""Belts, motors and whole axes: tension, side load, idlers, heat, drivers, ringing, lost motion. Invented machines."""

from __future__ import annotations

from itertools import pairwise
from math import pi, sqrt

import pytest

from scantling.checks.axis_map import axis_maps
from scantling.findings import NotLookedAt, Verdict

AXIS = "axis y"
BELT_AT = {"belt-at": "12 mm"}


def motor_with(bench, **more):
    """Change the reference motor of the bench."""
    return {"motor-full": {**bench.parts["motor-full"], **{key.replace("_", "-"): text for key, text in more.items()}}}


class TestTension:
    # By hand: 1.47 kg × 2000 mm/s² + 0.005 × 14.4 N + 0.9 N = 3.91 N; half of it is 1.96 N, 6 mm bear 153 N
    def test_a_belt_as_usual_is_sound(self, bench):
        finding = bench.said(bench.belt(), "BELT-07", AXIS)
        assert (finding.value, finding.verdict) == (15.8, Verdict.SOUND)
        assert finding.limit == pytest.approx(1.956, abs=0.01)
        assert finding.limit_high == pytest.approx(153 - 3.91, abs=0.02)

    def test_one_that_hangs_is_unsound_and_one_near_it_marginal(self, bench):
        steep = {"needs.acceleration": "20000 mm/s2"}  # 30.4 N, half of it 15.2 N
        assert bench.said(bench.belt({"tension": "10 N", **steep}), "BELT-07", AXIS).verdict is Verdict.UNSOUND
        assert bench.said(bench.belt(steep), "BELT-07", AXIS).verdict is Verdict.MARGINAL
        assert bench.said(bench.belt({"tension": "180 N"}), "BELT-07", AXIS).verdict is Verdict.UNSOUND

    def test_the_share_at_the_very_travel_is_told(self, bench):
        # By hand: axles 330, travel 180: 255 of 700 mm of belt stand to the motor at the far end
        finding = bench.said(bench.belt(), "BELT-07", AXIS)
        assert "With 255 of 700 mm" in finding.because
        assert "1.43 N would do" in finding.because  # 3.91 × 255 / 700

    def test_without_a_table_the_tension_is_asked_for(self, bench):
        parts = {name: {**bench.parts[name], "profile": "5 mm round"} for name in ("belt-6", "pulley-20", "pulley-16")}
        found = bench.said(bench.belt(parts=parts), "BELT-07", AXIS)
        assert isinstance(found, NotLookedAt)
        assert found.needs == ("axes.y.tension", "parts.belt-6.allowed")

    def test_stretch_and_frequency_only_inform(self, bench):
        # By hand: 15000 N / 255 mm + 15000 N / 445 mm = 92.5 N/mm
        stretch, frequency = (bench.said(bench.belt(), code, AXIS) for code in ("BELT-08", "BELT-09"))
        assert stretch.value == pytest.approx(3.91 / 92.53, rel=0.002)
        assert frequency.value == pytest.approx(sqrt(92530 / 1.47) / (2 * pi), rel=0.002)
        assert (stretch.verdict, frequency.verdict) == (Verdict.SOUND, Verdict.SOUND)

    def test_a_measured_belt_has_no_band_of_a_class(self, bench):
        parts = {"belt-6": {**bench.parts["belt-6"], "stiffness": "12500 N"}}
        finding = bench.said(bench.belt(parts=parts), "BELT-09", AXIS)
        assert finding.low == pytest.approx(finding.high, rel=0.01)
        assert "stiffness of the belt" not in finding.assumed


class TestShaft:
    def test_sound_unsound_and_marginal(self, bench):
        usual = motor_with(bench, radial="28 N", radial_at="20 mm")
        sound = bench.said(bench.belt({**BELT_AT, "tension": "10 N (9..11)"}, usual), "BELT-10", AXIS)
        assert (sound.verdict, sound.value) == (Verdict.SOUND, pytest.approx(23.9, abs=0.1))
        # 28 N × (20 + 5) / (12 + 5)
        assert sound.limit == pytest.approx(41.2, abs=0.1)
        assert bench.said(bench.belt({**BELT_AT, "tension": "25 N"}, usual), "BELT-10", AXIS).verdict is Verdict.UNSOUND
        near = bench.said(bench.belt({**BELT_AT, "tension": "18 N (15..22)"}, usual), "BELT-10", AXIS)
        assert near.verdict is Verdict.MARGINAL

    def test_a_motor_that_says_nothing_takes_the_usual_of_its_size(self, bench):
        finding = bench.said(bench.belt({**BELT_AT, "tension": "8 N"}), "BELT-10", AXIS)
        assert "side load of motor-full" in finding.assumed
        assert finding.limit == pytest.approx(25 * 20 / 17, rel=0.001)

    def test_where_the_belt_runs_is_asked_for(self, bench):
        assert bench.said(bench.belt(), "BELT-10", AXIS).needs == ("axes.y.belt-at",)


class TestIdler:
    def belted(self, bench, idler, **axis):
        parts = {"idler": idler}
        return bench.belt({"idler": "y-idler", **axis}, parts, places={"y-idler": "idler"})

    def test_teeth_like_the_pulleys(self, bench):
        ten = {"kind": "pulley", "teeth": "10", "profile": "2 mm round"}
        assert bench.said(self.belted(bench, ten), "BELT-11", AXIS).verdict is Verdict.UNSOUND
        assert bench.said(self.belted(bench, {**ten, "teeth": "16"}), "BELT-11", AXIS).verdict is Verdict.SOUND

    @pytest.mark.outside
    def test_smooth_under_the_teeth_it_is_as_wide_as_forty_teeth(self, bench):
        # Source: design guide of a belt maker: flat inside idlers from the pitch diameter of 40 grooves, 25.5 mm here
        ball = {"kind": "ball-bearing", "bore": "5 mm", "outer-diameter": "16 mm", "width": "5 mm"}
        finding = bench.said(self.belted(bench, ball), "BELT-11", AXIS)
        assert (finding.verdict, finding.limit) == (Verdict.UNSOUND, pytest.approx(80 / pi))
        wide = {**ball, "outer-diameter": "26 mm"}
        assert bench.said(self.belted(bench, wide), "BELT-11", AXIS).verdict is Verdict.SOUND

    @pytest.mark.outside
    def test_on_the_back_by_a_makers_table(self, bench):
        # Source: a belt maker's table of least flat idlers with back bending: 15 mm for 2.032 mm, 30 mm for 5 mm
        ball = {"kind": "ball-bearing", "bore": "5 mm", "outer-diameter": "16 mm", "width": "5 mm"}
        for profile, least, verdict in (
            ("2.032 mm trapezoidal", 15, Verdict.SOUND),
            ("5 mm trapezoidal", 30, Verdict.UNSOUND),
        ):
            case = bench.belt(
                {"idler": "y-idler", "idler-side": "back"},
                {"idler": ball, "belt-6": {**bench.parts["belt-6"], "profile": profile}},
                places={"y-idler": "idler"},
            )
            finding = bench.said(case, "BELT-11", AXIS)
            assert (finding.verdict, finding.limit) == (verdict, least)

    def test_another_kind_of_part_is_not_looked_at(self, bench):
        found = bench.said(self.belted(bench, {"kind": "thing", "mass": "5 g"}), "BELT-11", AXIS)
        assert isinstance(found, NotLookedAt)


HANGS = {"vertical": "yes", "needs.holds-itself": "yes"}
CURVE = {
    "points": [{"speed": "1 rev/s", "torque": "0.36 N m"}, {"speed": "6 rev/s", "torque": "0.2 N m"}],
    "curve-supply": "24 V",
}


class TestHanging:
    def test_a_belt_drops_what_a_fine_screw_holds(self, bench):
        finding = bench.said(bench.belt(HANGS, motor_with(bench, detent_torque="8 N mm")), "BELT-12", AXIS)
        # By hand: 14.4 N hang on it; 0.9 N of drag and 8 N·mm / 6.366 mm hold 2.16 N
        assert (finding.verdict, finding.value) == (Verdict.UNSOUND, pytest.approx(15.0, abs=0.3))

    def test_a_light_one_holds_and_a_motor_that_says_nothing_leaves_it_unknown(self, bench):
        light = {**HANGS, "moves": [{"mass": "100 g", "for": "all"}]}
        sound = bench.said(bench.belt(light, motor_with(bench, detent_torque="8 N mm")), "BELT-12", AXIS)
        assert sound.verdict is Verdict.SOUND
        heavier = {**HANGS, "moves": [{"mass": "300 g", "for": "all"}]}
        found = bench.said(bench.belt(heavier), "BELT-12", AXIS)
        assert (found.verdict, found.missing) == (Verdict.UNKNOWN, ("detent torque of motor-full",))

    def test_where_it_is_not_asked_for_it_is_told(self, bench):
        finding = bench.said(bench.belt({"vertical": "yes"}), "BELT-12", AXIS)
        assert finding.verdict is Verdict.SOUND


class TestPoints:
    def test_a_published_curve_stands_for_the_model(self, bench):
        # By hand: at 4 rev/s 360 - 3 / 5 × 160 = 264 N·mm, at 0.7 of the current 184.8; needed are 25.7
        finding = bench.said(bench.belt(parts=motor_with(bench, **CURVE)), "BELT-03", AXIS)
        assert finding.value == pytest.approx(100 * (3.91 * 6.366 + 0.79) / 184.8, abs=0.1)
        assert "by its published curve" in finding.because
        assert "inductance of motor-full" not in finding.assumed

    def test_a_dip_on_the_way_up_is_the_worst_point(self, bench):
        dip = [
            {"speed": speed, "torque": torque}
            for speed, torque in (("1 rev/s", "0.3 N m"), ("2 rev/s", "0.05 N m"), ("3 rev/s", "0.3 N m"))
        ]
        curve = {**CURVE, "points": [*dip, {"speed": "6 rev/s", "torque": "0.3 N m"}]}
        finding = bench.said(bench.belt(parts=motor_with(bench, **curve)), "BELT-03", AXIS)
        assert "at 2 rev/s, the worst point" in finding.because
        assert finding.verdict is Verdict.UNSOUND

    def test_half_the_voltage_is_half_the_speed(self, bench):
        plain = bench.said(bench.belt(parts=motor_with(bench, **CURVE)), "BELT-03", AXIS)
        case = bench.belt({"supply-voltage": "12 V"}, motor_with(bench, **CURVE))
        assert bench.said(case, "BELT-03", AXIS).value > 2 * plain.value  # 8 of 6 rev/s: beyond the curve

    def test_the_set_current_counts(self, bench):
        full = bench.said(bench.belt({"driver-current": "1.5 A"}), "BELT-03", AXIS)
        usual = bench.said(bench.belt(), "BELT-03", AXIS)
        assert full.value == pytest.approx(0.7 * usual.value)


class TestCurrent:
    @pytest.mark.parametrize(
        ("set_to", "basis", "percent", "verdict"),
        [
            ("1.0 A", "rms", 66.7, Verdict.SOUND),
            ("1.6 A", "rms", 106.7, Verdict.UNSOUND),
            ("1.2 A", "peak", 113.1, Verdict.UNSOUND),
            ("1.2 A", None, 113.1, Verdict.UNSOUND),
        ],
    )
    def test_rms_against_rms(self, bench, set_to, basis, percent, verdict):
        case = bench.belt({"driver-current": set_to}, motor_with(bench, current_basis=basis))
        finding = bench.said(case, "MOTOR-02", AXIS)
        assert (finding.value, finding.verdict) == (pytest.approx(percent, abs=0.1), verdict)

    def test_a_driver_whose_resistor_is_too_large(self, bench):
        case = bench.wired()
        found = bench.said(case, "MOTOR-03", "electronics main/driver/motor")
        assert isinstance(found, NotLookedAt)

    @pytest.mark.parametrize(("sense", "verdict"), [("0.13 ohm", Verdict.SOUND), ("0.3 ohm", Verdict.UNSOUND)])
    def test_sense_resistors(self, bench, sense, verdict):
        # By hand: 0.7 × 1.3 A = 0.91 A; 0.325 V / (0.13 ohm √2) = 1.77 A, over 0.3 ohm 0.77 A
        port = {"does": "driver", "sense": sense, "full-scale": "0.325 V"}
        board = {"kind": "board", "ports": [port]}
        case = bench.case(
            parts={"board": board, "motor": bench.parts["motor-mid"]},
            places={"board": "board", "motor": "motor"},
            electronics={"main": {"board": "board", "wants": [{"does": "driver", "for": "motor"}]}},
        )
        finding = bench.said(case, "MOTOR-03", "electronics main/driver/motor")
        assert finding.verdict is verdict
        assert finding.limit == pytest.approx(0.91)


class TestHeat:
    def mounted(self, bench, plastics, axis=None, **motor):
        parts = motor_with(bench, **{"rated_rise": "50 K (45..55)", **motor})
        parts["end"] = {"kind": "printed", "meshes": [{"mesh": "end.stl"}], "plastics": plastics}
        places = {"y-motor": {"reference": "motor-full", "on": "end"}, "end": "end"}
        return bench.belt(axis or {}, parts, places=places)

    @pytest.mark.parametrize(
        ("plastic", "verdict"), [("PLA", Verdict.UNSOUND), ("PETG", Verdict.SOUND), ("ABS", Verdict.SOUND)]
    )
    def test_at_the_usual_current(self, bench, plastic, verdict):
        # By hand: 25 °C + 50 K × 0.49 = 49.5 °C; PLA stands 60 - 17.5 °C, PETG 79 - 17.5, at least 75 - 20
        finding = bench.said(self.mounted(bench, [plastic]), "MOTOR-01", "place y-motor")
        assert (finding.value, finding.verdict) == (pytest.approx(49.5, abs=0.1), verdict)

    def test_twice_the_heat_by_a_peak_taken_for_rms(self, bench):
        full = self.mounted(bench, ["PETG"], {"driver-current": "1.5 A"}, current_basis="rms")
        wrong = self.mounted(bench, ["PETG"], {"driver-current": "1.5 A"}, current_basis="peak")
        rises = [bench.said(case, "MOTOR-01", "place y-motor").value - 25 for case in (full, wrong)]
        assert rises == [pytest.approx(50), pytest.approx(100)]

    def test_near_its_end_it_is_marginal(self, bench):
        case = self.mounted(bench, ["PETG"], {"driver-current": "1.2 A"})
        assert bench.said(case, "MOTOR-01", "place y-motor").verdict is Verdict.MARGINAL

    def test_metal_stands_it_and_what_is_not_described_is_not_looked_at(self, bench):
        parts = {"plate": {"kind": "sheet", "material": "aluminium", "thickness": "4 mm"}}
        places = {"y-motor": {"reference": "motor-full", "on": "plate"}, "plate": "plate"}
        finding = bench.said(bench.belt(parts=parts, places=places), "MOTOR-01", "place y-motor")
        assert finding.verdict is Verdict.SOUND
        assert "which stands that" in finding.because
        assert isinstance(bench.said(bench.belt(), "MOTOR-01", "place y-motor"), NotLookedAt)

    def test_acrylic_softens(self, bench):
        parts = motor_with(bench, rated_rise="60 K") | {
            "plate": {"kind": "sheet", "material": "acrylic", "thickness": "5 mm"}
        }
        places = {"y-motor": {"reference": "motor-full", "on": "plate"}, "plate": "plate"}
        case = bench.belt({"driver-current": "1.6 A"}, parts, places=places)
        assert bench.said(case, "MOTOR-01", "place y-motor").verdict is Verdict.UNSOUND


class TestRinging:
    def test_by_hand(self, bench):
        # By hand: belt 92.5 N/mm, motor 0.7 × 400 N·mm × 50 × (2π / 40)² = 345.4 N/mm, guide tilting much stiffer:
        # 73 N/mm on 1.47 kg, 35.4 Hz; the rotor takes a little of it. 2000 / (2π f)² × √2 = 0.057 mm
        finding = bench.said(bench.belt({"guide.offset": None}), "AXIS-01", AXIS)
        assert finding.value == pytest.approx(sqrt(2) * 2000 / (72.98 / 1.47 * 1000), rel=0.02)
        assert "guide and frame not described" in finding.because
        # belts to a factor of two: 10200 to 24000 N; at its worst 2 × 2000 / (2π f)² of the softest
        assert (finding.low, finding.high) == (pytest.approx(0.0363, abs=2e-4), pytest.approx(0.1106, abs=2e-4))
        assert finding.verdict is Verdict.MARGINAL

    def test_sound_marginal_unsound(self, bench):
        def verdict(acceleration, **axis):
            return bench.said(bench.belt({"needs.acceleration": acceleration, **axis}), "AXIS-01", AXIS).verdict

        assert verdict("500 mm/s2") is Verdict.SOUND
        assert verdict("2500 mm/s2") is Verdict.MARGINAL
        assert verdict("9000 mm/s2") is Verdict.UNSOUND
        assert verdict("9000 mm/s2", **{"needs.ringing": "1 mm"}) is Verdict.SOUND

    def test_a_soft_frame_counts(self, bench):
        stiff = bench.said(bench.belt(), "AXIS-01", AXIS).value
        soft = bench.said(bench.belt({"frame-stiffness": "20 N/mm (10..30)"}), "AXIS-01", AXIS)
        assert soft.value > 3 * stiff
        assert "the frame 20 N/mm" in soft.because

    def test_a_motor_without_a_holding_torque(self, bench):
        parts = motor_with(bench, holding_torque=None)
        finding = bench.said(bench.belt({"needs.acceleration": "3000 mm/s2"}, parts), "AXIS-01", AXIS)
        assert (finding.verdict, finding.missing) == (Verdict.UNKNOWN, ("holding torque of motor-full",))

    def test_what_lacks_is_named(self, bench):
        assert bench.said(bench.belt({"needs.acceleration": None}), "AXIS-01", AXIS).needs == (
            "axes.y.needs.acceleration",
        )


class TestLostMotion:
    @pytest.mark.parametrize(("bushing", "verdict"), [("ball", Verdict.SOUND), ("polymer", Verdict.UNSOUND)])
    def test_friction_keeps_an_axis_back(self, bench, bushing, verdict):
        # By hand: 2 × 0.97 N (ball) or 4.5 N (polymer) over 73 N/mm: 0.027 and 0.123 mm
        case = bench.belt({"needs.lost-motion": "0.06 mm"})
        finding = bench.said(case, "AXIS-02", AXIS, y_bearing=bushing)
        assert finding.verdict is verdict

    def test_near_its_limit_it_is_marginal(self, bench):
        case = bench.belt({"needs.lost-motion": "0.12 mm"})
        assert bench.said(case, "AXIS-02", AXIS, y_bearing="polymer").verdict is Verdict.MARGINAL


def test_load_against_rotor_only_informs(bench):
    # By hand: 1.47 kg × 40.53 mm² = 59.6 kg·mm² over 2.5
    finding = bench.said(bench.belt(), "MOTOR-04", AXIS)
    assert finding.value == pytest.approx(59.6 / 2.5, rel=0.01)


class TestMap:
    def test_a_map_agrees_with_the_checks(self, bench):
        case = bench.belt({"needs.acceleration": "2500 mm/s2"})
        (shown,) = axis_maps(case, bench.reference(case))
        assert shown.looked == ("BELT-03", "AXIS-01", "BELT-07")
        assert [one.partition(":")[0] for one in shown.left_out] == ["BELT-10"]
        wanted = shown.cells[4][3]  # 2250 mm/s² at 140 mm/s
        assert (wanted.acceleration_mm_s2, wanted.speed_mm_s) == (2250, 140)
        there = bench.belt({"needs.acceleration": "2250 mm/s2", "needs.speed": "140 mm/s"})
        codes = ("BELT-03", "AXIS-01", "BELT-07")
        worst = min((bench.said(there, code, AXIS).verdict for code in codes), key=lambda verdict: verdict.rank)
        assert wanted.verdict is worst

    def test_more_is_never_better(self, bench):
        case = bench.belt({"needs.acceleration": "4000 mm/s2", "needs.speed": "400 mm/s", "supply-voltage": "12 V"})
        (shown,) = axis_maps(case, bench.reference(case))
        ranks = [[cell.verdict.rank for cell in row] for row in shown.cells]
        assert all(low >= high for row, above in pairwise(ranks) for low, high in zip(row, above, strict=True))
        for column, most in enumerate(shown.most_mm_s2):
            for row in shown.cells:
                sound = row[column].verdict is Verdict.SOUND
                assert sound is (row[column].acceleration_mm_s2 <= most)

    def test_the_limit_found_is_where_the_verdict_turns(self, bench):
        case = bench.belt({"needs.acceleration": "2500 mm/s2"})
        (shown,) = axis_maps(case, bench.reference(case))
        limit = shown.most_mm_s2[3]
        step = shown.height_mm_s2 / 2**10
        for above, sound in ((limit, True), (limit + step, False)):
            there = bench.belt({"needs.acceleration": f"{above:.6f} mm/s2"})
            assert (bench.said(there, "AXIS-01", AXIS).verdict is Verdict.SOUND) is sound

    def test_an_axis_that_says_nothing_has_none(self, bench):
        case = bench.belt({"needs.speed": None})
        assert axis_maps(case, bench.reference(case)) == ()


def test_a_port_carries_what_the_driver_is_set_to(bench):
    board = {"kind": "board", "ports": [{"does": "driver", "current": "1.4 A"}]}
    wants = {"main": {"board": "board", "wants": [{"does": "driver", "for": "y-motor"}]}}
    for set_to, verdict in (("1.0 A", Verdict.SOUND), ("1.5 A", Verdict.UNSOUND)):
        case = bench.belt({"driver-current": set_to}, {"board": board}, places={"board": "board"}, electronics=wants)
        assert bench.said(case, "PORT-02", "electronics main/driver/y-motor").verdict is verdict
