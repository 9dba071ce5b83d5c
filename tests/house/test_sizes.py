"""Budgets: a file has at most 500 lines, a body 50, a class 300; an exception needs a reason and a date."""

from __future__ import annotations

import ast
import datetime
import tomllib
from collections.abc import Sequence
from typing import Any

import pytest

from housekit import ROOT, FunctionNode, Module, expect_none, from_text, functions, package_modules, script_modules

FILE_LINES = 500
BODY_LINES = 50
CLASS_LINES = 300
COMMAND_LINES = 15
EXCEPTIONS = ROOT / "tests" / "size_exceptions.toml"


def docstring_lines(node: FunctionNode) -> int:
    """How many lines the docstring takes; 0 where there is none."""
    first = node.body[0]
    is_text = (
        isinstance(first, ast.Expr) and isinstance(first.value, ast.Constant) and isinstance(first.value.value, str)
    )
    return (first.end_lineno or 0) - first.lineno + 1 if is_text else 0


def body_lines(node: FunctionNode) -> int:
    """Lines of a function, signature included, docstring and decorators not."""
    return (node.end_lineno or 0) - node.lineno + 1 - docstring_lines(node)


def inner_lines(node: FunctionNode) -> int:
    """Lines of the statements alone: what a command does, however many options its signature lists."""
    rest = node.body[1:] if docstring_lines(node) else node.body
    return (rest[-1].end_lineno or 0) - rest[0].lineno + 1 if rest else 0


def is_command(module: Module, node: FunctionNode) -> bool:
    """A public function of a command module of the command line, or a route of the app."""
    in_place = module.name.startswith(("scantling.cli.commands", "scantling.app.routes"))
    return in_place and not node.name.startswith("_")


def module_sizes(module: Module) -> list[tuple[str, int, int]]:
    """What is too long: its name (``path`` or ``path:function``), its length and its budget."""
    lines = sum(1 for line in module.text.splitlines() if line.strip())
    measured = [(module.path, lines, FILE_LINES)]
    classes = [node for node in ast.walk(module.tree) if isinstance(node, ast.ClassDef)]
    measured += [(f"{module.path}:{c.name}", (c.end_lineno or 0) - c.lineno + 1, CLASS_LINES) for c in classes]
    for node in functions(module.tree):
        measured.append((f"{module.path}:{node.name}", body_lines(node), BODY_LINES))
        if is_command(module, node):
            measured.append((f"{module.path}:{node.name} (command)", inner_lines(node), COMMAND_LINES))
    return [(name, size, budget) for name, size, budget in measured if size > budget]


def too_long(modules: Sequence[Module], excepted: set[str]) -> list[str]:
    """Every breach of a budget that no exception covers."""
    found = [item for module in modules for item in module_sizes(module)]
    return [f"{name}: {size} lines, at most {budget}" for name, size, budget in found if name not in excepted]


def exceptions() -> dict[str, dict[str, Any]]:
    """The exceptions granted: name -> reason and date; none where there is no file."""
    return tomllib.loads(EXCEPTIONS.read_text(encoding="utf-8")) if EXCEPTIONS.exists() else {}


def exception_faults(granted: dict[str, dict[str, Any]], breaches: set[str]) -> list[str]:
    """What is wrong with the list of exceptions itself."""
    faults = []
    for name, entry in granted.items():
        if len(str(entry.get("reason", "")).split()) < 4:
            faults.append(f"{name}: say why in a sentence")
        if not isinstance(entry.get("date"), datetime.date):
            faults.append(f"{name}: date = 2026-01-31 is missing")
        if name not in breaches:
            faults.append(f"{name}: no longer too long, take the exception out")
    return faults


def measured_modules() -> list[Module]:
    """The package and the scripts beside it, measured alike."""
    return package_modules() + script_modules("builders", "benchmarks", "examples")


def test_nothing_is_too_long():
    expect_none(too_long(measured_modules(), set(exceptions())))


def test_no_test_file_is_too_long():
    long = [item for module in script_modules("tests") for item in module_sizes(module) if item[2] == FILE_LINES]
    expect_none(name for name, _, _ in long if name not in exceptions())


def test_every_exception_is_explained_dated_and_needed():
    breaches = {name for module in measured_modules() + script_modules("tests") for name, _, _ in module_sizes(module)}
    expect_none(exception_faults(exceptions(), breaches))


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("scantling.build.a", "x = 1\n" * 501),
        ("scantling.build.a", "def f():\n" + "    x = 1\n" * 50),
        ("scantling.build.a", "class A:\n" + "    x = 1\n" * 300),
        ("scantling.cli.commands.plan", "def plan():\n    '''Say it.'''\n" + "    x = 1\n" * 16),
    ],
)
def test_what_is_too_long_is_found(name, text):
    assert len(too_long([from_text(name, text)], set())) == 1


def test_just_short_enough_passes():
    text = "def f():\n    '''Two\n    lines.'''\n" + "    x = 1\n" * 49
    assert too_long([from_text("scantling.build.a", text)], set()) == []
    assert too_long([from_text("scantling.build.a", "x = 1\n\n\n" * 500)], set()) == []
    command = from_text("scantling.cli.commands.plan", "def plan():\n    '''Say it.'''\n" + "    x = 1\n" * 15)
    assert too_long([command], set()) == []


def test_a_poor_exception_is_found():
    poor = {"a.py": {"reason": "long", "date": "yesterday"}}
    assert len(exception_faults(poor, {"a.py"})) == 2
    good = {"a.py": {"reason": "one table of cases, split would hide it", "date": datetime.date(2026, 1, 31)}}
    assert exception_faults(good, {"a.py"}) == []
    assert len(exception_faults(good, set())) == 1
