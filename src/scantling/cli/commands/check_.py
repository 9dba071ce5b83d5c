"""``scantling check``."""

from __future__ import annotations

from pathlib import Path

import click

from scantling.cli.options import design_arguments, find_lock, json_option, lock_option


@click.command("check", epilog="Example:  scantling check examples/plotter --workshop village x-rod=rod-8-soft")
@design_arguments("[PLACE=PART]...")
@lock_option
@click.option("--stand-ins", "options", is_flag=True, help="Show whether the machine still works with each stand-in.")
@click.option("--all", "everything", is_flag=True, help="Show sound findings too.")
@json_option
def command(
    folder: Path,
    workshop: str | None,
    copies: int | None,
    words: tuple[str, ...],
    lock: Path | None,
    options: bool,
    everything: bool,
    as_json: bool,
) -> int:
    """Check a design as it stands: the choice in force, else its reference parts."""
    from scantling.api.checking import check_design, stand_ins, title_of
    from scantling.api.opening import open_design, read_changes
    from scantling.cli.text.checks import show_check

    session = open_design(folder, workshop, copies, find_lock(folder, workshop, lock))
    plan = check_design(session, read_changes(session, words))
    serving = stand_ins(session, plan) if options else ()
    return show_check(plan, title_of(session, plan), serving, everything, as_json)
