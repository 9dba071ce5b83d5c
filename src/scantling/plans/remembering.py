"""Things that take long to make and are wholly decided by what they are made from: made once, by whoever remembers."""

from __future__ import annotations

from collections.abc import Callable

Remember = Callable[[str, Callable[[], bytes]], bytes]
"""Takes a name that holds a digest of all that the thing is made from, and what makes it; returns the thing."""


def make_anew(name: str, make: Callable[[], bytes]) -> bytes:  # noqa: ARG001 - others look the name up
    """Return the thing, made now: what remembers nothing."""
    return make()
