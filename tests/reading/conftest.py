"""The plotter of the examples in a folder of its own, to be spoilt; and what its faults must be."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest

from scantling.errors import Fault, FaultsError
from scantling.reading.project import read_project

PLOTTER = Path(__file__).parents[2] / "examples" / "plotter"
MARK = "«"  # stands in a new text where its fault must be said to be


@dataclass
class Plotter:
    """A copy of the example."""

    folder: Path

    def edit(self, file: str, old: str, new: str) -> str:
        """Replace the one ``old`` by ``new``; return where the mark stood, as ``file:line:column``."""
        path = self.folder / file
        text = path.read_text(encoding="utf-8")
        assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times in {file}"
        return self.write(file, text.replace(old, new))

    def append(self, file: str, new: str) -> str:
        """Add lines at the end."""
        return self.write(file, (self.folder / file).read_text(encoding="utf-8") + new)

    def write(self, file: str, text: str) -> str:
        """Write a whole file; return where the mark stood."""
        before, mark, after = text.partition(MARK)
        path = self.folder / file
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(before + after, encoding="utf-8", newline="")
        line, column = before.count("\n") + 1, len(before.rpartition("\n")[2]) + 1
        return f"{file}:{line}:{column}" if mark else ""

    def faults(self, workshop: str | None = "village") -> tuple[Fault, ...]:
        """Read it; return what is wrong, nothing where all is well."""
        try:
            read_project(self.folder, workshop)
        except FaultsError as error:
            return error.faults
        return ()


@pytest.fixture
def plotter(tmp_path: Path) -> Plotter:
    """Return a copy of the plotter."""
    shutil.copytree(PLOTTER, tmp_path / "plotter", ignore=shutil.ignore_patterns("__pycache__"))
    return Plotter(tmp_path / "plotter")


@pytest.fixture
def says(plotter: Plotter) -> Callable[..., None]:
    """Return a judge: exactly one fault, of this code, at this place, with these words."""

    def judge(code: str, where: str, *words: str, workshop: str | None = "village") -> None:
        faults = plotter.faults(workshop)
        told = "\n".join(str(fault) for fault in faults)
        assert [fault.code for fault in faults] == [code], told or "nothing was said"
        for word in words:
            assert word in told
        assert faults[0].mend.strip(), told
        if where:
            assert str(faults[0].where) == where, told

    return judge
