"""What options themselves require, forbid and fill: the tables of such rules against the rules, answer by answer."""

from __future__ import annotations

import itertools

import pytest

from scantling.build.case import Case
from scantling.checks.all import CHECKS
from scantling.choosing.choose import choose, open_choice
from scantling.choosing.clauses import clauses
from scantling.choosing.result import Choice, Infeasible
from scantling.choosing.trees import value_at
from scantling.model.build import Key
from scantling.model.project import Project
from scantling.model.workshop import Workshop
from scantling.reading.texts import design_from_texts

PARTS = ("ball", "block", "plain-holder", "fine-holder", "clip", "soft-rod", "hard-rod")
PRICES = {
    "ball": 300,
    "block": 100,
    "plain-holder": 50,
    "fine-holder": 90,
    "clip": 20,
    "soft-rod": 200,
    "hard-rod": 500,
}
PLACES = {
    "bearing": {
        "quantity": "3",
        "reference": "ball",
        "stand-ins": [
            {"part": "block", "quantity": "2", "also-fills": ["holder"], "forbids": {"rod": "hard-rod"}},
        ],
    },
    "holder": {
        "reference": "plain-holder",
        "stand-ins": [{"part": "fine-holder", "requires": {"rod": "hard-rod"}}],
    },
    "clip": {"reference": {"part": "clip", "forbids": {"holder": "fine-holder"}}, "may-be-empty": "yes"},
    "rod": {"reference": "hard-rod", "stand-ins": ["soft-rod"]},
}


def opened_case(offers=PRICES, **more) -> Case:
    """A machine of four places in a workshop that sells every part by the piece."""
    sections = {"parts": {name: {"kind": "thing"} for name in PARTS}, "places": PLACES | more}
    design = design_from_texts({"machine": {"name": "rules"}, **sections}, "rules")
    rows = [
        {"id": f"shop/{name}", "vendor": "shop", "part": name, "price": f"{price / 100:.2f}"}
        for name, price in offers.items()
    ]
    vendors = {"shop": {"id": "shop"}}
    workshop = {"name": "bench", "currency": "EUR", "vendors": vendors, "offers": rows}
    return Case(Project(design, Workshop.model_validate(workshop)))


def keeps(bearing: str, holder: str, clip: str, rod: str) -> bool:
    """The rules, said again: an empty holder only beside a block that fills it too, and then it must be empty."""
    if (bearing == "block") != (holder == ""):
        return False
    if bearing == "block" and rod == "hard-rod":
        return False
    if holder == "fine-holder" and rod != "hard-rod":
        return False
    return not (clip == "clip" and holder == "fine-holder")


def all_answers(case: Case, kinds=("part",)):
    """Yield every combination of answers to questions of some kinds."""
    keys = [key for key in case.questions if key.kind in kinds]
    for combination in itertools.product(*(case.answers(key, {}) for key in keys)):
        yield dict(zip(keys, combination, strict=True))


def is_got(answers) -> bool:
    """Every place is got in a way of its part: what stays empty is not bought."""
    return all(
        (way == "") == (answers[Key("part", key.subject)] == "") for key, way in answers.items() if key.kind == "get"
    )


def test_tables_allow_what_the_rules_allow():
    case = opened_case()
    tables = clauses(case)
    allowed = 0
    for answers in all_answers(case, ("part", "get")):
        by_place = {key.subject: answer for key, answer in answers.items() if key.kind == "part"}
        told = all(value_at(table.tree, answers) for table in tables)
        assert told == (keeps(**by_place) and is_got(answers)), answers
        allowed += told
    assert allowed == 7  # by hand: 4 with balls and plain holder, 1 with the fine one, 2 with blocks


def test_words_and_places_of_the_rules():
    found = {(t.concern.code, t.concern.subject, t.concern.detail): t.fixed for t in clauses(opened_case())}
    assert found == {
        ("forbids", "bearing", "rod=hard-rod"): False,
        ("also-fills", "bearing", "holder"): True,
        ("requires", "holder", "rod=hard-rod"): False,
        ("forbids", "clip", "holder=fine-holder"): False,
        ("empty", "holder", ""): True,
        ("get", "clip", ""): True,
        ("get", "holder", ""): True,
    }


def cheapest(prices) -> int:
    """The least cost over all that the rules allow, piece by piece."""
    counts = {"ball": 3, "block": 2}
    return min(
        sum(prices[part] * counts.get(part, 1) for part in answers.values() if part)
        for answers in all_answers(opened_case())
        if keeps(**{key.subject: answer for key, answer in answers.items()})
    )


@pytest.mark.parametrize(
    "changed",
    [{}, {"block": 5}, {"ball": 1}, {"soft-rod": 900}, {"plain-holder": 800}, {"block": 5, "soft-rod": 900}],
)
def test_the_choice_is_the_cheapest_that_the_rules_allow(changed):
    prices = PRICES | changed
    found = choose(open_choice(opened_case(prices), CHECKS, 1))
    assert isinstance(found, Choice)
    assert found.cost_minor == cheapest(prices)
    assert keeps(**{key.subject: answer for key, answer in found.build.as_dict().items() if key.kind == "part"})


def test_what_an_option_fills_is_not_bought():
    found = choose(open_choice(opened_case(PRICES | {"block": 5}), CHECKS, 1))
    lines = {line.part: line.packs for order in found.purchase.orders for line in order.lines}
    assert lines["block"] == 2  # of its own quantity
    assert not {"plain-holder", "fine-holder"} & set(lines)


def test_pins_against_a_rule_are_a_conflict_that_names_it():
    opened = open_choice(opened_case(), CHECKS, 1)
    pins = {Key("part", "bearing"): "block", Key("part", "rod"): "hard-rod"}
    found = choose(opened, pins=pins)
    assert isinstance(found, Infeasible)
    assert {(c.kind, c.code) for c in found.conflict.concerns} == {("pin", ""), ("rule", "forbids")}
    assert len(found.conflict.concerns) == 3
    assert found.miss is None  # neither pins nor rules of the design are given up


def test_places_that_are_alike_take_the_same_part():
    more = {name: {"reference": "hard-rod", "stand-ins": ["soft-rod"], "alike": "rods"} for name in ("rod", "top-rod")}
    case = opened_case(**more)
    assert [key.subject for key in case.questions if key.kind == "part" and "rod" in key.subject] == ["rod"]
    found = choose(open_choice(case, CHECKS, 2))
    lines = {line.part: line.packs for order in found.purchase.orders for line in order.lines}
    assert lines["soft-rod"] == 4  # two places in two copies
