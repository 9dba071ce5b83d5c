"""``scantling why``."""

from __future__ import annotations

from pathlib import Path

import click

from scantling.cli.options import find_lock, json_option, lock_option


@click.command("why", epilog="Example:  scantling why examples/alder -w village y-motor")
@click.argument("folder", type=click.Path(path_type=Path))
@click.argument("place")
@click.option("--workshop", "-w", help="A file, or the name of one in the folder's workshops/.")
@click.option("--copies", "-n", type=click.IntRange(1, 1000), help="Machines to build; else as the workshop says.")
@click.option("--enough", default="20", help="Stop looking at a part once it is this much dearer.")
@lock_option
@json_option
def command(
    folder: Path, place: str, workshop: str | None, copies: int | None, enough: str, lock: Path | None, as_json: bool
) -> int:
    """Show what every other part at PLACE would cost, or what forbids it."""
    from scantling.api.asking import question, why
    from scantling.api.opening import open_design
    from scantling.cli.text.why import show_why

    session = open_design(folder, workshop, copies, find_lock(folder, workshop, lock))
    return show_why(session, why(session, question(session, place), enough), as_json)
