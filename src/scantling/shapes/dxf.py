"""DXF files, R12 and later, to outlines in mm; circles and arcs stay what they are."""

from __future__ import annotations

from io import BytesIO, StringIO
from typing import Any

from scantling.errors import Fault, FaultsError, Where, nearest
from scantling.shapes.arranging import assemble
from scantling.shapes.drawn import ClosedPiece, Drawing, Note, Piece, mm_per, refuse_large
from scantling.shapes.dxf_entities import Gathered, gather
from scantling.shapes.edges import FLATTEN_MM, scale_by

GAP_MM = 0.05
"""Gaps up to this are closed and told, where nothing else is said."""

# $INSUNITS of the DXF reference; the codes that no workshop draws in are left to a stated unit
_UNIT_OF_CODE = {1: "in", 2: "ft", 4: "mm", 5: "cm", 6: "m", 9: "mil", 10: "yd", 13: "um"}


def read_dxf(
    data: bytes,
    file: str,
    unit: str | None = None,
    layer: str | None = None,
    gap_mm: float = GAP_MM,
    flatten_mm: float = FLATTEN_MM,
) -> Drawing:
    """Return the outlines of a DXF file.

    data : the file's bytes          file : its name, for messages
    unit : "mm", "in" …; wins over the file's own, which is used where none is given
    layer : read this one only (hidden or not); else all that are not hidden
    gap_mm : ends up to this far apart are joined, each joint noted
    flatten_mm : how far the chords of splines and ellipses may stand off the curve

    Raises FaultsError with every fault found: SHAPE-01 … SHAPE-15.
    """
    refuse_large(data, file)
    _refuse_truncated(data, file)
    document = _document(data, file)
    unit, notes = _unit(_unit_code(document, data), unit, file)
    ratio = mm_per(unit, file)
    try:
        found = gather(document, file, layer, flatten_mm / ratio)
    except (FaultsError, MemoryError, NameError):
        raise
    except Exception as error:  # the file is not ours to trust: whatever the library trips over is a fault of it
        raise FaultsError([_unreadable(file, error)]) from error
    _refuse_layer(found, layer, file)
    loose, closed = _in_mm(found, ratio)
    return assemble(
        loose,
        closed,
        file=file,
        unit=unit,
        gap_mm=gap_mm,
        flatten_mm=flatten_mm,
        notes=[*notes, *found.notes(flatten_mm)],
        layers=tuple(sorted(found.layers)),
    )


def _unreadable(file: str, error: Exception) -> Fault:
    reason = " ".join(str(error).split())[:120] or type(error).__name__
    return Fault("SHAPE-02", f"this is not a DXF file that can be read: {reason}", "save it again as DXF", Where(file))


def _refuse_truncated(data: bytes, file: str) -> None:
    """A DXF file ends with an EOF mark; the library would read a cut-off file in silence."""
    if data[:4] == b"AC10" and data[4:6].isdigit():
        raise FaultsError([Fault("SHAPE-02", "this is a DWG file", "save it as DXF", Where(file))])
    if b"Binary DXF" in data[:32]:
        raise FaultsError([Fault("SHAPE-02", "this is a binary DXF file", "save it as text (ASCII) DXF", Where(file))])
    if data.strip(b" \t\r\n\x1a\x00").split()[-2:] != [b"0", b"EOF"]:
        line = data.count(b"\n") + 1
        what = "the file stops before its end mark (EOF): it is cut off, or no DXF file"
        raise FaultsError([Fault("SHAPE-03", what, "save or download it again", Where(file, line))])


def _document(data: bytes, file: str) -> Any:
    """The plain reader for a sound file, three times as fast; the forgiving one for any other."""
    from ezdxf import recover

    try:
        return _plainly(data) or _forgivingly(data, file, recover)
    except (FaultsError, MemoryError, NameError):
        raise
    except Exception as error:  # see above: any failure of the library is a fault of the file
        raise FaultsError([_unreadable(file, error)]) from error


def _plainly(data: bytes) -> Any:
    """The document, or None where the file is not plain UTF-8 or has flaws."""
    import ezdxf

    try:
        return ezdxf.read(StringIO(data.decode("utf-8").replace("\r\n", "\n")))
    except Exception:  # whatever it is, the forgiving reader says it better
        return None


def _forgivingly(data: bytes, file: str, recover: Any) -> Any:
    document, auditor = recover.read(BytesIO(data))
    if auditor.has_errors:
        raise FaultsError([_unreadable(file, ValueError(auditor.errors[0].message))])
    return document


def _unit_code(document: Any, data: bytes) -> int:
    """The file's own unit code, 0 for none; the library fills in one of its own where the file has none."""
    code = document.header.get("$INSUNITS", 0) if b"$INSUNITS" in data else 0
    return code if isinstance(code, int) else 0


def _unit(code: int, stated: str | None, file: str) -> tuple[str, list[Note]]:
    """The stated unit wins and a contradiction is noted; without either the drawing has no size."""
    own = _UNIT_OF_CODE.get(code)
    if stated is not None:
        if own is not None and own != stated:
            return stated, [Note("SHAPE-58", f"read in {stated} as stated, though the file says {own}")]
        return stated, []
    if own is None:
        what = "the file does not say its unit ($INSUNITS)" if not code else f"the file's unit code {code} is unusual"
        raise FaultsError([Fault("SHAPE-04", what, 'state it, as in "unit: mm"', Where(file))])
    return own, []


def _refuse_layer(found: Gathered, layer: str | None, file: str) -> None:
    if layer is not None and layer.lower() not in {name.lower() for name in found.layers}:
        what = f"nothing lies on a layer called {layer!r}"
        raise FaultsError([Fault("SHAPE-06", what, nearest(layer, found.layers), Where(file))])


def _in_mm(found: Gathered, ratio: float) -> tuple[list[Piece], list[ClosedPiece]]:
    grow = scale_by(ratio)
    loose = [Piece(tuple(edge.moved(grow) for edge in p.edges), p.name, p.layer) for p in found.loose]
    closed = [ClosedPiece(p.shape.moved(grow), p.name, p.layer) for p in found.closed]
    return loose, closed
