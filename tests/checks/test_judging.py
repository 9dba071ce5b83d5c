"""The rules of verdicts, on made-up rules: bands, reserves, missing figures, limits that a design overrides."""

from __future__ import annotations

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.checks.inputs import Input, known, or_range, or_typical
from scantling.checks.judging import judge, worst_of
from scantling.checks.limits import INFORMATION, Point, at_least, at_most, between, overridden
from scantling.checks.sentences import round_shown
from scantling.checks.trials import Trial
from scantling.findings import Limit, Verdict
from scantling.quantities import Figure, Grade

SUBJECT = "axis y"


def banded(value: float, low: float, high: float) -> Input:
    return known("load", Figure(value, low, high), "N")


@pytest.fixture
def judged(bench):
    """Judge a rule of one load against limits, in a design that accepts what is given."""

    def judge_load(load: Input, bounds, accepted=(), **more):
        case = bench.case(accepted=list(accepted))
        reader = case.reader(bench.reference(case))
        wanted = {"rule": lambda load: load, "unit": "N", "because": "It carries {load}: {value}; {limit}."} | more
        return judge(bench.a_check(), reader, SUBJECT, inputs={"load": load}, bounds=bounds, **wanted)

    return judge_load


class TestVerdict:
    def test_the_whole_band_inside_is_sound(self, judged):
        finding = judged(banded(8, 7, 10), at_most(10))
        assert (finding.verdict, finding.value, finding.low, finding.high) == (Verdict.SOUND, 8, 7, 10)
        assert (finding.side, finding.limit, finding.margin) == (Limit.UPPER, 10, 0.2)
        assert finding.because == "It carries 8 N (7–10): 8 N (7–10); at most 10 N."

    def test_the_whole_band_outside_is_unsound(self, judged):
        finding = judged(banded(12, 10.1, 14), at_most(10))
        assert finding.verdict is Verdict.UNSOUND
        assert finding.margin == pytest.approx(-0.2)

    def test_a_band_across_the_limit_is_marginal_and_names_what_it_hangs_on(self, judged):
        finding = judged(banded(9, 7, 12), at_most(10))
        assert finding.verdict is Verdict.MARGINAL
        assert finding.because.endswith("Hangs on load (9 N (7–12)): measure it.")

    def test_nominal_outside_but_not_all_of_the_band_is_marginal(self, judged):
        assert judged(banded(11, 9, 12), at_most(10)).verdict is Verdict.MARGINAL

    def test_what_is_chosen_by_nominal_size_must_hold_at_nominal(self, judged):
        bounds = at_most(10)
        strict = type(bounds)(bounds.side, bounds.low, bounds.high, nominal_holds=True)
        assert judged(banded(11, 9, 12), strict).verdict is Verdict.UNSOUND
        assert judged(banded(9, 8, 12), strict).verdict is Verdict.MARGINAL

    def test_a_value_on_its_limit_is_inside_whatever_the_last_digit(self, judged):
        assert judged(known("load", 0.1 + 0.2, "N"), at_most(0.3)).verdict is Verdict.SOUND
        assert judged(known("load", 0.3001, "N"), at_most(0.3)).verdict is Verdict.UNSOUND

    def test_inside_without_the_reserve_is_marginal(self, judged):
        finding = judged(known("load", 9, "N"), at_most(10, reserve_ratio=0.2))
        assert finding.verdict is Verdict.MARGINAL
        assert "Inside by 10 %, where 20 % of reserve is wished." in finding.because
        assert judged(known("load", 8, "N"), at_most(10, reserve_ratio=0.2)).verdict is Verdict.SOUND

    def test_lower_and_two_sided_limits(self, judged):
        assert judged(known("load", 5, "N"), at_least(4)).margin == 0.25
        assert judged(known("load", 3, "N"), at_least(4)).verdict is Verdict.UNSOUND
        finding = judged(known("load", 5, "N"), between(4, 8))
        assert (finding.limit, finding.limit_high, finding.margin) == (4, 8, 0.5)
        assert "between 4 and 8 N" in finding.because
        assert judged(known("load", 9, "N"), between(4, 8)).margin == pytest.approx(-0.5)

    def test_information_is_never_a_fault(self, judged):
        finding = judged(banded(5, 1, 100), INFORMATION)
        assert (finding.verdict, finding.margin, finding.limit) == (Verdict.SOUND, None, None)
        assert (finding.low, finding.high) == (1, 100)

    def test_a_limit_may_follow_from_the_figures(self, judged):
        finding = judged(banded(8, 7, 9), at_most(lambda load: 2 * load))
        assert (finding.verdict, finding.limit) == (Verdict.SOUND, 16)


