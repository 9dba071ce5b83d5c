"""The one typeface of all drawings, and how wide a text in it is; it comes in a wheel, so every machine has it."""

from __future__ import annotations

from functools import cache
from importlib.util import find_spec
from pathlib import Path

FAMILY = "Source Sans Pro"
CAPITAL_RATIO = 0.66
"""Height of a capital over the size of the type, so that ``height_mm`` means what a drawing's text height means."""

_WHEEL = "font_source_sans_pro"
_STANDS_FOR = str.maketrans({"⌀": "Ø", "\t": " ", "\n": " ", "\r": " ", " ": " "})


def font_folder() -> str:
    """Return the folder with the typeface's files."""
    spec = find_spec(_WHEEL)
    if spec is None or spec.origin is None:
        raise ModuleNotFoundError(f"the typeface is missing: install {_WHEEL.replace('_', '-')}")
    return str(Path(spec.origin).parent / "files")


def drawable(text: str) -> str:
    """Return the text with signs that the face lacks replaced, and without those that no page can hold."""
    plain = text.translate(_STANDS_FOR)
    return "".join(c for c in plain if c.isprintable() and not 0xD800 <= ord(c) <= 0xDFFF)


def size_mm(height_mm: float) -> float:
    """Return the size of the type whose capitals have this height."""
    return height_mm / CAPITAL_RATIO


def text_width_mm(text: str, height_mm: float, bold: bool = False) -> float:
    """Return how wide a line of text runs, without kerning; a sign that the face lacks counts as a wide one."""
    widths, units = _advances(bold)
    wide = units
    return sum(widths.get(ord(c), wide) for c in drawable(text)) / units * size_mm(height_mm)


@cache
def _advances(bold: bool) -> tuple[dict[int, int], int]:
    from fontTools.ttLib import TTFont

    path = Path(font_folder()) / f"SourceSansPro-{'Bold' if bold else 'Regular'}.ttf"
    with TTFont(path, lazy=True) as font:
        metrics = font["hmtx"].metrics
        return {code: metrics[glyph][0] for code, glyph in font.getBestCmap().items()}, font["head"].unitsPerEm
