"""Finds every test marked ``outside`` and the sources it names; read by the house tests and by the page of sources.

A source stands in a comment line ``# Source: …`` or in a docstring line ``Source: …``: in the test, right above it, in
or above a table of the same file that the test uses, or in the file's docstring, where it holds for all its tests.
A line that is indented deeper than the one with ``Source:`` goes on with it.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

MARK = "pytest.mark.outside"
SOURCE = re.compile(r'^(?P<lead>\s*(?:#\s*)?(?:"""|r""")?)[Ss]ources?:\s*(?P<text>\S.*)$')
TestNode = ast.FunctionDef | ast.AsyncFunctionDef


@dataclass(frozen=True)
class Outside:
    """One test against the world, with the sources it names."""

    path: str
    line: int
    name: str
    sources: tuple[str, ...]


def sources_in(lines: list[str]) -> list[str]:
    """Every source that these lines name, long ones joined."""
    found = []
    for number, line in enumerate(lines):
        start = SOURCE.match(line)
        if start:
            deeper = re.compile(re.escape(start["lead"].replace('"""', "").rstrip("r")) + r"\s+(?P<text>\S.*)$")
            words = [start["text"]]
            for later in lines[number + 1 :]:
                more = deeper.match(later)
                if not more:
                    break
                words.append(more["text"])
            found.append(" ".join(words).rstrip('" ').rstrip("."))
    return found


def span(lines: list[str], node: ast.stmt) -> list[str]:
    """The lines of a statement, its decorators and the comment right above it."""
    decorators = getattr(node, "decorator_list", [])
    first = min([node.lineno, *(item.lineno for item in decorators)]) - 1
    while first and lines[first - 1].lstrip().startswith("#"):
        first -= 1
    return lines[first : node.end_lineno]


def tables_used(tree: ast.Module, node: TestNode) -> Iterator[ast.stmt]:
    """The assignments at the top of the file whose names the test, or one of its decorators, uses."""
    used = {name.id for name in ast.walk(node) if isinstance(name, ast.Name)}
    for statement in tree.body:
        targets = statement.targets if isinstance(statement, ast.Assign) else [getattr(statement, "target", None)]
        if any(isinstance(target, ast.Name) and target.id in used for target in targets):
            yield statement


def carries_mark(node: ast.AST) -> bool:
    """True where one of the decorators is the mark."""
    return any(MARK in ast.unparse(item) for item in getattr(node, "decorator_list", []))


def is_whole_file(statement: ast.stmt) -> bool:
    """True for ``pytestmark = …`` with the mark in it."""
    text = ast.unparse(statement) if isinstance(statement, ast.Assign) else ""
    return text.startswith("pytestmark") and MARK in text


def marked(tree: ast.Module) -> Iterator[TestNode]:
    """The tests that carry the mark themselves, through their class or through the file's ``pytestmark``."""
    whole_file = any(is_whole_file(statement) for statement in tree.body)
    for outer in tree.body:
        inner = outer.body if isinstance(outer, ast.ClassDef) else [outer]
        whole = whole_file or (isinstance(outer, ast.ClassDef) and carries_mark(outer))
        tests = [node for node in inner if isinstance(node, TestNode) and node.name.startswith("test")]
        yield from (node for node in tests if whole or carries_mark(node))


def outside_tests(path: str, text: str) -> list[Outside]:
    """Every test of one file that checks against the world."""
    if MARK not in text:
        return []
    tree, lines = ast.parse(text), text.splitlines()
    for_all = sources_in((ast.get_docstring(tree) or "").splitlines())
    found = []
    for node in marked(tree):
        named = sources_in(span(lines, node))
        for table in tables_used(tree, node):
            named += sources_in(span(lines, table))
        found.append(Outside(path, node.lineno, node.name, tuple(dict.fromkeys(named or for_all))))
    return found


def all_outside_tests(root: Path) -> list[Outside]:
    """Every test against the world in the repository, in the order of the files."""
    files: Iterable[Path] = sorted((root / "tests").rglob("test_*.py"))
    return [t for f in files for t in outside_tests(f.relative_to(root).as_posix(), f.read_text(encoding="utf-8"))]
