"""The scripts beside Alder make its drawings, meshes and workbooks anew, byte for byte; all of it stays small."""

from __future__ import annotations

import importlib.util
from pathlib import Path
from types import ModuleType

import pytest

ALDER = Path(__file__).parents[2] / "examples" / "alder"
LARGEST_STL_BYTES = 60_000


def script(name: str) -> ModuleType:
    """The script as a module, its ``main`` not run."""
    spec = importlib.util.spec_from_file_location(name, ALDER / f"{name}.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.mark.parametrize(
    ("name", "folder", "kinds", "least"),
    [
        ("make_outlines", "drawings", {".dxf", ".svg"}, 7),
        ("make_meshes", "meshes", {".stl", ".3mf"}, 20),
        ("make_workbooks", "workshops/offers", {".xlsx", ".ods"}, 2),
    ],
)
def test_a_script_makes_the_same_bytes(name, folder, kinds, least, tmp_path, monkeypatch):
    module = script(name)
    monkeypatch.setattr(module, "HERE", tmp_path)
    module.main()
    made = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    kept = {path.name: path.read_bytes() for path in (ALDER / folder).iterdir() if path.suffix in kinds}
    assert {path.suffix for path in tmp_path.iterdir()} == kinds
    assert len(made) >= least
    assert sorted(made) == sorted(kept)
    assert [file for file in made if made[file] != kept[file]] == []


def test_meshes_stay_small():
    sizes = {path.name: path.stat().st_size for path in (ALDER / "meshes").glob("*.stl")}
    assert len(sizes) > 10
    assert [name for name, size in sizes.items() if size > LARGEST_STL_BYTES] == []


def test_every_workshop_says_that_it_is_invented():
    texts = [path.read_text(encoding="utf-8") for path in (ALDER / "workshops").glob("*.yaml")]
    assert len(texts) == 2
    assert all("invented: yes" in text for text in texts)
    tables = [path.read_text(encoding="utf-8") for path in (ALDER / "workshops" / "offers").glob("*.csv")]
    assert all("Invented prices" in text.splitlines()[0] for text in tables)
