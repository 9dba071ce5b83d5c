"""Pages to DXF for a router or a cutting service: one layer per meaning, millimetres, circles kept, fixed bytes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from io import StringIO
from math import cos, radians, sin
from typing import Any

from scantling.drawing.lettering import drawable
from scantling.drawing.pens import STYLES
from scantling.drawing.primitives import Anchor, Line, Page, Pen, Point, Text
from scantling.drawing.strokes import Curve, Lettering, Stroke, strokes

_MILLIMETRES = 4
_STEPS = 256


def to_dxf(page: Page, leave_out: Iterable[Pen] = (Pen.PAPER,)) -> bytes:
    """Return the page as a DXF file (R2010), its lower left corner at the origin; some pens may be left out."""
    import ezdxf

    with _fixed_stamps(ezdxf.options):
        document = ezdxf.new("R2010", setup=False, units=_MILLIMETRES)
        document.header["$MEASUREMENT"] = 1
        unwanted = set(leave_out)
        drawn = [stroke for stroke in strokes(page) if _pen(stroke) not in unwanted]
        for pen in sorted({_pen(stroke) for stroke in drawn}, key=list(Pen).index):
            _add_layer(document, pen)
        space = document.modelspace()
        for stroke in drawn:
            _add(space, stroke)
        return _written(document)


@contextmanager
def _fixed_stamps(options: Any) -> Iterator[None]:
    """The library stamps files with the time of day; its switch for fixed stamps is global, so it is put back."""
    before = options.write_fixed_meta_data_for_testing
    options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        options.write_fixed_meta_data_for_testing = before


def _written(document: Any) -> bytes:
    """The library keeps the classes it needs in a set, so they are put in order before it writes them."""
    document.classes.add_required_classes(document.dxfversion)
    document.classes.classes = dict(sorted(document.classes.classes.items()))
    stream = StringIO()
    document.write(stream)
    return stream.getvalue().encode("utf-8")


def _add_layer(document: Any, pen: Pen) -> None:
    style = STYLES[pen]
    layer = document.layers.add(pen.value, color=style.index, linetype=_line_type(document, pen))
    layer.dxf.lineweight = round(style.width_mm * 100)


def _pen(stroke: Stroke) -> Pen:
    return stroke.text.pen if isinstance(stroke, Lettering) else stroke.pen


def _line_type(document: Any, pen: Pen) -> str:
    dash_mm = STYLES[pen].dash_mm
    if not dash_mm:
        return "Continuous"
    pattern = [sum(dash_mm), *(length if k % 2 == 0 else -length for k, length in enumerate(dash_mm))]
    document.linetypes.add(pen.value, pattern, description=f"{pen.value} line")
    return pen.value


def _add(space: Any, stroke: Stroke) -> None:
    attributes = {"layer": _pen(stroke).value}
    if isinstance(stroke, Line):
        space.add_line(_rounded(stroke.start), _rounded(stroke.end), dxfattribs=attributes)
    elif isinstance(stroke, Curve):
        _add_curve(space, stroke, attributes)
    elif isinstance(stroke, Lettering):
        _add_text(space, stroke.text, attributes)
    elif stroke.filled:
        area = space.add_hatch(color=256, dxfattribs=attributes)
        area.paths.add_polyline_path([_rounded(point) for point in stroke.points])
    else:
        points = [_rounded(point) for point in stroke.points]
        space.add_lwpolyline(points, close=stroke.closed, dxfattribs=attributes)


def _add_curve(space: Any, curve: Curve, attributes: dict[str, str]) -> None:
    """A circle or an arc; only where a printer's correction has stretched it, chords."""
    centre, radius_mm = _rounded(curve.centre), round(curve.radius_x_mm, 6)
    if abs(curve.radius_x_mm - curve.radius_y_mm) > 1e-6:
        space.add_lwpolyline(_chords(curve), close=abs(curve.sweep_deg) >= 360, dxfattribs=attributes)
    elif abs(curve.sweep_deg) >= 360:
        space.add_circle(centre, radius_mm, dxfattribs=attributes)
    else:
        first, last = sorted([curve.start_deg, curve.start_deg + curve.sweep_deg])
        space.add_arc(centre, radius_mm, round(first % 360, 9), round(last % 360, 9), dxfattribs=attributes)


def _chords(curve: Curve) -> list[Point]:
    is_round = abs(curve.sweep_deg) >= 360
    turns = [radians(curve.start_deg + curve.sweep_deg * k / _STEPS) for k in range(_STEPS + (0 if is_round else 1))]
    (x, y), rx, ry = curve.centre, curve.radius_x_mm, curve.radius_y_mm
    return [_rounded((x + rx * cos(turn), y + ry * sin(turn))) for turn in turns]


def _add_text(space: Any, text: Text, attributes: dict[str, str]) -> None:
    from ezdxf.enums import TextEntityAlignment

    level = "MIDDLE_" if text.centred else ""
    side = {Anchor.START: "LEFT", Anchor.MIDDLE: "CENTER", Anchor.END: "RIGHT"}[text.anchor]
    entity = space.add_text(drawable(text.text), height=text.height_mm, rotation=text.turn_deg, dxfattribs=attributes)
    entity.set_placement(_rounded(text.at), align=TextEntityAlignment[level + side])


def _rounded(point: Point) -> Point:
    """To a nanometre: below that only the noise of floating point differs."""
    return (round(point[0], 6) + 0.0, round(point[1], 6) + 0.0)
