"""File names from identifiers that a maker wrote: safe on every system, and never two alike."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence

_LONGEST = 80
# names that one system keeps for devices, whatever their ending
_KEPT = frozenset({"con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(10))})


def file_names(idents: Sequence[str], ending: str) -> list[str]:
    """Return a file name for each identifier; names that differ only in case count as alike and get a number."""
    taken: set[str] = set()
    names = []
    for ident in idents:
        stem = safe_stem(ident)
        name, number = stem, 2
        while name.casefold() in taken:
            name, number = f"{stem}-{number}", number + 1
        taken.add(name.casefold())
        names.append(name + ending)
    return names


def safe_stem(ident: str) -> str:
    """Return an identifier without what a file name cannot hold: letters, figures, dots inside, dashes stay.

    >>> safe_stem("../y rod: left"), safe_stem("con")
    ('y-rod-left', 'con-1')
    """
    plain = unicodedata.normalize("NFC", ident)
    kept = "".join(c if c.isalnum() or c in "-_." else "-" for c in plain)
    stem = re.sub(r"-{2,}", "-", re.sub(r"\.{2,}", ".", kept)).strip("-. ")[:_LONGEST].rstrip("-. ")
    if not stem:
        return "unnamed"
    return f"{stem}-1" if stem.partition(".")[0].casefold() in _KEPT else stem
