"""Ranges on a terminal or as JSON."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

import click
from rich.console import Console
from rich.text import Text

from scantling.api.data import json_text, ranges_data, rule_ranges_data
from scantling.api.ranging import interval_words
from scantling.cli.text.few import few
from scantling.cli.text.screen import indented, screen, table
from scantling.quantities import show_number, show_value

if TYPE_CHECKING:
    from scantling.api.ranging import FigureRange, Local, LocalRange, LocalWord

MOST = 40  # of the rules' figures, unless all are wanted
NOTE = "all else equal; values as measured, so a tolerance has to lie inside"


def show_local_parts(found: Iterable[Local], as_json: bool) -> list[Local]:
    """Print each part as it is found; return them."""
    if as_json:
        told = list(found)
        click.echo(json_text(ranges_data(told)))
        return told
    console, told = screen(), []
    for local in found:
        _show_part(console, local)
        told.append(local)
    left_out = sorted({code for local in told for code in local.left_out})
    console.print(f"{NOTE}. Not asked, for they take long: {', '.join(left_out)}", style="dim")
    return told


def show_rule_ranges(found: Sequence[FigureRange], everything: bool, as_json: bool) -> int:
    """Print the figures of the rules, the narrowest first; return the exit code."""
    if as_json:
        click.echo(json_text(rule_ranges_data(found)))
        return 0
    console = screen()
    rows = [
        [
            f"{one.figure}, {one.of}" if one.of else one.figure,
            _band(one),
            f"{one.verdict}: {interval_words(one.intervals, one.unit)}",
            few([*dict.fromkeys((*one.below, *one.above))]),
        ]
        for one in (found if everything else found[:MOST])
    ]
    console.print(table(["figure", "now", "range", "ends with"], rows))
    if not everything and len(found) > MOST:
        console.print(f"{len(found) - MOST} more figures have more room (--all shows them)")
    console.print(NOTE, style="dim")
    return 0


def _band(one: FigureRange) -> str:
    if one.low == one.high:
        return show_value(one.low, one.unit)
    return f"{show_number(one.low)} to {show_value(one.high, one.unit)}"


def _show_part(console: Console, local: Local) -> None:
    looks = f"{len(local.checks)} check{'' if len(local.checks) == 1 else 's'} look at it"
    console.print(Text(local.place, style="bold").append(f": {local.part}, {looks}", style="not bold"))
    for one in local.ranges:
        _show_range(console, one)
    for word in local.words:
        _show_word(console, word)
    if not local.ranges and not local.words:
        console.print("  no figure of it is minded by any check")


def _show_range(console: Console, one: LocalRange) -> None:
    name = one.figure.split(".", 2)[2]
    line = Text(f"{name} {show_value(one.now, one.unit)}: ").append("sound ", style="green")
    line.append(interval_words(one.sound, one.unit))
    if one.allowed != one.sound:
        line.append("; ").append("allowed ", style="yellow").append(f"{interval_words(one.allowed, one.unit)}")
        line.append(" with care, other screws where needed")
    console.print(indented(line, console, 2))
    for way, who in (("below", one.below or one.stops_below), ("above", one.above or one.stops_above)):
        if who:
            console.print(indented(Text(f"{way}: {few(who)}", style="dim"), console, 6))


def _show_word(console: Console, word: LocalWord) -> None:
    name = word.figure.split(".", 2)[2]
    others = [one for one in word.serve if one != word.now]
    line = Text(f"{name} {word.now}: ").append("also sound ", style="green").append(", ".join(others) or "nothing else")
    if word.allowed:
        line.append("; ").append("allowed ", style="yellow").append(", ".join(word.allowed)).append(" with care")
    console.print(indented(line, console, 2))
    for one, who in word.against.items():
        if one not in word.allowed:
            console.print(indented(Text(f"not {one}: {few(who)}", style="dim"), console, 6))
