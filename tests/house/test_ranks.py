"""One direction: every import, also one inside a function, goes to a lower rank or stays in its room; no circles.

The ranks are those of docs/decisions/0001-layout-and-ranks.md.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator, Sequence

import pytest

from housekit import FACES, Module, expect_none, from_text, package_modules

RANKS = {
    "": 0,
    "errors": 0,
    "findings": 0,
    "quantities": 0.5,  # a text that is not a quantity is told through ``errors``
    "tables": 1,
    "formulas": 1,
    "shapes": 1,
    "drawing": 1,
    "model": 2,
    "reading": 3,
    "build": 4,
    "checks": 5,
    "choosing": 6,
    "plans": 7,
    "record": 7,
    "comparing": 8,
    "book": 9,
    "api": 10,
    "cli": 11,
    "app": 11,
    "__main__": 12,
}
FACES_MAY_IMPORT = {"api", "errors", "findings", "quantities"}
LAZY_NAME = re.compile(r"scantling(\.\w+)+\.?(:\w+)?")  # whole, or the beginning of one that is put together


def imports(module: Module, names: set[str]) -> Iterator[tuple[int, str]]:
    """Line and target of every import of ours, those in functions and those hidden in a text included."""
    for node in ast.walk(module.tree):
        if isinstance(node, ast.Import):
            yield from ((node.lineno, alias.name) for alias in node.names if alias.name.split(".")[0] == "scantling")
        elif isinstance(node, ast.ImportFrom) and node.level:
            yield node.lineno, "." * node.level
        elif isinstance(node, ast.ImportFrom) and (node.module or "").split(".")[0] == "scantling":
            for alias in node.names:
                deeper = f"{node.module}.{alias.name}"
                yield node.lineno, deeper if deeper in names or deeper == "scantling.__version__" else str(node.module)
        elif isinstance(node, ast.Constant) and isinstance(node.value, str) and LAZY_NAME.fullmatch(node.value):
            target = node.value.split(":")[0].rstrip(".")
            while target not in names and "." in target:
                target = target.rpartition(".")[0]
            if target != "scantling":
                yield node.lineno, target


def why_not(module: Module, target: str) -> str:
    """Why this import is refused; empty where it is allowed."""
    if target.startswith("."):
        return "imports inside the package are written absolutely"
    if target == "scantling.__version__":
        return ""
    if target == "scantling":
        return "the package's top gives its version and nothing else"
    here, there = module.room, target.split(".")[1]
    if there not in RANKS:
        return f"room {there!r} is not in the design"
    if here == there:
        return ""
    if here in FACES and there not in FACES_MAY_IMPORT:
        return "a face uses only api, errors, findings and quantities"
    if RANKS[there] >= RANKS[here]:
        return f"upward: {here or 'the top'} has rank {RANKS[here]}, {there} has rank {RANKS[there]}"
    return ""


def rank_faults(modules: Sequence[Module]) -> list[str]:
    """Every import that the ranks forbid, with file and line."""
    names = {module.name for module in modules}
    faults = [f"{m.path}: room {m.room!r} is not in the design" for m in modules if m.room not in RANKS]
    for module in modules:
        if module.room in RANKS:
            for line, target in imports(module, names):
                reason = why_not(module, target)
                if reason:
                    faults.append(f"{module.path}:{line}: imports {target}: {reason}")
    return faults


def circles(modules: Sequence[Module]) -> list[str]:
    """Every circle of imports that a walk in depth comes upon."""
    names = {module.name for module in modules}
    edges = {m.name: sorted({t for _, t in imports(m, names) if t in names and t != m.name}) for m in modules}
    state: dict[str, str] = {}
    stack: list[str] = []
    found: list[str] = []

    def visit(name: str) -> None:
        state[name] = "open"
        stack.append(name)
        for target in edges[name]:
            if state.get(target) == "open":
                found.append(" -> ".join([*stack[stack.index(target) :], target]))
            elif target not in state:
                visit(target)
        stack.pop()
        state[name] = "done"

    for name in sorted(edges):
        if name not in state:
            visit(name)
    return found


def test_no_import_runs_upward():
    expect_none(rank_faults(package_modules()))


def test_no_circles():
    expect_none(circles(package_modules()))


@pytest.mark.parametrize(
    ("name", "text", "reason"),
    [
        ("scantling.formulas.beams", "from scantling.model.design import Place", "upward"),
        ("scantling.formulas.beams", "def f():\n    from scantling.tables import nuts", "upward"),
        ("scantling.build.sizes", "def f():\n    import scantling.plans.buying", "upward"),
        ("scantling.cli.main", "from scantling.build.sizes import span", "a face uses only"),
        ("scantling.cli.main", "COMMAND = 'scantling.plans.buying:orders'", "a face uses only"),
        ("scantling.cli.main", "MODULE = f'scantling.plans.{name}'", "a face uses only"),
        ("scantling.cli.main", "from scantling.app.pages import page", "a face uses only"),
        ("scantling.checks.rods", "from . import screws", "absolutely"),
        ("scantling.checks.rods", "import scantling", "nothing else"),
        ("scantling.checks.rods", "from scantling import *", "nothing else"),
        ("scantling.checks.rods", "from scantling.gadgets import x", "not in the design"),
        ("scantling.gadgets.rods", "", "not in the design"),
        ("scantling.errors", "from scantling.findings import Finding", "upward"),
    ],
)
def test_a_forbidden_import_is_found(name, text, reason):
    others = [from_text(other, "") for other in ("scantling.plans", "scantling.plans.buying", "scantling.app.pages")]
    faults = rank_faults([*others, from_text(name, text)])
    assert len(faults) == 1
    assert reason in faults[0]


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("scantling.checks.rods", "from scantling.checks.common import at_most\nfrom scantling import __version__"),
        ("scantling.quantities", "from scantling.errors import QuantityError"),
        ("scantling.cli.main", "from scantling.api.planning import plan\nfrom scantling.cli.text import table"),
        ("scantling.cli.main", "NAME = 'scantling'"),
    ],
)
def test_an_allowed_import_passes(name, text):
    assert rank_faults([from_text(name, text)]) == []


def test_a_circle_is_found():
    first = from_text("scantling.build.a", "from scantling.build.b import x")
    second = from_text("scantling.build.b", "def f():\n    from scantling.build import a")
    assert circles([first, second]) == ["scantling.build.a -> scantling.build.b -> scantling.build.a"]


def test_the_walk_sees_the_real_package():
    assert {"scantling", "scantling.errors", "scantling.findings"} <= {module.name for module in package_modules()}
