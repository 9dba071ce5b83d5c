"""Measuring cards on a terminal or as JSON."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import click
from rich.console import Console
from rich.text import Text

from scantling.api.data import json_text
from scantling.api.measuring import measuring_data
from scantling.cli.text.screen import indented, screen, table

if TYPE_CHECKING:
    from scantling.api.measuring import Card, Reading


def show_measuring(wanted: Sequence[Reading], cards: Sequence[Card], as_json: bool) -> int:
    """Print what is worth measuring, the lines to enter, and the cards; return the exit code."""
    if as_json:
        click.echo(json_text(measuring_data(wanted, cards)))
        return 0
    console = screen()
    _show_wanted(console, wanted)
    for card in cards:
        console.print(Text(f"card {card.number}  {card.title}", style="bold"))
        for word, text in (("with", card.tools), ("how", card.how), ("write", f"{card.gives} ({card.example})")):
            console.print(indented(f"{word}: {text}", console, 2))
    if not cards:
        console.print("nothing here hangs on a figure that a card tells how to measure")
    return 0


def _show_wanted(console: Console, wanted: Sequence[Reading]) -> None:
    if not wanted:
        return
    console.print("worth measuring", style="bold")
    rows = [[f"  {one.what}", one.why, ", ".join(one.codes), str(one.card.number)] for one in wanted]
    console.print(table(["  figure", "why", "checks", "card"], rows, right=(3,)))
    entries = list(dict.fromkeys(one.entry for one in wanted if one.entry))
    if entries:
        console.print("under actuals in the workshop's file, with your readings for these", style="bold")
        for entry in entries:
            console.print(f"  {entry}")
