"""Tables are text that can be trusted: every value has a source, a unit and a key, and some test knows its rules.

``tables/SOURCES.toml`` holds ``[sources.ID]`` (title; edition or year; confirmed: how we know) and, where a whole file
has one source or a key of several columns, ``[files."NAME.csv"]`` (source; key). A table's own rules (bore below
outside diameter, sizes that ascend …) are tested in tests/tables by its owner; here we ask that a test there names it.
"""

from __future__ import annotations

import csv
import io
import re
import tomllib
from collections.abc import Mapping
from typing import Any

import pytest

from housekit import ROOT, TABLES, carries_unit, expect_none

NO_TABLES_YET = pytest.mark.skipif(not any(TABLES.rglob("*.csv")), reason="there are no tables yet")
COUNTS = re.compile(
    r"(^|_)(count|number|teeth|starts|grade|class|code|poles|exponent|from|to|year|size|it|per_inch|rank)$"
)
NUMBER = re.compile(r"[+-]?\d+(\.\d+)?([eE][+-]?\d+)?")
TABLE_TESTS = ROOT / "tests" / "tables"


def rows_of(text: str) -> tuple[list[str], list[list[str]]]:
    """The header and the rows of a table; lines that begin with ``#`` say what it is."""
    lines = [line for line in text.splitlines() if line.strip() and not line.startswith("#")]
    rows = list(csv.reader(io.StringIO("\n".join(lines))))
    return (rows[0], rows[1:]) if rows else ([], [])


def shape_faults(name: str, text: str) -> list[str]:
    """Rows of another length, blanks at the ends of cells or lines, doubled headers, no rows."""
    header, rows = rows_of(text)
    faults = [
        f"{name}: row {n}: {len(row)} cells under {len(header)} headers"
        for n, row in enumerate(rows, 1)
        if len(row) != len(header)
    ]
    faults += [
        f"{name}: blank at the end of a cell: {cell!r}"
        for row in [header, *rows]
        for cell in row
        if cell != cell.strip()
    ]
    faults += [
        f"{name}: line {n} ends with a blank" for n, line in enumerate(text.splitlines(), 1) if line != line.rstrip()
    ]
    if len(set(header)) != len(header):
        faults.append(f"{name}: two columns have one name")
    return faults if rows else [*faults, f"{name}: holds no row"]


def unit_faults(name: str, text: str) -> list[str]:
    """Columns of numbers whose header names no unit and is no count."""
    header, rows = rows_of(text)
    faults = []
    for number, title in enumerate(header):
        cells = [row[number] for row in rows if len(row) > number and row[number]]
        if (
            cells
            and all(NUMBER.fullmatch(cell) for cell in cells)
            and not (carries_unit(title, "tables") or COUNTS.search(title))
        ):
            faults.append(f"{name}: column {title!r} holds numbers and names no unit")
    return faults


def source_faults(name: str, text: str, known: Mapping[str, Any]) -> list[str]:
    """Values without a source, and sources that nobody describes."""
    header, rows = rows_of(text)
    sources, entry = known.get("sources", {}), known.get("files", {}).get(name, {})
    if "source" in header:
        used = {row[header.index("source")] for row in rows if len(row) == len(header)}
    else:
        used = {entry.get("source", "")}
    return [f"{name}: source {one!r} is not in SOURCES.toml" for one in sorted(used) if one not in sources]


def key_faults(name: str, text: str, known: Mapping[str, Any]) -> list[str]:
    """Two rows with one key; the key is the first column unless the file's entry names others."""
    header, rows = rows_of(text)
    key = known.get("files", {}).get(name, {}).get("key", header[:1])
    unknown = [f"{name}: key column {one!r} does not exist" for one in key if one not in header]
    if unknown:
        return unknown
    places = [header.index(one) for one in key]
    seen: set[tuple[str, ...]] = set()
    faults = []
    for row in rows:
        value = tuple(row[place] for place in places if place < len(row))
        if value in seen:
            faults.append(f"{name}: two rows have the key {value}")
        seen.add(value)
    return faults


