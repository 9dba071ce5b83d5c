"""``scantling explain``."""

from __future__ import annotations

from pathlib import Path

import click

from scantling.cli.options import design_arguments, find_lock, json_option, lock_option

EPILOG = """\b
Examples:
  scantling explain examples/alder -w village ROD-01
  scantling explain examples/alder -w village BELT-03 "axis y" y-motor=motor-mid
"""


@click.command("explain", epilog=EPILOG)
@design_arguments("CODE [SUBJECT]... [PLACE=PART]...", needed=True)
@lock_option
@json_option
def command(
    folder: Path,
    workshop: str | None,
    copies: int | None,
    words: tuple[str, ...],
    lock: Path | None,
    as_json: bool,
) -> int:
    """Explain what a check says: the formula with the numbers put in, the limit, the source, what would mend it.

    CODE stands in front of every finding. Of each figure it is told where it may lie by this check alone.
    """
    from scantling.api.explaining import explain
    from scantling.api.opening import open_design, read_changes
    from scantling.cli.text.explaining import show_explanations

    session = open_design(folder, workshop, copies, find_lock(folder, workshop, lock))
    changes = read_changes(session, [word for word in words if "=" in word])
    code, *subjects = [word for word in words if "=" not in word] or [""]
    return show_explanations(explain(session, code, subjects, changes), as_json)
