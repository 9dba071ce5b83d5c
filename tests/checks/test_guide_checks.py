"""Rules of guide rods and bushings, on an invented moving bed on two rods of 8 mm, 332 mm free."""

from __future__ import annotations

import pytest

from scantling.findings import Verdict

AXIS = "axis y"


class TestSag:
    # Source: beam tables, F L³ / (48 E I): a rod of 8 mm, 400 mm free, 10 N in the middle, E 205 GPa sags 0.3235 mm
    @pytest.mark.outside
    def test_the_constant_sag_is_that_of_the_beam_tables(self, bench):
        axis = {"guide.free": "400 mm", "guide.spacing": "0 mm", "moves": [{"mass": "2.0394 kg", "for": "weights"}]}
        finding = bench.said(bench.belt(axis), "ROD-01", AXIS)
        assert "sag 0.323 mm in the middle" in finding.because

    # trap: sag counts at the tool. The naive answer takes the sag in the middle of the span for the error of a moving
    # bed; what levelling leaves over there is less than a tenth of it
    def test_under_a_tool_that_stands_still_the_height_changes_ten_times_less(self, bench):
        four = {"y-bearing": bench.options("ball", quantity=4)}
        stands = bench.said(bench.belt(places=four), "ROD-01", AXIS)
        rides = bench.said(bench.belt({"guide.tool": "rides"}, places=four), "ROD-01", AXIS)
        assert "sag 0.1 mm in the middle" in stands.because  # the naive answer
        assert stands.value < 0.1 / 10
        assert stands.value < rides.value / 5
        assert (stands.verdict, rides.verdict) == (Verdict.SOUND, Verdict.SOUND)

    def test_over_a_rod_with_a_single_bushing_the_height_changes_more(self, bench):
        three = bench.said(bench.belt(), "ROD-01", AXIS)
        four = bench.said(bench.belt(places={"y-bearing": bench.options("ball", quantity=4)}), "ROD-01", AXIS)
        assert 2 * four.value < three.value < 0.25 * 0.133  # F L³ / 48 E I of 7.2 N on 332 mm
        assert "sag 0.133 mm in the middle" in three.because

    def test_clamped_ends_sag_less(self, bench):
        supported = bench.said(bench.belt({"guide.tool": "rides"}), "ROD-01", AXIS)
        clamped = bench.said(bench.belt({"guide.tool": "rides", "guide.ends": "clamped"}), "ROD-01", AXIS)
        assert clamped.value < supported.value / 3

    def test_thin_long_rods_are_unsound(self, bench):
        thin = {"rod-hard": {**bench.parts["rod-hard"], "diameter": "5 mm"}}
        case = bench.belt({"guide.tool": "rides", "guide.free": "500 mm", "needs.travel": "350 mm"}, thin)
        assert bench.said(case, "ROD-01", AXIS).verdict is Verdict.UNSOUND

    def test_the_design_may_say_its_limit(self, bench):
        case = bench.belt({"guide.tool": "rides", "guide.sag-limit": "0.02 mm"})
        finding = bench.said(case, "ROD-01", AXIS)
        assert (finding.limit, finding.verdict) == (0.02, Verdict.UNSOUND)

    def test_rods_that_move_are_not_looked_at(self, bench):
        finding = bench.said(bench.belt({"guide.moving-rods": "yes"}), "ROD-01", AXIS)
        assert finding.needs == ("axes.y.guide (rods that stand still)",)

    def test_a_vertical_guide_carries_no_weight(self, bench):
        with pytest.raises(AssertionError):
            bench.said(bench.belt({"vertical": "yes"}), "ROD-01", AXIS)


