"""Checks against the world: at least thirty tests are marked ``outside``, and each names its source."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from housekit import ROOT, expect_none
from outside_sources import MARK, Outside, all_outside_tests, outside_tests

AT_LEAST = 30


def outside_faults(tests: Sequence[Outside], at_least: int) -> list[str]:
    """Tests without a source, and too few tests."""
    faults = [f"{test.path}:{test.line}: {test.name} names no source" for test in tests if not test.sources]
    if len(tests) < at_least:
        faults.append(f"only {len(tests)} tests against the world, {at_least} are the least")
    return faults


def test_enough_tests_against_the_world_and_each_names_its_source():
    expect_none(outside_faults(all_outside_tests(ROOT), AT_LEAST))


def test_a_test_without_a_source_is_found():
    tests = outside_tests("tests/test_a.py", f"@{MARK}\ndef test_a():\n    assert 1\n")
    assert outside_faults(tests, at_least=1) == ["tests/test_a.py:2: test_a names no source"]


def test_too_few_tests_are_found():
    assert outside_faults([], at_least=1) == ["only 0 tests against the world, 1 are the least"]


@pytest.mark.parametrize(
    "text",
    [
        "# Source: a handbook\n@MARK\ndef test_a():\n    pass\n",
        "@MARK\n# source: a handbook\ndef test_a():\n    pass\n",
        "@MARK\ndef test_a():\n    x = 1\n    # Source: a handbook\n    assert x\n",
        "@MARK\ndef test_a():\n    '''Sag.\n\n    Source: a handbook.\n    '''\n",
        "# Source: a handbook\nCASES = [1]\n\n@MARK\ndef test_a():\n    assert CASES\n",
        "CASES = [\n    # Source: a handbook\n    1,\n]\n\n@MARK\ndef test_a():\n    assert CASES\n",
        "'''Rods.\n\nSource: a handbook\n'''\npytestmark = MARK\n\ndef test_a():\n    pass\n",
        "@MARK\nclass TestA:\n    def test_a(self):\n        # Source: a\n        #   handbook\n        pass\n",
    ],
)
def test_every_way_to_name_a_source_is_read(text):
    (test,) = outside_tests("tests/test_a.py", text.replace("MARK", MARK))
    assert test.sources == ("a handbook",)


def test_an_unmarked_test_is_left_alone():
    assert outside_tests("tests/test_a.py", f"# {MARK}\ndef test_a():\n    pass\n") == []