class TestMissing:
    def test_a_missing_figure_that_cannot_matter_does_not(self, judged):
        finding = judged(or_range("load", None, 1, 9, "N"), at_most(10))
        assert (finding.verdict, finding.missing) == (Verdict.SOUND, ())
        assert finding.value == 9  # at its unkind end
        assert judged(or_range("load", None, 11, 19, "N"), at_most(10)).verdict is Verdict.UNSOUND

    def test_one_that_could_turn_the_verdict_is_named(self, judged):
        finding = judged(or_range("load", None, 1, 19, "N"), at_most(10))
        assert (finding.verdict, finding.missing, finding.value) == (Verdict.UNKNOWN, ("load",), None)
        assert (finding.low, finding.high, finding.margin) == (1, 19, None)
        assert finding.because.endswith("Not known: load (1–19 N is possible).")

    def test_only_those_that_turn_it_are_named(self, bench):
        case = bench.case()
        inputs = {"much": or_range("much", None, 0, 20), "little": or_range("little", None, 0, 1)}
        finding = judge(
            bench.a_check(),
            case.reader(bench.reference(case)),
            SUBJECT,
            rule=lambda much, little: much + little,
            inputs=inputs,
            bounds=at_most(15),
            unit="",
            because="{value}",
        )
        assert finding.missing == ("much",)

    def test_between_sound_and_marginal_there_is_no_unknown(self, judged):
        finding = judged(or_range("load", None, 1, 9.5, "N"), at_most(10, reserve_ratio=0.2))
        assert (finding.verdict, finding.missing) == (Verdict.MARGINAL, ("load",))

    def test_given_figures_are_not_missing(self, judged):
        assert judged(or_range("load", Figure.exact(5), 1, 19, "N"), at_most(10)).verdict is Verdict.SOUND

    def test_missing_information_has_no_value(self, judged):
        finding = judged(or_range("load", None, 1, 19, "N"), INFORMATION)
        assert (finding.verdict, finding.value, finding.missing) == (Verdict.SOUND, None, ("load",))


class TestAssumed:
    def test_figures_of_a_class_are_listed(self, judged):
        assert judged(or_typical("load", None, Figure(5, 4, 6), "N"), at_most(10)).assumed == ("load",)
        assert judged(or_typical("load", Figure.exact(5), Figure(5, 4, 6), "N"), at_most(10)).assumed == ()
        typical = Figure(5, 4, 6, Grade.TYPICAL, "class")
        assert judged(known("load", typical, "N"), at_most(10)).assumed == ("load",)


LIMIT = {"code": "TEST-01", "subject": SUBJECT, "because": "the head is heavy", "limit": "14 N"}


class TestAccepted:
    def test_a_design_may_set_its_own_limit_and_the_reason_is_shown(self, judged):
        finding = judged(known("load", 12, "N"), at_most(10), [LIMIT])
        assert (finding.verdict, finding.limit) == (Verdict.SOUND, 14)
        assert finding.because.endswith("The limit is the design's own: the head is heavy.")

    def test_it_holds_for_its_check_and_subject_alone(self, judged):
        assert judged(known("load", 12, "N"), at_most(10), [LIMIT | {"subject": "axis x"}]).limit == 10
        assert judged(known("load", 12, "N"), at_most(10), [LIMIT | {"code": "TEST-02"}]).limit == 10

    def test_one_that_cannot_be_read_is_not_used_and_said(self, judged):
        finding = judged(known("load", 12, "N"), at_most(10), [LIMIT | {"limit": "14 kg"}])
        assert (finding.verdict, finding.limit) == (Verdict.UNSOUND, 10)
        assert "cannot be read in N: not used" in finding.because

    def test_an_unknown_may_be_lived_with(self, judged):
        accepted = {"code": "TEST-01", "subject": SUBJECT, "because": "tried on the bench"}
        finding = judged(or_range("load", None, 1, 19, "N"), at_most(10), [accepted])
        assert (finding.verdict, finding.missing) == (Verdict.MARGINAL, ("load",))
        assert "accepted by the design: tried on the bench." in finding.because

    def test_an_unsound_thing_cannot_be_accepted_without_a_limit(self, judged):
        accepted = {"code": "TEST-01", "subject": SUBJECT, "because": "hope"}
        assert judged(known("load", 12, "N"), at_most(10), [accepted]).verdict is Verdict.UNSOUND

    @pytest.mark.parametrize(
        ("text", "unit", "limit"),
        [
            ("60 %", "%", 60),
            ("0.6", "%", 60),
            ("2 GPa", "GPa", 2),
            ("500 MPa", "GPa", 0.5),
            ("10 min", "min", 10),
            ("300 s", "min", 5),
            ("1/8 in", "mm", 3.175),
            ("0.05 mm", "µm", 50),
            ("80 °C", "°C", 80),
            ("200 N mm", "N·mm", 200),
            ("900 km", "km", 900),
            ("20", "teeth", 20),
            ("20 kg", "mm", None),
        ],
    )
    def test_own_limits_are_read_in_the_unit_that_is_shown(self, text, unit, limit):
        own = overridden(at_most(1), text, unit)
        assert own is None if limit is None else own.high == pytest.approx(limit)

    def test_an_own_range_needs_both_ends(self):
        own = overridden(between(0, 1), "5..8 mm", "mm")
        assert (own.low, own.high) == (5, 8)
        assert overridden(between(0, 1), "5 mm", "mm") is None
        assert overridden(at_least(3), "5 mm", "mm").low == 5


