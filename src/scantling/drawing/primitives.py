"""What pages are made of: about six primitives in mm, y upwards, and pens that are named by meaning."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

Point = tuple[float, float]


class Pen(StrEnum):
    """What a line means; the back ends turn it into weight, dash, colour and layer."""

    CUT = "cut"
    HOLE = "hole"
    CENTRE = "centre"
    DATUM = "datum"
    GHOST = "ghost"
    WASTE = "waste"
    NOTE = "note"
    CARE = "care"
    SEAM = "seam"
    CHECK = "check"
    FRAME = "frame"
    PAPER = "paper"


@dataclass(frozen=True)
class Line:
    """A straight stroke."""

    start: Point
    end: Point
    pen: Pen = Pen.NOTE


@dataclass(frozen=True)
class Arc:
    """A circle, or the part of one from ``start_deg`` on by ``sweep_deg``, anticlockwise positive."""

    centre: Point
    radius_mm: float
    pen: Pen = Pen.NOTE
    start_deg: float = 0.0
    sweep_deg: float = 360.0


@dataclass(frozen=True)
class Polygon:
    """A chain of straight strokes; closed unless said otherwise, filled with the pen's colour where asked."""

    points: tuple[Point, ...]
    pen: Pen = Pen.NOTE
    closed: bool = True
    filled: bool = False


class Anchor(StrEnum):
    """Which end of a line of text stands at its point."""

    START = "start"
    MIDDLE = "middle"
    END = "end"


@dataclass(frozen=True)
class Text:
    """One line of text; ``height_mm`` is that of its capitals, ``at`` lies on its base line.

    backed : paper white under it, so that lines below do not cross it
    centred : ``at`` lies at half the height of the capitals instead
    """

    at: Point
    text: str
    height_mm: float = 2.5
    pen: Pen = Pen.NOTE
    anchor: Anchor = Anchor.START
    turn_deg: float = 0.0
    bold: bool = False
    backed: bool = False
    centred: bool = False


@dataclass(frozen=True)
class HoleMark:
    """A hole to drill: its circle, and a cross that is still seen when the bit has begun.

    bit_mm : diameter of the largest bit that stands on the cross; that of the hole where 0
    label : written beside it; label_at : where, measured from the centre (beside the cross where None)
    """

    centre: Point
    diameter_mm: float
    label: str = ""
    bit_mm: float = 0.0
    label_at: Point | None = None
    label_mm: float = 2.2
    pen: Pen = Pen.HOLE


@dataclass(frozen=True)
class Dimension:
    """A distance with its figure, drawn ``offset_mm`` to the left of the way from start to end; boxed: it must hold."""

    start: Point
    end: Point
    text: str
    offset_mm: float = 8.0
    height_mm: float = 2.5
    boxed: bool = False
    pen: Pen = Pen.NOTE


@dataclass(frozen=True)
class Window:
    """An upright box, in mm."""

    x_min_mm: float
    y_min_mm: float
    x_max_mm: float
    y_max_mm: float

    @property
    def width_mm(self) -> float:
        """Size along x."""
        return self.x_max_mm - self.x_min_mm

    @property
    def height_mm(self) -> float:
        """Size along y."""
        return self.y_max_mm - self.y_min_mm


@dataclass(frozen=True)
class View:
    """What a window shows of other items, laid with its lower left corner at ``at``; nothing outside is drawn.

    The scales are near 1: they make good what a printer does to a length along x and along y.
    """

    items: tuple[Item, ...]
    window: Window
    at: Point = (0.0, 0.0)
    scale_x_ratio: float = 1.0
    scale_y_ratio: float = 1.0


Item = Line | Arc | Polygon | Text | HoleMark | Dimension | View


@dataclass(frozen=True)
class Page:
    """One sheet of paper, its lower left corner at (0, 0); ``title`` is read out where the picture cannot be seen."""

    width_mm: float
    height_mm: float
    items: tuple[Item, ...] = ()
    title: str = ""
