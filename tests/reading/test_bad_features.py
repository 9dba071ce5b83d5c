"""Features that mates name, and fits: what a part cannot have is a fault with its place."""

from __future__ import annotations

from typing import get_args

import pytest

from scantling.model.kinds import AnyPart
from scantling.model.sheet import Hole
from scantling.reading.fields import alternatives
from scantling.reading.rules.parts import _FITS
from scantling.reading.rules.sheets import FITS


@pytest.mark.parametrize(
    ("right", "wrong", "words"),
    [
        ("a: x-motor.shaft, b", "a: «x-motor.shatf, b", ("'shatf'", "x-motor")),
        ("b: x-pulley.bore,", "b: «x-pulley.hole,", ("'hole'", "x-pulley")),
        ("a: x-rod.diameter, b", "a: «x-rod.diametre, b", ("'diametre'", "did you mean diameter")),
    ],
)
def test_a_mate_of_a_feature_that_is_not_there(plotter, says, right, wrong, words):
    says("READ-37", plotter.edit("design.yaml", right, wrong), *words)


def test_ends_that_are_no_lengths_may_be_named(plotter):
    plotter.edit("design.yaml", "a: x-belt, b: x-pulley}", "a: x-belt.outer, b: x-pulley}")
    assert plotter.faults() == ()


@pytest.mark.parametrize(("right", "wrong"), [("fit: h6", "fit: «h66"), ("fit: h9", "fit: «H9")])
def test_a_fit_that_is_none(plotter, says, right, wrong):
    says("READ-41", plotter.edit("design.yaml", right, wrong))


def test_every_field_that_holds_a_fit_is_read_as_one():
    """A kind of part with a new fit must be added to the rule, else a misspelled one would be taken for none."""
    annotation = get_args(AnyPart)[0] if get_args(AnyPart) else AnyPart
    kinds = alternatives(annotation)
    held = {(kind, field) for kind in kinds for field in kind.model_fields if field == "fit" or field.endswith("_fit")}
    assert held == {(kind, field) for kind, field, *_ in _FITS}
    assert len(held) >= 4


def test_the_usual_fit_of_a_hole_is_one():
    assert Hole.model_fields["fit"].default in FITS
