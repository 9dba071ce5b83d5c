"""A case with its problem, all tables grown: what every question about a choice starts from."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from scantling.build.case import Case
from scantling.build.reader import Reader
from scantling.checks.check import Check
from scantling.choosing.assemble import LazyCheck, assemble, assemble_build
from scantling.choosing.growing import OverAll
from scantling.choosing.problem import Problem
from scantling.choosing.tables import admissible
from scantling.model.build import Build, Key

Progress = Callable[[int, int, str], None]


@dataclass(frozen=True)
class Opened:
    """A case with its problem, all tables grown; used again for every question about it.

    lazy : checks that are run on answers    accepted : (code, subject) of unknown findings that the design lives with
    """

    case: Case
    checks: tuple[Check, ...]
    problem: Problem
    lazy: tuple[LazyCheck, ...]

    @property
    def accepted(self) -> frozenset[tuple[str, str]]:
        """Unknown findings that the design lives with."""
        return frozenset((entry.code, entry.subject) for entry in self.case.project.design.accepted)


def open_choice(
    case: Case,
    checks: Sequence[Check],
    copies: int,
    *,
    progress: Progress | None = None,
    grower: OverAll | None = None,
) -> Opened:
    """Return a case opened for choosing ``copies`` machines: the only long step, some seconds.

    grower : of trees over all answers of ``case``, which may know some or all from before
    """
    made = assemble(grower or OverAll(case), checks, copies, progress)
    return Opened(case, tuple(checks), made.problem, made.lazy)


def open_build(case: Case, build: Build) -> Opened:
    """Return a case opened for buying one build alone, at once: no check has a say, and no answer is open."""
    return Opened(case, (), assemble_build(case, build), ())


def failing_lazy(opened: Opened, answers: Mapping[Key, str]) -> list[LazyCheck]:
    """Return the checks, of those run on answers, that these answers do not satisfy; what they say is remembered."""
    reader = Reader(opened.case, answers)
    return [
        (check, subject)
        for check, subject in opened.lazy
        if not admissible(reader.derive(check.run, subject), opened.accepted)
    ]
