"""A check on a terminal or as JSON."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import click
from rich.console import Console

from scantling.cli.text.few import few
from scantling.cli.text.findings import show_findings, show_scope
from scantling.cli.text.heading import show_heading
from scantling.cli.text.screen import screen, table

if TYPE_CHECKING:
    from scantling.api.checked import Checked, Serving


def show_check(found: Checked, everything: bool, as_json: bool) -> int:
    """Print a check; return the exit code."""
    if as_json:
        click.echo(found.data)
        return 0 if found.is_sound else 1
    console = screen()
    show_heading(console, found.title, found.verdict)
    show_findings(console, found.findings, everything)
    _show_settings(console, found, everything)
    _show_serving(console, found.serving)
    show_scope(console, found.not_looked_at, found.unlocking)
    return 0 if found.is_sound else 1


def _show_settings(console: Console, found: Checked, everything: bool) -> None:
    """Print what is to be entered: the steps of each axis, all of it where asked."""
    wanted = [s for s in found.settings if everything or s.key.endswith(".steps-per-mm")]
    if wanted:
        console.print("to enter when it is set up", style="bold")
        rows = [
            [f"  {s.title}", f"{s.value} {s.unit}".strip(), f"exactly {s.exact}" if s.exact else ""] for s in wanted
        ]
        console.print(table(["", "", ""], rows))


def _show_serving(console: Console, serving: Sequence[Serving]) -> None:
    if not serving:
        return
    console.print("with each of these alone, all else kept", style="bold")
    rows = []
    for place in dict.fromkeys(one.place for one in serving):
        for number, one in enumerate(one for one in serving if one.place == place):
            now = "now" if one.in_force else ""
            rows.append(["" if number else f"  {place}", one.part or "empty", now, str(one.verdict), few(one.against)])
    console.print(table(["  place", "part", "", "verdict", "against it"], rows))
