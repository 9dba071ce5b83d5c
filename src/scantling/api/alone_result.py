"""What planning one file alone gives back."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Alone:
    """What one file gives.

    lines : sentences for the screen    files : by name    whole : nothing was left out or could not be bought
    """

    title: str
    lines: tuple[str, ...]
    files: dict[str, bytes]
    whole: bool = True
