"""Consequences on a terminal: what stops the machine, what must be done otherwise, then money and dates."""

from __future__ import annotations

from rich.console import Console
from rich.text import Text

from scantling.api.following import Group, Grouped
from scantling.cli.text.few import few
from scantling.cli.text.screen import STYLES, indented

HEADINGS = {
    "stops": "stops the machine",
    "worse": "becomes worse",
    "act": "must be done otherwise",
    "better": "becomes better",
    "note": "also differs",
}
TITLE = 30  # signs; longer titles push what follows to the right, or to the next line


def show_consequences(console: Console, sorted_out: Grouped) -> None:
    """Print consequences in groups, what matters first; what changes nothing that is decided only as counts."""
    heading = ""
    for group in sorted_out.groups:
        if group.weight != heading:
            heading = group.weight
            console.print(HEADINGS[heading], style=STYLES[heading] or "bold")
        _show_group(console, group)
    for count, words, subjects in sorted_out.quiet:
        console.print(indented(Text(f"{count} {words}: {few(subjects)}", style="dim"), console, 2))
    if sorted_out.quiet:
        console.print("  (--all shows these one by one)", style="dim")


def _show_group(console: Console, group: Group) -> None:
    line = Text(f"{group.about:9}").append(group.title, style="bold")
    if len(group.title) + len(group.body) + 15 <= console.width:
        console.print(indented(line.append(f"{'':{max(2, TITLE - len(group.title))}}{group.body}"), console, 2))
    else:
        console.print(indented(line, console, 2))
        console.print(indented(group.body, console, 13))
    if group.weight in ("stops", "worse") and group.because:
        console.print(indented(Text(group.because, style="dim"), console, 13))
