"""Files appear whole or not at all, also when the program is killed midway."""

import os
import subprocess
import sys
import textwrap

import pytest

from scantling.cli.writing import MARK, begin_folder, mend_folder, write_file, write_folder
from scantling.errors import FaultsError

OLD = {"a.txt": b"old a", "sub/b.txt": b"old b"}
NEW = {"a.txt": b"new a", "sub/c.txt": b"new c"}


def content(folder):
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file() and path.name != MARK
    }


def test_a_folder_is_written_and_replaced(tmp_path):
    out = tmp_path / "deep" / "out"
    write_folder(out, OLD)
    assert content(out) == OLD
    write_folder(out, NEW)
    assert content(out) == NEW
    assert [p.name for p in out.parent.iterdir()] == ["out"]


def test_a_makers_own_folder_is_never_replaced(tmp_path):
    (tmp_path / "notes.txt").write_text("mine")
    with pytest.raises(FaultsError, match="not of a plan"):
        write_folder(tmp_path, NEW)
    assert content(tmp_path) == {"notes.txt": b"mine"}


KILL = """
    import os, sys
    from pathlib import Path
    from scantling.cli import writing

    step, folder = int(sys.argv[1]), Path(sys.argv[2])
    calls = 0
    def counted(real):
        def call(*args, **kwargs):
            global calls
            calls += 1
            if calls == step:
                os._exit(9)  # as sudden as a pulled plug: nothing is tidied up
            return real(*args, **kwargs)
        return call
    Path.rename = counted(Path.rename)
    Path.replace = counted(Path.replace)
    writing.shutil.rmtree = counted(writing.shutil.rmtree)
    writing.write_folder(folder, {"a.txt": b"new a", "sub/c.txt": b"new c"})
"""


@pytest.mark.parametrize("step", range(1, 8))
def test_killed_at_any_step_the_folder_is_the_old_or_the_new_one(tmp_path, step):
    out = tmp_path / "out"
    write_folder(out, OLD)
    done = subprocess.run(
        [sys.executable, "-c", textwrap.dedent(KILL), str(step), str(out)], check=False, env=os.environ
    )
    assert done.returncode in (0, 9)
    mend_folder(out)  # what the next call does first
    assert content(out) in (OLD, NEW)
    write_folder(out, NEW)
    assert content(out) == NEW


def test_a_failing_disk_leaves_the_old_file(tmp_path, monkeypatch):
    path = tmp_path / "a.txt"
    write_file(path, b"old")

    def fail(_):
        raise OSError("disk full")

    monkeypatch.setattr(os, "fsync", fail)
    with pytest.raises(OSError, match="disk full"):
        write_file(path, b"new")
    assert content(tmp_path) == {"a.txt": b"old"}


def test_a_beginning_overwrites_nothing_and_names_every_file_in_the_way(tmp_path):
    (tmp_path / "design.yaml").write_text("mine")
    (tmp_path / "notes.md").write_text("mine")
    with pytest.raises(FaultsError) as caught:
        begin_folder(tmp_path, {"design.yaml": b"", "notes.md": b"", "new.yaml": b""})
    assert len(caught.value.faults) == 2
    assert not (tmp_path / "new.yaml").exists()