class TestLife:
    # Source: ISO 14728-1, (C / P)³ × 50 km: a bearing maker's worked lives, C = P on 60 HRC 50 km, 50 HRC 7.44 km
    @pytest.mark.outside
    @pytest.mark.parametrize(("hardness", "life_km"), [("60 HRC", 50.0), ("50 HRC", 7.44)])
    def test_life_is_that_of_the_worked_example(self, bench, hardness, life_km):
        # 4.0789 kg: 20 N on each rod, all of it on the bushing that stands alone; load factor 1.5 as usual
        axis = {"moves": [{"mass": "4.0789 kg", "for": "weights"}]}
        parts = {
            "ball": {**bench.parts["ball"], "dynamic-load": "30 N"},
            "rod-hard": {**bench.parts["rod-hard"], "surface-hardness": hardness},
        }
        finding = bench.said(bench.belt(axis, parts), "ROD-02", AXIS)
        assert finding.value == pytest.approx(life_km, rel=2e-3)

    # Source: a bushing maker's catalogue, contact coefficient of two bushings on one shaft 0.81, of one 1.00
    @pytest.mark.outside
    def test_two_on_a_rod_share_unevenly(self, bench):
        weak = {"ball": {**bench.parts["ball"], "dynamic-load": "60 N"}}
        three = bench.said(bench.belt(parts=weak), "ROD-02", AXIS)
        four = bench.said(
            bench.belt(parts=weak, places={"y-bearing": bench.options("ball", quantity=4)}), "ROD-02", AXIS
        )
        assert "0.81 of it with 2 on a rod" in four.because
        shares = 1.486 / 1.47 / 2  # each carries half as much as the one that stands alone; one bushing more is carried
        assert four.value / three.value == pytest.approx((0.81 / shares) ** 3, rel=2e-3)

    def test_the_hardness_of_a_material_stands_for_a_missing_one(self, bench):
        soft = {"rod-hard": {"kind": "rod", "diameter": "8 mm", "material": "stainless"}}
        assert "no life is claimed" in bench.said(bench.belt(parts=soft), "ROD-02", AXIS).because
        hard = {"rod-hard": {"kind": "rod", "diameter": "8 mm", "material": "hardened steel"}}
        finding = bench.said(bench.belt(parts=hard), "ROD-02", AXIS)
        assert "surface hardness of rod-hard" in finding.assumed
        assert finding.verdict is Verdict.SOUND

    def test_a_factor_is_never_taken_below_its_range(self, bench):
        parts = {"rod-soft": {**bench.parts["rod-soft"], "surface-hardness": "10 HRC"}}
        finding = bench.said(bench.belt(parts=parts), "ROD-02", AXIS, y_rod="rod-soft")
        assert (finding.verdict, finding.value) == (Verdict.SOUND, None)
        assert "no life is claimed" in finding.because

    def test_plain_linings_have_no_such_life(self, bench):
        assert "no balls" in bench.said(bench.belt(), "ROD-02", AXIS, y_bearing="polymer").because

    def test_without_a_wanted_life_it_is_not_looked_at(self, bench):
        assert bench.said(bench.belt({"needs.life": None}), "ROD-02", AXIS).needs == ("axes.y.needs.life",)

    def test_a_missing_rating_matters_only_where_it_could(self, bench):
        parts = {"ball": {**bench.parts["ball"], "dynamic-load": None}}
        assert bench.said(bench.belt(parts=parts), "ROD-02", AXIS).verdict is Verdict.SOUND
        far = bench.said(bench.belt({"needs.life": "900000 km"}, parts), "ROD-02", AXIS)
        assert (far.verdict, far.missing) == (Verdict.UNKNOWN, ("load rating of ball",))


