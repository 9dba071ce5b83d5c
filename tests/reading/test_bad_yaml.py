"""Texts that are no YAML, or that YAML would turn into something else: one message each, at the right column."""

from __future__ import annotations

import pytest

PARTS = "  petg: {kind: filament, plastic: PETG, density: 1.27 g/cm3}\n"
SIZES = "  span: 300 mm                       # between the panels\n"

# name: (old, new with « where the fault is, code, words)
CASES = {
    "tab": (SIZES, "«\tspan: 300 mm\n", "READ-06", "a tab", "indent with blanks"),
    "tag": (PARTS, PARTS.replace("PETG,", "«!!python/name:os.system PETG,"), "READ-07", "tag", "delete it"),
    "own tag": (PARTS, PARTS.replace("PETG,", "«!plastic PETG,"), "READ-07", "!plastic"),
    "a tag of nothing": (PARTS, PARTS.replace("PETG,", "«! PETG,"), "READ-07", "the tag '!'"),
    "anchor": (PARTS, PARTS.replace("{kind: f", "«&roll {kind: f"), "READ-07", "anchor &roll"),
    "alias": (SIZES, "  span: «*width\n", "READ-07", "*width", "write it out"),
    "merge key": (PARTS, PARTS.replace("{kind", "{«<<: {name: x}, kind"), "READ-07", "merge key"),
    "second document": ("\nplaces:   ", "\n«---\nplaces:   ", "READ-07", "second document"),
    "section twice": ("\nmates:\n", "\n«sizes:\n  a: 3 mm\nmates:\n", "READ-08", "'sizes' stands twice"),
    "part twice": (PARTS, PARTS + PARTS.replace("petg", "«petg"), "READ-08", "'petg' stands twice", "line 33"),
    "key twice": (PARTS, PARTS.replace("PETG,", "PETG, «plastic: PLA,"), "READ-08", "'plastic'"),
    "nothing written": (SIZES, "  span:«\n", "READ-09", "after 'span'"),
    "nothing in a list": ("[carriage, x-bushing],", "[carriage, «, x-bushing],", "READ-06", "a value is missing"),
    "empty key": (SIZES, SIZES + "  ?«\n  : 3 mm\n", "READ-09", "a key is empty"),
    "thread as comment": ("  revision: 3\n", "  revision: 3\n  licence: bits «#6-32\n", "READ-10", '"#6-32"'),
    "thread alone": ("  revision: 3\n", "  revision: «#10\n", "READ-10", "#10 is taken for a comment"),
    "thread in a list": (
        "screw: socket head M3, through: [washer, panel.thickness]",
        "screw: socket head «#4-40, through: [washer, panel.thickness]",
        "READ-10",
        "#4-40",
    ),
    "comma in a list": ("at: [45 mm, 58 mm], care", "at: [«45,5 mm, 58 mm], care", "READ-11", "45.5 mm", "quote it"),
    "comma in a group": ("birch plywood, thickness: 6 mm", "birch plywood, thickness: «6,5 mm", "READ-11", "6.5 mm"),
    "too deep": (SIZES, "  span: " + "[" * 22 + "«[" + "[" * 30 + "\n", "READ-12", "levels deep"),
    "list not closed": ("stand-ins: [ply-8],", "stand-ins: [ply-8,", "READ-06", "not closed"),
    "quote not closed": ("title: Motor to panel", 'title: "Motor to panel', "READ-06"),
    "colon in a text": ("  about: The long axis", "  about: The long axis«: the one", "READ-06", "colon", "quotes"),
    "odd indent": ("  revision: 3\n", "   revision«: 3\n", "READ-06"),
    "a list as key": (SIZES, "  ? «[a, b]\n  : 3 mm\n", "READ-22", "a key is a list"),
    "control character": ("  revision: 3\n", "  revision: «\x07\n", "READ-06", "control character"),
}


@pytest.mark.parametrize("name", CASES)
def test_a_text_that_is_no_yaml(name, plotter, says):
    old, new, code, *words = CASES[name]
    where = plotter.edit("design.yaml", old, new)
    says(code, where, *words)


def test_a_bomb_of_aliases_is_refused_at_once(plotter):
    rows = ["machine: {name: bomb}", "a: &a [x, x, x, x, x, x, x, x, x]"]
    rows += [f"{b}: &{b} [{', '.join([f'*{a}'] * 9)}]" for a, b in zip("abcdefgh", "bcdefghi", strict=True)]
    plotter.write("design.yaml", "\n".join(rows))
    codes = {fault.code for fault in plotter.faults()}
    assert "READ-07" in codes
    assert codes <= {"READ-07", "READ-20", "READ-46", "READ-30"}


def test_what_is_written_stays_what_it_is(plotter):
    from scantling.reading.project import read_project

    plotter.edit("design.yaml", "  revision: 3\n", "  revision: 012\n  licence: no\n")
    plotter.edit("design.yaml", "title: Long axis", "title: 12:30")
    plotter.edit("design.yaml", "title: Motor to panel", "title: 1.10")
    design = read_project(plotter.folder, "village").design
    assert (design.machine.revision, design.machine.licence) == ("012", "no")
    assert (design.axes["x"].title, design.joints["motor-to-panel"].title) == ("12:30", "1.10")


@pytest.mark.parametrize("rest", ["# 10 pieces", "# see #10", "#ten"])
def test_a_comment_is_a_comment(rest, plotter):
    plotter.edit("design.yaml", "  revision: 3\n", f"  revision: 3  {rest}\n")
    assert plotter.faults() == ()


@pytest.mark.parametrize("top", ["- a\n- b\n", "just words\n"])
def test_a_file_must_hold_keys(top, plotter, says):
    plotter.write("design.yaml", top)
    says("READ-22", "design.yaml:1:1", "where keys are wanted", workshop=None)
