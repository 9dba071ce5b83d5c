"""The page of sources: what our tables and our tests against the world rest on."""

from __future__ import annotations

import csv
import tomllib
from pathlib import Path
from typing import Any

from outside_sources import Outside, all_outside_tests

HEAD = """# Sources

What our numbers rest on: the tables that come with the program, and the tests that compare its results with a standard,
a handbook, a worked example or a library that is not ours.
"""


def cell(text: object) -> str:
    """A text that can stand in a cell of a table."""
    return str(text).replace("|", "\\|").replace("\n", " ").strip()


def sources_of_file(path: Path, entry: dict[str, Any]) -> list[str]:
    """The ids of the sources that one table names, per row or as a whole."""
    lines = [line for line in path.read_text(encoding="utf-8").splitlines() if not line.startswith("#")]
    rows = list(csv.DictReader(lines))
    used = {row["source"] for row in rows if row.get("source")}
    return sorted(used or {str(entry.get("source", "-"))})


def tables_part(root: Path) -> str:
    """The tables and the sources that they name; empty while there are none."""
    room = root / "src" / "scantling" / "tables"
    if not (room / "SOURCES.toml").exists():
        return ""
    known = tomllib.loads((room / "SOURCES.toml").read_text(encoding="utf-8"))
    lines = ["", "## Tables", "", "| table | sources |", "| --- | --- |"]
    for path in sorted(room.rglob("*.csv")):
        name = path.relative_to(room).as_posix()
        ids = sources_of_file(path, known.get("files", {}).get(name, {}))
        lines.append(f"| `{name}` | {', '.join(ids)} |")
    lines += ["", "| source | title | edition or year | how it was confirmed |", "| --- | --- | --- | --- |"]
    for name, entry in sorted(known.get("sources", {}).items()):
        edition = entry.get("edition") or entry.get("year", "")
        lines.append(
            f"| {name} | {cell(entry.get('title', ''))} | {cell(edition)} | {cell(entry.get('confirmed', ''))} |"
        )
    return "\n".join(lines) + "\n"


def tests_part(tests: list[Outside]) -> str:
    """The tests against the world, file by file."""
    lines = ["", "## Checked against the world", "", f"{len(tests)} tests compare our results with something not ours."]
    for path in sorted({test.path for test in tests}):
        lines += ["", f"### `{path}`", ""]
        for test in (test for test in tests if test.path == path):
            words = test.name.removeprefix("test_").replace("_", " ")
            lines.append(f"- {words}: {'; '.join(test.sources) or '(no source named)'}")
    return "\n".join(lines) + "\n"


def sources_page(root: Path) -> str:
    """Make the whole page."""
    return HEAD + tables_part(root) + tests_part(all_outside_tests(root))
