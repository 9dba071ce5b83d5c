"""Maps of axes on a terminal: by speed, up to which acceleration an axis stays sound."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from scantling.api.data import json_text
from scantling.api.mapping import motion_data
from scantling.cli.text.screen import indented, screen, table
from scantling.findings import Verdict

if TYPE_CHECKING:
    from scantling.api.mapping import AxisMap

HEADING = ["speed mm/s", "sound up to mm/s²", "then says"]
_EVERY = 4  # of the columns of a map, a row of the table


def show_maps(maps: Sequence[AxisMap], written: Sequence[Path], as_json: bool) -> int:
    """Print maps; return 0."""
    if as_json:
        click.echo(json_text({"maps": [motion_data(one) for one in maps]}))
        return 0
    console = screen()
    if not maps:
        console.print("No belt axis has a motor and says the speed and the acceleration that it needs.")
    for one in maps:
        wanted = f"wanted: {one.wanted_mm_s:g} mm/s, {one.wanted_mm_s2:g} mm/s²"
        console.print(f"Axis {one.axis}, {one.title}; {wanted}", style="bold")
        rows = [_row(one, column) for column in range(_EVERY - 1, len(one.most_mm_s2), _EVERY)]
        console.print(table(HEADING, rows, right=(0, 1)))
        for lacking in one.left_out:
            console.print(indented(f"not looked at: {lacking}", console, 0))
    for path in written:
        console.print(f"written: {path}")
    console.print('"Sound" is a calculation on what was described, not a safety approval.', style="dim")
    return 0


def _row(shown: AxisMap, column: int) -> list[str]:
    most = shown.most_mm_s2[column]
    rising = [row[column] for row in shown.cells]
    said = next((f"{cell.code} {cell.verdict}" for cell in rising if cell.verdict is not Verdict.SOUND), "")
    reaches = "more than " if most >= shown.height_mm_s2 else ""
    return [f"{rising[0].speed_mm_s:.0f}", f"{reaches}{most:.0f}", said]
