"""From the rows of a table to the same trees that YAML gives: one column a field, dots for what lies deeper.

An empty cell is a missing value. Lists stand in one cell, parted by semicolons.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any, get_origin

from scantling.errors import Where, nearest
from scantling.reading.collecting import Faults
from scantling.reading.fields import alternatives, field_types, is_size, item_type, models, value_type
from scantling.reading.grid import REFUSED, Cell, Grid
from scantling.reading.nodes import Broken, Entries, Items, Node, Text

_LIST = re.compile(r"\s*;\s*")
_POINT = re.compile(r"\s*;\s*|,\s+")


@dataclass(frozen=True)
class Column:
    """A column: the keys that lead to its value, and the type of that."""

    path: tuple[str, ...]
    annotation: Any


def table_nodes(grid: Grid, annotation: Any, faults: Faults, extra: tuple[str, ...] = ()) -> list[Entries] | None:
    """Return one group of keys for every row; None where the header cannot be used.

    annotation : type of what a row describes    extra : further columns that are texts (``id``)
    """
    if not grid.rows:
        faults.add("05", f"{grid.file} holds no table", "write the header and its rows", Where(grid.file))
        return None
    columns = _columns(grid, annotation, faults, extra)
    if columns is None:
        return None
    return [_row(grid, row, columns, faults) for row in grid.rows[1:]]


def _columns(grid: Grid, annotation: Any, faults: Faults, extra: tuple[str, ...]) -> dict[int, Column] | None:
    before = len(faults.found)
    columns: dict[int, Column] = {}
    names: dict[str, Cell] = {}
    for cell in grid.rows[0]:
        if not cell.text:
            continue
        where = cell.where(grid.file)
        column = Column((cell.text,), str) if cell.text in extra else column_of(annotation, cell.text)
        if cell.text in names:
            faults.add("14", f"two columns are called {cell.text!r}", "rename or delete one", where)
        elif column is None:
            known = [*extra, *known_columns(annotation)]
            faults.add("14", f"no column is called {cell.text!r}", nearest(cell.text, known), where)
        else:
            columns[cell.column] = column
        names.setdefault(cell.text, cell)
    return columns if len(faults.found) == before else None


def known_columns(annotation: Any) -> list[str]:
    """Return the names of all columns that need no dot."""
    return [name for model in models(annotation) for name in field_types(model) if name != "id"]


def column_of(annotation: Any, header: str) -> Column | None:
    """Return what a header means for a type; None where it means nothing.

    ``into.place`` leads into a group of keys, ``sizes.flange`` and ``brings.M3 nut`` into one with free keys.
    """
    name, dot, rest = header.partition(".")
    types = {field: kind for model in models(annotation) for field, kind in field_types(model).items()}
    if name not in types or name == "id":
        return None
    if not dot:
        return Column((name,), types[name])
    held = value_type(types[name])
    if held is not None and rest:
        return Column((name, rest), held)
    deeper = column_of(types[name], rest) if models(types[name]) else None
    return None if deeper is None else Column((name, *deeper.path), deeper.annotation)


def _row(grid: Grid, row: list[Cell], columns: dict[int, Column], faults: Faults) -> Entries:
    entries = Entries({}, {}, row[0].where(grid.file))
    for cell in row:
        if not cell.text:
            continue
        where = cell.where(grid.file)
        column = columns.get(cell.column)
        if column is None:
            what = f"{cell.text[:30]!r} stands under no header"
            faults.add("15", what, "give the column a header; quote a text that holds the separator", where)
        else:
            _put(entries, column.path, _value(cell, where, column.annotation))
    return entries


def _put(entries: Entries, path: tuple[str, ...], value: Node) -> None:
    """Set a value, making the groups on the way to it."""
    for name in path[:-1]:
        inner = entries.entries.get(name)
        if not isinstance(inner, Entries):
            inner = Entries({}, {}, value.where)
            entries.entries[name], entries.keys[name] = inner, value.where
        entries = inner
    entries.entries[path[-1]], entries.keys[path[-1]] = value, value.where


def _value(cell: Cell, where: Where, annotation: Any) -> Node:
    if cell.text == REFUSED:
        return Broken(where)
    held = item_type(annotation)
    if held is not None:
        if get_origin(next(iter(alternatives(held)))) is tuple:
            return Items([_list(text, where, _POINT) for text in _LIST.split(cell.text)], where)
        return _list(cell.text, where, _POINT if is_size(held) and ";" not in cell.text else _LIST)
    if value_type(annotation) is not None:
        return _free_keys(cell.text, where)
    return Text(cell.text, where)


def _list(text: str, where: Where, separator: re.Pattern[str]) -> Items:
    return Items([Text(part, where) for part in separator.split(text.strip().strip(";")) if part], where)


def _free_keys(text: str, where: Where) -> Node:
    """``panel: 1; x-motor: all`` is a group, ``panel; x-motor`` a list."""
    parts = [part for part in _LIST.split(text) if part]
    if not all(":" in part for part in parts):
        return Items([Text(part, where) for part in parts], where)
    pairs = [part.partition(":") for part in parts]
    entries: dict[str, Node] = {key.strip(): Text(value.strip(), where) for key, _, value in pairs}
    return Entries(entries, dict.fromkeys(entries, where), where)
