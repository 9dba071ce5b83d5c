"""Single questions on a terminal."""

from __future__ import annotations

import click

from scantling.api.data import json_text, tried_data
from scantling.api.trying import Tried
from scantling.cli.text.findings import show_findings
from scantling.cli.text.screen import screen
from scantling.findings import Verdict


def show_tried(tried: Tried, as_json: bool) -> int:
    """Print the findings of one question; return the exit code."""
    sound = bool(tried.findings) and all(finding.admissible for finding in tried.findings)
    if as_json:
        click.echo(json_text(tried_data(tried)))
        return 0 if sound else 1
    console = screen()
    show_findings(console, tried.findings, everything=True)
    for note in tried.notes:
        console.print(f"note: {note}", style="dim")
    for unasked in tried.unasked:
        console.print(f"not looked at: {unasked}", style="dim")
    if not tried.findings:
        console.print(f"verdict: {Verdict.UNKNOWN}")
    console.print('"Sound" is a calculation on what was described, not a safety approval.', style="dim")
    return 0 if sound else 1
