"""Who touches the disk: only ``reading`` and ``record`` read files; only the faces and ``record`` write them.

Package data (a table of ours) is looked up through ``importlib.resources`` and is no file of the maker's.
A face may read its own content cache, in a module called ``cache``.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator, Sequence

import pytest

from housekit import FACES, Module, dotted, expect_none, from_text, package_modules

READS = {"read_text", "read_bytes", "readfile", "loadtxt", "genfromtxt", "fromfile"}
LISTS = {"iterdir", "glob", "rglob", "listdir", "scandir"}
WRITES = {
    "write_text",
    "write_bytes",
    "saveas",
    "savetxt",
    "tofile",
    "mkdir",
    "makedirs",
    "unlink",
    "rmtree",
    "replace_file",
}
MAY = {  # a face lists a folder to write into it without harm
    "reads": {"reading", "record"},
    "lists": {"reading", "record", *FACES},
    "writes": {"record", *FACES},
}


def mode_of(call: ast.Call, position: int) -> str:
    """The mode that ``open`` is called with; ``r`` where none is written, ``?`` where it is not a plain text."""
    given = [k.value for k in call.keywords if k.arg == "mode"] or call.args[position : position + 1]
    if not given:
        return "r"
    return given[0].value if isinstance(given[0], ast.Constant) and isinstance(given[0].value, str) else "?"


def touches(module: Module) -> Iterator[tuple[int, str, str]]:
    """Line, kind ("reads", "lists" or "writes") and call of everything that touches a file."""
    for node in ast.walk(module.tree):
        if not isinstance(node, ast.Call):
            continue
        called = dotted(node.func)
        last = called.rpartition(".")[2]
        if last == "open":
            mode = mode_of(node, 1 if called in ("open", "io.open") else 0)
            yield node.lineno, "writes" if set(mode) & set("wax+") else "reads", called
        elif last in READS and "files" not in called.split("."):
            yield node.lineno, "reads", called
        elif last in LISTS and "files" not in called.split("."):
            yield node.lineno, "lists", called
        elif last in WRITES:
            yield node.lineno, "writes", called


def is_package_data(module: Module, called: str) -> bool:
    """True for the look-up of our own data files, in the modules that do nothing else with files."""
    own = module.room == "tables" or module.name == "scantling.api.starting"
    return own and called != "open" and "importlib.resources" in module.text


def is_silence(module: Module, called: str) -> bool:
    """True for the empty device that a solver's banner is sent to: nothing is read from it or kept in it."""
    return called == "os.open" and "os.open(os.devnull" in module.text and module.text.count("os.open(") == 1


def disk_faults(modules: Sequence[Module]) -> list[str]:
    """Every call that touches a file in a room that must not."""
    faults = []
    for module in modules:
        for line, kind, called in touches(module):
            is_cache = module.room in FACES and module.name.rpartition(".")[2] == "cache"
            allowed = module.room in MAY[kind] or is_cache
            if not allowed and not is_package_data(module, called) and not is_silence(module, called):
                faults.append(f"{module.path}:{line}: {called} {kind} on the disk; room {module.room!r} must not")
    return faults


def test_only_the_rooms_named_touch_files():
    expect_none(disk_faults(package_modules()))


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("scantling.build.sizes", "text = open('design.yaml').read()"),
        ("scantling.build.sizes", "text = path.read_text(encoding='utf-8')"),
        ("scantling.plans.cutting", "path.write_bytes(b'')"),
        ("scantling.plans.cutting", "names = list(folder.glob('*.dxf'))"),
        ("scantling.plans.cutting", "with path.open('w') as file: pass"),
        ("scantling.shapes.dxf", "import ezdxf\ndoc = ezdxf.readfile(name)"),
        ("scantling.tables.nuts", "from importlib.resources import files\nopen('nuts.csv')"),
        ("scantling.tables.nuts", "from pathlib import Path\nPath('nuts.csv').read_text()"),
        ("scantling.cli.main", "Path('design.yaml').read_text()"),
        ("scantling.reading.design", "path.write_text('x')"),
    ],
)
def test_a_forbidden_touch_is_found(name, text):
    assert len(disk_faults([from_text(name, text)])) == 1


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("scantling.reading.files", "data = path.read_bytes()"),
        ("scantling.record.store", "path.write_bytes(path.read_bytes())"),
        ("scantling.cli.output", "path.write_text('x')"),
        ("scantling.cli.output", "empty = not any(folder.iterdir())"),
        ("scantling.cli.cache", "path.read_bytes()"),
        (
            "scantling.tables.nuts",
            "from importlib.resources import files\ndata = (files('x') / 'nuts.csv').read_text()",
        ),
        ("scantling.drawing.pdf", "data = files('scantling.drawing').joinpath('page.typ').read_text()"),
    ],
)
def test_an_allowed_touch_passes(name, text):
    assert disk_faults([from_text(name, text)]) == []
