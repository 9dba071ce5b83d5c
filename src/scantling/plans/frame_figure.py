"""One picture of a frame of all its sheets: the first way of swinging drawn on the outlines, and how far it gives.

Slanted so that what stands across the machine keeps its true outline; what lies deeper is drawn up and to the right.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil
from typing import Any

from scantling.build.case import Case
from scantling.build.frame_stiffness import (
    SIZES_IN_PANEL,
    FrameStiffness,
    frame_stiffness,
    joint_stiffness,
    triangle_mm,
)
from scantling.build.reference import carry_over
from scantling.drawing.primitives import Item, Line, Page, Pen, Point, Polygon, Text
from scantling.drawing.svg import to_svg
from scantling.model.build import Build
from scantling.plans.frame_rows import FrameRow, FrameTable
from scantling.quantities import Figure
from scantling.shapes.elements.plate import plate_shape

_DEPTH_X, _DEPTH_Y = 0.42, 0.26  # how far a millimetre to the back goes right and up
_SWING_RATIO = 0.10  # of the frame's size, that the largest movement is drawn with
_LEVELS = (0.25, 0.5, 0.75)
_CELL_MM, _CELL_HIGH_MM, _PICTURE_HIGH_MM, _MARGIN_MM, _ACROSS = 68.0, 84.0, 52.0, 10.0, 4
_BAR_MM, _HEAD_MM = 56.0, 16.0


@dataclass(frozen=True)
class _Drawn:
    """A frame as lines in the plane of the picture, in mm of the machine: at rest, swung, lines of equal movement."""

    rest: tuple[tuple[Point, ...], ...]
    swung: tuple[tuple[Point, ...], ...]
    rods: tuple[tuple[Point, Point], ...]
    levels: tuple[tuple[Point, Point], ...]


def frame_picture(case: Case, build: Build, table: FrameTable) -> bytes:
    """Return the picture as SVG."""
    return to_svg(frame_page(case, build, table))


def frame_page(case: Case, build: Build, table: FrameTable) -> Page:
    """Return the picture as a page: one cell for every sheet that could be reckoned, the stiffest first."""
    rows = [row for row in table.rows if not row.lacking]
    across = min(_ACROSS, max(1, len(rows)))
    down = ceil(len(rows) / across)
    width_mm = 2 * _MARGIN_MM + across * _CELL_MM
    height_mm = 2 * _MARGIN_MM + _HEAD_MM + down * _CELL_HIGH_MM
    top_mm = height_mm - _MARGIN_MM
    push = table.pushes[0] if table.pushes else ""
    items: list[Item] = [
        Text((_MARGIN_MM, top_mm - 4), f"{table.title}: the first way of swinging, of each sheet", 3.6, bold=True),
        Text(
            (_MARGIN_MM, top_mm - 10),
            f"Bars below: {push}; line: what is reckoned, from stiff to soft sheets and joints; tick: the limit.",
            2.3,
        ),
    ]
    longest_mm = max((row.gives_mm[0].high for row in rows), default=1.0)
    limit_mm = table.limits_mm[0] if table.limits_mm else None
    longest_mm = max(longest_mm, limit_mm or 0.0)
    for number, row in enumerate(rows):
        left_mm = _MARGIN_MM + number % across * _CELL_MM
        foot_mm = top_mm - _HEAD_MM - (number // across + 1) * _CELL_HIGH_MM
        drawn = _swung(case, build, table.frame, row)
        items += _cell(row, drawn, left_mm, foot_mm, longest_mm, limit_mm)
    return Page(width_mm, height_mm, tuple(items), f"{table.title}: ways of swinging of {len(rows)} sheets")


def _cell(
    row: FrameRow, drawn: _Drawn, left_mm: float, foot_mm: float, longest_mm: float, limit_mm: float | None
) -> list[Item]:
    head_mm = foot_mm + _CELL_HIGH_MM
    first, give = row.swings_hz[0], row.gives_mm[0]
    items: list[Item] = [
        Text((left_mm, head_mm - 4), row.name + (" (now)" if row.in_force else ""), 2.8, bold=True),
        Text((left_mm, head_mm - 8.5), f"{_banded(first, 'Hz')}, panels {row.mass_kg:.2g} kg", 2.3),
    ]
    items += _frame(drawn, left_mm, foot_mm + 19)
    items += _bar(give, left_mm, foot_mm + 13.5, longest_mm, limit_mm)
    pen = Pen.CARE if row.against else Pen.NOTE
    items.append(Text((left_mm, foot_mm + 8.2), f"gives {_banded(give, 'mm')}", 2.3))
    items.append(
        Text((left_mm, foot_mm + 4.2), ": ".join([str(row.verdict), *filter(None, [", ".join(row.against)])]), 2.3, pen)
    )
    return items


def _bar(give: Figure, left_mm: float, y_mm: float, longest_mm: float, limit_mm: float | None) -> list[Item]:
    scale = _BAR_MM / longest_mm
    end, low, high = (left_mm + scale * value for value in (give.value, give.low, give.high))
    items: list[Item] = [
        Polygon(
            ((left_mm, y_mm - 1.2), (end, y_mm - 1.2), (end, y_mm + 1.2), (left_mm, y_mm + 1.2)), Pen.FRAME, filled=True
        ),
        Line((low, y_mm), (high, y_mm), Pen.CUT),
        Line((low, y_mm - 0.8), (low, y_mm + 0.8), Pen.CUT),
        Line((high, y_mm - 0.8), (high, y_mm + 0.8), Pen.CUT),
    ]
    if limit_mm is not None:
        at = left_mm + scale * limit_mm
        items.append(Line((at, y_mm - 2.4), (at, y_mm + 2.4), Pen.CARE))
    return items


def _frame(drawn: _Drawn, left_mm: float, foot_mm: float) -> list[Item]:
    points = [point for loop in (*drawn.rest, *drawn.swung) for point in loop]
    x0, y0 = min(x for x, _ in points), min(y for _, y in points)
    wide, high = max(x for x, _ in points) - x0, max(y for _, y in points) - y0
    scale = min((_CELL_MM - 6) / wide, _PICTURE_HIGH_MM / high)

    def at(point: Point) -> Point:
        return (left_mm + scale * (point[0] - x0), foot_mm + scale * (point[1] - y0))

    items: list[Item] = [Polygon(tuple(map(at, loop)), Pen.GHOST) for loop in drawn.rest]
    items += [Line(at(a), at(b), Pen.FRAME) for a, b in drawn.rods]
    items += [Line(at(a), at(b), Pen.SEAM) for a, b in drawn.levels]
    items += [Polygon(tuple(map(at, loop)), Pen.CUT) for loop in drawn.swung]
    return items


def _banded(figure: Figure, unit: str) -> str:
    return f"{figure.value:.3g} {unit} ({figure.low:.3g}–{figure.high:.3g})"


def _swung(case: Case, build: Build, name: str, row: FrameRow) -> _Drawn:
    """Reckon the first way of swinging of one sheet again, with the movement of every node."""
    import numpy as np

    key = case.part_key(case.project.design.frames[name].panel)
    reader = case.reader(carry_over(case, build, {key: row.part}))
    found: FrameStiffness = reader.derive(frame_stiffness, name)
    frame = found.frame(found.usual(reader.derive(joint_stiffness, name).value), coarse=True)
    shape = frame.modes(1)[0].shape
    model, panels = found.setup.model, []
    for number, (panel, described) in enumerate(zip(model.panels, found.setup.panels, strict=True)):
        plate = found.setup.plates[panel.plate]
        mesh, local = plate_shape(plate, triangle_mm(plate, SIZES_IN_PANEL), *frame.panel_motion(number, shape))
        axes = np.array(described.axes)
        rest = np.array(described.at) + mesh.nodes @ axes[:2]
        panels.append((mesh, rest, local @ axes))
    largest = max(float(np.abs(moved).max()) for _, _, moved in panels)
    everywhere = np.vstack([rest for _, rest, _ in panels])
    grown = _SWING_RATIO * float(np.ptp(everywhere, axis=0).max()) / largest
    bars = [(np.array(model.nodes[bar.a]), np.array(model.nodes[bar.b])) for bar in model.bars]
    return _Drawn(
        rest=tuple(loop for mesh, rest, _ in panels for loop in _edges(mesh, _flat(rest))),
        swung=tuple(loop for mesh, rest, moved in panels for loop in _edges(mesh, _flat(rest + grown * moved))),
        rods=tuple(tuple(_flat(np.stack(bar))) for bar in bars),  # type: ignore[misc]
        levels=tuple(
            line for mesh, rest, moved in panels for line in _levels(mesh, _flat(rest + grown * moved), moved, largest)
        ),
    )


def _flat(points: Any) -> list[Point]:
    return [(float(x + _DEPTH_X * y), float(z + _DEPTH_Y * y)) for x, y, z in points]


def _edges(mesh: Any, flat: Sequence[Point]) -> list[tuple[Point, ...]]:
    """The edges of a panel and its windows as closed lines."""
    sides = {(int(t[k]), int(t[(k + 1) % 3])) for t in mesh.triangles for k in range(3)}
    after = dict(sorted(side for side in sides if side[::-1] not in sides))
    loops = []
    while after:
        start = node = min(after)
        loop = []
        while node in after:
            loop.append(flat[node])
            node = after.pop(node)
        loops.append(tuple(loop) if node == start else (*loop, flat[node]))
    return loops


def _levels(mesh: Any, flat: Sequence[Point], moved: Any, largest: float) -> list[tuple[Point, Point]]:
    """Lines along which a panel moves by a quarter, a half and three quarters of the largest movement."""
    import numpy as np

    size = np.linalg.norm(moved, axis=1) / largest
    found = []
    for level in _LEVELS:
        over = size[mesh.triangles] > level
        for triangle in mesh.triangles[over.any(axis=1) & ~over.all(axis=1)]:
            cuts = []
            for k in range(3):
                a, b = int(triangle[k]), int(triangle[(k + 1) % 3])
                if (size[a] > level) != (size[b] > level):
                    t = float((level - size[a]) / (size[b] - size[a]))
                    cuts.append(
                        (flat[a][0] + t * (flat[b][0] - flat[a][0]), flat[a][1] + t * (flat[b][1] - flat[a][1]))
                    )
            found.append((cuts[0], cuts[1]))
    return found
