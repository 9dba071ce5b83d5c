"""Facts of the trade on sizes that must meet, with their reason in numbers. All: common practice, no source."""

from __future__ import annotations

import pytest

from scantling.findings import Verdict
from scantling.formulas.hole_patterns import Pattern, going_together

FLANGE = ((0.0, 0.0), (24.0, 0.0), (24.0, 16.0), (0.0, 16.0))


class TestCoarsePrints:
    """Coarse or slightly warped printed parts mostly still serve: common practice, no source."""

    @pytest.mark.parametrize(
        ("printed_mm", "verdict"), [(0.1, Verdict.SOUND), (0.2, Verdict.SOUND), (0.35, Verdict.UNSOUND)]
    )
    def test_holders_twice_as_coarse_still_level_the_rods(self, bench, printed_mm, verdict):
        holders = [{"size": "20 mm", "sign": sign, "tolerance": f"{printed_mm} mm"} for sign in "+-"]
        chain = {"terms": holders, "at-least": "-0.25 mm", "at-most": "0.25 mm", "yield-wanted": "95 %"}
        # a difference of two spreads by √2 / 3 of one: ± 0.25 is 5.3, 2.65 and 1.5 deviations
        assert bench.said(bench.case(chains={"level": chain}), "CHAIN-02", "chain level").verdict is verdict

    def test_holes_of_a_coarse_print_hide_behind_those_of_the_hand(self):
        fine, coarse = (Pattern(FLANGE, 0.4, 0.4, printed) for printed in (0.05, 0.3))
        shares = [going_together([one], 0.0, 0.0, 0.997, seed=1)[1][0] for one in (fine, coarse)]
        assert shares[1] > 0.99  # six times as coarse costs less than one machine in a hundred
        assert shares[0] - shares[1] < 0.01


class TestSlotsAndWashers:
    """Make by hand what has slots or washers to forgive: common practice, no source."""

    def test_a_motor_square_by_hand_does_not_meet_at_medium_clearance_but_does_at_4_mm(self):
        square = tuple((x, y) for x, y in ((0.0, 0.0), (31.0, 0.0), (31.0, 31.0), (0.0, 31.0)))
        shares = [
            going_together([Pattern(square, (hole - 3) / 2, 0.4, 0.1)], 0.0015, 0.0, 0.997, seed=1)[1][0]
            for hole in (3.4, 4.0)
        ]
        assert shares[0] < 0.8
        assert shares[1] > 0.997

    def test_drilled_through_both_at_once_nothing_is_left(self, bench):
        one_go = [{"size": "50 mm", "sign": sign, "tolerance": "0.5 mm", "together": "drilled"} for sign in "+-"]
        apart = [{key: value for key, value in term.items() if key != "together"} for term in one_go]
        limits = {"at-least": "-0.1 mm", "at-most": "0.1 mm"}
        said = [
            bench.said(bench.case(chains={"c": {"terms": terms, **limits}}), "CHAIN-02", "chain c")
            for terms in (one_go, apart)
        ]
        assert [one.verdict for one in said] == [Verdict.SOUND, Verdict.UNSOUND]
        assert said[1].value < 40
