"""The steps of ``scantling plan`` that are not reading arguments: open, plan, write, show."""

from __future__ import annotations

from pathlib import Path

from scantling.api.opening import open_design, read_changes
from scantling.api.planning import files_of_plan, make_design_plan
from scantling.cli.text.plans import show_alone, show_files, show_plan
from scantling.cli.text.screen import progress
from scantling.cli.writing import write_folder


def plan_design(
    folder: Path,
    workshop: str | None,
    copies: int | None,
    pins: tuple[str, ...],
    out: Path,
    lock: Path | None,
    as_json: bool,
) -> int:
    """Plan a design folder, write the files, show the summary; return the exit code."""
    session = open_design(folder, workshop, copies, lock)
    pinned = read_changes(session, pins)
    with progress() as tell:
        plan = make_design_plan(session, pinned, tell)
        files = files_of_plan(plan, pinned)
    write_folder(out, files)
    code = show_plan(plan, as_json)
    if not as_json:
        show_files(out, files)
    return code


def plan_alone(file: Path, workshop: str | None, copies: int | None, out: Path, as_json: bool) -> int:
    """Plan one drawing or one foreign list alone; return the exit code."""
    from scantling.api.alone import plan_file

    alone = plan_file(file, workshop, copies)
    write_folder(out, alone.files)
    return show_alone(alone, out, as_json)
