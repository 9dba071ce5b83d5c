"""The sections of a design or a workshop, wherever they stand: in the file itself, or in files that it names.

``parts: {…}`` · ``parts: parts.yaml`` · ``parts: [parts.yaml, screws.csv]``; tables may be .csv, .xlsx or .ods.
"""

from __future__ import annotations

from pathlib import Path as FilePath
from typing import Any

from scantling.errors import Where
from scantling.reading.collecting import Faults
from scantling.reading.csv_grid import csv_grid
from scantling.reading.fields import models
from scantling.reading.files import MOST_TEXT_BYTES, Folder, decoded
from scantling.reading.grid import Grid
from scantling.reading.nodes import NAMES, Broken, Entries, Items, Node, Text
from scantling.reading.table_nodes import table_nodes
from scantling.reading.yaml_nodes import read_yaml

YAML_ENDINGS = (".yaml", ".yml")
TABLE_ENDINGS = (".csv", ".tsv", ".xlsx", ".ods")


class Sections:
    """Gathers sections; ``folder`` is where names of files are looked up, from the file that names them."""

    def __init__(self, folder: Folder, beside: FilePath, faults: Faults) -> None:
        """Read for a file in the folder ``beside``."""
        self.folder = folder
        self.beside = beside
        self.faults = faults
        self.lost: set[str] = set()  # sections of which something could not be read, so that names may be missing

    def keyed(self, node: Node, section: str, annotation: Any) -> Entries:
        """Return a section whose entries have identifiers; the same one twice is a fault."""
        found = Entries({}, {}, node.where)
        for part in self._parts(node, section, annotation, keyed=True):
            if isinstance(part, Entries):
                self._merge(found, part)
            elif not isinstance(part, Broken):
                what = f"{section}: {NAMES[type(part)]} where identifiers with their entries are wanted"
                self.faults.add("22", what, "write identifier: {…}, or the names of files", part.where)
        return found

    def _merge(self, found: Entries, part: Entries) -> None:
        for key, child in part.entries.items():
            if key in found.entries:
                what = f"{key!r} stands twice (first at {found.keys[key]})"
                self.faults.add("08", what, "keep one of them, or rename one", part.keys[key])
            else:
                found.entries[key], found.keys[key] = child, part.keys[key]

    def listed(self, node: Node, section: str, annotation: Any) -> Items:
        """Return a section that is a list."""
        found = Items([], node.where)
        for part in self._parts(node, section, annotation, keyed=False):
            if isinstance(part, Items):
                found.items += part.items
            elif isinstance(part, Entries):
                found.items.append(part)
            elif not isinstance(part, Broken):
                what = f"{section}: {NAMES[type(part)]} where a list is wanted"
                self.faults.add("22", what, "write a list of groups, or the names of files", part.where)
        return found

    def _parts(self, node: Node, section: str, annotation: Any, *, keyed: bool) -> list[Node]:
        """Return what a section is made of, files read."""
        if isinstance(node, Text):
            return self._file(node, section, annotation, keyed=keyed)
        if isinstance(node, Items):
            parts: list[Node] = []
            for item in node.items:
                parts += self._file(item, section, annotation, keyed=keyed) if isinstance(item, Text) else [item]
            return parts
        return [node]

    def _file(self, name: Text, section: str, annotation: Any, *, keyed: bool) -> list[Node]:
        """Return what a file holds; a fault in it makes the section incomplete."""
        before = len(self.faults.found)
        parts = self._read(name, section, annotation, keyed=keyed)
        if len(self.faults.found) > before:
            self.lost.add(section)
        return parts

    def _read(self, name: Text, section: str, annotation: Any, *, keyed: bool) -> list[Node]:
        path = self.folder.find(name.value, self.beside, name.where)
        if path is None:
            return []
        ending = path.suffix.casefold()
        if ending not in YAML_ENDINGS + TABLE_ENDINGS:
            mend = f"name a file that ends in {', '.join(YAML_ENDINGS + TABLE_ENDINGS)}"
            self.faults.add("13", f"{section} cannot be read from {name.value!r}", mend, name.where)
            return []
        data = self.folder.read(path, MOST_TEXT_BYTES, name.where)
        if data is None:
            return []
        file = self.folder.name_of(path)
        if ending in YAML_ENDINGS:
            text = decoded(data, file, self.faults)
            tree = None if text is None else read_yaml(text, file, self.faults)
            return [] if tree is None else [tree]
        grid = read_grid(data, file, section, self.faults)
        return [] if grid is None else self._rows(grid, annotation, keyed=keyed)

    def _rows(self, grid: Grid, annotation: Any, *, keyed: bool) -> list[Node]:
        if not keyed:
            rows = table_nodes(grid, annotation, self.faults, ("id",))
            return [] if rows is None else [Items(list(rows), Where(grid.file, 1, 1))]
        is_size = not models(annotation)
        rows = table_nodes(grid, annotation, self.faults, ("id", "size") if is_size else ("id",))
        return [] if rows is None else [self._by_id(row, is_size) for row in rows]

    def _by_id(self, row: Entries, is_size: bool) -> Node:
        """Return a row as an entry under its identifier."""
        key = row.entries.pop("id", None)
        if not isinstance(key, Text):
            self.faults.add("15", "the row has no id", "fill the column id", row.where)
            return Broken(row.where)
        row.keys.pop("id")
        value = row.entries.get("size", Broken(row.where)) if is_size else row
        if isinstance(value, Broken):
            self.faults.add("15", f"{key.value!r} has no size", "fill the column size", row.where)
        return Entries({key.value: value}, {key.value: key.where}, key.where)


def read_grid(data: bytes, file: str, section: str, faults: Faults) -> Grid | None:
    """Return the table in a file, told by its ending; None after a fault."""
    ending = file.rpartition(".")[2].casefold()
    if ending in ("csv", "tsv"):
        return csv_grid(data, file, faults)
    if ending == "xlsx":
        from scantling.reading.xlsx_grid import xlsx_grid

        return xlsx_grid(data, file, section, faults)
    from scantling.reading.ods_grid import ods_grid

    return ods_grid(data, file, section, faults)
