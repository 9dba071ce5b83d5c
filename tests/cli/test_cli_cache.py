"""The content cache on disk: what was put comes out, it stays small, and no trouble with the disk is the maker's."""

from __future__ import annotations

import errno
import os
from pathlib import Path

import pytest

from scantling.cli import cache
from scantling.cli.cache import MOST_FILES, MOST_PROGRAMS, PROGRAMS, FolderStore, open_store, program_name


@pytest.fixture
def store(tmp_path) -> FolderStore:
    """A store in a folder that is not there yet, as that of one program."""
    return FolderStore(tmp_path / PROGRAMS / "0123")


def aged(path: Path, age_s: int) -> None:
    """Let a file or folder look older."""
    os.utime(path, (1_700_000_000 - age_s, 1_700_000_000 - age_s))


def test_what_is_put_comes_out_and_nothing_else(store):
    assert store.get("a") is None
    store.put("a", b"one")
    store.put("a", b"two")
    assert store.get("a") == b"two"
    assert store.get("b") is None
    assert [path.name for path in store.folder.iterdir()] == ["a"]  # no part of a file stays behind


def test_a_full_disk_only_means_that_nothing_is_remembered(store, monkeypatch):
    def full(path, data):
        raise OSError(errno.ENOSPC, "No space left on device")

    store.put("a", b"one")
    monkeypatch.setattr(cache, "write_file", full)
    store.put("a", b"two")
    store.put("b", b"two")
    assert (store.get("a"), store.get("b")) == (b"one", None)


def test_a_folder_that_cannot_be_made_only_means_that_nothing_is_remembered(tmp_path):
    (tmp_path / "taken").write_bytes(b"a file")
    store = FolderStore(tmp_path / "taken" / "0123")
    store.put("a", b"one")
    assert store.get("a") is None
    assert (tmp_path / "taken").read_bytes() == b"a file"


def test_a_folder_in_place_of_a_file_is_nothing_remembered(store):
    (store.folder / "a").mkdir(parents=True)
    assert store.get("a") is None
    store.put("a", b"one")
    assert store.get("a") is None


def test_the_oldest_files_are_thrown_away(store):
    store.folder.mkdir(parents=True)
    for number in range(MOST_FILES + 3):
        (store.folder / f"n{number:03}").write_bytes(b"x")
        aged(store.folder / f"n{number:03}", MOST_FILES - number)
    store.put("last", b"x")
    assert len(list(store.folder.iterdir())) == MOST_FILES
    assert [store.get(f"n{number:03}") for number in range(5)] == [None] * 4 + [b"x"]


def test_programs_of_long_ago_are_thrown_away_and_nothing_beside_them(store):
    programs = store.folder.parent
    for number in range(5):
        FolderStore(programs / f"old{number}").put("a", b"x")
        aged(programs / f"old{number}", 100 - number)
    theirs = programs.parent / "of the maker"
    theirs.mkdir()
    aged(theirs, 10_000)
    store.put("a", b"x")
    assert sorted(path.name for path in programs.iterdir()) == ["0123", "old3", "old4"]
    assert MOST_PROGRAMS == 3
    assert theirs.is_dir()


def test_a_store_anywhere_else_throws_no_folder_away(tmp_path):
    for name in "abcde":
        (tmp_path / name).mkdir()
    FolderStore(tmp_path / "a").put("x", b"x")
    assert sorted(path.name for path in tmp_path.iterdir()) == list("abcde")


def test_another_program_has_another_name(tmp_path):
    (tmp_path / "rules").mkdir()
    rule, table = tmp_path / "rules" / "one.py", tmp_path / "rules" / "table.csv"
    rule.write_text("limit = 3\n")
    table.write_text("1;2\n")
    names = [program_name(tmp_path)]
    for path, text in ((rule, "limit = 31\n"), (table, "1;2;3\n")):
        path.write_text(text)
        names.append(program_name(tmp_path))
    assert len(set(names)) == 3
    (tmp_path / "rules" / "one.pyc").write_bytes(b"made by running it")
    assert program_name(tmp_path) == names[-1]


def test_the_maker_names_the_folder_or_wants_none(tmp_path, monkeypatch):
    monkeypatch.setenv("SCANTLING_CACHE", "")
    assert open_store() is None
    monkeypatch.setenv("SCANTLING_CACHE", str(tmp_path / "here"))
    named = open_store()
    assert named is not None
    assert named.folder.is_relative_to(tmp_path / "here" / PROGRAMS)
    assert not (tmp_path / "here").exists()  # made when first needed
    monkeypatch.delenv("SCANTLING_CACHE")
    usual = open_store()
    assert usual is not None
    assert usual.folder.parent.parent == cache._user_cache()
