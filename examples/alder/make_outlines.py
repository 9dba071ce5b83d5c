"""Makes the outlines of the sheet parts anew: ``python make_outlines.py`` beside this file.

Only what is sawn: edges and windows. Holes are not drawn, they follow from the parts that are chosen. Some outlines are
DXF and some SVG, all in millimetres, with the lower left corner at the origin; the same bytes come out every time.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import atan2, hypot, tan
from pathlib import Path

import ezdxf

HERE = Path(__file__).parent / "drawings"
Corner = tuple[float, float, float]  # x, y, and the radius with which it is rounded
Vertex = tuple[float, float, float]  # x, y, and the bulge of the edge that begins there

PORTAL: list[Corner] = [
    (0, 0, 0), (60, 0, 0), (60, 312, 8), (340, 312, 8), (340, 0, 0), (400, 0, 0), (400, 375, 12), (0, 375, 12),
]  # fmt: skip
PANEL: list[Corner] = [(0, 0, 0), (400, 0, 0), (400, 90, 8), (0, 90, 8)]
BELT_WINDOW: list[Corner] = [(192, 37, 3), (208, 37, 3), (208, 54.5, 3), (192, 54.5, 3)]
GUSSET: list[Corner] = [(0, 0, 0), (150, 0, 6), (150, 62, 6), (46, 180, 6), (0, 180, 0)]
CARRIER: list[Corner] = [(0, 0, 5), (206, 0, 5), (206, 134, 5), (0, 134, 5)]
MOTOR_PLATE: list[Corner] = [(0, 0, 0), (68, 0, 5), (68, 89, 5), (6, 89, 0), (6, 85, 0), (0, 85, 0)]
BOARD_PLATE: list[Corner] = [(0, 0, 4), (130, 0, 4), (130, 60, 4), (0, 60, 4)]


def rounded(corners: Sequence[Corner]) -> list[Vertex]:
    """Return the vertices of a closed outline with its corners rounded; corners with radius 0 stay sharp."""
    found: list[Vertex] = []
    for at, (x, y, radius) in enumerate(corners):
        before, after = corners[at - 1], corners[(at + 1) % len(corners)]
        if not radius:
            found.append((x, y, 0.0))
            continue
        into, out = _direction(before, (x, y, 0)), _direction((x, y, 0), after)
        turn = atan2(into[0] * out[1] - into[1] * out[0], into[0] * out[0] + into[1] * out[1])
        cut = radius * tan(abs(turn) / 2)
        found.append((x - cut * into[0], y - cut * into[1], tan(turn / 4)))
        found.append((x + cut * out[0], y + cut * out[1], 0.0))
    return [(round(x, 6) + 0.0, round(y, 6) + 0.0, bulge) for x, y, bulge in found]


def _direction(a: Corner, b: Corner) -> tuple[float, float]:
    length = hypot(b[0] - a[0], b[1] - a[1])
    return (b[0] - a[0]) / length, (b[1] - a[1]) / length


def write_dxf(path: Path, *loops: Sequence[Corner]) -> None:
    """Write closed outlines, in millimetres, on the layer OUTLINE."""
    ezdxf.options.write_fixed_meta_data_for_testing = True
    drawing = ezdxf.new("R2010", units=ezdxf.units.MM)
    for name in ("LAYOUT", "ACDBPLACEHOLDER"):  # else the library writes them in an order that changes
        drawing.classes.add_class(name)
    drawing.layers.add("OUTLINE")
    for loop in loops:
        drawing.modelspace().add_lwpolyline(rounded(loop), format="xyb", close=True, dxfattribs={"layer": "OUTLINE"})
    drawing.saveas(path)


def write_svg(path: Path, loop: Sequence[Corner], title: str) -> None:
    """Write one closed outline; one unit of the drawing is one millimetre, and y runs down as SVG wants."""
    width, height = max(x for x, _, _ in loop), max(y for _, y, _ in loop)
    steps, vertices = [], rounded(loop)
    for at, (x, y, bulge) in enumerate(vertices):
        there = vertices[(at + 1) % len(vertices)]
        if not at:
            steps.append(f"M {_number(x)} {_number(height - y)}")
        steps.append(_edge((x, y), there, bulge, height))
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{_number(width)}mm" height="{_number(height)}mm" '
        f'viewBox="0 0 {_number(width)} {_number(height)}">',
        f"  <title>{title}</title>",
        f'  <path fill="none" stroke="#000" stroke-width="0.2" d="{" ".join(steps)} Z"/>',
        "</svg>",
        "",
    ]
    path.write_text("\n".join(lines), encoding="utf-8", newline="\n")


def _edge(start: tuple[float, float], end: Vertex, bulge: float, height: float) -> str:
    """Return a straight edge, or the arc whose bulge is the tangent of a quarter of its angle."""
    x, y = _number(end[0]), _number(height - end[1])
    if not bulge:
        return f"L {x} {y}"
    chord = hypot(end[0] - start[0], end[1] - start[1])
    radius = _number(chord * (1 + bulge**2) / (4 * abs(bulge)))
    return f"A {radius} {radius} 0 0 {int(bulge < 0)} {x} {y}"


def _number(value: float) -> str:
    return f"{value:.4f}".rstrip("0").rstrip(".")


def main() -> None:
    """Write all outlines."""
    HERE.mkdir(exist_ok=True)
    write_dxf(HERE / "portal.dxf", PORTAL)
    write_dxf(HERE / "back-panel.dxf", PANEL, BELT_WINDOW)
    write_dxf(HERE / "y-carrier.dxf", CARRIER)
    write_svg(HERE / "front-panel.svg", PANEL, "Front panel")
    write_svg(HERE / "gusset.svg", GUSSET, "Gusset")
    write_svg(HERE / "y-motor-plate.svg", MOTOR_PLATE, "Plate of the Y motor")
    write_svg(HERE / "board-plate.svg", BOARD_PLATE, "Plate of the board")


if __name__ == "__main__":
    main()
