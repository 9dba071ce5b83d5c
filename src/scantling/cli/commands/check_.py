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
    from scantling.api.checked import CheckAsked, checked
    from scantling.cli.cache import open_store
    from scantling.cli.text.checks import show_check

    asked = CheckAsked(folder, workshop, copies, find_lock(folder, workshop, lock), words, options)
    return show_check(checked(asked, open_store()), everything, as_json)
