"""Tiny machines made in code, as the files would describe them, and what one check says of them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import SimpleNamespace
from typing import Any

import pytest

from scantling.build.case import Case
from scantling.build.reference import reference_build
from scantling.checks.all import CHECKS
from scantling.findings import Finding, NotLookedAt
from scantling.model.build import Key
from scantling.model.design import Design
from scantling.model.project import Project
from scantling.model.workshop import Workshop

Described = dict[str, Any]


def with_ids(section: Mapping[str, Any] | None) -> Described:
    """Give every entry of a section its key as identifier, as reading does."""
    return {name: {**entry, "id": name} for name, entry in (section or {}).items()}


def design_of(sections: Described) -> Design:
    """Read a design from its sections; places may be given as the name of their reference part."""
    read = dict(sections)
    places = {n: {"reference": p} if isinstance(p, str) else p for n, p in read.get("places", {}).items()}
    read["places"] = places
    for name in ("parts", "places", "axes", "mates", "joints", "sheets", "rails", "warmings", "frames", "chains", "steps"):
        read[name] = with_ids(read.get(name))
    return Design.model_validate({"machine": {"name": "Test"}, **read})


def case_of(workshop: Described | None = None, outlines: Any = None, meshes: Any = None, **sections: Any) -> Case:
    """Open a small machine in a small workshop."""
    shop = Workshop.model_validate({"name": "bench", "currency": "EUR", **(workshop or {})})
    return Case(Project(design_of(sections), shop, outlines or {}, meshes or {}))


def said(case: Case, code: str, subject: str, **chosen: str) -> Finding | NotLookedAt:
    """Return what a check says of a build: the reference, or with other parts at some places (- for _)."""
    answers = {Key("part", place.replace("_", "-")): part for place, part in chosen.items()}
    build = reference_build(case).replacing(answers)
    check = next(check for check in CHECKS if check.code == code)
    assert subject in check.subjects(case.project.design)
    return check.run(case.reader(build), subject)


@pytest.fixture
def bench() -> SimpleNamespace:
    """Return the helpers ``case_of`` and ``said`` for a test."""
    return SimpleNamespace(case=case_of, said=said, design=design_of)


Bench = Callable[..., Any]
