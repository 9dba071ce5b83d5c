"""Plans on a terminal."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

import click
from rich.console import Console
from rich.text import Text

from scantling.api.data import is_sound, json_text, plan_json
from scantling.cli.text.findings import show_findings, show_scope
from scantling.cli.text.screen import STYLES, screen, table
from scantling.quantities import show_money

if TYPE_CHECKING:
    from scantling.api.alone import Alone
    from scantling.api.checking import Plan


def show_check(plan: Plan, everything: bool, as_json: bool) -> int:
    """Print a check; return the exit code."""
    if as_json:
        click.echo(plan_json(plan))
        return 0 if is_sound(plan) else 1
    console = screen()
    show_heading(console, plan)
    show_findings(console, plan.findings, everything)
    show_scope(console, plan.not_looked_at, plan.unlocking)
    return 0 if is_sound(plan) else 1


def show_heading(console: Console, plan: Plan) -> None:
    """Print which machine this is and the verdict."""
    project = plan.case.project
    copies = f"{plan.build.copies} copies" if plan.build.copies > 1 else "one copy"
    line = Text(f"{project.design.machine.name}, {copies}, workshop {project.workshop.name}: ", style="bold")
    console.print(line.append(str(plan.verdict), style=STYLES[plan.verdict]))


def show_plan(plan: Plan, as_json: bool) -> int:
    """Print the summary of a plan; return the exit code."""
    if as_json:
        click.echo(plan_json(plan))
        return 0 if is_sound(plan) else 1
    console = screen()
    show_heading(console, plan)
    _show_proof(console, plan)
    _show_deviations(console, plan)
    _show_orders(console, plan)
    _show_totals(console, plan)
    show_findings(console, plan.findings, everything=False)
    show_scope(console, plan.not_looked_at, plan.unlocking)
    return 0 if is_sound(plan) else 1


def _show_proof(console: Console, plan: Plan) -> None:
    if plan.choice is not None:
        currency = plan.case.project.workshop.currency
        gap = plan.choice.cost_minor - plan.choice.bound_minor
        proof = (
            "proven: no sound choice costs less"
            if plan.choice.proven
            else f"not proven, within {show_money(gap, currency)}"
        )
        console.print(f"cheapest sound choice, {proof}")
    elif plan.infeasible is not None:
        console.print("no sound choice can be bought here", style="bold red")
        _show_conflict(console, plan)


def _show_conflict(console: Console, plan: Plan) -> None:
    infeasible = plan.infeasible
    if infeasible is None:
        return
    console.print("these demands stand against each other" + (" (no fewer do)" if infeasible.conflict.smallest else ""))
    for concern in infeasible.conflict.concerns:
        console.print(
            "  " + " ".join(word for word in (concern.kind, concern.code, concern.subject, concern.detail) if word)
        )
    if infeasible.miss is not None:
        console.print("nearest miss, shown below: it waives")
        for waived in infeasible.miss.waived:
            short = f"{waived.shortfall_permille / 10:g} % beyond the limit"
            console.print(
                f"  {waived.concern.kind} {waived.concern.code} {waived.concern.subject}: {waived.amount or short}"
            )


def _show_deviations(console: Console, plan: Plan) -> None:
    reader = plan.case.reader(plan.build)
    rows = []
    for name, place in plan.case.project.design.places.items():
        part = reader.part(name)
        chosen = part.id if part else "empty"
        if chosen != place.reference.part:
            rows.append([place.title or name, place.reference.part, chosen])
    if rows:
        console.print(table(["place", "reference", "chosen instead"], rows))


def _show_orders(console: Console, plan: Plan) -> None:
    rows = [
        [sheet.title, str(len(sheet.rows)), dict(sheet.sums)["total"], f"{sheet.lead_days} days"]
        for sheet in plan.orders
    ]
    if rows:
        console.print(table(["order", "lines", "total", "arrives in"], rows, right=(1, 2)))


def _show_totals(console: Console, plan: Plan) -> None:
    totals = plan.totals
    if totals is None:
        return
    named = [(f"outlay for {totals.copies}", totals.outlay), ("value used in one machine", totals.used)]
    named += [("left in the drawer", totals.left)]
    named += [("cost to the next builder", totals.next_builder)] if totals.next_builder is not None else []
    console.print(table(["", ""], [[words, show_money(minor, totals.currency)] for words, minor in named], right=(1,)))


def show_files(out: Path, files: Mapping[str, bytes]) -> None:
    """Print where the files are."""
    click.echo(f"{len(files)} files in {out}:")
    for name in sorted(files):
        click.echo(f"  {out / name}")


def show_alone(alone: Alone, out: Path, as_json: bool) -> int:
    """Print what planning one file alone gave; return 1 where something was left out."""
    if as_json:
        click.echo(
            json_text({"title": alone.title, "lines": alone.lines, "whole": alone.whole, "files": sorted(alone.files)})
        )
    else:
        for line in (alone.title, *alone.lines):
            click.echo(line)
        show_files(out, alone.files)
    return 0 if alone.whole else 1
