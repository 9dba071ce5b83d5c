"""A comparison of frames on a terminal."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from scantling.api.data import frames_data, json_text
from scantling.cli.text.screen import indented, screen, table
from scantling.findings import Verdict

if TYPE_CHECKING:
    from scantling.api.framing import FrameRow, FrameTable

HEADING = ["sheet", "panels kg", "gives mm", "swings first Hz", "then Hz", "sheet/rods/joints %", "costs", "verdict"]


def show_frames(found: FrameTable, picture: Path | None, as_json: bool) -> int:
    """Print a comparison; return 0 where the sheet in force is sound or marginal, else 1."""
    now = next((row for row in found.rows if row.in_force), None)
    code = 0 if now is not None and now.verdict in (Verdict.SOUND, Verdict.MARGINAL) else 1
    if as_json:
        click.echo(json_text(frames_data(found)))
        return code
    console = screen()
    console.print(f"{found.title}: the sheets that it may be of, the stiffest first", style="bold")
    console.print(table(HEADING, [_row(row) for row in found.rows], right=(1,)))
    for number, (push, limit) in enumerate(zip(found.pushes, found.limits_mm, strict=True)):
        bound = "" if limit is None else f"; at most {limit:g} mm"
        gives = ", ".join(f"{row.name} {row.gives_mm[number].value:.3g}" for row in found.rows if row.gives_mm)
        console.print(indented(f"{push}{bound}: {gives} mm", console, 0))
    worst = max((row.mesh_ratio for row in found.rows), default=0.0)
    console.print(
        indented(
            "In brackets: from stiff to soft sheets and joints. Triangles of half the size change a give by "
            f"{worst:.2%} at most. Good for ranking; for the true figure push by hand and write it into the workshop.",
            console,
            0,
        )
    )
    if picture is not None:
        console.print(f"written: {picture}")
    console.print('"Sound" is a calculation on what was described, not a safety approval.', style="dim")
    return code


def _row(row: FrameRow) -> list[str]:
    name = row.name + (" (now)" if row.in_force else "")
    if row.lacking:
        return [name, "", f"not looked at: {row.lacking}", "", "", "", row.price, str(row.verdict)]
    give, first = row.gives_mm[0], row.swings_hz[0]
    later = ", ".join(f"{mode.value:.3g}" for mode in row.swings_hz[1:])
    shares = "/".join(f"{100 * share:.0f}" for share in row.shares)
    return [
        name,
        f"{row.mass_kg:.2f}",
        f"{give.value:.3g} ({give.low:.3g}–{give.high:.3g})",
        f"{first.value:.3g} ({first.low:.3g}–{first.high:.3g})",
        later,
        shares,
        row.price,
        str(row.verdict),
    ]