numbers = st.floats(-100, 100, allow_nan=False)
slopes = st.lists(st.floats(-5, 5, allow_nan=False), min_size=1, max_size=7)


class TestBands:
    @given(slopes, st.data())
    def test_the_band_of_a_straight_rule_is_exact_however_many_figures(self, factors, data):
        inputs = {}
        for number in range(len(factors)):
            low, value, high = sorted(data.draw(st.tuples(numbers, numbers, numbers)))
            inputs[f"x{number}"] = Input(f"x{number}", value, low, high)

        def rule(**figures):
            return sum(factor * figures[f"x{number}"] for number, factor in enumerate(factors))

        points = [Trial(rule, inputs, at_most(0.0)).point(**ends) for ends in Trial(rule, inputs, at_most(0.0)).ends()]
        corners = [
            sum(f * end for f, end in zip(factors, ends, strict=True))
            for ends in product(*((i.low, i.high) for i in inputs.values()))
        ]
        assert min(p.value for p in points) == pytest.approx(min(corners), abs=1e-6)
        assert max(p.value for p in points) == pytest.approx(max(corners), abs=1e-6)

    @given(st.floats(0.1, 50), st.floats(0.1, 50), st.floats(1, 40))
    def test_margin_is_positive_exactly_inside(self, value, limit, width):
        assert (Point(value, float("-inf"), limit).margin >= 0) == (value <= limit)
        assert (Point(value, limit, float("inf")).margin >= 0) == (value >= limit)
        inside = limit <= value <= limit + width
        assert (Point(value, limit, limit + width).margin >= 0) == inside

    def test_a_limit_of_zero_has_a_margin(self):
        assert Point(3.0, 0.0, float("inf")).margin == 3.0

    def test_the_widest_swing_is_named_and_a_second_like_it(self, bench):
        case = bench.case()
        wide, like = Input("drag", 4, 2, 8, "N"), Input("mass", 4, 2, 7, "kg")
        narrow = Input("play", 1, 0.9, 1.1)

        def said(**inputs):
            reader = case.reader(bench.reference(case))
            return judge(
                bench.a_check(),
                reader,
                SUBJECT,
                rule=lambda **f: sum(f.values()),
                inputs=inputs,
                bounds=at_most(10),
                unit="",
                because="{value}.",
            ).because

        assert said(drag=wide, mass=like, play=narrow).endswith(
            "Hangs on drag (4 N (2–8)) and mass (4 kg (2–7)): measure it."
        )
        assert said(drag=wide, play=narrow, more=Input("more", 3, 3, 3)).endswith(
            "Hangs on drag (4 N (2–8)): measure it."
        )


def test_numbers_in_sentences_have_three_digits_and_keep_whole_places():
    shown = [round_shown(value, "mm") for value in (0.0123456, 36.637, 999.6, 14285.7, 0.0, -2.5)]
    assert shown == ["0.0123 mm", "36.6 mm", "1000 mm", "14286 mm", "0 mm", "-2.5 mm"]


def test_the_worst_of_several_findings_is_the_worst_verdict_then_the_least_margin(judged):
    good, tight, bad = (judged(known("load", value, "N"), at_most(10)) for value in (2, 9.9, 11))
    assert worst_of([good, tight]) is tight
    assert worst_of([good, bad, tight]) is bad
