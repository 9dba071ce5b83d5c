"""STL, OBJ and 3MF files to meshes in mm."""

from __future__ import annotations

import re
from io import BytesIO
from typing import Any
from zipfile import BadZipFile, ZipFile

from scantling.errors import Fault, FaultsError, Where
from scantling.shapes.drawn import Note, mm_per, refuse_large
from scantling.shapes.mesh import MOST_TRIANGLES, MeshFile, make_mesh

_MOST_UNPACKED = 600_000_000
_DEEPEST = 16
_STL_HEAD = 84
_STL_TRIANGLE = 50


def read_mesh(data: bytes, file: str, unit: str | None = None) -> MeshFile:
    """Return the objects of an STL, OBJ or 3MF file, told apart by the name's ending.

    unit : "mm", "in" …; STL and OBJ have none of their own and are taken as mm, with a note, where none is stated
    Raises FaultsError with SHAPE-01, 02, 05, 30 … 36.
    """
    refuse_large(data, file)
    kind = file.rpartition(".")[2].lower()
    if kind == "3mf":
        return _read_3mf(data, file, unit)
    if kind not in ("stl", "obj"):
        what = f"a mesh file ending in .{kind} is not read here"
        raise FaultsError([Fault("SHAPE-34", what, "export it as STL, 3MF or OBJ", Where(file))])
    points, triangles = _read_stl(data, file) if kind == "stl" else _read_obj(data, file)
    notes = () if unit else (Note("SHAPE-64", f"{kind.upper()} files have no unit: taken as mm"),)
    mesh = make_mesh("", points * mm_per(unit or "mm", file), triangles, file)
    return MeshFile(file, unit or "mm", (mesh,), notes)


def _bad(file: str, what: str, line: int = 0, code: str = "SHAPE-30") -> FaultsError:
    return FaultsError([Fault(code, what, "export it again", Where(file, line))])


def _read_stl(data: bytes, file: str) -> tuple[Any, Any]:
    """Binary where the length is what the count says, whatever the first word; text where it begins with "solid"."""
    import numpy as np

    count = int.from_bytes(data[80:84], "little") if len(data) >= _STL_HEAD else -1
    if len(data) == _STL_HEAD + _STL_TRIANGLE * count:
        return _binary_stl(data, count)
    if data.lstrip()[:5].lower() == b"solid" and b"facet" in data[:4096]:
        corners = _text_stl(data, file)
        return corners, np.arange(len(corners)).reshape(-1, 3)
    if count >= 0 and len(data) > _STL_HEAD + _STL_TRIANGLE * count > _STL_HEAD:
        return _binary_stl(data, count)
    if 0 < count <= MOST_TRIANGLES:
        whole = max(0, len(data) - _STL_HEAD) // _STL_TRIANGLE
        raise _bad(file, f"the file is cut off: it says {count} triangles and holds {whole}", code="SHAPE-31")
    raise _bad(file, "this is not an STL file")


def _binary_stl(data: bytes, count: int) -> tuple[Any, Any]:
    import numpy as np

    record = np.dtype([("normal", "<f4", 3), ("corners", "<f4", (3, 3)), ("spare", "<u2")])
    facets = np.frombuffer(data, dtype=record, count=count, offset=_STL_HEAD)
    return facets["corners"].reshape(-1, 3).astype(float), np.arange(3 * count).reshape(-1, 3)


def _text_stl(data: bytes, file: str) -> Any:
    import numpy as np

    if b"endsolid" not in data[-4096:]:
        raise _bad(file, "the file is cut off: it has no endsolid", data.count(b"\n") + 1, "SHAPE-31")
    words = re.findall(rb"vertex\s+(\S+)\s+(\S+)\s+(\S+)", data)
    try:
        corners = np.array(words, dtype=float).reshape(-1, 3)
    except ValueError as error:
        raise _bad(file, f"a vertex is no number: {error}") from error
    if len(corners) % 3 or len(corners) != 3 * data.count(b"endfacet"):
        raise _bad(file, f"{len(corners)} corners do not make {data.count(b'endfacet')} triangles", code="SHAPE-31")
    return corners


def _read_obj(data: bytes, file: str) -> tuple[Any, Any]:
    """Corners and faces; faces of more than three corners are cut up from their first corner."""
    import numpy as np

    points: list[list[float]] = []
    triangles: list[tuple[int, int, int]] = []
    for number, line in enumerate(data.decode("utf-8", "replace").splitlines(), start=1):
        words = line.split()
        try:
            if words and words[0] == "v":
                points.append([float(word) for word in words[1:4]])
            elif words and words[0] == "f":
                triangles += _fan([_index(word, len(points)) for word in words[1:]])
        except (ValueError, IndexError) as error:
            raise _bad(file, f"this line cannot be read: {line.strip()[:60]!r}", number) from error
        if len(triangles) > MOST_TRIANGLES or (points and len(points[-1]) != 3):
            raise _bad(file, "too many triangles, or a corner without three figures", number)
    if not points or not triangles:
        raise _bad(file, "the file holds no faces", code="SHAPE-32")
    return np.array(points), np.array(triangles)


