"""A back end that draws nothing and keeps everything: what pages hold, in numbers, for tests and comparisons."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.drawing.primitives import Line, Page, Pen, Polygon, Text
from scantling.drawing.strokes import Curve, Lettering, strokes


@dataclass(frozen=True)
class Record:
    """All strokes of a page in paper coordinates, mm."""

    lines: tuple[Line, ...]
    curves: tuple[Curve, ...]
    polygons: tuple[Polygon, ...]
    texts: tuple[Text, ...]

    def with_pen(self, pen: Pen) -> Record:
        """Return what one pen drew."""
        return Record(
            tuple(line for line in self.lines if line.pen is pen),
            tuple(curve for curve in self.curves if curve.pen is pen),
            tuple(polygon for polygon in self.polygons if polygon.pen is pen),
            tuple(text for text in self.texts if text.pen is pen),
        )

    @property
    def words(self) -> tuple[str, ...]:
        """The texts as they read, in drawing order."""
        return tuple(text.text for text in self.texts)


def record(page: Page) -> Record:
    """Return all that the page draws."""
    drawn = list(strokes(page))
    return Record(
        tuple(stroke for stroke in drawn if isinstance(stroke, Line)),
        tuple(stroke for stroke in drawn if isinstance(stroke, Curve)),
        tuple(stroke for stroke in drawn if isinstance(stroke, Polygon)),
        tuple(stroke.text for stroke in drawn if isinstance(stroke, Lettering)),
    )
