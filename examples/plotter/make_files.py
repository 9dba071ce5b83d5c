"""Makes the drawing of the panel and the mesh of the carriage anew: ``python make_files.py`` beside this file.

The same bytes come out every time, so a change of the files is a change of the machine.
"""

from __future__ import annotations

import struct
from collections.abc import Sequence
from pathlib import Path

import ezdxf
import manifold3d

HERE = Path(__file__).parent
PANEL_MM = 90.0
CORNER_MM = 6.0
QUARTER_BULGE = 2**0.5 - 1  # tan of a quarter of the arc's angle, which is a quarter turn


def panel_corners() -> list[tuple[float, float, float]]:
    """Return x, y and bulge of the square panel with rounded corners, anticlockwise from the lower left."""
    far, near, end = PANEL_MM - CORNER_MM, CORNER_MM, PANEL_MM
    straight, round_ = 0.0, QUARTER_BULGE
    return [
        (near, 0.0, straight),
        (far, 0.0, round_),
        (end, near, straight),
        (end, far, round_),
        (far, end, straight),
        (near, end, round_),
        (0.0, far, straight),
        (0.0, near, round_),
    ]


def write_panel(path: Path) -> None:
    """Write the panel's outline, in millimetres, with a window for the belt."""
    ezdxf.options.write_fixed_meta_data_for_testing = True
    drawing = ezdxf.new("R2010", units=ezdxf.units.MM)
    for name in ("LAYOUT", "ACDBPLACEHOLDER"):  # else the library writes them in an order that changes
        drawing.classes.add_class(name)
    drawing.layers.add("OUTLINE")
    space = drawing.modelspace()
    space.add_lwpolyline(panel_corners(), format="xyb", close=True, dxfattribs={"layer": "OUTLINE"})
    window = [(35.0, 8.0), (55.0, 8.0), (55.0, 26.0), (35.0, 26.0)]
    space.add_lwpolyline(window, close=True, dxfattribs={"layer": "OUTLINE"})
    drawing.saveas(path)


def carriage() -> manifold3d.Manifold:
    """Return the carriage: a block with two bores for pairs of bushings and a lug to clamp the pen."""
    block = manifold3d.Manifold.cube((60.0, 84.0, 22.0))
    lug = manifold3d.Manifold.cube((9.0, 24.0, 16.0)).translate((25.5, 30.0, 22.0))
    solid = block + lug
    for across in (12.0, 72.0):
        bore = manifold3d.Manifold.cylinder(62.0, 7.5, circular_segments=64).rotate((0.0, 90.0, 0.0))
        solid -= bore.translate((-1.0, across, 11.0))
    for along in (36.0, 48.0):
        hole = manifold3d.Manifold.cylinder(20.0, 1.7, circular_segments=32).rotate((0.0, 90.0, 0.0))
        solid -= hole.translate((20.0, along, 31.0))
    hollow = manifold3d.Manifold.cube((44.0, 34.0, 14.0)).translate((8.0, 25.0, -1.0))
    return solid - hollow


def write_stl(path: Path, solid: manifold3d.Manifold) -> None:
    """Write a binary STL with its triangles in a fixed order."""
    mesh = solid.to_mesh()
    points = [tuple(round(float(value), 4) for value in row[:3]) for row in mesh.vert_properties]
    triangles = sorted(_from_least([points[i] for i in row]) for row in mesh.tri_verts)
    body = b"".join(struct.pack("<12fH", 0, 0, 0, *[c for corner in one for c in corner], 0) for one in triangles)
    path.write_bytes(b"carriage".ljust(80) + struct.pack("<I", len(triangles)) + body)


def _from_least(triangle: Sequence[tuple[float, ...]]) -> tuple[tuple[float, ...], ...]:
    """Return the triangle begun at its least corner, its sense kept."""
    first = triangle.index(min(triangle))
    return (*triangle[first:], *triangle[:first])


if __name__ == "__main__":
    (HERE / "drawings").mkdir(exist_ok=True)
    (HERE / "meshes").mkdir(exist_ok=True)
    write_panel(HERE / "drawings" / "panel.dxf")
    write_stl(HERE / "meshes" / "carriage.stl", carriage())
