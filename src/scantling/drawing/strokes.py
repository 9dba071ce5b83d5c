"""A page taken apart into plain strokes in paper coordinates: what every back end draws."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from math import sqrt

from scantling.drawing.clip import clip_arc, clip_area, clip_line, common
from scantling.drawing.compound import plain, text_corners
from scantling.drawing.primitives import Arc, Item, Line, Page, Pen, Point, Polygon, Text, View, Window


@dataclass(frozen=True)
class Curve:
    """A circle or arc on paper; its two radii differ by what a printer has to be corrected for."""

    centre: Point
    radius_x_mm: float
    radius_y_mm: float
    pen: Pen
    start_deg: float = 0.0
    sweep_deg: float = 360.0


@dataclass(frozen=True)
class Lettering:
    """A text on paper; ``window`` cuts it off where it would run out of its view."""

    text: Text
    window: Window | None = None


Stroke = Line | Curve | Polygon | Lettering


@dataclass(frozen=True)
class _Lens:
    """From the coordinates of a view to those of the paper."""

    scale_x_ratio: float = 1.0
    scale_y_ratio: float = 1.0
    shift_x_mm: float = 0.0
    shift_y_mm: float = 0.0

    def __call__(self, point: Point) -> Point:
        return (
            point[0] * self.scale_x_ratio + self.shift_x_mm,
            point[1] * self.scale_y_ratio + self.shift_y_mm,
        )

    def of(self, view: View) -> _Lens:
        """The lens of a view that lies in this one."""
        x_mm = view.at[0] - view.window.x_min_mm * view.scale_x_ratio
        y_mm = view.at[1] - view.window.y_min_mm * view.scale_y_ratio
        return _Lens(
            self.scale_x_ratio * view.scale_x_ratio,
            self.scale_y_ratio * view.scale_y_ratio,
            x_mm * self.scale_x_ratio + self.shift_x_mm,
            y_mm * self.scale_y_ratio + self.shift_y_mm,
        )

    def box(self, window: Window) -> Window:
        """A window on the paper."""
        low, high = self((window.x_min_mm, window.y_min_mm)), self((window.x_max_mm, window.y_max_mm))
        return Window(*low, *high)


def strokes(page: Page) -> Iterator[Stroke]:
    """Yield everything a page draws, in order, clipped at its windows and at the paper's edge."""
    yield from _strokes(page.items, Window(0.0, 0.0, page.width_mm, page.height_mm), _Lens())


def _strokes(items: Iterable[Item], window: Window, lens: _Lens) -> Iterator[Stroke]:
    for item in items:
        if isinstance(item, View):
            inner = common(item.window, _seen_from(item, window))
            if inner:
                yield from _strokes(item.items, inner, lens.of(item))
            continue
        for part in plain(item):
            yield from _clipped(part, window, lens)


def _seen_from(view: View, window: Window) -> Window:
    """The outer window in the coordinates of the view."""
    x_mm, y_mm = view.window.x_min_mm, view.window.y_min_mm
    return Window(
        (window.x_min_mm - view.at[0]) / view.scale_x_ratio + x_mm,
        (window.y_min_mm - view.at[1]) / view.scale_y_ratio + y_mm,
        (window.x_max_mm - view.at[0]) / view.scale_x_ratio + x_mm,
        (window.y_max_mm - view.at[1]) / view.scale_y_ratio + y_mm,
    )


def _clipped(part: Line | Arc | Polygon | Text, window: Window, lens: _Lens) -> Iterator[Stroke]:
    if isinstance(part, Line):
        yield from _lines([(part.start, part.end)], part.pen, window, lens)
    elif isinstance(part, Arc):
        for arc in clip_arc(part, window):
            x_mm, y_mm = arc.radius_mm * lens.scale_x_ratio, arc.radius_mm * lens.scale_y_ratio
            yield Curve(lens(arc.centre), x_mm, y_mm, arc.pen, arc.start_deg, arc.sweep_deg)
    elif isinstance(part, Polygon):
        yield from _polygon(part, window, lens)
    else:
        yield from _text(part, window, lens)


def _lines(pairs: Iterable[tuple[Point, Point]], pen: Pen, window: Window, lens: _Lens) -> Iterator[Line]:
    for a, b in pairs:
        kept = clip_line(a, b, window)
        if kept and (kept[0] != kept[1] or a == b):
            yield Line(lens(kept[0]), lens(kept[1]), pen)


def _polygon(part: Polygon, window: Window, lens: _Lens) -> Iterator[Stroke]:
    if part.filled:
        points = clip_area(part.points, window)
        if len(points) > 2:
            yield replace(part, points=tuple(lens(point) for point in points))
        return
    if all(_holds(window, point) for point in part.points):
        yield replace(part, points=tuple(lens(point) for point in part.points))
        return
    following = [*part.points[1:], *(part.points[:1] if part.closed else ())]
    yield from _lines(zip(part.points, following, strict=False), part.pen, window, lens)


def _text(part: Text, window: Window, lens: _Lens) -> Iterator[Stroke]:
    """A text that lies outside is dropped, one that runs out keeps the window that cuts it off."""
    corners = text_corners(part)
    xs, ys = [x for x, _ in corners], [y for _, y in corners]
    box = Window(min(xs), min(ys), max(xs), max(ys))
    shared = common(box, window)
    if shared is None:
        return
    height_mm = part.height_mm * sqrt(lens.scale_x_ratio * lens.scale_y_ratio)
    placed = replace(part, at=lens(part.at), height_mm=height_mm)
    yield Lettering(placed, None if shared == box else lens.box(window))


def _holds(window: Window, point: Point) -> bool:
    inside_x = window.x_min_mm <= point[0] <= window.x_max_mm
    return inside_x and window.y_min_mm <= point[1] <= window.y_max_mm
