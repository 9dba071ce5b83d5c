"""How wide texts run, remembered: the same words are tried in many places."""

from __future__ import annotations

from functools import lru_cache

from scantling.drawing.lettering import text_width_mm


@lru_cache(maxsize=8192)
def width_mm(text: str, height_mm: float, bold: bool = False) -> float:
    """Return the width of a line of text, as ``drawing.lettering`` measures it."""
    return text_width_mm(text, height_mm, bold)
