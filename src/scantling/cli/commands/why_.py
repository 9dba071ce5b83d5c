"""``scantling why``."""

from __future__ import annotations

from pathlib import Path

import click

from scantling.cli.options import design_arguments, find_lock, json_option, lock_option


@click.command("why", epilog="Example:  scantling why examples/alder -w village y-motor")
@design_arguments("PLACE", needed=True)
@click.option("--enough", default="20", show_default=True, help="Stop looking at a part once it is this much dearer.")
@lock_option
@json_option
def command(
    folder: Path,
    workshop: str | None,
    copies: int | None,
    words: tuple[str, ...],
    enough: str,
    lock: Path | None,
    as_json: bool,
) -> int:
    """Show what every other part at PLACE would cost, or what forbids it.

    PLACE may also be get:PLACE (how it is got) or screw:JOINT (which screw it takes).
    """
    from scantling.api.asking import enough_minor, question, why
    from scantling.api.opening import open_design
    from scantling.cli.cache import open_store
    from scantling.cli.text.progress import with_progress
    from scantling.cli.text.why import show_why

    session = open_design(folder, workshop, copies, find_lock(folder, workshop, lock), open_store())
    key, most = question(session, words), enough_minor(session, enough)
    answers = with_progress(lambda tell: why(session, key, most, tell, open_store()))
    return show_why(session, key, answers, as_json)
