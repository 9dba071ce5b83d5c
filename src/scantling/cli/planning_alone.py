"""``scantling plan`` of one drawing or one list alone."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from scantling.api.alone import plan_file
from scantling.cli.text.plans import show_alone
from scantling.cli.writing import write_file, write_folder
from scantling.errors import Fault, FaultsError, Where


def plan_alone(
    file: Path,
    workshop: str | None,
    copies: int | None,
    asked: Sequence[str],
    bars: tuple[str, str, str] | None,
    out: Path,
    as_json: bool,
) -> int:
    """Plan one file, write what comes of it, show it; return the exit code."""
    if asked:
        where = Where(asked[0])
        raise FaultsError([Fault("ALONE-02", "a file alone has no places", "name the folder of a design", where)])
    alone = plan_file(file, workshop, copies, bars)
    beside = {file.with_name(name): data for name, data in alone.beside.items()}
    fresh = {path: data for path, data in beside.items() if not path.exists()}
    if alone.files:
        write_folder(out, alone.files)
    for path, data in fresh.items():
        write_file(path, data)
    return show_alone(alone, out, list(fresh), as_json)
