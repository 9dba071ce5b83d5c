"""Habits that keep the promises: same input, same bytes; errors that say something; one program for every system.

Below the faces nothing reads a clock, draws an unseeded number, hashes by the interpreter or prints; nowhere is there a
module that only one system has, and every error has a text.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator, Sequence

import pytest

from housekit import FACES, Module, dotted, expect_none, from_text, package_modules

CLOCKS = {
    "time.time",
    "time.perf_counter",
    "time.monotonic",
    "datetime.now",
    "datetime.datetime.now",
    "datetime.utcnow",
    "datetime.today",
    "date.today",
    "datetime.date.today",
}
UNSTEADY = {"hash", "uuid.uuid4", "uuid4", "uuid.uuid1", "os.urandom", "os.getpid"}
NOT_BELOW_FACES = {"print", "input", "sys.exit", "exit"}
NEVER = {"eval", "exec", "os.system", "os.fork", "pickle.loads", "pickle.load"}
ONE_SYSTEM = {"fcntl", "pwd", "grp", "resource", "termios", "tty", "pty", "msvcrt", "winreg", "posix"}
NO_TEXT_NEEDED = {"NotImplementedError", "StopIteration", "KeyboardInterrupt", "SystemExit"}


def imported(node: ast.AST) -> list[str]:
    """The top names that an import statement names."""
    if isinstance(node, ast.Import):
        return [alias.name.split(".")[0] for alias in node.names]
    return [(node.module or "").split(".")[0]] if isinstance(node, ast.ImportFrom) else []


def call_fault(called: str, call: ast.Call, is_face: bool) -> str:
    """Why a call is refused; empty where it is allowed."""
    if called in NEVER:
        return "is never needed"
    if is_face:
        return ""
    if called in CLOCKS:
        return "reads a clock: time is an input"
    if called in UNSTEADY or (called.startswith("random.") and called != "random.Random"):
        return "differs from run to run: give a seed"
    if called.endswith(("random.Random", "default_rng")) and not (call.args or call.keywords):
        return "differs from run to run: give a seed"
    return "belongs to a face" if called in NOT_BELOW_FACES else ""


def raise_fault(node: ast.Raise) -> str:
    """Why an error is refused: it has no text."""
    raised = node.exc
    name = dotted(raised).rpartition(".")[2] if raised else ""
    bare_class = isinstance(raised, ast.Name | ast.Attribute) and name[:1].isupper()
    empty_call = isinstance(raised, ast.Call) and not raised.args and not raised.keywords
    looks_like_error = name.endswith(("Error", "Exception"))
    return "says nothing" if (bare_class or empty_call) and looks_like_error and name not in NO_TEXT_NEEDED else ""


def habits(module: Module) -> Iterator[tuple[int, str, str]]:
    """Line, what stands there and why it is refused."""
    for node in ast.walk(module.tree):
        for name in imported(node):
            if name in ONE_SYSTEM:
                yield node.lineno, name, "is not there on every system"
        if isinstance(node, ast.Call):
            reason = call_fault(dotted(node.func), node, module.room in FACES)
            if reason:
                yield node.lineno, dotted(node.func), reason
        if isinstance(node, ast.Raise) and raise_fault(node):
            yield node.lineno, dotted(node.exc), raise_fault(node)


def habit_faults(modules: Sequence[Module]) -> list[str]:
    """Every bad habit, with file and line."""
    return [f"{m.path}:{line}: {what} {reason}" for m in modules for line, what, reason in sorted(habits(m))]


def test_no_bad_habit():
    expect_none(habit_faults(package_modules()))


@pytest.mark.parametrize(
    "text",
    [
        "import time\nx = time.time()",
        "from datetime import date\nx = date.today()",
        "x = hash('a')",
        "import random\nx = random.random()",
        "import random\nx = random.Random()",
        "import numpy as np\nx = np.random.default_rng()",
        "print('x')",
        "x = eval('1')",
        "def f():\n    import fcntl",
        "from pwd import getpwnam",
        "def f():\n    raise ValueError",
        "def f():\n    raise errors.QuantityError()",
    ],
)
def test_a_bad_habit_is_found(text):
    assert len(habit_faults([from_text("scantling.build.a", text)])) == 1


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("scantling.cli.main", "print(time.time())"),
        ("scantling.build.a", "import random\nx = random.Random(7)"),
        ("scantling.build.a", "def f(error):\n    raise error"),
        ("scantling.build.a", "def f():\n    raise ValueError('sag is negative')"),
        ("scantling.build.a", "def f():\n    try:\n        g()\n    except ValueError:\n        raise"),
    ],
)
def test_a_good_habit_passes(name, text):
    assert habit_faults([from_text(name, text)]) == []
