"""A check is remembered until a file that it was read from is another; what is shown is the same."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from scantling.api import checked as module
from scantling.api.checked import CheckAsked, checked
from scantling.errors import FaultsError

PLOTTER = Path(__file__).parents[2] / "examples" / "plotter"


class Memory(dict):
    """A store in memory."""

    def put(self, name, data):
        self[name] = data


@pytest.fixture
def plotter(tmp_path):
    shutil.copytree(PLOTTER, tmp_path / "plotter")
    return tmp_path / "plotter"


@pytest.fixture
def worked(monkeypatch):
    """Count how often a check is worked out."""
    times = []
    whole = module._worked_out
    monkeypatch.setattr(module, "_worked_out", lambda *args: times.append(args) or whole(*args))
    return times


def test_the_second_time_it_is_the_same_and_not_worked_out(plotter, worked):
    store, asked = Memory(), CheckAsked(plotter, "village", stand_ins=True)
    assert checked(asked, store) == checked(asked, store)
    assert len(worked) == 1


def test_a_changed_file_is_seen(plotter, worked):
    store, asked = Memory(), CheckAsked(plotter, "village")
    checked(asked, store)
    shop = plotter / "workshops" / "village.yaml"
    shop.write_text(shop.read_text(encoding="utf-8") + "# changed\n", encoding="utf-8")
    checked(asked, store)
    assert len(worked) == 2


def test_a_file_that_takes_the_place_of_another_is_seen(plotter, worked, monkeypatch):
    monkeypatch.chdir(plotter)
    store, asked = Memory(), CheckAsked(Path(), "village")
    checked(asked, store)
    (plotter / "village").write_text((plotter / "workshops" / "village.yaml").read_text(encoding="utf-8"))
    with pytest.raises(FaultsError):  # beside the design there are no offers for it
        checked(asked, store)
    assert len(worked) == 2


@pytest.mark.parametrize(
    "other", [{"changes": ("x-rod=rod-8-soft",)}, {"copies": 3}, {"stand_ins": True}, {"workshop": None}]
)
def test_another_question_has_another_answer(plotter, other):
    asked = {"folder": plotter, "workshop": "village"}
    assert CheckAsked(**asked).name != CheckAsked(**{**asked, **other}).name


def test_what_is_torn_is_worked_out_anew(plotter, worked):
    store, asked = Memory(), CheckAsked(plotter, "village")
    first = checked(asked, store)
    for name in store:
        store[name] = store[name][:-20]
    assert checked(asked, store) == first
    assert len(worked) == 2


def test_without_a_store_nothing_is_remembered(plotter, worked):
    checked(CheckAsked(plotter, "village"))
    checked(CheckAsked(plotter, "village"))
    assert len(worked) == 2
