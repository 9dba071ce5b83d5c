"""Inspect: what is in a drawing or a mesh, with its residuals; entries that the maker only has to name."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from scantling.errors import Fault, FaultsError
from scantling.reading.look import Look
from scantling.reading.looking import look_at


@dataclass(frozen=True)
class Inspected:
    """What one file holds.

    rows : (what, size, where, how well it fits)    entries : YAML to paste into a design, names left open
    """

    file: str
    kind: str
    size: str
    rows: tuple[tuple[str, str, str, str], ...]
    notes: tuple[str, ...]
    entries: str


def inspect_file(path: Path, unit: str | None = None) -> Inspected:
    """Return what is in a DXF, SVG, STL, 3MF or OBJ file; raises ``FaultsError`` where it cannot be read."""
    return _shown(look_at(path, unit))


def inspect_files(paths: Sequence[Path], unit: str | None = None) -> tuple[Inspected, ...]:
    """Return what is in each file; raises ``FaultsError`` with the faults of all."""
    found: list[Inspected] = []
    faults: list[Fault] = []
    for path in paths:
        try:
            found.append(inspect_file(path, unit))
        except FaultsError as error:
            faults.extend(error.faults)
    if faults:
        raise FaultsError(faults)
    return tuple(found)


def _shown(look: Look) -> Inspected:
    rows = tuple((feature.what, feature.size, feature.where, feature.fit) for feature in look.features)
    return Inspected(look.file, look.kind, look.size, rows, look.notes, look.entries)


def inspected_data(inspected: Inspected) -> dict[str, Any]:
    """Return it as plain data."""
    names = ("what", "size", "where", "fit")
    rows = [dict(zip(names, row, strict=True)) for row in inspected.rows]
    return {
        "file": inspected.file,
        "kind": inspected.kind,
        "size": inspected.size,
        "found": rows,
        "notes": list(inspected.notes),
        "entries": inspected.entries,
    }
