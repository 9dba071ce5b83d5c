"""The manual is run: each page types its commands in a folder of its own, and they answer what the page says."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from housekit import PACKAGE, ROOT
from page_commands import CALL, PLAIN
from page_script import Command, ShownFile, differs, pages_with_commands, script

NO_FACE_YET = pytest.mark.skipif(not (PACKAGE / "cli" / "main.py").exists(), reason="there is no command line yet")


def run(command: Command, folder: Path) -> str:
    """Run one command of a page; why it is not as the page says, empty where it is."""
    done = subprocess.run(
        [sys.executable, "-c", CALL, *command.words[1:]],
        capture_output=True,
        cwd=folder,
        env={**os.environ, **PLAIN, "SCANTLING_CACHE": ""},
        timeout=120,
    )
    printed, complained = done.stdout.decode("utf-8"), done.stderr.decode("utf-8")
    if done.returncode != command.exit_code:
        return f"exit code {done.returncode}, not {command.exit_code}\n{printed}{complained}"
    return differs(command.shown, printed or complained)


def play(text: str, folder: Path) -> list[str]:
    """Write the files of a page and run its commands, in its order; every disagreement, with its line."""
    if "examples/" in text:
        shutil.copytree(ROOT / "examples", folder / "examples", dirs_exist_ok=True)
    faults = []
    for step in script(text):
        if isinstance(step, ShownFile):
            path = folder / step.name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(step.text, encoding="utf-8", newline="\n")
        else:
            reason = run(step, folder)
            faults += [f"line {step.line}: {' '.join(step.words)}: {reason}"] if reason else []
    return faults


@NO_FACE_YET
@pytest.mark.parametrize("page", pages_with_commands(ROOT) or [None], ids=lambda page: page.stem if page else "none")
def test_the_page_does_what_it_says(page, tmp_path):
    assert page is not None, "no page of the manual runs the program"
    assert play(page.read_text(encoding="utf-8"), tmp_path) == []


PAGE = """Say it.

```yaml title="sub/a.yaml"
x: 1
```

```console
$ cd somewhere
$ scantling check 'sub a'  # exit 1
BELT-01  sound … of 3
axis y
…
anything
```
"""


def test_a_page_is_read_as_a_script():
    shown, command = script(PAGE)
    assert shown == ShownFile(3, "sub/a.yaml", "x: 1\n")
    assert command == Command(9, ("scantling", "check", "sub a"), 1, ("BELT-01  sound … of 3", "axis y"))


@pytest.mark.parametrize(
    ("printed", "fits"),
    [
        ("BELT-01  sound 2 of 3\naxis y\nmore\n", True),
        ("BELT-01  sound 2 of 4\naxis y\n", False),
        ("BELT-01  sound 2 of 3\n", False),
        ("", False),
    ],
)
def test_what_is_printed_is_compared(printed, fits):
    assert (differs(("BELT-01  sound … of 3", "axis y", ""), printed) == "") is fits


def test_an_open_block_is_found():
    with pytest.raises(ValueError, match="never closed"):
        script("```console\n$ scantling plan\n")


@NO_FACE_YET
def test_a_wrong_exit_code_is_found(tmp_path):
    (fault,) = play("```console\n$ scantling no-such-command\n```\n", tmp_path)
    assert "exit code" in fault
