"""How far the work is: a bar on the error stream, only on a terminal, and only where it takes more than a second."""

from __future__ import annotations

import shutil
import sys
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from time import monotonic
from typing import Any, TypeVar

from rich.console import Console
from rich.progress import BarColumn, Progress, TextColumn

from scantling.api.telling import Tell

DELAY_S = 1.0

T = TypeVar("T")


@contextmanager
def progress(stream: Any = None) -> Iterator[Tell]:
    """Yield a function that hears how far the work is; it draws on ``stream``, else on the error stream."""
    bar = _Bar(stream or sys.stderr)
    try:
        yield bar.tell
    finally:
        bar.clear()


def with_progress(run: Callable[[Tell], Iterable[T]], stream: Any = None) -> Iterator[T]:
    """Yield what ``run(tell)`` yields; the bar is cleared away before each, so that it can be printed."""
    bar = _Bar(stream or sys.stderr)
    try:
        for item in run(bar.tell):
            bar.clear()
            yield item
    finally:
        bar.clear()


class _Bar:
    """A progress bar that waits before it shows itself, and can be cleared away for a while."""

    def __init__(self, stream: Any) -> None:
        self._stream = stream
        self._wanted = stream.isatty()
        self._started_s = monotonic()
        self._bar: Progress | None = None
        self._task: Any = None

    def tell(self, done: int, of: int, what: str) -> None:
        if not self._wanted or monotonic() - self._started_s < DELAY_S:
            return
        if self._bar is None:
            console = Console(file=self._stream, width=shutil.get_terminal_size().columns)
            self._bar = Progress(TextColumn("{task.description}"), BarColumn(), console=console, transient=True)
            self._bar.start()
            self._task = self._bar.add_task(what, total=of)
        self._bar.update(self._task, completed=done, total=of, description=what)

    def clear(self) -> None:
        if self._bar is not None:
            self._bar.stop()
            self._bar = None
