"""Frames that name what is not there, and pushes and masses that say nothing."""

from __future__ import annotations

import pytest

FRAME = """
frames:
  ends:
    panel: panel
    held: [{on: panel, at: x-rod.seat}]
    carries: [{spot: {on: panel, at: x-motor.face}, mass: 230 g}]
    pushes: [{spot: {on: panel, at: x-motor.face}, direction: x, force: 10 N}]
"""


def test_a_frame_that_is_whole(plotter):
    plotter.append("design.yaml", FRAME)
    assert plotter.faults() == ()


@pytest.mark.parametrize(
    ("old", "new", "code", "words"),
    [
        ("panel: panel", "panel: x-belt", "READ-39", ("x-belt",)),
        ("held: [{on: panel", "held: [{on: pannel", "READ-44", ("pannel", "panel")),
        ("at: x-rod.seat", "at: x-rod.bore", "READ-44", ("no hole for 'x-rod.bore'", "x-rod.seat")),
        (", mass: 230 g", "", "READ-44", ("without a mass",)),
        (", force: 10 N", "", "READ-44", ("without a force",)),
        (", force: 10 N", ", axis: y", "READ-30", ("'y'",)),
        ("force: 10 N", "force: 0 N", "READ-26", ("force",)),
        ("panel: panel\n", "panel: panel\n    bars: [panel]\n", "READ-39", ("panel",)),
        ("panel: panel\n", "panel: panel\n    links: [{place: block, reach: 20 mm}]\n", "READ-30", ("block",)),
    ],
)
def test_one_thing_wrong(plotter, old, new, code, words):
    assert FRAME.count(old) == 1
    plotter.append("design.yaml", FRAME.replace(old, new))
    faults = plotter.faults()
    assert code in [fault.code for fault in faults]
    told = "\n".join(str(fault) for fault in faults)
    assert all(word in told for word in words), told


def test_a_spot_is_holes_or_a_point(plotter):
    plotter.append("design.yaml", FRAME.replace("{on: panel, at: x-rod.seat}", "{on: panel}"))
    assert "neither holes nor a point" in str(plotter.faults()[0])


def test_a_push_that_was_measured_names_a_frame(plotter):
    plotter.append("design.yaml", FRAME)
    where = plotter.append("workshops/village.yaml", "pushed: [{frame: «end, force: 10 N, moved: 0.5 mm}]\n")
    faults = plotter.faults()
    assert len(faults) == 1
    assert str(faults[0].where) == where
    assert "ends" in faults[0].mend
