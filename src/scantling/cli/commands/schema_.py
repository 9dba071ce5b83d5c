"""``scantling schema``."""

from __future__ import annotations

from pathlib import Path

import click


@click.command("schema", epilog="Example:  scantling schema --out schemas")
@click.option("--out", "-o", type=click.Path(path_type=Path), help="A folder for the files; else they are printed.")
@click.option("--json", "as_json", is_flag=True, help="Print them as one JSON object (as without --out).")
def command(out: Path | None, as_json: bool) -> int:
    """Write the JSON Schemas of design and workshop files, with which editors complete and check."""
    from scantling.api.schemas import schema_files, schema_text
    from scantling.cli.writing import write_file

    if out is None or as_json:
        click.echo(schema_text())
        return 0
    for name, data in schema_files().items():
        write_file(out / name, data)
        click.echo(str(out / name))
    return 0
