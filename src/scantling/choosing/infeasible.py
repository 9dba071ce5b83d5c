"""Where nothing is sound: the nearest miss, and demands that stand against each other."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from scantling.build.case import Case
from scantling.checks.check import Check
from scantling.choosing.problem import Problem
from scantling.choosing.result import Conflict, Infeasible

Progress = Callable[[int, int, str], None]


def explain(
    case: Case, checks: Sequence[Check], problem: Problem, rounds: int, progress: Progress | None = None
) -> Infeasible:
    """PLACEHOLDER"""
    return Infeasible(None, Conflict((), False), rounds)
