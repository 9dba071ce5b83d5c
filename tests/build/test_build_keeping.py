"""Slow results kept: found again; made anew where anything they are made from is another, or what is kept is torn."""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from scantling.build import keeping
from scantling.build.keeping import Keeper, kept_name
from scantling.shapes.elements.kept import reduced_data
from scantling.shapes.elements.plate import Plate
from scantling.shapes.elements.triangulate import Disc

SQUARE = ((0.0, 0.0), (50.0, 0.0), (50.0, 50.0), (0.0, 50.0))


def plate(side_ratio: float = 1.0) -> Plate:
    return Plate(SQUARE, (), (Disc(25.0, 25.0, 4.0),), side_ratio, 0.385, 0.3)


class Memory(dict):
    """A store in memory that counts what it hands out."""

    def __init__(self):
        super().__init__()
        self.puts = 0

    def put(self, name, data):
        self.puts += 1
        self[name] = data


@pytest.fixture
def store(monkeypatch):
    monkeypatch.setattr(keeping, "_KNOWN", {})
    return Memory()


def test_what_was_made_is_found_by_the_next_run(store, monkeypatch):
    first = Keeper(store).kept(reduced_data, plate(), 10.0)
    monkeypatch.setattr(keeping, "_KNOWN", {})
    again = Keeper(store).kept(reduced_data, plate(), 10.0)
    assert first == again
    assert store.puts == 1


def test_in_one_run_it_is_made_once_without_a_store(store):
    keeper = Keeper()
    assert keeper.kept(reduced_data, plate(), 10.0) is keeper.kept(reduced_data, plate(), 10.0)


def test_other_arguments_have_another_name():
    names = {
        kept_name(reduced_data, (plate(), 10.0), {}),
        kept_name(reduced_data, (plate(), 10.5), {}),
        kept_name(reduced_data, (plate(0.5), 10.0), {}),
    }
    assert len(names) == 3


def test_another_source_or_library_has_another_name(monkeypatch):
    before = kept_name(reduced_data, (plate(), 10.0), {})
    monkeypatch.setattr(keeping, "source_digest", lambda _: "another")
    assert kept_name(reduced_data, (plate(), 10.0), {}) != before
    monkeypatch.undo()
    keeping.source_digest.cache_clear()
    monkeypatch.setattr(keeping, "version", lambda _: "0.0")
    assert kept_name(reduced_data, (plate(), 10.0), {}) != before
    keeping.source_digest.cache_clear()


@pytest.mark.parametrize("torn", [b"", b"seal\n{}", b"\xff\xff"])
def test_what_is_torn_is_made_anew(store, monkeypatch, torn):
    first = Keeper(store).kept(reduced_data, plate(), 10.0)
    for name in store:
        store[name] = torn
    monkeypatch.setattr(keeping, "_KNOWN", {})
    assert Keeper(store).kept(reduced_data, plate(), 10.0) == first


def test_only_plain_data_may_be_asked_with():
    @dataclass(frozen=True)
    class Odd:
        value: object

    with pytest.raises(TypeError, match="no plain data"):
        kept_name(reduced_data, (Odd(object()), 10.0), {})
