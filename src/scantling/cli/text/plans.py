"""Plans on a terminal."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click
from rich.console import Console
from rich.text import Text

from scantling.api.data import is_sound, json_text
from scantling.cli.text.findings import show_findings, show_scope
from scantling.cli.text.heading import show_heading
from scantling.cli.text.screen import indented, screen, table

if TYPE_CHECKING:
    from scantling.api.alone import Alone
    from scantling.api.checking import Plan
    from scantling.api.planning import Summary


NOTHING_TO_BUY = "nothing is chosen or bought: name a workshop that has vendors and offers, with --workshop"


def show_plan(plan: Plan, summary: Summary) -> int:
    """Print the summary of a plan; return the exit code."""
    console = screen()
    show_heading(console, summary.title, plan.verdict)
    bare = "" if plan.purchase or plan.infeasible else NOTHING_TO_BUY
    _show_lines(console, [summary.proof, *summary.miss, bare])
    _show_rows(console, "orders", [(o.vendor, f"{o.lines} lines", o.total, o.arrives) for o in summary.orders], (1, 2))
    _show_rows(console, "money", summary.money, (1,))
    _show_rows(console, "dates", summary.dates)
    _show_instead(console, summary)
    _show_rows(console, "making", summary.making)
    console.print("findings", style="bold")
    show_findings(console, plan.findings, everything=False)
    show_scope(console, plan.not_looked_at, plan.unlocking)
    return 0 if is_sound(plan) else 1


def _show_lines(console: Console, lines: Iterable[str]) -> None:
    for line in lines:
        if line:
            console.print(indented(line, console, 0))


def _show_rows(console: Console, title: str, rows: Sequence[Sequence[str]], right: Sequence[int] = ()) -> None:
    if rows:
        console.print(title, style="bold")
        console.print(table([""] * len(rows[0]), [(f"  {row[0]}", *row[1:]) for row in rows], right))


def _show_instead(console: Console, summary: Summary) -> None:
    if not summary.instead:
        return
    console.print("chosen instead of the reference", style="bold")
    for one in summary.instead:
        line = Text(f"{one.title}: {one.chosen}").append(f" instead of {one.reference}", style="dim")
        console.print(indented(line.append(f" ({one.why})" if one.why else "", style="dim"), console, 2))


def show_files(out: Path, files: Mapping[str, bytes]) -> None:
    """Print where the files are, folders with their counts."""
    console, inside = screen(), dict[str, list[str]]()
    many = "file" if len(files) == 1 else "files"
    console.print(f"{len(files)} {many} in {out}", soft_wrap=True)
    for name in sorted(files):
        folder, slash, _ = name.rpartition("/")
        inside.setdefault(folder + slash, []).append(name)
    for folder, names in inside.items():
        console.print(
            indented(f"{len(names)} in {folder}" if folder and len(names) > 1 else ", ".join(names), console, 2)
        )


def show_alone(alone: Alone, out: Path, beside: Sequence[Path], as_json: bool) -> int:
    """Print what planning one file alone gave; return 1 where something was left out."""
    if as_json:
        found = {"title": alone.title, "lines": alone.lines, "whole": alone.whole, "files": sorted(alone.files)}
        click.echo(json_text({**found, "beside": [str(path) for path in beside]}))
        return 0 if alone.whole else 1
    console = screen()
    console.print(alone.title, style="bold")
    for line in alone.lines:
        console.print(indented(line, console, 2))
    if alone.files:
        show_files(out, alone.files)
    for path in beside:
        click.echo(f"how it was read is kept in {path}")
    return 0 if alone.whole else 1
