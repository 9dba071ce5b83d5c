"""Where naive rules on belts, motors and whole axes mislead, and what the trade says of them. Invented machines."""

from __future__ import annotations

from math import pi, sqrt

import pytest

from scantling.findings import Limit, Verdict

AXIS = "axis y"
NAIVE_LEAST_HZ = 60.0  # a rule that is passed on: a carriage on its belt must swing faster than this


def motor_with(bench, **more):
    """Change the reference motor of the bench."""
    return {"motor-full": {**bench.parts["motor-full"], **{key.replace("_", "-"): text for key, text in more.items()}}}


class TestFrequencyIsNoLimit:
    """A belt's frequency says nothing by itself: how far the axis swings does, with the motor's own give in the row."""

    def test_the_naive_rule_calls_a_gentle_heavy_bed_bad(self, bench):
        gentle = bench.belt({"needs.acceleration": "500 mm/s2"})
        frequency = bench.said(gentle, "BELT-09", AXIS)
        assert frequency.value < NAIVE_LEAST_HZ  # so the naive rule says: bad
        assert (frequency.side, frequency.verdict) == (Limit.NONE, Verdict.SOUND)
        assert bench.said(gentle, "AXIS-01", AXIS).verdict is Verdict.SOUND

    def test_the_naive_rule_calls_a_fierce_light_head_good(self, bench):
        fierce = {"moves": [{"mass": "0.3 kg", "for": "head"}], "needs.acceleration": "40000 mm/s2"}
        case = bench.belt(fierce)
        assert bench.said(case, "BELT-09", AXIS).value > NAIVE_LEAST_HZ  # so the naive rule says: good
        assert bench.said(case, "AXIS-01", AXIS).verdict is Verdict.UNSOUND

    def test_the_motor_in_the_row_makes_the_resonance_lower(self, bench):
        belt_alone = bench.said(bench.belt(), "BELT-09", AXIS).value
        weak = bench.said(bench.belt(), "AXIS-01", AXIS, y_motor="motor-flat")
        words = weak.because.partition("first rings at ")[2]
        assert float(words.split()[0]) < 0.85 * belt_alone

    def test_its_band_is_that_of_the_belt(self, bench):
        finding = bench.said(bench.belt(), "AXIS-01", AXIS)
        assert finding.high > 2.5 * finding.low
        assert "stiffness of the belt" in finding.assumed


class TestPeakOrRms:
    def test_1_41_in_torque_and_2_in_heat(self, bench):
        torques, rises = {}, {}
        for basis in ("rms", "peak"):
            parts = motor_with(bench, current_basis=basis, rated_rise="50 K") | {
                "plate": {"kind": "sheet", "material": "aluminium", "thickness": "4 mm"}
            }
            places = {"y-motor": {"reference": "motor-full", "on": "plate"}, "plate": "plate"}
            torques[basis] = bench.said(bench.belt(parts=parts, places=places), "BELT-03", AXIS).value
            same_setting = bench.belt({"driver-current": "1.05 A"}, parts, places=places)
            rises[basis] = bench.said(same_setting, "MOTOR-01", "place y-motor").value - 25
        assert torques["peak"] / torques["rms"] == pytest.approx(sqrt(2))
        assert rises["peak"] / rises["rms"] == pytest.approx(2)

    def test_who_does_not_say_is_taken_the_unkind_way(self, bench):
        said = {
            basis: bench.said(bench.belt(parts=motor_with(bench, current_basis=basis)), "BELT-03", AXIS).value
            for basis in ("rms", "peak", None)
        }
        assert said[None] == said["peak"] > said["rms"]

    def test_half_at_the_worst_point_not_at_rest(self, bench):
        # a motor of much inductance on little voltage: at rest it is loaded to less than a half, at speed to more
        parts = motor_with(bench, inductance="20 mH", holding_torque="0.14 N m")
        fast = {"supply-voltage": "12 V", "needs.speed": "320 mm/s", "needs.acceleration": "1500 mm/s2"}
        crawl = bench.said(bench.belt({**fast, "needs.speed": "1 mm/s"}, parts), "BELT-03", AXIS)
        assert crawl.value < 50  # where the naive rule looks
        finding = bench.said(bench.belt(fast, parts), "BELT-03", AXIS)
        assert (finding.limit, finding.verdict) == (50, Verdict.UNSOUND)


