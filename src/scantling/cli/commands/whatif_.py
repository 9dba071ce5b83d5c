"""``scantling whatif``."""

from __future__ import annotations

from pathlib import Path

import click

from scantling.cli.options import design_arguments, find_lock, json_option, lock_option

EPILOG = """\b
Examples:
  scantling whatif examples/alder -w village y-pulley=pulley-20
  scantling whatif examples/alder -w village portal=ply-6 x-motor=motor-flat --json
"""


@click.command("whatif", epilog=EPILOG)
@design_arguments("PLACE=PART...", needed=True)
@lock_option
@click.option("--all", "everything", is_flag=True, help="Show also what changes nothing that is decided.")
@click.option("--kept", is_flag=True, help="Do not choose anything anew.")
@json_option
def command(
    folder: Path,
    workshop: str | None,
    copies: int | None,
    words: tuple[str, ...],
    lock: Path | None,
    kept: bool,
    everything: bool,
    as_json: bool,
) -> int:
    """Show everything that differs when some places take other parts.

    First with every other choice kept, then with the same parts pinned and everything else chosen anew.
    """
    from scantling.api.following import stand, whatif
    from scantling.api.opening import open_design, read_changes
    from scantling.cli.cache import open_store
    from scantling.cli.text.following import show_whatif
    from scantling.cli.text.progress import with_progress

    session = open_design(folder, workshop, copies, find_lock(folder, workshop, lock), open_store())
    asked = read_changes(session, words)
    stages = with_progress(lambda tell: whatif(stand(session, open_store()), asked, anew=not kept, tell=tell))
    return show_whatif(session, stages, everything, as_json)