def _index(word: str, known: int) -> int:
    """Faces count corners from 1, or backwards from the last with a minus."""
    number = int(word.partition("/")[0])
    index = number - 1 if number > 0 else known + number
    if number == 0 or not 0 <= index < known:
        raise IndexError(f"corner {number} of {known}")
    return index


def _fan(corners: list[int]) -> list[tuple[int, int, int]]:
    if len(corners) < 3:
        raise ValueError("a face needs three corners")
    return [(corners[0], corners[k], corners[k + 1]) for k in range(1, len(corners) - 1)]


def _read_3mf(data: bytes, file: str, unit: str | None) -> MeshFile:
    import lib3mf

    _refuse_bomb(data, file)
    try:
        wrapper = lib3mf.get_wrapper()
        model = wrapper.CreateModel()
        model.QueryReader("3mf").ReadFromBuffer(data)
        own = _UNITS_3MF[int(model.GetUnit())]
        parts = _built(model, file)
    except (FaultsError, MemoryError, NameError):
        raise
    except Exception as error:  # the file is not ours to trust: whatever the library trips over is a fault of it
        raise _bad(file, f"this is not a 3MF file that can be read: {' '.join(str(error).split())[:120]}") from error
    if not parts:
        raise _bad(file, "the file says of nothing that it is to be built", code="SHAPE-32")
    ratio = mm_per(unit or own, file)
    meshes = tuple(make_mesh(name, points * ratio, triangles, file) for name, points, triangles in parts)
    notes = (Note("SHAPE-58", f"read in {unit} as stated, though the file says {own}"),) if unit and unit != own else ()
    return MeshFile(file, unit or own, meshes, notes)


_UNITS_3MF = ("um", "mm", "cm", "in", "ft", "m")
"""In the order of the 3MF core specification's list of units, as the library numbers them."""


def _refuse_bomb(data: bytes, file: str) -> None:
    try:
        with ZipFile(BytesIO(data)) as folder:
            unpacked = sum(entry.file_size for entry in folder.infolist())
    except (BadZipFile, NotImplementedError, ValueError) as error:
        raise _bad(file, f"this is not a 3MF file: {error}") from error
    if unpacked > _MOST_UNPACKED:
        raise _bad(file, f"the file unpacks to {unpacked / 1e6:.0f} MB, the limit is {_MOST_UNPACKED / 1e6:.0f} MB")


def _built(model: Any, file: str) -> list[tuple[str, Any, Any]]:
    """What the file says is to be built, each thing where it stands."""
    import numpy as np

    parts: list[tuple[str, Any, Any]] = []
    items = model.GetBuildItems()
    while items.MoveNext():
        item = items.GetCurrent()
        _collect(model, item.GetObjectResource(), _matrix(item.GetObjectTransform()), parts, 0, file)
    return [(name, np.asarray(points), triangles) for name, points, triangles in parts]


def _matrix(transform: Any) -> Any:
    """The library's four rows of three as a 4 x 4 matrix for points written as rows."""
    import numpy as np

    matrix = np.eye(4)
    matrix[:, :3] = [list(row) for row in transform.Fields]
    return matrix


def _collect(model: Any, thing: Any, matrix: Any, parts: list[tuple[str, Any, Any]], depth: int, file: str) -> None:
    if depth > _DEEPEST or sum(len(triangles) for _, _, triangles in parts) > MOST_TRIANGLES:
        raise _bad(file, "its parts are nested too deeply or too many", code="SHAPE-36")
    if thing.IsMeshObject():
        mesh = model.GetMeshObjectByID(thing.GetResourceID())
        points, triangles = _table(mesh.GetVertices(), "<f4"), _table(mesh.GetTriangleIndices(), "<u4")
        placed = points.astype(float) @ matrix[:3, :3] + matrix[3, :3]
        parts.append((thing.GetName(), placed, triangles.astype("int64")))
    elif thing.IsComponentsObject():
        group = model.GetComponentsObjectByID(thing.GetResourceID())
        for index in range(group.GetComponentCount()):
            component = group.GetComponent(index)
            inner = _matrix(component.GetTransform()) @ matrix
            _collect(model, component.GetObjectResource(), inner, parts, depth + 1, file)


def _table(rows: Any, kind: str) -> Any:
    """The library's list of small structures as an (n, 3) array, in one copy."""
    import numpy as np

    if not rows:
        return np.zeros((0, 3), dtype=kind)
    return np.frombuffer((type(rows[0]) * len(rows))(*rows), dtype=kind).reshape(-1, 3)
