"""``scantling new``."""

from __future__ import annotations

from pathlib import Path

import click

from scantling.cli.options import json_option


@click.command("new", epilog="Example:  scantling new my-plotter && scantling check my-plotter --workshop mine")
@click.argument("folder", type=click.Path(path_type=Path))
@json_option
def command(folder: Path, as_json: bool) -> int:
    """Begin a design in a new FOLDER: one axis in a dozen lines, and a workshop."""
    from scantling.api.starting import starting_files
    from scantling.cli.text.written import show_begun
    from scantling.cli.writing import begin_folder

    return show_begun(folder, begin_folder(folder, starting_files()), as_json)
