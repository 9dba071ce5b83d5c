"""What follows, on a terminal or as JSON."""

from __future__ import annotations

from collections.abc import Iterable

import click
from rich.console import Console
from rich.text import Text

from scantling.api.data import following_data, is_sound, json_text
from scantling.api.following import Consequence, Following, consequence_groups, why_not
from scantling.api.opening import Session, basis
from scantling.cli.text.consequences import show_consequences
from scantling.cli.text.few import few
from scantling.cli.text.screen import STYLES, indented, screen

HEADINGS = {
    "at once": "What follows, everything else kept",
    "complete": "Computed since",
    "chosen anew": "With all else chosen anew, this would differ further",
}


def show_whatif(session: Session, stages: Iterable[Following], everything: bool, as_json: bool) -> int:
    """Print each stage as it comes; return the exit code of the build with everything else kept."""
    if as_json:
        found = list(stages)
        click.echo(json_text([following_data(stage) for stage in found]))
        return 0 if all(is_sound(stage.after) for stage in found if stage.stage != "chosen anew") else 1
    console, sound = screen(), True
    console.print(indented(f"Beginning {basis(session)}", console, 0))
    known: frozenset[Consequence] = frozenset()
    for stage in stages:
        _show_stage(console, stage, known if stage.stage == "complete" else frozenset(), everything)
        known |= frozenset(stage.consequences)
        sound = sound if stage.stage == "chosen anew" else is_sound(stage.after)
    console.print('"Sound" is a calculation on what was described, not a safety approval.', style="dim")
    return 0 if sound else 1


def _show_stage(console: Console, stage: Following, known: frozenset[Consequence], everything: bool) -> None:
    sorted_out = consequence_groups(stage, known, everything)
    if stage.stage == "complete" and not (sorted_out.groups or sorted_out.quiet):
        return
    console.print(_heading(stage))
    if not (sorted_out.groups or sorted_out.quiet):
        console.print("  nothing differs")
    show_consequences(console, sorted_out)
    if stage.waiting:
        words = f"being computed, the old values are shown: {few(stage.waiting)}"
        console.print(indented(Text(words, style="dim"), console, 2))
    for words in why_not(stage):
        console.print(indented(Text(words, style="yellow"), console, 2))
    console.print()


def _heading(stage: Following) -> Text:
    before, after = stage.before.verdict, stage.after.verdict
    line = Text(f"{HEADINGS[stage.stage]}: ", style="bold")
    return line.append(str(before), style=STYLES[before]).append(" → ").append(str(after), style=STYLES[after])
