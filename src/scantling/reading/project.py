"""A whole project: a design's folder and a workshop, every fault of both told at once."""

from __future__ import annotations

from pathlib import Path
from types import MappingProxyType

from scantling.errors import Where, nearest
from scantling.model.design import Design
from scantling.model.project import Project
from scantling.model.workshop import Workshop
from scantling.reading.collecting import Faults
from scantling.reading.document import Document, read_document
from scantling.reading.drawings import Shapes, read_shapes
from scantling.reading.files import NOT_THERE, Folder
from scantling.reading.nodes import places
from scantling.reading.offer_names import with_offer_names
from scantling.reading.rules import RULES
from scantling.reading.scene import Scene

DESIGN_FILE = "design.yaml"
WORKSHOP_FOLDER = "workshops"
NO_WORKSHOP = Workshop(name="no workshop", currency="EUR")


def read_project(folder: Path, workshop: Path | str | None = None, copies: int | None = None) -> Project:
    """Return a design with a workshop, everything read and checked against each other.

    folder : the design's folder, or its file
    workshop : a file, or the name of one in the design's folder ``workshops``; without one a neutral workshop
    copies : to build, in place of what the workshop says

    Raises ``FaultsError`` with every fault of both.
    """
    return _Opening(folder, copies).project(workshop)


def read_design(folder: Path) -> Design:
    """Return a design alone; raises ``FaultsError``."""
    return read_project(folder).design


class _Opening:
    """Gathers what belongs to a project."""

    def __init__(self, folder: Path, copies: int | None) -> None:
        self.copies = copies
        self.faults = Faults()
        self.digests: dict[str, str] = {}
        self.seen: dict[str, str] = {}
        self.path = folder if folder.is_file() else folder / DESIGN_FILE
        self.folder = Folder(self.path.parent, self.faults, self.digests, seen=self.seen)

    def project(self, named: Path | str | None) -> Project:
        """Return the project, or raise all faults."""
        design = self._design()
        shop, is_shared = self._workshop(named)
        scene = Scene(design, shop, self.faults, is_shared=is_shared)
        shapes = read_shapes(scene, self.folder, self.path.parent)
        scene.outlines = shapes.outlines
        for rule in RULES:
            rule(scene)
        if self.copies is not None and self.copies < 1:
            self.faults.add("26", f"{self.copies} copies", "ask for 1 or more")
        self.faults.raise_any()
        return self._put_together(design, shop, shapes)

    def _design(self) -> Document[Design]:
        if not self.path.is_file():
            there = self.path.parent.exists()
            what = f"there is no {DESIGN_FILE} in {self.path.parent.name!r}" if there else "there is no such folder"
            mend = "name the folder of a design, or begin one with: scantling new"
            self.faults.add("01", what, mend, Where(self.path.as_posix()))
            self.faults.raise_any()
        return read_document(self.path, Design, self.folder, self.faults)

    def _workshop(self, named: Path | str | None) -> tuple[Document[Workshop] | None, bool]:
        """Return the workshop and whether its file lies outside the design's folder."""
        path = None if named is None else self._workshop_path(named)
        if path is None:
            return None, False
        if path.resolve().is_relative_to(self.folder.root):
            return read_document(path, Workshop, self.folder, self.faults), False
        outside = Folder(
            path.parent, self.faults, self.digests, prefix=f"{path.resolve().parent.name}/", seen=self.seen
        )
        return read_document(path, Workshop, outside, self.faults), True

    def _workshop_path(self, named: Path | str) -> Path | None:
        """Return the file that is meant: one that is there, else one of that name among the design's workshops."""
        here = self.path.parent / WORKSHOP_FOLDER
        for path in (Path(named), here / f"{named}.yaml", here / str(named)):
            if path.is_file():
                return path
            self.seen[str(path.resolve())] = NOT_THERE
        known = sorted(path.stem for path in here.glob("*.yaml")) if here.is_dir() else []
        mend = nearest(Path(named).stem, known) if known else f"write one in {WORKSHOP_FOLDER}/{Path(named).stem}.yaml"
        self.faults.add("01", f"there is no workshop {str(named)!r}", mend, Where(str(named)))
        return None

    def _put_together(self, design: Document[Design], shop: Document[Workshop] | None, shapes: Shapes) -> Project:
        wheres = dict(places(design.tree, ("design",)))
        workshop = NO_WORKSHOP
        if shop is not None:
            wheres |= places(shop.tree, ("workshop",))
            workshop = with_offer_names(shop.value)
        if self.copies is not None:
            workshop = workshop.model_copy(update={"copies": self.copies})
        return Project(
            design.value,
            workshop,
            MappingProxyType(shapes.outlines),
            MappingProxyType(shapes.meshes),
            MappingProxyType(wheres),
            MappingProxyType(dict(sorted(self.digests.items()))),
            MappingProxyType(dict(sorted(self.seen.items()))),
        )
