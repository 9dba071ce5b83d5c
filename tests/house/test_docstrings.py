"""Docstrings are a contract: they exist everywhere; in ``formulas`` they name all arguments, the range, the source."""

from __future__ import annotations

import ast
import doctest
import importlib
import re
from collections.abc import Sequence

import pytest

from housekit import (
    FunctionNode,
    Module,
    carries_unit,
    decorators,
    expect_none,
    from_text,
    package_modules,
    public_definitions,
    script_modules,
)

NO_UNIT_NEEDED = {"int", "bool", "str"}  # a count, a choice, a name
UNSPOKEN = ("overload", "typing.overload")


def missing_docstrings(modules: Sequence[Module]) -> list[str]:
    """Public modules, classes, functions and methods that say nothing; a property's setter need not."""
    faults = []
    for module in modules:
        if not ast.get_docstring(module.tree) and (module.tree.body or not module.is_package):
            faults.append(f"{module.path}: the file says nothing of what it is for")
        for name, node in public_definitions(module.tree.body):
            silent = any(d in UNSPOKEN or d.endswith((".setter", ".deleter")) for d in decorators(node))
            if not silent and not ast.get_docstring(node):
                faults.append(f"{module.path}:{node.lineno}: {name} has no docstring")
    return faults


def needs_unit(annotation: ast.expr | None) -> bool:
    """True for everything that can hold a float; a whole number is a count and a text is a name."""
    if annotation is None:
        return True
    words = set(re.findall(r"\w+", ast.unparse(annotation)))
    return not words & NO_UNIT_NEEDED or "float" in words


def arguments(node: FunctionNode) -> list[ast.arg]:
    """Every argument, without ``self``."""
    spec = node.args
    extra = [arg for arg in (spec.vararg, spec.kwarg) if arg]
    return [arg for arg in (*spec.posonlyargs, *spec.args, *spec.kwonlyargs, *extra) if arg.arg != "self"]


def contract_faults(module: Module, name: str, node: FunctionNode) -> list[str]:
    """What the docstring of one formula leaves out."""
    text = ast.get_docstring(node) or ""
    place = f"{module.path}:{node.lineno}: {name}"
    faults = [
        f"{place}: no line {line!r}" for line in ("Valid for:", "Source:") if not re.search(rf"(?m)^{line} *\S", text)
    ]
    if ">>>" not in text:
        faults.append(f"{place}: no example that can be run")
    for argument in arguments(node):
        if not re.search(rf"\b{argument.arg}\b", text.partition(">>>")[0]):
            faults.append(f"{place}: argument {argument.arg} is not explained")
        if needs_unit(argument.annotation) and not carries_unit(argument.arg):
            faults.append(f"{place}: argument {argument.arg} carries no agreed unit (tests/house/units.csv)")
    returns_float = isinstance(node.returns, ast.Name) and node.returns.id == "float"
    if returns_float and not carries_unit(node.name) and "Returns" not in text:
        faults.append(f"{place}: say what it returns, or carry the unit in the name")
    return faults


def formula_faults(modules: Sequence[Module]) -> list[str]:
    """Every breach of the contract by a public function of ``formulas``."""
    faults = []
    for module in modules:
        if module.room == "formulas":
            for name, node in public_definitions(module.tree.body):
                if isinstance(node, FunctionNode) and "." not in name:
                    faults += contract_faults(module, name, node)
    return faults


def modules_with_examples() -> list[str]:
    """Names of the modules whose text holds an example."""
    return [module.name for module in package_modules() if ">>>" in module.text]


def test_everything_public_has_a_docstring():
    expect_none(missing_docstrings(package_modules()))


def test_the_house_itself_has_docstrings():
    helpers = [module for module in script_modules("tests/house", "builders") if "test_" not in module.name]
    assert "tests.house.housekit" in {module.name for module in helpers}
    assert missing_docstrings(helpers) == []


def test_formulas_keep_the_contract():
    expect_none(formula_faults(package_modules()))


@pytest.mark.parametrize("name", modules_with_examples() or ["scantling"])
def test_examples_run(name):
    outcome = doctest.testmod(importlib.import_module(name), optionflags=doctest.ELLIPSIS)
    assert outcome.failed == 0
    assert outcome.attempted > 0 or name == "scantling"


GOOD = '''"""Beams."""
def sag_mm(force_n: float, teeth: int, *, limits_mm: tuple[float, float]) -> float:
    """Sag of a rod.

    force_n : load          teeth : how many
    limits_mm : from, to

    Valid for: small sag.
    Source: BEAM-TABLE.

    >>> 1 + 1
    2
    """
    return 0.0
'''


def test_a_good_formula_passes():
    assert formula_faults([from_text("scantling.formulas.beams", GOOD)]) == []


@pytest.mark.parametrize(
    ("old", "new", "reason"),
    [
        ("Valid for: small sag.", "", "Valid for"),
        ("Source: BEAM-TABLE.", "Source:", "Source"),
        (">>> 1 + 1", "1 + 1", "example"),
        ("force_n", "force", "carries no agreed unit"),
        ("force_n", "force_lb", "carries no agreed unit"),
        ("    force_n : load  ", "", "force_n is not explained"),
        ("sag_mm", "sag", "say what it returns"),
        ("teeth: int", "teeth: float", "teeth carries no agreed unit"),
    ],
)
def test_a_poor_formula_is_found(old, new, reason):
    faults = formula_faults([from_text("scantling.formulas.beams", GOOD.replace(old, new))])
    assert len(faults) == 1
    assert reason in faults[0]


@pytest.mark.parametrize(
    "text", ["'''M.'''\ndef f(): pass", "'''M.'''\nclass A:\n    '''A.'''\n    def f(self): pass", "x = 1"]
)
def test_a_missing_docstring_is_found(text):
    assert len(missing_docstrings([from_text("scantling.build.a", text)])) == 1


def test_private_and_nested_need_none():
    text = "'''M.'''\ndef _f(): pass\ndef g():\n    '''G.'''\n    def h(): pass"
    assert missing_docstrings([from_text("scantling.build.a", text)]) == []
