"""What each pen looks like: weight and dash in mm, a colour that also prints in grey, a layer for machines."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.drawing.primitives import Pen


@dataclass(frozen=True)
class Style:
    """Looks of a pen; ``index`` is the colour number of DXF layers, ``dash_mm`` alternates stroke and gap."""

    width_mm: float
    colour: str = "#000000"
    dash_mm: tuple[float, ...] = ()
    index: int = 7


# A line to cut along is thin: a thick one hides where the edge is. Weights follow ISO 128's steps, from memory.
STYLES: dict[Pen, Style] = {
    Pen.CUT: Style(0.25, index=1),
    Pen.HOLE: Style(0.18, index=5),
    Pen.CENTRE: Style(0.13, index=3),
    Pen.DATUM: Style(0.5, index=6),
    Pen.GHOST: Style(0.13, "#7a7a7a", (1.2, 0.8), index=8),
    Pen.WASTE: Style(0.13, "#8a8a8a", index=9),
    Pen.NOTE: Style(0.18, index=7),
    Pen.CARE: Style(0.35, "#b00000", index=2),
    Pen.SEAM: Style(0.13, "#0050a0", (4.0, 1.0, 0.5, 1.0), index=4),
    Pen.CHECK: Style(0.25, index=7),
    Pen.FRAME: Style(0.13, "#7a7a7a", index=8),
    Pen.PAPER: Style(0.0, "#ffffff", index=7),
}
