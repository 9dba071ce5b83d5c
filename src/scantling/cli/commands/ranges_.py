"""``scantling ranges``."""

from __future__ import annotations

from pathlib import Path

import click

from scantling.cli.options import design_arguments, find_lock, json_option, lock_option

EPILOG = """\b
Examples:
  scantling ranges examples/alder -w village y-rod back-panel
  scantling ranges examples/alder -w village y-motor=motor-mid y-motor
  scantling ranges examples/alder -w village --rules
"""


@click.command("ranges", epilog=EPILOG)
@design_arguments("[PLACE]... [PLACE=PART]...")
@lock_option
@click.option("--rules", is_flag=True, help="The figures that the rules use, derived ones too, instead of the parts.")
@click.option("--all", "everything", is_flag=True, help="Of the rules' figures all, not only those nearest to an end.")
@click.option("--csv", "csv", type=click.Path(path_type=Path), help="Write the ranges of the parts to this file too.")
@json_option
def command(
    folder: Path,
    workshop: str | None,
    copies: int | None,
    words: tuple[str, ...],
    lock: Path | None,
    rules: bool,
    everything: bool,
    csv: Path | None,
    as_json: bool,
) -> int:
    """Show which local parts may be taken: the range of every figure of the part at each PLACE, all else equal.

    Without a PLACE all parts are told, which takes a while. PLACE=PART asks of another part there.
    """
    from scantling.api.opening import open_design, read_changes
    from scantling.api.ranging import local_parts, ranges_csv, rule_ranges
    from scantling.cli.text.ranges import show_local_parts, show_rule_ranges
    from scantling.cli.writing import write_file

    session = open_design(folder, workshop, copies, find_lock(folder, workshop, lock))
    changes = read_changes(session, [word for word in words if "=" in word])
    if rules:
        return show_rule_ranges(rule_ranges(session, changes), everything, as_json)
    found = local_parts(session, [word for word in words if "=" not in word], changes)
    told = show_local_parts(found, as_json)
    if csv is not None:
        write_file(csv, ranges_csv(told))
    return 0
