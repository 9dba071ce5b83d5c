"""Measuring cards in data/measuring_cards.csv: each can be followed, and what it gives can be written down."""

from __future__ import annotations

import re

import pytest

from scantling.formulas.beams import supported_sag_mm
from scantling.formulas.held_beams import measured_fixity_ratio
from scantling.formulas.measuring import (
    arm_torque_nmm,
    compared_hardness_hv,
    rocked_play_um,
    sliding_friction_ratio,
    stretched_stiffness_n,
    strip_modulus_mpa,
    warm_current_a,
)
from scantling.formulas.sections import round_second_moment_mm4
from scantling.model import kinds
from scantling.model.features import figure_fields
from scantling.quantities import dimension_of, parse_figure
from scantling.tables.measuring import card_of_figure, card_that_settles, cards_of, measuring_cards

KINDS = {
    "rod": kinds.Rod,
    "motor": kinds.Motor,
    "belt": kinds.Belt,
    "sheet": kinds.SheetStock,
    "bushing": kinds.Bushing,
}
OTHERS = {"threaded-rod": kinds.ThreadedRod}


def test_cards_are_numbered_without_a_gap_and_say_all_that_is_needed():
    assert [card.number for card in measuring_cards()] == list(range(1, len(measuring_cards()) + 1))
    for card in measuring_cards():
        assert all((card.title, card.tools, card.how, card.gives, card.example, card.settles))
        assert card.how.endswith(".")
        assert card.gives.endswith(".")


@pytest.mark.parametrize("kind", sorted(KINDS | OTHERS))
def test_every_figure_of_a_card_is_one_of_the_part_and_its_example_can_be_entered(kind):
    fields = figure_fields((KINDS | OTHERS)[kind])
    for card in cards_of(kind):
        figure = parse_figure(card.example, dimension_of(fields[card.figure]) or "")
        assert figure.low <= figure.value <= figure.high


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_every_kind_that_comes_without_papers_has_cards(kind):
    assert len(cards_of(kind)) >= 2


def test_mass_is_measured_of_every_part():
    assert card_of_figure("thing", "mass") is card_of_figure("rod", "mass")
    assert card_of_figure("thing", "colour") is None


@pytest.mark.parametrize(
    ("what", "figure"),
    [
        ("surface hardness of rod-8-soft", "surface-hardness"),
        ("diameter of the rods", "diameter"),
        ("play of the bushings", "bore"),
        ("modulus of ply-9", "modulus"),
        ("holding torque of y-motor", "holding-torque"),
        ("thickness of ply-8", "thickness"),
        ("share of the busier rod", None),
        ("stiffness of the belt", "stiffness"),
        ("bow of z-screw on 300 mm", "bow-300"),
        ("surface hardness", "surface-hardness"),
    ],
)
def test_findings_find_their_card(what, figure):
    card = card_that_settles(what)
    assert (card.figure if card else None) == figure


def number(card_number: int, pattern: str) -> float:
    """The number that a card's text gives in a worked example."""
    card = measuring_cards()[card_number - 1]
    found = re.search(pattern, f"{card.how} {card.gives}")
    assert found, (card_number, pattern)
    return float(found[1])


def test_the_worked_examples_on_the_cards_are_right():
    assert arm_torque_nmm(0.35, 80) / 1000 == pytest.approx(number(7, r"are ([\d.]+) N m"), abs=0.006)
    assert arm_torque_nmm(0.010, 80) == pytest.approx(number(8, r"are ([\d.]+) N mm"), abs=0.06)
    assert stretched_stiffness_n(20, 1000, 1.6) == number(13, r"are (\d+) N for")
    assert strip_modulus_mpa(10, 300, 50, 6, 0.8) / 1000 == pytest.approx(number(15, r"are ([\d.]+) GPa"), abs=0.05)
    assert rocked_play_um(0.25, 200, 24) == pytest.approx(number(17, r"are (\d+) µm"))
    sags = [supported_sag_mm(9.80665, 330, 205_000, round_second_moment_mm4(d)) for d in (8, 10)]
    assert sags[0] == pytest.approx(number(22, r"330 mm long ([\d.]+) mm"), abs=0.005)
    assert sags[1] == pytest.approx(number(22, r"on 10 mm ([\d.]+) mm"), abs=0.0006)
    half = measured_fixity_ratio(sags[0] / 2, 9.80665, 330, 205_000, round_second_moment_mm4(8))
    assert half == pytest.approx(number(22, r"half the sag is ([\d.]+)\."), abs=0.005)
    assert sliding_friction_ratio(14.04) == pytest.approx(number(19, r"are ([\d.]+)\. Loaded"), abs=1e-3)


@pytest.mark.outside
@pytest.mark.parametrize(("rockwell", "vickers"), [(20, 240), (30, 300), (40, 390), (50, 510), (60, 700)])
def test_hardness_scales_on_the_card(rockwell, vickers):
    # Source: ASTM E140 as two published tables print it: 238, 302, 392, 513, 697 HV; the card rounds
    printed = {20: 238, 30: 302, 40: 392, 50: 513, 60: 697}[rockwell]
    assert vickers == pytest.approx(printed, rel=0.01)
    assert re.search(rf"{vickers}(?: HV)? is {rockwell}\b", measuring_cards()[1].gives)


def test_readings_become_figures():
    # by hand: prints 1.0 and 0.8 mm, H (D/d)²; P = 2 I² R of 9 W on 2 Ω
    assert compared_hardness_hv(200, 1.0, 0.8) == pytest.approx(312.5)
    assert warm_current_a(9, 2) == pytest.approx(1.5)


@pytest.mark.outside
def test_modulus_of_a_strip_is_that_of_the_beam_tables():
    # Source: structural analysis tables, P L³ / 48 E I, with b t³ / 12: E 9000, 10 N, 300 mm, 50 x 6 mm sink 0.6944 mm
    assert strip_modulus_mpa(10, 300, 50, 6, 0.69444) == pytest.approx(9000, rel=1e-4)
