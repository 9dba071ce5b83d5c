"""``scantling frame``."""

from __future__ import annotations

from pathlib import Path

import click

from scantling.cli.options import design_arguments, find_lock, json_option, lock_option

EPILOG = """\b
Examples:
  scantling frame examples/alder --workshop village
  scantling frame examples/alder portal -w village --picture out/portal.svg
"""


@click.command("frame", epilog=EPILOG)
@design_arguments("[FRAME] [PLACE=PART]...")
@lock_option
@click.option("--picture", "-p", type=click.Path(path_type=Path), help="Write how it swings of each sheet, as SVG.")
@json_option
def command(
    folder: Path,
    workshop: str | None,
    copies: int | None,
    words: tuple[str, ...],
    lock: Path | None,
    picture: Path | None,
    as_json: bool,
) -> int:
    """Compare the sheets that a frame may be made of: how far it gives, how fast it swings."""
    from scantling.api.framing import compare_frame, draw_frames
    from scantling.api.opening import open_design, read_changes
    from scantling.cli.cache import open_store
    from scantling.cli.text.frames import show_frames
    from scantling.cli.text.progress import progress
    from scantling.cli.writing import write_file

    names = [word for word in words if "=" not in word]
    session = open_design(folder, workshop, copies, find_lock(folder, workshop, lock), open_store())
    changes = read_changes(session, [word for word in words if "=" in word])
    with progress() as tell:
        table = compare_frame(session, names[0] if names else None, changes, tell)
    if picture is not None:
        write_file(picture, draw_frames(session, table, changes))
    return show_frames(table, picture, as_json)
