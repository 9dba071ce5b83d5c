"""The drawings and meshes that a design names, each file read once."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

from scantling.errors import FaultsError, Where
from scantling.model.design import Design
from scantling.model.kinds import Printed
from scantling.model.sheet import Sheet
from scantling.reading.files import MOST_DRAWING_BYTES, MOST_MESH_BYTES, Folder
from scantling.reading.scene import Scene
from scantling.shapes.drawn import Drawing
from scantling.shapes.mesh import MeshFacts, measure, require_closed
from scantling.shapes.mesh_files import read_mesh
from scantling.shapes.outline import Outline

DRAWING_ENDINGS = (".dxf", ".svg")
MESH_ENDINGS = (".stl", ".3mf", ".obj")


@dataclass
class Shapes:
    """Outlines by sheet, meshes by the name that the design writes."""

    outlines: dict[str, Outline] = field(default_factory=dict)
    meshes: dict[str, MeshFacts] = field(default_factory=dict)


def read_shapes(scene: Scene, folder: Folder, beside: Path) -> Shapes:
    """Return all outlines and meshes that can be read; the rest are faults."""
    reader = _Shapes(scene, folder, beside)
    for name, sheet in scene.design.sheets.items():
        reader.outline(name, sheet)
    for name, variant, mesh in _meshes(scene.design):
        reader.mesh(mesh, scene.where("design", "parts", name, "meshes", variant, "mesh"))
    return reader.shapes


def _meshes(design: Design) -> list[tuple[str, int, str]]:
    return [
        (name, number, variant.mesh)
        for name, part in design.parts.items()
        if isinstance(part, Printed)
        for number, variant in enumerate(part.meshes)
    ]


def outline_of(data: bytes, file: str, unit: str | None = None, layer: str | None = None) -> Outline:
    """Return the one outline of a drawing; raises ``FaultsError``."""
    return drawing_of(data, file, unit, layer).only()


def drawing_of(data: bytes, file: str, unit: str | None = None, layer: str | None = None) -> Drawing:
    """Return all that is in a drawing; raises ``FaultsError``."""
    if file.casefold().endswith(".svg"):
        from scantling.shapes.svg import read_svg

        return read_svg(data, file, unit=unit, layer=layer)
    from scantling.shapes.dxf import read_dxf

    return read_dxf(data, file, unit=unit, layer=layer)


def mesh_of(data: bytes, file: str) -> list[MeshFacts]:
    """Return the facts of all objects in a mesh file; raises ``FaultsError``, also where one is open."""
    facts = [measure(mesh) for mesh in read_mesh(data, file).meshes]
    for one in facts:
        require_closed(one, file)
    return facts


class _Shapes:
    """Finds and reads; remembers what was read and what was refused."""

    def __init__(self, scene: Scene, folder: Folder, beside: Path) -> None:
        self.scene = scene
        self.folder = folder
        self.beside = beside
        self.shapes = Shapes()
        self._outlines: dict[tuple[Path, str | None, str | None], Outline | None] = {}
        self._refused: set[str] = set()

    def outline(self, name: str, sheet: Sheet) -> None:
        """Read the drawing of a sheet."""
        where = self.scene.where("design", "sheets", name, "outline")
        path = self._path(sheet.outline, DRAWING_ENDINGS, where)
        if path is None:
            return
        key = (path, sheet.unit, sheet.layer)
        if key not in self._outlines:
            self._outlines[key] = self._read_outline(path, sheet, where)
        found = self._outlines[key]
        if found is not None:
            self.shapes.outlines[name] = found

    def _read_outline(self, path: Path, sheet: Sheet, where: Where) -> Outline | None:
        data = self.folder.read(path, MOST_DRAWING_BYTES, where)
        if data is None:
            return None
        try:
            return outline_of(data, self.folder.name_of(path), sheet.unit, sheet.layer)
        except FaultsError as error:
            self.scene.faults.take(error.faults)
            return None

    def mesh(self, written: str, where: Where) -> None:
        """Read a mesh."""
        if written in self.shapes.meshes or written in self._refused:
            return
        self._refused.add(written)
        path = self._path(written, MESH_ENDINGS, where)
        data = None if path is None else self.folder.read(path, MOST_MESH_BYTES, where)
        if path is None or data is None:
            return
        try:
            facts = mesh_of(data, self.folder.name_of(path))
        except FaultsError as error:
            self.scene.faults.take(error.faults)
            return
        if len(facts) == 1:
            self.shapes.meshes[written] = facts[0]
        else:
            what = f"{written!r} holds {len(facts)} objects, a printed part is one"
            self.scene.faults.add("44", what, "export each part in a file of its own", where)

    def _path(self, written: str, endings: tuple[str, ...], where: Where) -> Path | None:
        path = self.folder.find(written, self.beside, where)
        if path is not None and path.suffix.casefold() not in endings:
            mend = f"name a file that ends in {', '.join(endings)}"
            self.scene.faults.add("13", f"{written!r} is not of a kind that is read here", mend, where)
            return None
        return path
