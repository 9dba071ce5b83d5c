"""``scantling map``."""

from __future__ import annotations

from pathlib import Path

import click

from scantling.cli.options import design_arguments, find_lock, json_option, lock_option

EPILOG = """\b
Examples:
  scantling map examples/alder --workshop village --out out/maps
  scantling map examples/alder -w village y-pulley=pulley-16 --json
"""


@click.command("map", epilog=EPILOG)
@design_arguments("[PLACE=PART]...")
@lock_option
@click.option("--out", "-o", type=click.Path(path_type=Path), help="Write a drawing of each axis here, as SVG.")
@json_option
def command(
    folder: Path,
    workshop: str | None,
    copies: int | None,
    words: tuple[str, ...],
    lock: Path | None,
    out: Path | None,
    as_json: bool,
) -> int:
    """Show up to which acceleration each belt axis stays sound, by speed; drawn as a map."""
    from scantling.api.mapping import motion_files, motion_maps
    from scantling.api.opening import open_design, read_changes
    from scantling.cli.cache import open_store
    from scantling.cli.text.maps import show_maps
    from scantling.cli.writing import write_file

    session = open_design(folder, workshop, copies, find_lock(folder, workshop, lock), open_store())
    maps = motion_maps(session, read_changes(session, words))
    files = motion_files(maps) if out is not None else {}
    for name, drawing in files.items():
        write_file((out or Path()) / name, drawing)
    return show_maps(maps, [(out or Path()) / name for name in files], as_json)
