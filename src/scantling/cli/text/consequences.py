"""Consequences on a terminal."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.console import Console

from scantling.cli.text.screen import table
from scantling.cli.text.words import tidy

if TYPE_CHECKING:
    from scantling.api.following import Following

HEADINGS = {
    "at once": "What follows, everything else kept",
    "complete": "Computed since",
    "chosen anew": "The same parts, everything else chosen anew",
}


def show_following(console: Console, following: Following, known: frozenset[tuple[object, ...]]) -> None:
    """Print one stage of what follows; of a later stage only what is not ``known`` from an earlier one."""
    fresh = [c for c in following.consequences if (c.topic, c.subject, c.what, c.after) not in known]
    if not fresh and following.stage == "complete":
        return
    console.print(HEADINGS[following.stage], style="bold")
    if not fresh:
        console.print("  nothing differs")
    rows = [[c.weight, tidy(c.topic.name), c.subject, c.what, c.before, c.after, c.change] for c in fresh]
    console.print(table(["", "about", "subject", "what", "before", "after", "change"], rows))
    for waiting in following.waiting:
        console.print(f"being computed: {waiting} (the old value is shown)", style="dim")
    if following.infeasible is not None:
        console.print("these parts cannot all be bought, or nothing sound has them", style="bold red")
    console.print()