class TestSideLoad:
    def test_the_stated_limit_does_not_hold_further_out(self, bench):
        parts = motor_with(bench, radial="28 N", radial_at="10 mm")
        case = bench.belt({"belt-at": "20 mm", "tension": "11 N"}, parts)
        finding = bench.said(case, "BELT-10", AXIS)
        assert finding.value < 28  # so the naive rule says: sound
        assert finding.verdict is Verdict.UNSOUND
        assert finding.limit == pytest.approx(28 * 15 / 25)

    def test_a_tension_of_the_whole_force_is_not_needed(self, bench):
        # naive: the tension must be the whole peak, which pulls the shaft with twice it and more
        steep = {"belt-at": "20 mm", "needs.acceleration": "8000 mm/s2"}  # 1.47 kg: 12.7 N
        shaft = motor_with(bench, radial="28 N", radial_at="20 mm")
        naive = bench.belt({**steep, "tension": "12.7 N"}, shaft)
        assert bench.said(naive, "BELT-10", AXIS).verdict is Verdict.UNSOUND
        by_shares = bench.belt({**steep, "tension": "7 N"}, shaft)
        assert bench.said(by_shares, "BELT-10", AXIS).verdict is Verdict.SOUND
        assert bench.said(by_shares, "BELT-07", AXIS).verdict is Verdict.SOUND


class TestWarmMount:
    def test_a_sheet_value_of_softening_calls_it_good_and_the_belt_goes_slack(self, bench):
        # PETG softens at 79 °C by its sheet, for minutes; the motor's case is at 25 + 60 × 0.81 = 74 °C for hours
        parts = motor_with(bench, rated_rise="60 K")
        parts["end"] = {"kind": "printed", "meshes": [{"mesh": "end.stl"}], "plastics": ["PETG"]}
        places = {"y-motor": {"reference": "motor-full", "on": "end"}, "end": "end"}
        case = bench.belt({"driver-current": "1.35 A"}, parts, places=places)
        finding = bench.said(case, "MOTOR-01", "place y-motor")
        assert finding.value < 79  # so the naive rule says: stands it
        assert finding.verdict is Verdict.UNSOUND
        assert "lets the belt go slack" in finding.because

    def test_how_little_it_takes(self, bench):
        # a belt of 15000 N for a strain of one, 700 mm round: 0.1 mm nearer takes 4.3 N
        finding = bench.said(bench.belt({"tension": "6 N"}), "BELT-07", AXIS)
        nearer = float(finding.because.partition("may come ")[2].split()[0])
        assert nearer == pytest.approx((6 - 1.425) * 700 / (2 * 15000), rel=0.01)
        assert nearer < 0.12


class TestFactsOfTheTrade:
    """Common practice, no source: each comes out of the checks with the reason in numbers."""

    def test_a_size_17_motor_40_long_with_0_4_newton_metres_serves_a_belt_axis(self, bench):
        for bushing in ("ball", "polymer"):
            finding = bench.said(bench.belt(), "BELT-03", AXIS, y_motor="motor-full", y_bearing=bushing)
            assert (finding.verdict, finding.value < 26) == (Verdict.SOUND, True)

    def test_16_and_20_teeth_must_not_be_confused(self, bench):
        # a fifth in travel, and in resolution; a fifth more torque, four fifths of the speed
        resolution = [bench.said(bench.belt(), "BELT-01", AXIS, y_pulley=f"pulley-{z}").value for z in (16, 20)]
        assert resolution[0] / resolution[1] == pytest.approx(0.8)
        line = bench.said(bench.belt(), "BELT-06", AXIS, y_pulley="pulley-16").value
        assert line == pytest.approx(4 * 2 / (2 * pi), abs=1e-3)

    def test_a_driver_at_0_7_of_the_rated_current_spares_petg_and_the_whole_of_it_does_not(self, bench):
        parts = {"end": {"kind": "printed", "meshes": [{"mesh": "end.stl"}], "plastics": ["PETG"]}}
        places = {"y-motor": {"reference": "motor-full", "on": "end"}, "end": "end"}
        usual = bench.said(bench.belt(parts=parts, places=places), "MOTOR-01", "place y-motor")
        whole = bench.said(bench.belt({"driver-current": "1.5 A"}, parts, places=places), "MOTOR-01", "place y-motor")
        assert (usual.verdict, whole.verdict) == (Verdict.MARGINAL, Verdict.UNSOUND)
        assert usual.value - 25 == pytest.approx(0.49 * (whole.value - 25))
