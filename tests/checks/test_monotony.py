"""A declared monotony of a total is true over the domain: from good to bad a verdict turns once and never back."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import pytest

from scantling.api.opening import open_design, start_build
from scantling.build.reader import Reader
from scantling.build.reference import reference_build
from scantling.build.totals import TOTALS, term_units
from scantling.checks.all import CHECKS
from scantling.checks.check import TotalUse
from scantling.findings import NotLookedAt
from scantling.model.build import Key

ALDER = Path(__file__).parents[2] / "examples" / "alder"
SHARES = (0.0, 0.02, 0.05, 0.1, 0.2, 0.35, 0.5, 0.7, 0.85, 1.0, 1.2, 1.5, 2.0, 3.0, 5.0, 9.0, 20.0, 60.0)
WITH_TOTAL = [check for check in CHECKS if check.total is not None and not check.costly]  # those that are tabulated


def turns(check, case, answers, subject) -> list[bool]:
    """Whether a choice may contain it, at sums from the best to the worst by the declaration."""
    total = TOTALS[check.total.name]
    reader = Reader(case, answers)
    places = total.terms(case.project.design, subject)
    units = sum(reader.derive(term_units, total.name, subject, place) for place in places)
    sums = [units * share / total.scale for share in SHARES]
    ordered = sums if check.total.worse == "more" else sums[::-1]
    found = [check.run(Reader(case, answers, {total.name: one}, words=False), subject) for one in ordered]
    return [isinstance(word, NotLookedAt) or word.admissible for word in found]


def never_back(said: list[bool]) -> bool:
    return all(now or not later for now, later in pairwise(said))


@pytest.fixture(scope="module")
def machines(bench):
    """The example and the small machines, each with every option of every place alone."""
    session = open_design(ALDER, "village")
    cases = [(session.case, start_build(session)), *((c, reference_build(c)) for c in (bench.belt(), bench.screw()))]
    found = []
    for case, build in cases:
        axes = case.project.design.axes.values()
        moved = {place for axis in axes for place in (axis.motor, getattr(axis, "screw", None))}
        moved |= {place for axis in axes if axis.guide for place in (axis.guide.bearings, axis.guide.rods)}
        keys = [case.part_key(place) for place in sorted(filter(None, moved))]
        found.append((case, build.as_dict()))
        for key in dict.fromkeys(keys):
            found += [(case, {**build.as_dict(), key: answer}) for answer in case.answers(key, {})]
    return found


@pytest.mark.parametrize("check", WITH_TOTAL, ids=lambda check: check.code)
def test_the_verdict_turns_once_from_good_to_bad(check, machines):
    asked = 0
    for case, answers in machines:
        for subject in check.subjects(case.project.design):
            try:
                said = turns(check, case, answers, subject)
            except KeyError:  # an option whose way of being got is another question
                continue
            asked += 1
            assert never_back(said), (check.code, subject, said)
    assert asked or not any(check.subjects(case.project.design) for case, _ in machines)


def test_an_untrue_declaration_is_found():
    assert never_back([True, True, False, False])
    assert not never_back([True, False, True])
    assert isinstance(WITH_TOTAL[0].total, TotalUse)
    assert Key("part", "bed")
