"""Where nothing is sound: what comes nearest, and which demands stand against each other."""

from __future__ import annotations

from scantling.choosing.conflict import conflict
from scantling.choosing.miss import nearest_miss
from scantling.choosing.opened import Opened, Progress
from scantling.choosing.problem import Problem
from scantling.choosing.result import Infeasible
from scantling.choosing.sounding import Sounding


def explain(opened: Opened, problem: Problem, rounds: int, progress: Progress | None = None) -> Infeasible:
    """Return the nearest miss and an irreducible conflict of a problem that cannot be met.

    rounds : solves that costly checks asked for before nothing was left
    """
    miss = nearest_miss(opened, problem, progress)
    given_up = [waived.concern for waived in miss.waived] if miss is not None and miss.proven else None
    return Infeasible(miss, conflict(Sounding(opened, problem, progress), problem, given_up), rounds)
