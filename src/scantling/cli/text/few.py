"""Long lists in few words."""

from __future__ import annotations

from collections.abc import Sequence

MOST = 6


def few(names: Sequence[str]) -> str:
    """Return the first names, and how many more there are."""
    shown = ", ".join(names[:MOST])
    return f"{shown} and {len(names) - MOST} more" if len(names) > MOST else shown
