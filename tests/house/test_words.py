"""Nothing in the repository points at one machine: no absolute folder of somebody's disk, no host of a registry."""

from __future__ import annotations

import re
from collections.abc import Iterable
from pathlib import Path

import pytest

from housekit import ROOT, expect_none, own_files

# Put together from pieces, so that this file does not hold what it forbids.
FOLDERS = re.compile(r"(?<![\w.:~<>-])/(?:" + "|".join(("work", "home", "root", "Users")) + r")/\w")
HOSTS = re.compile(
    "|".join(
        re.escape(".".join(parts))
        for parts in (
            ("pypi", "org"),
            ("pythonhosted", "org"),
            ("npmjs", "org"),
            ("npmjs", "com"),
            ("deb", "debian", "org"),
            ("security", "debian", "org"),
            ("proxy", "golang", "org"),
            ("crates", "io"),
        )
    )
)
BINARY = {".png", ".jpg", ".pdf", ".stl", ".3mf", ".xlsx", ".ods", ".zip", ".gz", ".ttf", ".woff2", ".ico", ".db"}


def word_faults(name: str, text: str) -> list[str]:
    """Every forbidden word of one text, with its line."""
    faults = []
    for number, line in enumerate(text.splitlines(), 1):
        if FOLDERS.search(line):
            faults.append(f"{name}:{number}: a folder of one machine")
        if HOSTS.search(line):
            faults.append(f"{name}:{number}: the host of a package registry")
    return faults


def file_faults(paths: Iterable[Path]) -> list[str]:
    """Every forbidden word in the text files given."""
    faults = []
    for path in paths:
        if path.suffix.lower() not in BINARY:
            faults += word_faults(path.relative_to(ROOT).as_posix(), path.read_text(encoding="utf-8", errors="replace"))
    return faults


def test_no_word_of_one_machine():
    paths = own_files()
    assert ROOT / "pyproject.toml" in paths
    expect_none(file_faults(paths))


@pytest.mark.parametrize(
    "line",
    [
        "see /" + "work/main/notes",
        "path = '/" + "home/someone/x'",
        '"/' + 'Users/someone"',
        "index = " + ".".join(("pypi", "org")) + "/simple",
    ],
)
def test_a_forbidden_word_is_found(line):
    assert len(word_faults("a.md", line)) == 1


@pytest.mark.parametrize("line", ["src/" + "work/plan.py", "the home/ folder", "a pipe/" + "root/x", "~/" + "work/x"])
def test_an_innocent_line_passes(line):
    assert word_faults("a.md", line) == []
