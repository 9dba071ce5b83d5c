"""``scantling plan``."""

from __future__ import annotations

from pathlib import Path

import click

from scantling.cli.options import design_arguments, find_lock, json_option, lock_option, out_folder

EPILOG = """\b
Examples:
  scantling plan examples/alder --workshop village --copies 4
  scantling plan examples/alder -w village y-motor=motor-full --out out/strong
  scantling plan panel.dxf -w examples/alder/workshops/village.yaml      (a template and a drill list alone)
  scantling plan list.csv -w examples/alder/workshops/village.yaml       (orders alone)
"""


@click.command("plan", epilog=EPILOG)
@design_arguments("[PLACE=PART]...")
@click.option(
    "--out", "-o", type=click.Path(path_type=Path), help="Where the files go; else out/ in the design's folder."
)
@click.option("--bars", nargs=3, metavar="DRAWN ACROSS ALONG", help="Check bars as drawn and as read; of a drawing.")
@lock_option
@json_option
def command(
    folder: Path,
    workshop: str | None,
    copies: int | None,
    words: tuple[str, ...],
    out: Path | None,
    bars: tuple[str, str, str] | None,
    lock: Path | None,
    as_json: bool,
) -> int:
    """Choose the cheapest sound machine and write all that is needed to make it.

    Parts named as PLACE=PART are pinned. Given a drawing or somebody's list instead of a folder, plans that alone.
    """
    if folder.is_file() and folder.suffix.lower() not in (".yaml", ".yml"):
        from scantling.cli import planning_alone

        out = out or Path("out") / folder.stem
        return planning_alone.plan_alone(folder, workshop, copies, words, bars, out, as_json)
    from scantling.cli import planning

    if bars:
        raise click.UsageError("--bars is for a drawing alone; a design's are in its workshop, under printer")
    out = out or out_folder(folder, workshop)
    return planning.plan_design(folder, workshop, copies, words, out, find_lock(folder, workshop, lock), as_json)