class TestPressure:
    def test_soft_rods_under_balls_are_unsound_though_their_life_is_not(self, bench):
        life = bench.said(bench.belt(), "ROD-02", AXIS, y_rod="rod-soft")
        pressure = bench.said(bench.belt(), "ROD-03", AXIS, y_rod="rod-soft")
        assert life.verdict is not Verdict.UNSOUND
        assert pressure.verdict is Verdict.UNSOUND
        assert 1.3 < pressure.low < pressure.high < 2.2  # GPa under one ball

    def test_even_a_light_load_grooves_a_soft_rod(self, bench):
        light = bench.belt({"moves": [{"mass": "180 g", "for": "pen"}]})
        finding = bench.said(light, "ROD-03", AXIS, y_rod="rod-soft")
        assert (finding.verdict, finding.limit) == (Verdict.UNSOUND, 0.428)  # 238 HV and 190
        assert "is not hardened and grooves" in finding.because
        assert bench.said(light, "ROD-03", AXIS).verdict is Verdict.SOUND

    @pytest.mark.parametrize(("hardness", "verdict"), [("30 HRC", Verdict.UNSOUND), ("45 HRC", Verdict.SOUND)])
    def test_hardened_begins_where_lives_are_published(self, bench, hardness, verdict):
        parts = {"rod-hard": {**bench.parts["rod-hard"], "surface-hardness": hardness}}
        assert bench.said(bench.belt(parts=parts), "ROD-03", AXIS).verdict is verdict

    def test_hardened_rods_and_polymer_linings_are_sound(self, bench):
        assert bench.said(bench.belt(), "ROD-03", AXIS).verdict is Verdict.SOUND
        soft = bench.said(bench.belt(), "ROD-03", AXIS, y_rod="rod-soft", y_bearing="polymer")
        assert (soft.verdict, soft.value) == (Verdict.SOUND, None)

    # Source: Hertz, a ball of 1.5 mm on a plane with 1 N, E 205 GPa both: 1634 MPa; on a shaft of 8 mm a little more
    @pytest.mark.outside
    def test_the_pressure_is_that_of_hertz(self, bench):
        # 2 rods, one bushing alone on one of them, 4 rows, 5 balls: 1.0197 kg puts 5 N on that bushing, 1 N on a ball
        finding = bench.said(bench.belt({"moves": [{"mass": "1.01972 kg", "for": "weights"}]}), "ROD-03", AXIS)
        sphere_gpa = (6 * 1.0 * 112_637.0**2 / (3.14159265**3 * 0.75**2)) ** (1 / 3) / 1000
        assert sphere_gpa <= finding.value <= 1.06 * sphere_gpa

    def test_nothing_said_of_the_steel_is_unknown(self, bench):
        bare = {"rod-hard": {"kind": "rod", "diameter": "8 mm"}}
        finding = bench.said(bench.belt(parts=bare), "ROD-03", AXIS)
        assert (finding.verdict, finding.missing) == (Verdict.UNKNOWN, ("surface hardness of rod-hard",))

    def test_plain_steel_without_a_hardness_is_taken_as_soft(self, bench):
        bare = {"rod-hard": {"kind": "rod", "diameter": "8 mm", "material": "steel"}}
        finding = bench.said(bench.belt(parts=bare), "ROD-03", AXIS)
        assert finding.verdict is Verdict.UNSOUND
        assert "surface hardness of rod-hard" in finding.assumed


class TestRacking:
    # Source: a bushing maker's design guide: with friction 0.25 the arm may be twice the spacing of the bushings
    @pytest.mark.outside
    @pytest.mark.parametrize(
        ("offset", "verdict"), [("170 mm", Verdict.SOUND), ("200 mm", Verdict.MARGINAL), ("230 mm", Verdict.UNSOUND)]
    )
    def test_two_to_one_for_polymer(self, bench, offset, verdict):
        finding = bench.said(bench.belt({"guide.offset": offset}), "ROD-04", AXIS, y_bearing="polymer")
        assert (finding.limit, finding.verdict) == (2, verdict)

    def test_balls_hardly_bind(self, bench):
        assert bench.said(bench.belt({"guide.offset": "230 mm"}), "ROD-04", AXIS).verdict is Verdict.SOUND

    def test_without_an_offset_it_is_not_looked_at(self, bench):
        assert bench.said(bench.belt({"guide.offset": None}), "ROD-04", AXIS).needs == ("axes.y.guide.offset",)


class TestTravel:
    def test_free_length_less_carriage_and_stops(self, bench):
        assert bench.said(bench.belt(), "ROD-05", AXIS).value == 180
        short = bench.said(bench.belt({"guide.free": "328 mm"}), "ROD-05", AXIS)
        assert (short.value, short.verdict) == (176, Verdict.UNSOUND)

    def test_bands_of_sizes_count(self, bench):
        finding = bench.said(bench.belt({"guide.free": "333 mm ± 2 mm"}), "ROD-05", AXIS)
        assert (finding.verdict, finding.low, finding.high) == (Verdict.MARGINAL, 179, 183)
        assert "Hangs on free length of the rods" in finding.because

    def test_all_that_is_missing_is_named_at_once(self, bench):
        case = bench.belt({"guide.free": None, "guide.stops": None, "needs.travel": None})
        needs = bench.said(case, "ROD-05", AXIS).needs
        assert needs == ("axes.y.needs.travel", "axes.y.guide.free", "axes.y.guide.stops")
