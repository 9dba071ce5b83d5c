"""Any drawing file to outlines: the ending of its name says which reader it is for."""

from __future__ import annotations

from scantling.errors import Fault, FaultsError, Where
from scantling.shapes.drawn import Drawing
from scantling.shapes.dxf import GAP_MM, read_dxf
from scantling.shapes.edges import FLATTEN_MM
from scantling.shapes.svg import read_svg

ENDINGS = ("dxf", "svg")


def read_drawing(
    data: bytes,
    file: str,
    unit: str | None = None,
    layer: str | None = None,
    gap_mm: float = GAP_MM,
    flatten_mm: float = FLATTEN_MM,
) -> Drawing:
    """Return the outlines of a DXF or SVG file; see ``read_dxf`` and ``read_svg``.

    Raises FaultsError (SHAPE-34) for any other ending, and whatever the readers find.
    """
    ending = file.rpartition(".")[2].lower()
    if ending == "dxf":
        return read_dxf(data, file, unit, layer, gap_mm, flatten_mm)
    if ending == "svg":
        return read_svg(data, file, unit, layer, gap_mm, flatten_mm)
    what = f"a drawing file ending in .{ending} is not read here"
    raise FaultsError([Fault("SHAPE-34", what, "export it as DXF or SVG", Where(file))])
