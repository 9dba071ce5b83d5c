"""One drawing or mesh read by itself, and what is in it."""

from __future__ import annotations

from pathlib import Path

from scantling.errors import FaultsError, Where
from scantling.reading.collecting import Faults
from scantling.reading.drawings import DRAWING_ENDINGS, MESH_ENDINGS, drawing_of, outline_of
from scantling.reading.files import MOST_DRAWING_BYTES, MOST_MESH_BYTES, Folder
from scantling.reading.look import Look
from scantling.shapes.outline import Outline


def read_alone(path: Path) -> bytes:
    """Return the bytes of a drawing or a mesh; raises ``FaultsError`` for what it cannot be."""
    faults = Faults()
    folder = Folder(path.parent, faults, {})
    found = folder.find(path.name, path.parent, Where(str(path)))
    ending = path.suffix.casefold()
    if found is not None and ending not in (*DRAWING_ENDINGS, *MESH_ENDINGS):
        mend = f"name a file that ends in {', '.join((*DRAWING_ENDINGS, *MESH_ENDINGS))}"
        faults.add("13", f"{path.name!r} is neither a drawing nor a mesh", mend, Where(str(path)))
    most = MOST_MESH_BYTES if ending in MESH_ENDINGS else MOST_DRAWING_BYTES
    data = folder.read(found, most) if found is not None and not faults.found else None
    faults.raise_any()
    return data or b""


def read_outline(path: Path, unit: str | None = None) -> Outline:
    """Return the one outline of a drawing; raises ``FaultsError``."""
    return outline_of(read_alone(path), path.name, unit)


def look_at(path: Path, unit: str | None = None) -> Look:
    """Return what is in a drawing or a mesh, with residuals and entries; raises ``FaultsError``.

    unit : of a file that states none (``mm``, ``cm``, ``in``)
    """
    data = read_alone(path)
    try:
        if path.suffix.casefold() in MESH_ENDINGS:
            from scantling.reading.look_mesh import look_at_meshes
            from scantling.shapes.mesh_files import read_mesh

            return look_at_meshes(read_mesh(data, path.name, unit))
        from scantling.reading.look_drawing import look_at_drawing

        return look_at_drawing(drawing_of(data, path.name, unit), unit)
    except FaultsError as error:
        raise FaultsError(error.faults) from None
