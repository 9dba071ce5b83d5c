"""Which files were written, on a terminal or as JSON."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import click

from scantling.api.data import json_text


def show_begun(folder: Path, paths: Sequence[Path], as_json: bool) -> int:
    """Print the files of a new design and what to type next; return 0."""
    following = f"scantling check {folder} --workshop mine"
    if as_json:
        click.echo(json_text({"files": [str(path) for path in paths], "next": following}))
        return 0
    for path in paths:
        click.echo(str(path))
    click.echo(f"next: {following}")
    return 0
