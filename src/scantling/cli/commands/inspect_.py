"""``scantling inspect``."""

from __future__ import annotations

from pathlib import Path

import click

from scantling.cli.options import json_option


@click.command("inspect", epilog="Example:  scantling inspect panel.dxf holder.stl")
@click.argument("paths", nargs=-1, required=True, type=click.Path(path_type=Path), metavar="FILE...")
@click.option("--unit", type=click.Choice(["mm", "cm", "in"]), help="Unit of a file that states none.")
@json_option
def command(paths: tuple[Path, ...], unit: str | None, as_json: bool) -> int:
    """Say what is in drawings and meshes, how well it fits, and write entries that only want a name."""
    from scantling.api.inspecting import inspect_files
    from scantling.cli.text.inspecting import show_inspected

    return show_inspected(inspect_files(paths, unit), as_json)