def description_faults(known: Mapping[str, Any]) -> list[str]:
    """Sources that say too little of themselves, and entries of files that do not exist."""
    faults = []
    for name, entry in known.get("sources", {}).items():
        if not entry.get("title"):
            faults.append(f"SOURCES.toml: {name} has no title")
        if not entry.get("edition") and not entry.get("year"):
            faults.append(f"SOURCES.toml: {name} has neither edition nor year")
        if len(str(entry.get("confirmed", "")).split()) < 2:
            faults.append(f"SOURCES.toml: {name} does not say how it was confirmed")
    return faults


def table_faults(name: str, text: str, known: Mapping[str, Any]) -> list[str]:
    """Everything that is wrong with one table."""
    return (
        shape_faults(name, text)
        + unit_faults(name, text)
        + source_faults(name, text, known)
        + key_faults(name, text, known)
    )


def shipped() -> dict[str, str]:
    """The tables of the package: name relative to the room -> text."""
    return {p.relative_to(TABLES).as_posix(): p.read_text(encoding="utf-8") for p in sorted(TABLES.rglob("*.csv"))}


def described() -> dict[str, Any]:
    """What SOURCES.toml says."""
    return tomllib.loads((TABLES / "SOURCES.toml").read_text(encoding="utf-8"))


@NO_TABLES_YET
def test_every_table_keeps_the_rules():
    known = described()
    expect_none(fault for name, text in shipped().items() for fault in table_faults(name, text, known))


@NO_TABLES_YET
def test_every_source_is_described_and_every_file_exists():
    known = described()
    expect_none(description_faults(known))
    assert sorted(set(known.get("files", {})) - set(shipped())) == []


@NO_TABLES_YET
def test_every_table_is_named_in_a_test_of_its_rules():
    tested = "".join(path.read_text(encoding="utf-8") for path in sorted(TABLE_TESTS.rglob("test_*.py")))
    unnamed = [
        name
        for name in shipped()
        if not re.search(rf"\b{re.escape(name.rpartition('/')[2].removesuffix('.csv'))}\b", tested)
    ]
    expect_none(unnamed)


KNOWN = {"sources": {"nut-std": {"title": "Nuts", "edition": "2012", "confirmed": "read in two tables"}}, "files": {}}
GOOD = "size,width_mm,source\nM3,5.5,nut-std\nM4,7,nut-std\n"


def test_a_good_table_passes():
    assert table_faults("nuts.csv", GOOD, KNOWN) == []
    assert description_faults(KNOWN) == []
    by_file = {**KNOWN, "files": {"nuts.csv": {"source": "nut-std", "key": ["size", "width_mm"]}}}
    assert table_faults("nuts.csv", "# Nuts\nsize,width_mm\nM3,5.5\nM3,6\n", by_file) == []


@pytest.mark.parametrize(
    ("old", "new", "reason"),
    [
        ("M4,7", "M3,7", "two rows have the key"),
        ("width_mm", "width", "names no unit"),
        ("M4,7,nut-std", "M4,7,hearsay", "not in SOURCES.toml"),
        ("source", "remark", "not in SOURCES.toml"),
        ("M4,7", "M4,7,8", "cells under"),
        ("M4,7", "M4 ,7", "blank at the end of a cell"),
        ("width_mm", "size", "two columns"),
        ("M3,5.5,nut-std\nM4,7,nut-std\n", "", "holds no row"),
    ],
)
def test_a_poor_table_is_found(old, new, reason):
    assert any(reason in fault for fault in table_faults("nuts.csv", GOOD.replace(old, new), KNOWN))


@pytest.mark.parametrize("lost", ["title", "edition", "confirmed"])
def test_a_poor_source_is_found(lost):
    entry = {key: value for key, value in KNOWN["sources"]["nut-std"].items() if key != lost}
    assert len(description_faults({"sources": {"nut-std": entry}})) == 1
