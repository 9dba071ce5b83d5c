"""Why: every other answer to a question, its extra cost or what forbids it; and three usual ways of choosing."""

from pathlib import Path

import pytest

from scantling.build.case import Case
from scantling.checks.all import CHECKS
from scantling.choosing.baselines import cheapest_unit_price, choose_then_buy, reference_bought_best
from scantling.choosing.choose import choose, open_choice
from scantling.choosing.result import Choice, Infeasible
from scantling.choosing.why import why
from scantling.model.build import Key
from scantling.reading.project import read_project

SEDGE = Path(__file__).parents[2] / "examples" / "plotter"


@pytest.fixture(scope="module")
def opened():
    return open_choice(Case(read_project(SEDGE, "village")), CHECKS, 2)


@pytest.fixture(scope="module")
def best(opened):
    found = choose(opened)
    assert isinstance(found, Choice)
    return found


@pytest.mark.parametrize("place", ["x-rod", "x-pulley", "x-motor", "x-bushing", "panel"])
def test_every_answer_costs_what_choosing_with_it_costs(opened, best, place):
    key = Key("part", place)
    told = {option.answer: option for option in why(opened, best, key, enough_minor=10**6)}
    assert set(told) == set(opened.problem.domains[key])
    for answer, option in told.items():
        pinned = choose(opened, pins={key: answer})
        if isinstance(pinned, Infeasible):
            assert option.outcome == "impossible"
            assert any(concern.kind == "check" for concern in option.conflict.concerns)
        else:
            assert option.extra_minor == pinned.cost_minor - best.cost_minor
            assert option.outcome == ("best" if best.build.as_dict()[key] == answer else "costs")


def test_a_wrong_bore_is_impossible_and_says_which_check(opened, best):
    options = {o.answer: o for o in why(opened, best, Key("part", "x-pulley"), enough_minor=10**6)}
    forbidden = options["pulley-20-inch-bore"]
    assert forbidden.outcome == "impossible"
    assert {concern.code for concern in forbidden.conflict.concerns if concern.kind == "check"} == {"MATE-01"}


def test_what_is_much_dearer_is_not_looked_at_further(opened, best):
    options = {o.answer: o for o in why(opened, best, Key("part", "x-rod"), enough_minor=1)}
    assert options["rod-8-hardened"].outcome == "at least"
    assert options["rod-8-hardened"].extra_minor == 1


def test_usual_ways_are_never_both_sound_and_cheaper(opened, best):
    for way in (reference_bought_best, cheapest_unit_price, choose_then_buy):
        found = way(opened)
        assert found.purchase is not None
        assert found.unsound or found.purchase.cost_minor >= best.cost_minor


def test_the_cheapest_pieces_make_no_sound_machine(opened):
    # soft rods under balls, and a pulley that does not fit the shaft, are the cheapest by the piece
    assert {concern.code for concern in cheapest_unit_price(opened).unsound} & {"ROD-03", "MATE-01"}


def test_the_reference_parts_are_sound(opened):
    assert reference_bought_best(opened).unsound == ()


def test_choosing_first_by_unit_price_gives_a_sound_machine(opened):
    assert choose_then_buy(opened).unsound == ()
