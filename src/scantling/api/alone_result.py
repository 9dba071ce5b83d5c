"""What planning one file alone gives back."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True)
class Alone:
    """What one file gives.

    lines : sentences for the screen    files : by name    whole : nothing was left out or could not be bought
    beside : files to keep beside the one that was planned, where there are none of these names yet
    """

    title: str
    lines: tuple[str, ...]
    files: Mapping[str, bytes]
    whole: bool = True
    beside: Mapping[str, bytes] = field(default_factory=dict)
