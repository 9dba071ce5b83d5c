"""Plans of the two examples, without a purchase unless a test adds one."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from scantling.build.case import Case
from scantling.build.reference import carry_over, reference_build
from scantling.checks.all import run_checks
from scantling.model.build import Key
from scantling.plans.making import make_plan
from scantling.plans.plan import Plan
from scantling.reading.project import read_project

EXAMPLES = Path(__file__).parents[2] / "examples"


@cache
def _case_of(example: str) -> Case:
    return Case(read_project(EXAMPLES / example, "village"))


@cache
def _plan_of(example: str, **parts: str) -> Plan:
    case = _case_of(example)
    changes = {Key("part", place.replace("_", "-")): part for place, part in parts.items()}
    build = carry_over(case, reference_build(case), changes)
    return make_plan(case, build, run_checks(case, build))


@pytest.fixture(scope="session")
def case_of():
    """One example in its village workshop, opened once."""
    return _case_of


@pytest.fixture(scope="session")
def plan_of():
    """The plan of the reference parts with some changes (``_`` stands for a dash), nothing bought."""
    return _plan_of
