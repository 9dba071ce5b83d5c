"""``scantling plan`` of one drawing or one list alone."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from scantling.api.alone import plan_file
from scantling.cli.text.plans import show_alone
from scantling.cli.writing import write_folder
from scantling.errors import Fault, FaultsError, Where


def plan_alone(
    file: Path, workshop: str | None, copies: int | None, asked: Sequence[str], out: Path, as_json: bool
) -> int:
    """Plan one file, write what comes of it, show it; return the exit code."""
    if asked:
        where = Where(asked[0])
        raise FaultsError([Fault("ALONE-02", "a file alone has no places", "name the folder of a design", where)])
    alone = plan_file(file, workshop, copies)
    write_folder(out, alone.files)
    return show_alone(alone, out, as_json)
