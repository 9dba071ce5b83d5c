"""Sourcing sense: what is obsolete, of one vendor, late, to be matched, or without a spare."""

from __future__ import annotations

import pytest

from scantling.findings import NotLookedAt, Verdict

PARTS = {
    "board": {"kind": "thing", "obsolete": "yes", "wear": "breaks"},
    "fan": {"kind": "thing", "obsolete": "no", "wear": "fan"},
    "head": {"kind": "thing", "single-source": "yes"},
    "screw": {"kind": "threaded-rod", "thread": "Tr8x2"},
}
PLACES = {
    "board": "board",
    "fan": "fan",
    "head": "head",
    "z-screw": {"reference": "screw", "quantity": 2, "matched": "yes"},
}
VENDORS = {"near": {"id": "near", "lead-days": 2}, "far": {"id": "far", "lead-days": 30}}
OFFERS = [
    {"vendor": "near", "part": "board", "price": "20"},
    {"vendor": "far", "part": "board", "price": "15"},
    {"vendor": "far", "part": "fan", "price": "3"},
    {"vendor": "near", "part": "head", "price": "9"},
    {"vendor": "near", "part": "screw", "price": "9"},
]
SHOP = {"vendors": VENDORS, "offers": OFFERS, "order-on": "2026-03-02", "need-by": "2026-04-13", "copies": 2}
WHOLE = "machine whole"


@pytest.fixture
def sourced(bench):
    """Say what a check finds; the workshop, parts and places may differ."""

    def ask(code, subject=WHOLE, parts=None, places=None, **shop):
        given = {key: value for key, value in {**SHOP, **shop}.items() if value is not None}
        case = bench.case(parts=PARTS | (parts or {}), places=PLACES | (places or {}), workshop=given)
        return bench.said(case, code, subject)

    return ask


class TestStillMade:
    def test_an_obsolete_part_is_named(self, sourced):
        finding = sourced("SOURCE-01")
        assert (finding.verdict, finding.value, finding.limit) == (Verdict.MARGINAL, 1, 2)
        assert "no longer made: board." in finding.because

    def test_a_stand_in_is_named_with_it(self, sourced):
        finding = sourced("SOURCE-01", places={"board": {"reference": "board", "stand-ins": ["fan"]}})
        assert "of these board has a stand-in" in finding.because

    def test_sound_and_not_looked_at(self, sourced):
        made = {"board": {"kind": "thing", "obsolete": "no"}}
        assert sourced("SOURCE-01", parts=made).verdict is Verdict.SOUND
        unsaid = {name: {"kind": "thing"} for name in ("board", "fan", "head")}
        assert sourced("SOURCE-01", parts=unsaid).needs == ("parts.board.obsolete",)


class TestVendors:
    def test_one_maker_and_no_stand_in(self, sourced):
        finding = sourced("SOURCE-02")
        assert (finding.verdict, finding.value, finding.limit) == (Verdict.MARGINAL, 3, 4)
        assert "head: one maker, no stand-in" in finding.because
        assert "3 can be had from one vendor only (fan, head, screw)" in finding.because

    def test_a_stand_in_is_something_to_fall_back_on(self, sourced):
        assert (
            sourced("SOURCE-02", places={"head": {"reference": "head", "stand-ins": ["fan"]}}).verdict is Verdict.SOUND
        )

    def test_what_nobody_has(self, sourced):
        finding = sourced("SOURCE-02", offers=OFFERS[1:3] + OFFERS[4:], parts={"head": {"kind": "thing"}})
        assert (finding.value, "nobody here has head" in finding.because) == (3, True)

    def test_what_is_in_the_drawer_is_no_worry(self, sourced):
        assert sourced("SOURCE-02", stock=[{"part": "head", "quantity": 2}]).value == 4
        assert sourced("SOURCE-02", stock=[{"part": "head", "quantity": 1}]).value == 3  # two copies need two

    def test_without_offers_it_is_not_looked_at(self, sourced):
        assert sourced("SOURCE-02", offers=None).needs == ("workshop.offers",)


