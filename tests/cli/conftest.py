"""Runs the command line in this process, and the designs that the tests of it use."""

from __future__ import annotations

import json
import shutil
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from scantling.cli.main import run

EXAMPLES = Path(__file__).parents[2] / "examples"


@dataclass(frozen=True)
class Done:
    """How one call ended."""

    code: int
    out: str
    err: str

    @property
    def data(self) -> Any:
        """What was printed, read as JSON."""
        return json.loads(self.out)


@pytest.fixture(autouse=True)
def forgetful(monkeypatch):
    """No test reads or writes the user's cache."""
    monkeypatch.setenv("SCANTLING_CACHE", "")


@pytest.fixture
def call(capsys):
    """Call the command line; returns exit code and what was printed."""

    def call_it(*words: object) -> Done:
        code = run([str(word) for word in words])
        printed = capsys.readouterr()
        return Done(code, printed.out, printed.err)

    return call_it


@pytest.fixture
def plotter(tmp_path) -> Path:
    """A copy of the small example, to be changed and planned in."""
    folder = tmp_path / "plotter"
    shutil.copytree(EXAMPLES / "plotter", folder, ignore=shutil.ignore_patterns("out"))
    return folder
