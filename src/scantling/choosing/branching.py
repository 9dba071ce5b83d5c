"""The search over switches that few rows hang on, done before the solver's own: free shipping or not, customs or not.

With such a switch undecided the linear relaxation pays a part of a fee that in truth is paid in full or not at all, so
its bound is poor; decided, the bound is good, and all but one or two of the combinations are out of the question.
"""

from __future__ import annotations

import heapq
from collections.abc import Mapping
from typing import Any

from scantling.choosing.linear import MOST_NODES, WHOLE_GAP, Expr, Linear, Solution, loaded, solve
from scantling.errors import BrokenPromiseError

MOST_LOOKS = 60  # relaxations; what is open then goes to the solver as it is
DECIDED = 1e-6

Fixed = tuple[tuple[int, float], ...]


def solve_switched(model: Linear, objective: Expr, nodes: int = MOST_NODES) -> Solution | None:
    """Return what ``linear.solve`` returns, sooner where the model has switches."""
    if not model.switches:
        return solve(model, objective, nodes=nodes)
    search = _Search(model, objective, nodes)
    search.look(())
    while search.open and not search.is_over():
        search.step()
    return search.result()


class _Search:
    """Best bound first; ``open`` holds (bound, order, what is fixed, the switch to decide next or None)."""

    def __init__(self, model: Linear, objective: Expr, nodes: int) -> None:
        self.model, self.objective, self.nodes = model, objective, nodes
        self.relaxed = _Relaxed(model, objective)
        self.open: list[tuple[float, int, Fixed, int | None]] = []
        self.looks = 0
        self.best: Solution | None = None
        self.bounds: list[float] = []

    def look(self, fixed: Fixed) -> None:
        """Bound a combination, and keep it where anything can come of it."""
        self.looks += 1
        found = self.relaxed.bound(fixed)
        if found is not None:
            heapq.heappush(self.open, (found[0], self.looks, fixed, self._undecided(found[1])))

    def is_over(self) -> bool:
        """Return whether nothing that is open can be better than the best."""
        return self.best is not None and self.open[0][0] > self.best.objective - WHOLE_GAP

    def step(self) -> None:
        """Decide one more switch of the combination with the best bound, or solve it."""
        _, _, fixed, switch = heapq.heappop(self.open)
        if switch is not None and self.looks < MOST_LOOKS:
            self.look((*fixed, (switch, 0.0)))
            self.look((*fixed, (switch, 1.0)))
            return
        decided = _with(self.model, fixed)
        if self.best is not None:
            decided.at_most(self.objective, self.best.objective - WHOLE_GAP)
        found = solve(decided, self.objective, nodes=self.nodes)
        if found is None:
            self.bounds.append(self.best.objective - WHOLE_GAP if self.best else float("inf"))
        if found is not None:
            self.bounds.append(found.bound)
            if self.best is None or found.objective < self.best.objective:
                self.best = found

    def result(self) -> Solution | None:
        """Return the best with a bound that holds for all combinations."""
        if self.best is None:
            return solve(self.model, self.objective, nodes=self.nodes)  # it says whether there really is none
        best, bound = self.best, min([*self.bounds, *(node[0] for node in self.open)])
        bound = min(bound, best.objective)
        return Solution(best.values, best.objective, bound, best.objective - bound < 2 * WHOLE_GAP, best.nodes)

    def _undecided(self, values: list[float]) -> int | None:
        """Return the switch that is farthest from 0 and 1."""
        doubt = [(min(values[s], 1 - values[s]), -s) for s in self.model.switches]
        most, switch = max(doubt)
        return -switch if most > DECIDED else None


class _Relaxed:
    """The model without whole numbers, solved again and again from where the last solve ended."""

    def __init__(self, model: Linear, objective: Expr) -> None:
        relaxed = model.copy()
        relaxed.whole = [False] * len(model.whole)
        self.highs: Any = loaded(relaxed, objective, MOST_NODES)
        self.model = model

    def bound(self, fixed: Fixed) -> tuple[float, list[float]] | None:
        """Return the relaxation's value and columns, or None where it is impossible."""
        import highspy

        at: Mapping[int, float] = dict(fixed)
        for switch in self.model.switches:
            low, high = self.model.lower[switch], self.model.upper[switch]
            self.highs.changeColBounds(switch, at.get(switch, low), at.get(switch, high))
        self.highs.run()
        status = self.highs.getModelStatus()
        if status in (highspy.HighsModelStatus.kInfeasible, highspy.HighsModelStatus.kUnboundedOrInfeasible):
            return None
        if status != highspy.HighsModelStatus.kOptimal:
            raise BrokenPromiseError(f"the solver ended with {self.highs.modelStatusToString(status)}")
        return float(self.highs.getInfo().objective_function_value), list(self.highs.getSolution().col_value)


def _with(model: Linear, fixed: Fixed) -> Linear:
    decided = model.copy()
    for switch, value in fixed:
        decided.lower[switch] = decided.upper[switch] = value
    return decided
