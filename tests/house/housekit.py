"""What all the house tests share: the source as syntax trees, and tiny modules made from text for the bad examples."""

from __future__ import annotations

import ast
import csv
import subprocess
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = ROOT / "src" / "scantling"
TABLES = PACKAGE / "tables"
FACES = ("cli", "app")

FunctionNode = ast.FunctionDef | ast.AsyncFunctionDef


@dataclass(frozen=True)
class Module:
    """One Python file of ours, read but never run."""

    name: str
    path: str
    text: str
    tree: ast.Module
    is_package: bool = False

    @property
    def room(self) -> str:
        """The part of the name below ``scantling``; ``""`` for the top itself."""
        return [*self.name.split("."), ""][1]


def from_text(name: str, text: str, is_package: bool = False) -> Module:
    """Make a module out of a text: how a bad example comes into being."""
    return Module(name, name.replace(".", "/") + ".py", text, ast.parse(text), is_package)


def from_file(path: Path, top: Path) -> Module:
    """Read one file; its name is counted from the folder ``top``."""
    parts = path.relative_to(top).with_suffix("").parts
    is_package = parts[-1] == "__init__"
    text = path.read_text(encoding="utf-8")
    name = ".".join(parts[:-1] if is_package else parts)
    return Module(name, path.relative_to(ROOT).as_posix(), text, ast.parse(text), is_package)


def package_modules() -> list[Module]:
    """Every module of the package, sorted by path."""
    return [from_file(path, PACKAGE.parent) for path in sorted(PACKAGE.rglob("*.py"))]


def script_modules(*folders: str) -> list[Module]:
    """Every Python file under the named folders of the repository, sorted by path."""
    found = [path for folder in folders for path in sorted((ROOT / folder).rglob("*.py"))]
    return [from_file(path, ROOT) for path in found]


def functions(tree: ast.AST) -> Iterator[FunctionNode]:
    """Every function and method, nested ones too."""
    for node in ast.walk(tree):
        if isinstance(node, FunctionNode):
            yield node


def public_definitions(body: Iterable[ast.stmt], prefix: str = "") -> Iterator[tuple[str, FunctionNode | ast.ClassDef]]:
    """Public functions, classes and methods, with their dotted name; what is nested in a function is not public."""
    for node in body:
        if isinstance(node, FunctionNode | ast.ClassDef) and not node.name.startswith("_"):
            yield prefix + node.name, node
            if isinstance(node, ast.ClassDef):
                yield from public_definitions(node.body, f"{prefix}{node.name}.")


def dotted(node: ast.AST) -> str:
    """``a.b.c`` for a chain of names, ``""`` for anything else; a call stands for what is called."""
    if isinstance(node, ast.Name):
        return node.id
    if isinstance(node, ast.Attribute):
        return f"{dotted(node.value)}.{node.attr}"
    if isinstance(node, ast.Call):
        return dotted(node.func)
    return ""


def decorators(node: FunctionNode | ast.ClassDef) -> list[str]:
    """The dotted names of the decorators."""
    return [dotted(item) for item in node.decorator_list]


@cache
def unit_suffixes(scope: str) -> frozenset[str]:
    """The agreed endings of names, without the leading underscore; ``tables`` has a few more than ``everywhere``."""
    with (Path(__file__).parent / "units.csv").open(encoding="utf-8", newline="") as file:
        return frozenset(row["suffix"] for row in csv.DictReader(file) if row["scope"] in ("everywhere", scope))


def carries_unit(name: str, scope: str = "everywhere") -> bool:
    """True where a name ends with an agreed unit (``span_mm``) or is nothing but one (``mm``)."""
    return any(name == suffix or name.endswith("_" + suffix) for suffix in unit_suffixes(scope))


def own_files() -> list[Path]:
    """Every file that is, or is about to be, under version control; all files where there is no repository."""
    command = ["git", "-C", str(ROOT), "ls-files", "-z", "--cached", "--others", "--exclude-standard"]
    try:
        listed = subprocess.run(command, capture_output=True, check=True).stdout.decode("utf-8").split("\0")
    except (OSError, subprocess.CalledProcessError):
        skipped = {".venv", ".git", "__pycache__", "out"}
        return sorted(p for p in ROOT.rglob("*") if p.is_file() and not skipped & set(p.relative_to(ROOT).parts))
    return sorted(ROOT / name for name in listed if name and (ROOT / name).is_file())


def expect_none(faults: Iterable[str]) -> None:
    """Fail with every fault on a line of its own."""
    found = list(faults)
    assert not found, "\n" + "\n".join(found)
