"""The terminal: width, colour, tables."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from typing import IO, Any

from rich.console import Console
from rich.table import Table
from rich.text import Text

PLAIN_WIDTH = 120  # of a file or a pipe, which has none of its own
NARROWEST = 40

STYLES = {"sound": "green", "marginal": "yellow", "unknown": "magenta", "unsound": "bold red"}
STYLES |= {"stops": "bold red", "worse": "yellow", "act": "cyan", "better": "green", "note": ""}


def screen(stream: Any = None) -> Console:
    """Return the console of a stream: coloured and as wide as the window where it is a terminal, else plain."""
    stream = stream or sys.stdout
    if stream.isatty():
        return Console(file=stream, highlight=False, soft_wrap=False, emoji=False, markup=False)
    plain: Any = _Trimmed(stream)
    return Console(
        file=plain,
        width=PLAIN_WIDTH,
        highlight=False,
        soft_wrap=False,
        emoji=False,
        markup=False,
        force_terminal=False,
        no_color=True,
    )


class _Trimmed:
    """A stream without the blanks that a terminal's tables leave at the ends of lines."""

    def __init__(self, stream: IO[str]) -> None:
        self._stream = stream

    def __getattr__(self, name: str) -> Any:
        return getattr(self._stream, name)

    def write(self, text: str) -> int:
        return self._stream.write("\n".join(line.rstrip(" ") for line in text.split("\n")))


def table(heading: Sequence[str], rows: Sequence[Sequence[str]], right: Sequence[int] = ()) -> Table:
    """Return a table with a heading; columns in ``right`` hold figures; words of a verdict are coloured."""
    made = Table(box=None, pad_edge=False, padding=(0, 2, 0, 0), header_style="bold", show_header=any(heading))
    for index, name in enumerate(heading):
        made.add_column(name, justify="right" if index in right else "left", overflow="fold")
    for row in rows:
        made.add_row(*(Text(cell, style=STYLES.get(cell, "")) for cell in row))
    return made


def indented(text: Text | str, console: Console, by: int) -> Text:
    """Return text wrapped to the console's width, every line set in."""
    whole = Text(text) if isinstance(text, str) else text
    lines = whole.wrap(console, max(console.width - by, NARROWEST))
    return Text("\n").join(Text(" " * by).append_text(line) for line in lines)
