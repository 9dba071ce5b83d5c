"""Values that are not what their key wants: one message each, at the value."""

from __future__ import annotations

import pytest

ROD = "  rod-8-soft: {kind: rod, diameter: 8 mm, fit: h9, material: steel, surface-hardness: 20 HRC}\n"
PULLEY = "  pulley-16: {kind: pulley, teeth: 16,"
HOLE = "at: [45 mm, 58 mm], care"
CARRIAGE = "plastics: [PETG], infill: 30 %"
NEEDS = "needs: {travel: 220 mm, speed: 200 mm/s, acceleration: 2500 mm/s2, resolution: 0.05 mm, life: 500 km}"


def rod(old: str, new: str) -> tuple[str, str]:
    """An edit of the soft rod."""
    assert old in ROD
    return ROD, ROD.replace(old, new)


def needs(old: str, new: str) -> tuple[str, str]:
    """An edit of what the axis needs."""
    assert old in NEEDS
    return NEEDS, NEEDS.replace(old, new)


# name: (old, new with « where the fault is, code, words)
CASES = {
    "unknown key": (*rod("fit: h9", "«fitt: h9"), "READ-20", "part rod-8-soft: 'fitt'", "did you mean fit?"),
    "unknown section": ("\nsteps:\n", "\n«stepps:\n", "READ-20", "'stepps' is not a section", "steps"),
    "unknown key deep inside": ("sag-limit: 0.1 mm", "«sag: 0.1 mm", "READ-20", "axis x: 'sag'", "sag-limit"),
    "identifier inside": (*rod("fit: h9", "«id: rod, fit: h9"), "READ-20", "'rod-8-soft' is the identifier"),
    "missing key": (
        *rod("rod-8-soft: {kind: rod, diameter: 8 mm, ", "rod-8-soft: «{kind: rod, "),
        "READ-21",
        "'diameter' is missing",
        "add diameter: 8 mm",
    ),
    "a list for a text": (*rod("fit: h9", "fit: «[h9, h8]"), "READ-22", "fit: a list where a text is wanted"),
    "a group for a text": (*rod("steel", "«{name: steel}"), "READ-22", "a group of keys where a text"),
    "a text for a list": (CARRIAGE, CARRIAGE.replace("[PETG]", "«PETG"), "READ-22", "plastics: a text where a list"),
    "a text for a group": ("sizes: {clamp: 9 mm}", "sizes: «9 mm", "READ-22", "sizes: a text where a group"),
    "a list for a quantity": (*rod("8 mm", "«[8 mm]"), "READ-22", "diameter: a list where a quantity"),
    "a list for a count": (PULLEY, PULLEY.replace("16,", "«[16],"), "READ-22", "teeth: a list where a whole number"),
    "a text for a part": (ROD, "  rod-8-soft: «rod\n", "READ-22", "part rod-8-soft"),
    "a position too short": (HOLE, "at: «[45 mm], care", "READ-22", "at: a list with a value too few"),
    "a position too long": (HOLE, "at: «[45 mm, 58 mm, 1 mm], care", "READ-22", "a value too many"),
    "no unit": (*rod("8 mm", "«8"), "READ-23", "diameter", "mm"),
    "wrong unit": (*rod("8 mm", "«8 kg"), "READ-23", "diameter", "kg"),
    "unknown unit": (*rod("8 mm", "«8 furlongs"), "READ-23", "furlongs"),
    "torque in newtons": ("0.26 N m", "«0.26 N", "READ-23", "torque", "N"),
    "a word for a number": (*rod("8 mm", "«eight"), "READ-23", "eight"),
    "two numbers": (*rod("8 mm", "«8 10 mm"), "READ-23", "8 10 mm"),
    "a thousands comma": (*needs("2500 mm/s2", "«2,500 mm/s2"), "READ-11", "2,500"),
    "a tolerance backwards": (*rod("8 mm", "«9..8 mm"), "READ-23", "backwards"),
    "no count": (PULLEY, PULLEY.replace("16,", "«sixteen,"), "READ-23", "teeth"),
    "half a tooth": (PULLEY, PULLEY.replace("16,", "«16.5,"), "READ-23", "teeth"),
    "a count below zero": ("quantity: 4, reference", "quantity: «-4, reference", "READ-23", "negative"),
    "neither yes nor no": ("invented: yes", "invented: «maybe", "READ-23", "neither yes nor no"),
    "kilometres in metres' place": (*needs("500 km", "«500"), "READ-23", "life"),
    "a word not allowed": ("lining: polymer", "lining: «rubber", "READ-24", "'rubber'", "polymer"),
    "a size of frame not made": (
        "motor-14: {kind: motor, frame-size: 14",
        "motor-14: {kind: motor, frame-size: «15",
        "READ-24",
        "'15'",
    ),
    "an unknown format": ("format: 1", "format: «2", "READ-24", "format: '2'", "write 1"),
    "unknown kind": (*rod("kind: rod", "kind: «rood"), "READ-25", "'rood' is no kind", "rod"),
    "no kind": (*rod("{kind: rod, ", "«{"), "READ-25", "'kind' is missing", "rod"),
    "no drive": ("    drive: belt\n", "", "READ-25", "axis x: 'drive' is missing", "belt"),
    "unknown drive": ("drive: belt", "drive: «rope", "READ-25", "'rope' is no drive", "belt"),
    "a negative diameter": (*rod("8 mm", "«-8 mm"), "READ-26", "rod-8-soft diameter", "above 0"),
    "no bore at all": ("bore: 1/4 in", "bore: «0 mm", "READ-26", "bore", "above 0"),
    "a band below zero": (*rod("8 mm", "«1 mm ± 2 mm"), "READ-26", "above 0"),
    "no teeth": (PULLEY, PULLEY.replace("16,", "«0,"), "READ-26", "teeth"),
    "infill of 130 %": (CARRIAGE, CARRIAGE.replace("30 %", "«130 %"), "READ-26", "at most 1"),
    "no travel": (*needs("220 mm", "«0 mm"), "READ-26", "needs travel"),
    "speed backwards": (*needs("200 mm/s", "«-200 mm/s"), "READ-26", "needs speed"),
    "hardness beyond diamond's": (*rod("20 HRC", "«200 HRC"), "READ-26", "at most 75"),
    "no pieces": ("quantity: 4, reference", "quantity: «0, reference", "READ-26", "0 pieces", "may-be-empty"),
    "a joint made never": (
        "panel.thickness],\n                   into: x-motor.tapped-depth, count: 4",
        "panel.thickness],\n                   into: x-motor.tapped-depth, count: «0",
        "READ-26",
    ),
    "more moved than there are": (
        "moves: [carriage, x-bushing,",
        "moves: [carriage, {place: x-bushing, count: «5},",
        "READ-26",
        "moves 5",
        "has 4",
    ),
}


@pytest.mark.parametrize("name", CASES)
def test_a_value_that_cannot_be(name, plotter, says):
    old, new, code, *words = CASES[name]
    where = plotter.edit("design.yaml", old, new)
    says(code, where, *words)


def test_numbers_are_taken_as_written(plotter):
    from scantling.reading.project import read_project

    plotter.edit("design.yaml", *rod("8 mm", "'0,315 in'"))
    plotter.edit("design.yaml", *needs("220 mm", "22 cm"))
    design = read_project(plotter.folder, "village").design
    assert design.parts["rod-8-soft"].diameter_mm.value == pytest.approx(0.315 * 25.4)
    assert design.axes["x"].needs.travel_mm.value == 220
