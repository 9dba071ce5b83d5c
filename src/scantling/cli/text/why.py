"""Why, on a terminal or as JSON."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, Any

import click

from scantling.api.data import json_text, why_data
from scantling.cli.text.screen import screen
from scantling.quantities import show_money

if TYPE_CHECKING:
    from scantling.api.opening import Session


def show_why(session: Session, answers: Iterable[Any], as_json: bool) -> int:
    """Print each answer as it is found; return 1 where nothing is sound at all."""
    currency = session.case.project.workshop.currency
    stream = iter(answers)
    best = next(stream)
    sound = hasattr(best, "proven")
    if as_json:
        click.echo(json_text([why_data(option) for option in stream]))
        return 0 if sound else 1
    console = screen()
    if not sound:
        console.print("nothing sound can be bought: scantling plan shows the nearest miss", style="bold red")
        return 1
    console.print(f"cheapest sound choice: {show_money(best.cost_minor, currency)}")
    for option in stream:
        console.print(f"{option.answer or 'empty':32} {_outcome(option, currency)}")
    return 0


def _outcome(option: Any, currency: str) -> str:
    if option.outcome == "best":
        return "chosen"
    if option.outcome == "costs":
        return f"{show_money(option.extra_minor, currency)} more"
    if option.outcome == "at least":
        return f"at least {show_money(option.extra_minor, currency)} more"
    concerns = option.conflict.concerns if option.conflict else ()
    words = "; ".join(" ".join(w for w in (c.kind, c.code, c.subject, c.detail) if w) for c in concerns)
    return f"impossible: {words}"
