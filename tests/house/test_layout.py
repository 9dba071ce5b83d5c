"""Where things lie: folders at most three deep, tests laid out like the source, an api that stays short."""

from __future__ import annotations

import ast
from collections import Counter
from collections.abc import Sequence
from pathlib import PurePosixPath

from housekit import PACKAGE, ROOT, FunctionNode, Module, expect_none, from_text, package_modules

DEEPEST = 3
NAMES_PER_PHASE = 12
NAMES_AT_THE_DOOR = 30


def deep_faults(names: Sequence[str]) -> list[str]:
    """Files that lie deeper under the package than a reader will look."""
    return [f"{name}: lies too deep" for name in names if len(PurePosixPath(name).parts) > DEEPEST + 1]


def tree_faults(tests: Sequence[str], rooms: Sequence[str]) -> list[str]:
    """Test files that share a name or form packages, and rooms that nobody tests."""
    files = [PurePosixPath(name) for name in tests]
    counted = Counter(file.name for file in files if file.name not in ("conftest.py", "__init__.py"))
    faults = [f"{name}: {count} test files have this name" for name, count in sorted(counted.items()) if count > 1]
    faults += [f"{file}: folders of tests are no packages" for file in files if file.name == "__init__.py"]
    tested = {file.parts[0] for file in files if file.name.startswith("test_")}
    return faults + [f"tests/{room}: this room has no tests" for room in rooms if room not in tested]


def api_faults(modules: Sequence[Module]) -> list[str]:
    """Modules of the api that offer too much."""
    faults = []
    for module in modules:
        if module.room != "api":
            continue
        defined = [n for n in module.tree.body if isinstance(n, FunctionNode | ast.ClassDef) and n.name[0] != "_"]
        passed_on = [a for n in module.tree.body if isinstance(n, ast.ImportFrom) for a in n.names]
        if len(defined) > NAMES_PER_PHASE:
            faults.append(f"{module.path}: {len(defined)} public names, at most {NAMES_PER_PHASE}")
        if module.is_package and len(passed_on) > NAMES_AT_THE_DOOR:
            faults.append(f"{module.path}: {len(passed_on)} names at the door, at most {NAMES_AT_THE_DOOR}")
    return faults


def test_nothing_lies_too_deep():
    expect_none(deep_faults([path.relative_to(PACKAGE).as_posix() for path in sorted(PACKAGE.rglob("*.py"))]))


def test_tests_lie_as_the_source_lies():
    tests = [path.relative_to(ROOT / "tests").as_posix() for path in sorted((ROOT / "tests").rglob("*.py"))]
    rooms = sorted(path.name for path in PACKAGE.iterdir() if path.is_dir() and len(list(path.rglob("*.py"))) > 1)
    expect_none(tree_faults(tests, rooms))


def test_the_api_is_short():
    expect_none(api_faults(package_modules()))


def test_each_fault_is_found():
    assert len(deep_faults(["build/a.py", "build/a/b/c.py", "build/a/b/c/d.py"])) == 1
    assert tree_faults(["build/test_a.py", "checks/test_b.py"], ["build", "checks"]) == []
    assert len(tree_faults(["build/test_a.py", "checks/test_a.py", "build/__init__.py"], ["build", "plans"])) == 3
    many = "\n".join(f"def f{n}(): pass" for n in range(13))
    door = "\n".join(f"from scantling.api.a import f{n}" for n in range(31))
    assert len(api_faults([from_text("scantling.api.a", many), from_text("scantling.api", door, is_package=True)])) == 2
