"""The terminal: width, colour, tables, progress."""

from __future__ import annotations

import shutil
import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from typing import Any

from rich.console import Console
from rich.progress import BarColumn, Progress, TextColumn
from rich.table import Table
from rich.text import Text

PLAIN_WIDTH = 120  # of a file or a pipe, which has none of its own
DELAY_S = 1.0

STYLES = {"sound": "green", "marginal": "yellow", "unknown": "magenta", "unsound": "bold red"}
STYLES |= {"stops": "bold red", "worse": "yellow", "act": "cyan", "note": ""}


def screen(stream: Any = None) -> Console:
    """Return the console of a stream: coloured and as wide as the window where it is a terminal."""
    stream = stream or sys.stdout
    width = None if stream.isatty() else PLAIN_WIDTH
    return Console(file=stream, width=width, highlight=False, soft_wrap=False, emoji=False, markup=False)


def table(heading: Sequence[str], rows: Sequence[Sequence[str]], right: Sequence[int] = ()) -> Table:
    """Return a table with a heading; columns in ``right`` hold figures; words of a verdict are coloured."""
    made = Table(box=None, pad_edge=False, padding=(0, 2, 0, 0), header_style="bold", show_header=any(heading))
    for index, name in enumerate(heading):
        made.add_column(name, justify="right" if index in right else "left", overflow="fold")
    for row in rows:
        made.add_row(*(Text(cell, style=STYLES.get(cell, "")) for cell in row))
    return made


@contextmanager
def progress() -> Iterator[Any]:
    """Yield a function that hears how far the work is; it draws only on a terminal, and only after a second."""
    console = Console(file=sys.stderr, width=shutil.get_terminal_size().columns)
    bar = Progress(TextColumn("{task.description}"), BarColumn(), console=console, transient=True)
    state = _Bar(bar, sys.stderr.isatty())
    try:
        yield state.tell
    finally:
        state.stop()


class _Bar:
    """A progress bar that waits before it shows itself."""

    def __init__(self, bar: Progress, wanted: bool) -> None:
        from time import monotonic

        self._bar, self._wanted, self._clock = bar, wanted, monotonic
        self._started_s = monotonic()
        self._task: Any = None

    def tell(self, done: int, of: int, what: str) -> None:
        if not self._wanted or self._clock() - self._started_s < DELAY_S:
            return
        if self._task is None:
            self._bar.start()
            self._task = self._bar.add_task(what, total=of)
        self._bar.update(self._task, completed=done, total=of, description=what)

    def stop(self) -> None:
        if self._task is not None:
            self._bar.stop()
