"""Why, on a terminal or as JSON."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

import click
from rich.text import Text

from scantling.api.asking import option_words
from scantling.api.data import json_text, why_data
from scantling.cli.text.screen import indented, screen
from scantling.quantities import show_money

if TYPE_CHECKING:
    from scantling.api.opening import Key, Session

STYLES = {"best": "green", "costs": "", "at least": "dim", "impossible": "yellow"}
NAME = 30  # signs; longer names push what follows to the next line


def show_why(session: Session, key: Key, answers: Iterator[Any], as_json: bool) -> int:
    """Print each answer as it is found; return 1 where nothing is sound at all."""
    best = next(answers)
    sound = hasattr(best, "proven")
    if as_json:
        click.echo(json_text([{**why_data(o), "in words": option_words(session, o)} for o in answers]))
        return 0 if sound else 1
    console = screen()
    if not sound:
        console.print("nothing sound can be bought: scantling plan shows the nearest miss", style="bold red")
        return 1
    currency = session.case.project.workshop.currency
    console.print(
        f"{key}: the cheapest sound choice costs {show_money(best.cost_minor, currency)} in all", style="bold"
    )
    for option in answers:
        _show_option(console, option, option_words(session, option))
    return 0


def _show_option(console: Any, option: Any, words: str) -> None:
    name = option.answer or "empty"
    if len(name) + len(words) + 4 <= console.width:
        console.print(Text(f"  {name:{NAME}}{'' if len(name) < NAME else '  '}").append(words, STYLES[option.outcome]))
        return
    console.print(f"  {name}")
    console.print(indented(Text(words, style=STYLES[option.outcome]), console, 6))
