"""What is at stake at Alder: the cheapest sound machine, proven; what it saves; what cannot be had at the harbour."""

from __future__ import annotations

import pytest

from scantling.build.reference import carry_over
from scantling.checks.all import CHECKS, run_checks
from scantling.choosing.choose import Opened, buy, choose, open_choice
from scantling.choosing.result import Choice, Infeasible, Purchase
from scantling.model.build import Build, Key

# The machine's description: what the cheapest sound one has in the village.
WANTED = {
    "portal": "ply-8",
    "y-rod": "rod-8-soft",
    "y-bushing": "bushing-8-polymer",
    "y-motor": "motor-mid",
    "x-motor": "motor-flat",
    "z-motor": "motor-flat",
    "y-pulley": "pulley-16",
    "bed-heater": "heater-120",
    "supply": "supply-250",
    "z-screw": "rod-m6",
    "z-coupler": "coupler-5-6",
}
NEAR_TIE_MINOR = 1000  # of some thousand euros for four machines


@pytest.fixture(scope="module")
def opened(village) -> Opened:
    """The choice in the village, for four machines."""
    return open_choice(village, CHECKS, village.project.workshop.copies)


@pytest.fixture(scope="module")
def best(opened) -> Choice:
    """The cheapest sound machine of the village."""
    found = choose(opened)
    assert isinstance(found, Choice)
    return found


def parts(build: Build) -> dict[str, str]:
    """The parts of a build by place."""
    return {key.subject: answer for key, answer in build.answers if key.kind == "part"}


def outlay_minor(opened: Opened, build: Build) -> int:
    """What a build costs when it is bought best."""
    bought = buy(opened, build)
    assert isinstance(bought, Purchase)
    return bought.cost_minor


def test_the_cheapest_sound_machine_is_the_expected_one(best):
    chosen = parts(best.build)
    assert {place: chosen[place] for place in WANTED} == WANTED
    assert best.proven
    assert best.cost_minor == best.bound_minor


def test_nothing_in_it_is_inadmissible(village, best):
    assert [f.key for f in run_checks(village, best.build).findings if not f.admissible] == []


def test_twenty_teeth_are_a_near_tie(opened, best):
    other = choose(opened, pins={Key("part", "y-pulley"): "pulley-20"})
    assert isinstance(other, Choice)
    assert 0 < other.cost_minor - best.cost_minor <= NEAR_TIE_MINOR


def test_the_reference_is_about_half_as_dear_again(opened, best, reference):
    dearer = outlay_minor(opened, Build.of(reference.as_dict(), best.build.copies)) / best.cost_minor
    assert 1.35 <= dearer <= 1.65


def test_the_cheapest_of_all_costs_less_and_is_not_sound(opened, best, cheapest):
    assert outlay_minor(opened, Build.of(cheapest.as_dict(), best.build.copies)) < best.cost_minor


def test_ply_9_is_dearer_and_holds_with_longer_screws(village, opened, best):
    thicker = carry_over(village, best.build, {Key("part", "portal"): "ply-9"})
    assert outlay_minor(opened, thicker) > best.cost_minor
    assert village.reader(thicker).screw("gusset-to-block").id == "M4x25 socket head screw"
    assert village.reader(best.build).screw("gusset-to-block").id == "M4x20 socket head screw"


def test_the_250_w_supply_cannot_be_had_at_the_harbour(harbour):
    opened = open_choice(harbour, CHECKS, harbour.project.workshop.copies)
    found = choose(opened)
    assert isinstance(found, Choice)
    assert parts(found.build)["supply"] == "supply-350"
    assert isinstance(choose(opened, pins={Key("part", "supply"): "supply-250"}), Infeasible)
