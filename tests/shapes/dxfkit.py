"""Small DXF files made in memory."""

import io
from collections.abc import Callable
from itertools import pairwise

import ezdxf
from ezdxf.document import Drawing


def dxf_bytes(draw: Callable[..., None], version: str = "R2010", insunits: int | None = 4) -> bytes:
    """Return the bytes of a file into whose model space ``draw(msp, document)`` has drawn."""
    document: Drawing = ezdxf.new(version)
    if insunits is not None:
        document.header["$INSUNITS"] = insunits
    draw(document.modelspace(), document)
    stream = io.StringIO()
    document.write(stream)
    return stream.getvalue().encode()


def square(msp, x=0.0, y=0.0, size=100.0, **attribs) -> None:
    """Draw a closed square."""
    points = [(x, y), (x + size, y), (x + size, y + size), (x, y + size)]
    msp.add_lwpolyline(points, close=True, dxfattribs=attribs)


def lines(msp, *points, **attribs) -> None:
    """Draw a line between each two neighbouring points."""
    for a, b in pairwise(points):
        msp.add_line(a, b, dxfattribs=attribs)
