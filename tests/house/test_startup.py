"""Starting up is cheap by construction: what is loaded is looked at, not how long it takes.

Importing the package's top loads nothing but the standard library; the command line's help loads no heavy library.
"""

from __future__ import annotations

import subprocess
import sys

import pytest

from housekit import PACKAGE, ROOT

HEAVY = {
    "numpy",
    "scipy",
    "highspy",
    "ezdxf",
    "shapely",
    "trimesh",
    "lib3mf",
    "typst",
    "openpyxl",
    "odf",
    "pydantic",
    "svgelements",
}
NO_FACE_YET = pytest.mark.skipif(not any((PACKAGE / "cli").rglob("*.py")), reason="there is no command line yet")


def loaded_by(statements: str) -> set[str]:
    """The modules that a fresh interpreter has loaded after the statements and had not loaded before them."""
    program = (
        f"import sys\nbefore = set(sys.modules)\n{statements}\nprint('LOADED', *sorted(set(sys.modules) - before))"
    )
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, timeout=60, cwd=ROOT)
    assert done.returncode == 0, done.stderr
    return set(done.stdout.rpartition("LOADED")[2].split())


def run_command(*arguments: str) -> str:
    """Statements that run the command line as a shell would, and go on after it ends."""
    return (
        f"sys.argv = ['scantling', *{arguments!r}]\n"
        "from scantling.cli.main import main\n"
        "try:\n    code = main()\nexcept SystemExit as end:\n    code = end.code\n"
        "assert code in (0, None), code"
    )


def top_faults(loaded: set[str]) -> list[str]:
    """What importing the package's top may not load: more of ours, or anything outside the standard library."""
    return sorted(n for n in loaded - {"scantling"} if n.split(".")[0] not in sys.stdlib_module_names)


def heavy_faults(loaded: set[str]) -> list[str]:
    """The heavy libraries among what is loaded."""
    return sorted({name.split(".")[0] for name in loaded} & HEAVY)


def test_the_top_loads_only_the_standard_library():
    loaded = loaded_by("import scantling")
    assert "scantling" in loaded
    assert top_faults(loaded) == []


@NO_FACE_YET
@pytest.mark.parametrize("arguments", [("--help",), ("--version",)])
def test_the_command_line_starts_light(arguments):
    loaded = loaded_by(run_command(*arguments))
    assert "scantling.cli.main" in loaded
    assert heavy_faults(loaded) == []


def test_a_heavy_import_is_found():
    assert heavy_faults(loaded_by("import pydantic")) == ["pydantic"]


def test_another_module_of_ours_is_found():
    assert "scantling.errors" in top_faults(loaded_by("import scantling.errors"))


def test_a_command_that_fails_is_not_taken_for_light():
    with pytest.raises(AssertionError):
        loaded_by("assert False, 'no such command'")
