"""The steps of ``scantling plan`` that are not reading arguments: open, plan, write, show."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import click

from scantling.api.data import is_sound, plan_json
from scantling.api.opening import open_design, read_changes
from scantling.api.planning import files_of_plan, make_design_plan, summary_of
from scantling.cli.cache import open_store
from scantling.cli.text.plans import show_files, show_plan
from scantling.cli.text.progress import progress
from scantling.cli.writing import write_folder


def plan_design(
    folder: Path,
    workshop: str | None,
    copies: int | None,
    asked: Sequence[str],
    out: Path,
    lock: Path | None,
    as_json: bool,
) -> int:
    """Plan a design folder, write the files, show the summary; return the exit code."""
    session = open_design(folder, workshop, copies, lock, open_store())
    pins, store = read_changes(session, asked), open_store()
    with progress() as tell:
        plan = make_design_plan(session, pins, tell, store)
        files = files_of_plan(plan, pins, store)
    write_folder(out, files)
    if as_json:
        click.echo(plan_json(plan, pins))
        return 0 if is_sound(plan) else 1
    code = show_plan(plan, summary_of(plan, pins))
    show_files(out, files)
    return code
