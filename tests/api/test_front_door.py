"""The front door: few names, all there, none loaded before it is used."""

import subprocess
import sys

import pytest

import scantling.api as api

MOST = 30
MOST_A_MODULE = 12


def test_every_name_is_there_and_there_are_few():
    assert len(api.NAMES) <= MOST
    assert all(getattr(api, name) is not None for name in dir(api))


def test_a_module_has_few_names():
    modules = list(api.NAMES.values())
    assert max(modules.count(module) for module in modules) <= MOST_A_MODULE


def test_a_wrong_name_is_told_with_the_right_ones():
    with pytest.raises(AttributeError, match="open_design"):
        _ = api.open_desing


def test_the_door_loads_nothing_behind_it():
    program = "import sys, scantling.api; print(sorted(m for m in sys.modules if m.startswith('scantling')))"
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True, timeout=60)
    assert done.stdout.strip() == "['scantling', 'scantling.api']"