class TestLead:
    def test_the_part_that_decides_the_date(self, sourced):
        finding = sourced("SOURCE-03")  # the fan's 30 of 42 days keep more than a fifth
        assert (finding.verdict, finding.value, finding.limit) == (Verdict.SOUND, 30, 42)
        assert finding.because.startswith("fan: 30 days")

    @pytest.mark.parametrize("day", ["2026-04-05", "2026-03-20"])
    def test_a_date_with_no_room_is_marginal(self, sourced, day):
        assert sourced("SOURCE-03", **{"need-by": day}).verdict is Verdict.MARGINAL

    def test_the_soonest_vendor_counts(self, sourced):
        nearer = [*OFFERS, {"vendor": "far", "part": "fan", "price": "9", "lead-days": 4}]
        assert sourced("SOURCE-03", offers=nearer).value == 4

    def test_what_is_in_hand_does_not_wait(self, sourced):
        assert sourced("SOURCE-03", stock=[{"part": "fan", "quantity": 2}]).value == 2

    def test_without_a_date_it_is_not_looked_at(self, sourced):
        assert sourced("SOURCE-03", **{"need-by": None}).needs == ("workshop.need-by",)


class TestMatched:
    SUBJECT = "place z-screw"

    def test_a_pack_smaller_than_the_set_is_marginal(self, sourced):
        finding = sourced("SOURCE-04", self.SUBJECT)
        assert (finding.verdict, finding.value, finding.limit) == (Verdict.MARGINAL, 1, 2)

    def test_a_pack_of_the_whole_set_is_one_lot(self, sourced):
        pairs = [*OFFERS, {"vendor": "far", "part": "screw", "price": "15", "pack": 2}]
        assert sourced("SOURCE-04", self.SUBJECT, offers=pairs).verdict is Verdict.SOUND

    def test_cut_from_one_bar(self, sourced):
        cut = {"z-screw": {"reference": "screw", "quantity": 2, "matched": "yes", "length": "235 mm"}}
        bars = [*OFFERS, {"vendor": "near", "part": "screw", "price": "9", "length": "1 m"}]
        finding = sourced("SOURCE-04", self.SUBJECT, places=cut, offers=bars)
        assert (finding.verdict, finding.value) == (Verdict.SOUND, 4)
        short = [*OFFERS, {"vendor": "near", "part": "screw", "price": "9", "length": "470 mm"}]
        sawn = sourced("SOURCE-04", self.SUBJECT, places=cut, offers=short, saw={"bar-kerf": "1 mm"})
        assert (sawn.verdict, sawn.value) == (Verdict.MARGINAL, 1)  # the saw takes what the second piece needs

    def test_sorted_by_readings(self, sourced):
        read = {"part": "screw", "size": "bow-300", "samples": ["0.2 mm", "0.1 mm", "0.4 mm"]}
        finding = sourced("SOURCE-04", self.SUBJECT, actuals=[read])
        assert (finding.verdict, "was read on 3" in finding.because) == (Verdict.SOUND, True)

    def test_not_looked_at_without_offers(self, sourced):
        assert isinstance(sourced("SOURCE-04", self.SUBJECT, offers=None), NotLookedAt)


class TestSpares:
    def test_wearing_parts_without_a_spare(self, sourced):
        finding = sourced("SOURCE-05")
        assert (finding.verdict, finding.value, finding.limit) == (Verdict.MARGINAL, 0, 2)
        assert "without a spare: fan (30 days), board (2 days)" in finding.because  # the longest wait first

    def test_rules_and_the_drawer_are_spares(self, sourced):
        finding = sourced(
            "SOURCE-05", spares=[{"wear": "fan", "at-least": 1}], stock=[{"part": "board", "quantity": 3}]
        )
        assert (finding.verdict, finding.value) == (Verdict.SOUND, 2)
        no_more_than_used = sourced(
            "SOURCE-05", spares=[{"wear": "fan", "extra": "10 %"}], stock=[{"part": "board", "quantity": 2}]
        )
        assert no_more_than_used.value == 1

    def test_not_looked_at_where_nothing_is_said_to_wear(self, sourced):
        parts = {name: {"kind": "thing"} for name in ("board", "fan")}
        assert sourced("SOURCE-05", parts=parts).needs == ("parts (one with wear)",)
