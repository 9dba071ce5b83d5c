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


def dxf_text(lines: list[str], units: str = "  9\n$INSUNITS\n 70\n4\n") -> str:
    """Return a DXF file with lines ``x0 y0 x1 y1``, in mm where nothing else is said."""
    body = ""
    for line in lines:
        pairs = zip((10, 20, 11, 21), line.split(), strict=True)
        body += "  0\nLINE\n  8\n0\n" + "".join(f" {code}\n{value}\n" for code, value in pairs)
    head = f"  0\nSECTION\n  2\nHEADER\n  9\n$ACADVER\n  1\nAC1009\n{units}  0\nENDSEC\n"
    return f"{head}  0\nSECTION\n  2\nENTITIES\n{body}  0\nENDSEC\n  0\nEOF\n"


SQUARE = ["0 0 90 0", "90 0 90 90", "90 90 0 90", "0 90 0 0"]
CORNERS = ((0, 0, 0), (9, 0, 0), (0, 9, 0), (0, 0, 9))
FACES = ((0, 2, 1), (0, 1, 3), (1, 2, 3), (0, 3, 2))


def stl_text() -> str:
    """Return a small closed mesh."""
    facets = ""
    for face in FACES:
        corners = "".join("vertex {} {} {}\n".format(*CORNERS[corner]) for corner in face)
        facets += f"facet normal 0 0 0\nouter loop\n{corners}endloop\nendfacet\n"
    return f"solid small\n{facets}endsolid small\n"


@pytest.fixture
def plotter(tmp_path: Path) -> Plotter:
    """Return a copy of the plotter, its drawing and its mesh replaced by small ones that are read fast."""
    shutil.copytree(PLOTTER, tmp_path / "plotter", ignore=shutil.ignore_patterns("__pycache__"))
    copy = Plotter(tmp_path / "plotter")
    copy.write("drawings/panel.dxf", dxf_text(SQUARE))
    copy.write("meshes/carriage.stl", stl_text())
    return copy


@pytest.fixture
def dxf() -> Callable[..., str]:
    """Return what writes small DXF files."""
    return dxf_text


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
