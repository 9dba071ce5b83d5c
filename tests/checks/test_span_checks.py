"""Rules of what a machine reaches, what passes beside each other, and where it is homed. All invented."""

from __future__ import annotations

import pytest

from scantling.findings import NotLookedAt, Verdict


class TestReach:
    def test_travel_over_a_bed_less_its_clips(self, bench):
        finding = bench.said(bench.span(), "SPAN-01", "axis y")
        assert (finding.value, finding.verdict) == (180, Verdict.SOUND)  # 332 - 134 - 18 of travel, 200 - 2 · 10 of bed

    def test_naive_rods_are_long_enough_but_the_tool_sits_beside_the_bed(self, bench):
        # The naive look sees 180 mm of travel and is content; 15 mm off the middle the tool misses as much of the bed.
        case = bench.span({"y.reach.start": "25 mm"})
        naive, ours = bench.said(case, "ROD-05", "axis y"), bench.said(case, "SPAN-01", "axis y")
        assert (naive.value, naive.verdict) == (180, Verdict.SOUND)
        assert (ours.value, ours.verdict) == (165, Verdict.UNSOUND)
        assert "reach 15 mm more" in ours.because

    def test_longer_bushings_take_from_it(self, bench):
        long = {"ball": {**bench.parts["ball"], "length": "40 mm"}}
        usual, longer = (bench.span({"y.guide.carriage": None}, parts=parts) for parts in ({}, long))
        assert bench.said(usual, "SPAN-01", "axis y").value == 180  # 332 - (110 + 24) - 18
        assert bench.said(longer, "SPAN-01", "axis y").value == 164

    def test_a_band_that_straddles_is_marginal(self, bench):
        case = bench.span({"y.reach.start": "11 mm ± 2 mm", "y.reach.wanted": "178 mm"})  # 179, and 177 at 13 mm
        assert bench.said(case, "SPAN-01", "axis y").verdict is Verdict.MARGINAL

    def test_nothing_bounds_it_upwards(self, bench):
        finding = bench.said(bench.span(), "SPAN-01", "axis z")
        assert finding.value == 220 - (44 + 29) - 5
        assert "over a bed" not in finding.because

    def test_upwards_a_tool_that_does_not_come_down_reaches_nothing(self, bench):
        starts = ("0 mm - 1 mm", "1 mm")
        low, high = (bench.said(bench.span({"z.reach.start": start}), "SPAN-01", "axis z") for start in starts)
        assert low.value == 141
        assert (high.value, high.verdict) == (0, Verdict.UNSOUND)

    def test_a_wish_of_its_own_counts(self, bench):
        assert bench.said(bench.span({"z.reach.wanted": "150 mm"}), "SPAN-01", "axis z").verdict is Verdict.UNSOUND

    def test_an_axis_whose_stops_are_not_said_is_not_looked_at(self, bench):
        finding = bench.said(bench.span({"y.guide.stops": None}), "SPAN-01", "axis y")
        assert isinstance(finding, NotLookedAt)
        assert finding.needs == ("axes.y.guide.stops",)

    def test_the_room_of_three_axes(self, bench):
        finding = bench.said(bench.span(), "SPAN-02", "machine reach")
        assert finding.value == pytest.approx(0.180 * 0.180 * 0.142 * 1000)
        assert finding.unit == "l"


class TestClearance:
    def test_a_gap_that_closes_is_judged_where_it_is_narrowest(self, bench):
        finding = bench.said(bench.span(), "SPAN-03", "clearance clamp-to-idler")
        assert (finding.value, finding.verdict) == (13, Verdict.SOUND)  # 193 less 180 of travel

    @pytest.mark.parametrize(("clip", "left", "verdict"), [("clip", 3, Verdict.SOUND), ("clip-flat", 5, Verdict.SOUND)])
    def test_another_clip_leaves_another_gap(self, bench, clip, left, verdict):
        finding = bench.said(bench.span(), "SPAN-03", "clearance duct-over-clips", clip=clip)
        assert (finding.value, finding.verdict) == (left, verdict)

    def test_a_duct_that_meets_the_clips_is_unsound(self, bench):
        case = bench.span(gaps={"duct-over-clips.gap": "4 mm - clip.height"})
        finding = bench.said(case, "SPAN-03", "clearance duct-over-clips")
        assert (finding.value, finding.verdict) == (-1, Verdict.UNSOUND)

    def test_a_gap_that_opens_is_narrowest_at_the_low_end(self, bench):
        finding = bench.said(bench.span(), "SPAN-03", "clearance ends-low")
        assert (finding.value, finding.verdict) == (3, Verdict.SOUND)

    def test_its_own_least_counts_and_a_band_is_marginal(self, bench):
        wide = bench.span(gaps={"ends-low.least": "4 mm"})
        banded = bench.span(gaps={"ends-low.gap": "3 mm ± 2 mm"})
        assert bench.said(wide, "SPAN-03", "clearance ends-low").verdict is Verdict.UNSOUND
        assert bench.said(banded, "SPAN-03", "clearance ends-low").verdict is Verdict.MARGINAL


class TestEndSwitch:
    # Source: kinematics, v² / 2a: 40 mm/s at 2000 mm/s² run on for 0.4 mm, 50 mm/s at 1000 mm/s² for 1.25 mm
    @pytest.mark.outside
    def test_way_to_stop(self, bench):
        finding = bench.said(bench.span(), "SPAN-04", "axis y")
        assert "runs on for 0.4 mm" in finding.because
        assert finding.value == pytest.approx(1.6 - 0.4)
        case = bench.span({"y.home.speed": "50 mm/s", "y.needs.acceleration": "1000 mm/s2"})
        assert bench.said(case, "SPAN-04", "axis y").value == pytest.approx(1.6 - 1.25)

    def test_it_says_between_which_places_the_switch_must_trip(self, bench):
        assert "between 0.4 mm and 18 mm before the hard stop" in bench.said(bench.span(), "SPAN-04", "axis y").because

    def test_too_fast_for_the_lever(self, bench):
        case = bench.span({"y.home.speed": "100 mm/s"})
        assert bench.said(case, "SPAN-04", "axis y").verdict is Verdict.UNSOUND  # 2.5 mm on 1.6 mm of lever

    def test_a_switch_that_trips_too_early_takes_from_the_travel(self, bench):
        case = bench.span({"y.home.trips": "20 mm"})
        finding = bench.said(case, "SPAN-04", "axis y")
        assert finding.verdict is Verdict.UNSOUND
        assert "of 18 mm that stops" in finding.because

    def test_a_lever_of_which_nothing_is_said_is_not_looked_at(self, bench):
        finding = bench.said(bench.span({"y.home.give": None}), "SPAN-04", "axis y")
        assert isinstance(finding, NotLookedAt)
        assert finding.needs == ("axes.y.home.give",)
