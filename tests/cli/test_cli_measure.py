"""``scantling measure``: cards alone, and what is worth measuring on a design."""

from __future__ import annotations

import json
from pathlib import Path

from scantling.cli.main import run

PLOTTER = Path(__file__).parents[2] / "examples" / "plotter"


def test_cards_of_some_kinds(capsys):
    assert run(["measure", "rod"]) == 0
    out = capsys.readouterr().out
    assert "Hardness of a rod" in out
    assert "Holding torque" not in out


def test_all_cards(capsys):
    assert run(["measure"]) == 0
    assert capsys.readouterr().out.count("\ncard ") > 15


def test_what_is_worth_measuring_on_a_design(capsys):
    assert run(["measure", str(PLOTTER), "-w", "village"]) == 0
    out = capsys.readouterr().out
    assert out.startswith("worth measuring")
    assert "- {part: " in out


def test_of_a_design_only_some_kinds(capsys):
    assert run(["measure", str(PLOTTER), "bushing", "-w", "village", "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert {card["kind"] for card in data["cards"]} <= {"bushing"}


def test_an_unknown_kind_is_refused(capsys):
    assert run(["measure", str(PLOTTER), "rope"]) == 2
    assert "no kind of part with cards: rod, guide" in capsys.readouterr().err
