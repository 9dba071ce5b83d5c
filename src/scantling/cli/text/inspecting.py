"""What is in a file, on a terminal."""

from __future__ import annotations

from collections.abc import Sequence

import click

from scantling.api.data import json_text
from scantling.api.inspecting import Inspected, inspected_data
from scantling.cli.text.screen import screen, table


def show_inspected(found: Sequence[Inspected], as_json: bool) -> int:
    """Print what was found in each file; return 0."""
    if as_json:
        click.echo(json_text([inspected_data(inspected) for inspected in found]))
        return 0
    console = screen()
    for inspected in found:
        console.print(f"{inspected.file}: {inspected.kind}, {inspected.size}", style="bold")
        console.print(table(["found", "size", "where", "how well"], inspected.rows))
        for note in inspected.notes:
            console.print(f"note: {note}", style="dim")
        if inspected.entries:
            console.print("entries to paste; the names in capitals are yours to give:")
            click.echo(inspected.entries)
    return 0
