"""Make the solver without the banner that it prints, once per process, before it can be told to be silent."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from typing import Any


def silent_highs() -> Any:
    """Return a new solver object that prints nothing."""
    import highspy

    _greet_nobody()
    highs = highspy.Highs()
    highs.setOptionValue("output_flag", False)
    return highs


@cache
def _greet_nobody() -> None:
    """Let the first solver object of the process greet an empty device: the banner ignores every option."""
    import highspy

    with _no_standard_output():
        highspy.Highs()


@contextmanager
def _no_standard_output() -> Iterator[None]:
    """Send what compiled code writes to standard output nowhere; where there is no such output, do nothing."""
    try:
        kept = os.dup(1)
    except OSError:  # a program without a console
        yield
        return
    nowhere = os.open(os.devnull, os.O_WRONLY)
    try:
        if sys.stdout is not None:
            sys.stdout.flush()
        os.dup2(nowhere, 1)
        yield
    finally:
        os.dup2(kept, 1)
        os.close(kept)
        os.close(nowhere)
