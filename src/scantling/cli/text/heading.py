"""The first line of an answer: what was looked at, and the verdict."""

from __future__ import annotations

from typing import Any

from rich.console import Console
from rich.text import Text

from scantling.cli.text.screen import STYLES, indented


def show_heading(console: Console, title: str, verdict: Any) -> None:
    """Print what was looked at and the verdict."""
    console.print(indented(Text(f"{title}: ", style="bold").append(str(verdict), style=STYLES[verdict]), console, 0))
