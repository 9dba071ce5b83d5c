"""What is worth measuring: each figure on which something hangs, with its card and the line to enter."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from scantling.api.measuring import card_kinds, measuring_cards, measuring_data, worth_measuring
from scantling.api.opening import open_design
from scantling.plans.measuring import ASSUMED, HANGS, MISSING, readings

PLOTTER = Path(__file__).parents[2] / "examples" / "plotter"


@pytest.fixture(scope="module")
def session():
    """Return the small example, opened."""
    return open_design(PLOTTER, "village", 1)


@pytest.fixture(scope="module")
def finding(session):
    """Return a function that makes a finding of a rod or motor of the small example that lacks or assumes figures."""
    from scantling.findings import Finding, Verdict

    def make(verdict: Verdict = Verdict.MARGINAL, **figures: tuple[str, ...]) -> Finding:
        return replace(Finding("ROD-99", "axis x", "A rule", verdict, "Because.", "none"), **figures)

    return make


@pytest.fixture(scope="module")
def reader(session):
    """Return a reader of the small example's reference build."""
    from scantling.build.reference import reference_build

    return session.case.reader(reference_build(session.case))


def test_what_a_verdict_hangs_on_comes_before_what_was_assumed(reader, finding):
    rod = next(name for name, part in reader.design.parts.items() if part.kind == "rod")
    said = [finding(assumed=(f"diameter of {rod}",)), finding(hangs=(f"surface hardness of {rod}",))]
    first, second = readings(reader, said)
    assert (first.why, first.card.figure, first.part) == (HANGS, "surface-hardness", rod)
    assert (second.why, second.card.figure) == (ASSUMED, "diameter")
    assert first.entry == f"- {{part: {rod}, size: surface-hardness, value: {first.card.example}}}"


def test_missing_figures_come_first_and_each_once(reader, finding):
    motor = next(name for name, part in reader.design.parts.items() if part.kind == "motor")
    path, words = f"parts.{motor}.mass", f"holding torque of {motor}"
    said = [finding(missing=(path,)), finding(missing=(words,)), finding(assumed=(words,))]
    found = readings(reader, said)
    assert {(one.what, one.why) for one in found} == {(path, MISSING), (words, MISSING)}
    assert all(one.codes == ("ROD-99",) for one in found)


def test_a_card_of_another_kind_of_part_is_not_offered(reader, finding):
    rod = next(name for name, part in reader.design.parts.items() if part.kind == "rod")
    assert readings(reader, [finding(hangs=(f"modulus of {rod}",))]) == ()
    assert readings(reader, [finding(hangs=("share of the busier rod",))]) == ()


def test_the_figure_of_a_place_is_that_of_the_part_in_it(reader, finding):
    place = next(n for n in reader.design.places if (p := reader.part(n)) is not None and p.kind == "bushing")
    (one,) = readings(reader, [finding(assumed=(f"bore of {place}",))])
    assert one.part == reader.part(place).id


def test_what_goes_under_the_axis_has_no_line_for_actuals(reader, finding):
    (one,) = readings(reader, [finding(hangs=("parallel error of the rods",))])
    assert (one.card.kind, one.entry) == ("guide", "")


def test_cards_by_kind():
    assert {card.kind for card in measuring_cards(["rod", "motor"])} == {"rod", "motor"}
    assert set(card_kinds()) == {card.kind for card in measuring_cards()}


def test_the_small_example_says_what_is_worth_measuring(session):
    wanted = worth_measuring(session)
    assert wanted
    data = measuring_data(wanted, measuring_cards(["rod"]))
    assert [one["entry"] for one in data["readings"]] == [one.entry for one in wanted]
    assert data["cards"][0]["number"] == 1
