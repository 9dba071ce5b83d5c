"""What reading hands on: a design and a workshop with the files they name, and where each value stands."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from scantling.errors import NOWHERE, Where
from scantling.model.design import Design
from scantling.model.workshop import Workshop
from scantling.shapes.mesh import MeshFacts
from scantling.shapes.outline import Outline

Path = tuple[str | int, ...]


@dataclass(frozen=True)
class Project:
    """Everything that was read, validated.

    outlines : by sheet identifier    meshes : by file name as the design writes it
    wheres : by path, ``("design", "parts", "rod-8", "diameter")`` or ``("workshop", "vendors", "yard")``
    digests : content digest of every file read, by file name, for caches and ``plan.lock``
    seen : the same by whole path, "" for one that was looked for in vain: by which a later run sees what has changed
    """

    design: Design
    workshop: Workshop
    outlines: Mapping[str, Outline] = field(default_factory=lambda: MappingProxyType({}))
    meshes: Mapping[str, MeshFacts] = field(default_factory=lambda: MappingProxyType({}))
    wheres: Mapping[Path, Where] = field(default_factory=lambda: MappingProxyType({}))
    digests: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    seen: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))

    def where(self, *path: str | int) -> Where:
        """Return where a value stands, or where the nearest thing around it does."""
        for length in range(len(path), 0, -1):
            found = self.wheres.get(tuple(path[:length]))
            if found is not None:
                return found
        return NOWHERE
