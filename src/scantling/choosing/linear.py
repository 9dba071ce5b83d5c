"""A linear model with whole-number columns, built in a fixed order and solved by HiGHS: one thread, fixed seed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from scantling.choosing.quiet import silent_highs
from scantling.errors import BrokenPromiseError, ScantlingError

INFINITY = float("inf")
WHOLE_GAP = 0.49  # an objective of whole numbers is proven where bound and value differ by less than a half
MOST_NODES = 500_000


class WorkLimitError(ScantlingError):
    """The search met its work limit before it found any values that meet all rows."""


class Expr:
    """A sum of columns times coefficients, and a constant."""

    __slots__ = ("constant", "terms")

    def __init__(self, constant: float = 0, terms: Mapping[int, float] | None = None) -> None:
        """Start from a constant and some terms."""
        self.constant = constant
        self.terms: dict[int, float] = dict(terms or {})

    def add(self, column: int, factor: float = 1) -> Expr:
        """Add a column; return the sum itself."""
        self.terms[column] = self.terms.get(column, 0) + factor
        return self

    def plus(self, other: Expr, factor: float = 1) -> Expr:
        """Add another sum; return the sum itself."""
        for column, value in other.terms.items():
            self.add(column, factor * value)
        self.constant += factor * other.constant
        return self

    def times(self, factor: float) -> Expr:
        """Return a new sum, multiplied."""
        return Expr().plus(self, factor)

    def value(self, values: list[float]) -> float:
        """Return the value under column values."""
        return self.constant + sum(factor * values[column] for column, factor in self.terms.items())


@dataclass
class Linear:
    """Columns and rows; ``row`` and ``column`` return nothing that depends on anything but the order of calls.

    switches : columns of 0 or 1 that turn other rows on and off, best decided first
    """

    lower: list[float] = field(default_factory=list)
    upper: list[float] = field(default_factory=list)
    whole: list[bool] = field(default_factory=list)
    rows: list[tuple[float, dict[int, float], float]] = field(default_factory=list)
    switches: list[int] = field(default_factory=list)

    def column(self, lower: float = 0, upper: float = INFINITY, *, whole: bool = False) -> int:
        """Add a column and return its index."""
        self.lower.append(lower)
        self.upper.append(upper)
        self.whole.append(whole)
        return len(self.lower) - 1

    def binary(self) -> int:
        """Add a column that is 0 or 1."""
        return self.column(0, 1, whole=True)

    def switch(self) -> int:
        """Add a column that is 0 or 1 and decides which of some rows hold."""
        self.switches.append(self.binary())
        return self.switches[-1]

    def row(self, expr: Expr, lower: float = -INFINITY, upper: float = INFINITY) -> None:
        """Add ``lower <= expr <= upper``."""
        terms = {column: factor for column, factor in expr.terms.items() if factor}
        if not terms and not lower - 1e-9 <= expr.constant <= upper + 1e-9:
            terms = {self.column(0, 0): 1}  # nothing can mend a row without columns: keep it, for it cannot be met
        if terms:
            self.rows.append((lower - expr.constant, terms, upper - expr.constant))

    def at_least(self, expr: Expr, limit: float) -> None:
        """Add ``expr >= limit``."""
        self.row(expr, lower=limit)

    def at_most(self, expr: Expr, limit: float) -> None:
        """Add ``expr <= limit``."""
        self.row(expr, upper=limit)

    def equal(self, expr: Expr, limit: float) -> None:
        """Add ``expr = limit``."""
        self.row(expr, limit, limit)

    def copy(self) -> Linear:
        """Return a model that can grow apart from this one."""
        return Linear(list(self.lower), list(self.upper), list(self.whole), list(self.rows), list(self.switches))


@dataclass(frozen=True)
class Solution:
    """What the solver found: column values with whole ones rounded, the objective's value and a bound of it.

    proven : value and bound differ by less than a half    nodes : of the search, a measure of work
    """

    values: list[float]
    objective: float
    bound: float
    proven: bool
    nodes: int


def solve(model: Linear, objective: Expr, start: list[float] | None = None, nodes: int = MOST_NODES) -> Solution | None:
    """Return the least ``objective``, or None where no values meet all rows.

    start : values to begin the search from    nodes : work limit of the search
    Raises ``BrokenPromiseError`` on any end that is neither an optimum, nor infeasible, nor the work limit.
    """
    highs = loaded(model, objective, nodes)
    if start is not None:
        _start_from(highs, start)
    highs.run()
    found = _solution(highs, model, objective)
    if start is not None and found is not None and found.proven and found.objective - found.bound > 2 * WHOLE_GAP:
        return solve(model, objective, nodes=nodes)  # 1.16.0 now and then calls the start itself optimal
    return found if found is not None else _second_opinion(model, objective, nodes)


def _second_opinion(model: Linear, objective: Expr, nodes: int) -> Solution | None:
    """Ask again without any presolve before "impossible" is believed: nothing else would show that it is wrong."""
    highs = loaded(model, objective, nodes)
    highs.setOptionValue("presolve", "off")
    highs.run()
    return _solution(highs, model, objective)


def loaded(model: Linear, objective: Expr, nodes: int) -> Any:
    """Return a solver object that holds a model."""
    import highspy
    import numpy as np

    highs = silent_highs()
    for name, value in _OPTIONS.items():
        highs.setOptionValue(name, value)
    highs.setOptionValue("mip_max_nodes", nodes)
    lp = highspy.HighsLp()
    lp.num_col_, lp.num_row_ = len(model.lower), len(model.rows)
    costs = np.zeros(len(model.lower))
    for column, factor in objective.terms.items():
        costs[column] = factor
    lp.col_cost_, lp.offset_ = costs, objective.constant
    lp.col_lower_, lp.col_upper_ = np.array(model.lower, dtype=float), np.array(model.upper, dtype=float)
    lp.row_lower_ = np.array([row[0] for row in model.rows], dtype=float)
    lp.row_upper_ = np.array([row[2] for row in model.rows], dtype=float)
    lp.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    lp.a_matrix_.start_ = np.cumsum([0, *(len(row[1]) for row in model.rows)])
    lp.a_matrix_.index_ = np.array([column for row in model.rows for column in row[1]], dtype=np.int32)
    lp.a_matrix_.value_ = np.array([factor for row in model.rows for factor in row[1].values()], dtype=float)
    kinds = highspy.HighsVarType.kInteger, highspy.HighsVarType.kContinuous
    lp.integrality_ = [kinds[0] if whole else kinds[1] for whole in model.whole]
    highs.passModel(lp)
    return highs


# Enumeration, dual fixing, column stuffing and elimination (bits 16 to 19 of the presolve rules) are off: with them
# 1.16.0 calls some small sound models infeasible, and without them it is no slower.
DOUBTFUL_RULES = 15 << 16

_OPTIONS: dict[str, Any] = {
    "presolve_rule_off": DOUBTFUL_RULES,
    "threads": 1,
    "parallel": "off",
    "random_seed": 0,
    "mip_rel_gap": 0.0,
    "mip_abs_gap": WHOLE_GAP,
    "mip_feasibility_tolerance": 1e-7,
    "primal_feasibility_tolerance": 1e-8,
}


def _start_from(highs: Any, start: list[float]) -> None:
    import highspy

    given = highspy.HighsSolution()
    given.col_value = start
    highs.setSolution(given)


def _solution(highs: Any, model: Linear, objective: Expr) -> Solution | None:
    import highspy

    status = highs.getModelStatus()
    ends = highspy.HighsModelStatus
    if status in (ends.kInfeasible, ends.kUnboundedOrInfeasible):
        return None
    info = highs.getInfo()
    if status not in (ends.kOptimal, ends.kSolutionLimit, ends.kModelEmpty):
        raise BrokenPromiseError(f"the solver ended with {highs.modelStatusToString(status)}")
    if info.primal_solution_status != 2 and status != ends.kModelEmpty:
        raise WorkLimitError(f"no choice was found within {max(0, info.mip_node_count)} nodes of the search")
    raw = list(highs.getSolution().col_value)
    values = [float(round(value)) if whole else value for value, whole in zip(raw, model.whole, strict=True)]
    value = objective.value(values)
    bound = info.mip_dual_bound if any(model.whole) else value
    return Solution(values, value, bound, status != ends.kSolutionLimit, max(0, info.mip_node_count))
