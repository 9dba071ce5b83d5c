"""Explanations on a terminal or as JSON."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import click
from rich.text import Text

from scantling.api.data import explanations_data, json_text
from scantling.api.ranging import interval_words
from scantling.cli.text.screen import STYLES, indented, screen, table

if TYPE_CHECKING:
    from scantling.api.explaining import ExplainedFigure, Explanation


def show_explanations(found: Sequence[Explanation], as_json: bool) -> int:
    """Print a paragraph and the figures for each finding; return the exit code."""
    code = 0 if all(one.finding.admissible for one in found) else 1
    if as_json:
        click.echo(json_text(explanations_data(found)))
        return code
    console = screen()
    for one in found:
        console.print(indented(Text(one.paragraph, style=STYLES[one.finding.verdict]), console, 0))
        if one.figures:
            rows = [[f"  {figure.what}", figure.shown, _known(figure), _range(figure)] for figure in one.figures]
            console.print(table(["  figure", "value", "known", "by this check alone"], rows))
    if not found:
        console.print("nothing is found: what this check needs is not described (scantling check says what)")
    return code


def _known(figure: ExplainedFigure) -> str:
    return f"{figure.known}; {figure.card}" if figure.card and figure.known != "given" else figure.known


def _range(figure: ExplainedFigure) -> str:
    return f"{figure.best}: {interval_words(figure.intervals, figure.unit)}" if figure.best else ""
