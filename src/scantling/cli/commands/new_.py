"""``scantling new``."""

from __future__ import annotations

from pathlib import Path

import click


@click.command("new", epilog="Example:  scantling new my-plotter && scantling check my-plotter --workshop mine")
@click.argument("folder", type=click.Path(path_type=Path))
def command(folder: Path) -> int:
    """Begin a design in a new FOLDER: one axis in a dozen lines, and a workshop."""
    from scantling.api.starting import starting_files
    from scantling.cli.writing import begin_folder

    for path in begin_folder(folder, starting_files()):
        click.echo(str(path))
    click.echo(f"next: scantling check {folder} --workshop mine")
    return 0
