"""Pages to SVG at true scale: millimetre units, one group per run of a pen, the same bytes for the same page."""

from __future__ import annotations

from itertools import groupby
from math import cos, radians, sin
from xml.sax.saxutils import escape, quoteattr

from scantling.drawing.lettering import FAMILY, drawable, size_mm
from scantling.drawing.pens import STYLES
from scantling.drawing.primitives import Line, Page, Pen, Point, Polygon
from scantling.drawing.strokes import Curve, Lettering, Stroke, strokes

_NAMESPACE = "http://www.w3.org/2000/svg"


def to_svg(page: Page) -> bytes:
    """Return the page as a stand-alone SVG file whose user unit is the millimetre."""
    w, h = number(page.width_mm), number(page.height_mm)
    head = f'<svg xmlns="{_NAMESPACE}" width="{w}mm" height="{h}mm" viewBox="0 0 {w} {h}">'
    title = f"<title>{escape(drawable(page.title))}</title>" if page.title else ""
    groups = (_group(pen, list(run), page.height_mm) for pen, run in groupby(strokes(page), _pen))
    return "\n".join(['<?xml version="1.0" encoding="UTF-8"?>', head + title, *groups, "</svg>", ""]).encode()


def number(value: float) -> str:
    """Write a length to a tenth of a micrometre, without trailing zeros."""
    text = f"{value:.4f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _pen(stroke: Stroke) -> Pen:
    return stroke.text.pen if isinstance(stroke, Lettering) else stroke.pen


def _group(pen: Pen, run: list[Stroke], height_mm: float) -> str:
    style = STYLES[pen]
    dash = f' stroke-dasharray="{" ".join(map(number, style.dash_mm))}"' if style.dash_mm else ""
    looks = f'fill="none" stroke="{style.colour}" stroke-width="{number(style.width_mm)}" stroke-linecap="round"'
    body = "\n".join(_element(stroke, style.colour, height_mm) for stroke in run)
    return f'<g class="{pen.value}" {looks} stroke-linejoin="round"{dash}>\n{body}\n</g>'


def _element(stroke: Stroke, colour: str, height_mm: float) -> str:
    if isinstance(stroke, Line):
        (ax, ay), (bx, by) = _down(stroke.start, height_mm), _down(stroke.end, height_mm)
        return f'<line x1="{number(ax)}" y1="{number(ay)}" x2="{number(bx)}" y2="{number(by)}"/>'
    if isinstance(stroke, Curve):
        return _curve(stroke, height_mm)
    if isinstance(stroke, Polygon):
        points = " ".join(_pair(point, height_mm) for point in stroke.points)
        fill = f' fill="{colour}" stroke="none"' if stroke.filled else ""
        return f'<{"polygon" if stroke.closed or stroke.filled else "polyline"} points="{points}"{fill}/>'
    return _lettering(stroke, colour, height_mm)


def _curve(curve: Curve, height_mm: float) -> str:
    rx, ry = number(curve.radius_x_mm), number(curve.radius_y_mm)
    if abs(curve.sweep_deg) >= 360:
        x, y = _down(curve.centre, height_mm)
        size = f'<circle r="{rx}"' if rx == ry else f'<ellipse rx="{rx}" ry="{ry}"'
        return f'{size} cx="{number(x)}" cy="{number(y)}"/>'
    start = _pair(_at(curve, curve.start_deg), height_mm)
    end = _pair(_at(curve, curve.start_deg + curve.sweep_deg), height_mm)
    large, clockwise = int(abs(curve.sweep_deg) > 180), int(curve.sweep_deg < 0)
    return f'<path d="M{start} A{rx},{ry} 0 {large} {clockwise} {end}"/>'


def _at(curve: Curve, angle_deg: float) -> Point:
    angle_rad = radians(angle_deg)
    x, y = curve.centre
    return (x + curve.radius_x_mm * cos(angle_rad), y + curve.radius_y_mm * sin(angle_rad))


def _lettering(stroke: Lettering, colour: str, height_mm: float) -> str:
    text = stroke.text
    x, y = _down(text.at, height_mm)
    turn = f' transform="rotate({number(-text.turn_deg)} {number(x)} {number(y)})"' if text.turn_deg else ""
    y_local = y + text.height_mm / 2 if text.centred else y  # in the turned frame, so half a capital down
    bold = ' font-weight="700"' if text.bold else ""
    face = f'font-family={quoteattr(f"{FAMILY}, sans-serif")} font-size="{number(size_mm(text.height_mm))}"{bold}'
    where = f'x="{number(x)}" y="{number(y_local)}" text-anchor="{text.anchor.value}"'
    written = escape(drawable(text.text))
    words = f'<text {where} {face} fill="{colour}" stroke="none" xml:space="preserve"{turn}>{written}</text>'
    return words if stroke.window is None else _cut_off(words, stroke, height_mm)


def _cut_off(words: str, stroke: Lettering, height_mm: float) -> str:
    """An inner picture of the window's size: what runs out of it is not shown, in any viewer."""
    window = stroke.window
    assert window is not None
    x, y = _down((window.x_min_mm, window.y_max_mm), height_mm)
    w, h = number(window.width_mm), number(window.height_mm)
    place = f'x="{number(x)}" y="{number(y)}" width="{w}" height="{h}" viewBox="{number(x)} {number(y)} {w} {h}"'
    return f'<svg {place} overflow="hidden">{words}</svg>'


def _down(point: Point, height_mm: float) -> Point:
    return (point[0], height_mm - point[1])


def _pair(point: Point, height_mm: float) -> str:
    x, y = _down(point, height_mm)
    return f"{number(x)},{number(y)}"
