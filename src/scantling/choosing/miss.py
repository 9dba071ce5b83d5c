"""The nearest miss: fewest demands given up, then the least shortfall, then the least cost; one model, three solves."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from scantling.choosing.concerns import surely_had
from scantling.choosing.decode import answers_of, decisions_of
from scantling.choosing.forbidding import forbid
from scantling.choosing.linear import Expr, Solution, WorkLimitError, solve
from scantling.choosing.mode import Mode
from scantling.choosing.model import BUDGET, ORDERS, Model, build_model
from scantling.choosing.opened import Opened, Progress, failing_lazy
from scantling.choosing.problem import Problem
from scantling.choosing.purchase import purchase
from scantling.choosing.result import Concern, Miss, Purchase, Waived
from scantling.choosing.shortfalls import WHOLE, graded, hopeful, parted, shortfall_at, shortfall_tree
from scantling.choosing.tables import concern_of
from scantling.choosing.trees import Tree
from scantling.choosing.verify import broken
from scantling.errors import BrokenPromiseError
from scantling.model.build import Build, Key

MOST_ROUNDS = 8  # that costly checks may ask for
MOST_GROWN = 30  # trees of shortfalls, one after another
MOST_NODES = 3_000  # of one solve
STEPS = 3  # a round has: fewest given up, least shortfall, least cost


@dataclass
class _Near:
    """Column values of a model, and whether every step to them was proven."""

    model: Model
    values: list[float]
    proven: bool

    @property
    def waived(self) -> tuple[Concern, ...]:
        """The concerns given up, sorted."""
        return tuple(sorted(c for c, column in self.model.waivers.columns.items() if self.values[column] > 0.5))


def nearest_miss(opened: Opened, problem: Problem, progress: Progress | None = None) -> Miss | None:
    """Return the nearest miss of a problem that cannot be met.

    None where even giving up all that may be given up does not help: pins and rules of the design are always kept.
    """
    for number in range(MOST_ROUNDS):
        near = _Search(opened, problem, progress).run()
        if near is None:
            return None
        miss = _told(opened, problem, near)
        known = {waived.concern for waived in miss.waived}
        lazy = failing_lazy(opened, miss.build.as_dict())
        failing = [one for one in lazy if concern_of(*one) not in known]
        if not failing:
            return miss
        if number + 1 < MOST_ROUNDS:
            cuts = [forbid(check, subject, opened, miss.build.as_dict()) for check, subject in failing]
            problem = replace(problem, forbidden=(*problem.forbidden, *cuts))
    late = tuple(Waived(concern_of(*one), WHOLE) for one in failing)
    return replace(miss, waived=tuple(sorted((*miss.waived, *late), key=lambda w: w.concern)), proven=False)


class _Search:
    """The three solves of one round."""

    def __init__(self, opened: Opened, problem: Problem, progress: Progress | None) -> None:
        """Start with every shortfall taken for a thousandth; what matters is grown when it is met."""
        self.opened = opened
        self.problem = parted(problem)
        self.progress = progress
        self.firm = surely_had(problem)
        self.graded = graded(self.problem)
        self.shortfalls: dict[Concern, Tree] = {concern: hopeful(table) for concern, table in self.graded.items()}
        self.grown: set[Concern] = set()

    def run(self) -> _Near | None:
        """Return the nearest values; None where nothing helps."""
        model = self._model()
        self._tell(0)
        fewest = _solved(model, _count(model))
        if fewest is None:
            return None
        least, model, limit = self._least_shortfall(fewest)
        model.linear.at_most(_permille(model), limit)
        self._tell(2)
        cheapest = _solved(model, model.cost, least.values) or replace(least, proven=False)
        return _Near(model, cheapest.values, fewest.proven and least.proven and cheapest.proven)

    def _least_shortfall(self, fewest: Solution) -> tuple[Solution, Model, float]:
        """Return the least shortfall with its model, which is held to the fewest concerns given up, and a limit."""
        found, proven = fewest, True
        for _ in range(MOST_GROWN):
            model = self._model()
            model.linear.at_most(_count(model), round(fewest.objective) + 0.25)
            self._tell(1)
            better = _solved(model, _permille(model))
            proven = better is not None and better.proven
            found = better or found
            met = [c for c in _Near(model, found.values, proven).waived if c in self.graded and c not in self.grown]
            if not met:
                break
            self._grow(met)
        return replace(found, proven=proven and not met), model, _permille(model).value(found.values) + 0.5

    def _grow(self, concerns: list[Concern]) -> None:
        for concern in concerns:
            self.grown.add(concern)
            self.shortfalls[concern] = shortfall_tree(self.opened, self.problem, self.graded[concern])

    def _model(self) -> Model:
        return build_model(self.problem, Mode(waive=True, firm=self.firm, shortfalls=self.shortfalls))

    def _tell(self, done: int) -> None:
        if self.progress:
            self.progress(done, STEPS, "looking for the nearest miss")


def _count(model: Model) -> Expr:
    return Expr(0, dict.fromkeys(model.waivers.columns.values(), 1))


def _permille(model: Model) -> Expr:
    total = Expr()
    for concern in sorted(model.waivers.permille):
        total.plus(model.waivers.permille[concern])
    return total


def _solved(model: Model, objective: Expr, start: list[float] | None = None) -> Solution | None:
    try:
        return solve(model.linear, objective, start, MOST_NODES)
    except WorkLimitError:
        return None


def _told(opened: Opened, problem: Problem, near: _Near) -> Miss:
    """Return the miss that column values mean, priced exactly, with all rules judged but those given up."""
    answers = answers_of(near.model, near.values)
    bought = purchase(problem, answers, decisions_of(near.model, near.values))
    if bought.cost_minor != round(near.model.cost.value(near.values)):
        raise BrokenPromiseError("the cost of the nearest miss is not what its orders add up to")
    faults = broken(without(problem, near.waived), answers, bought, unmet_parts=_parts(near.waived))
    if faults:
        raise BrokenPromiseError("the nearest miss breaks rules: " + "; ".join(faults[:5]))
    waived = tuple(_waived(opened, problem, answers, bought, concern) for concern in near.waived)
    return Miss(Build.of(answers, problem.copies), bought, waived, bought.cost_minor, near.proven)


def _parts(waived: tuple[Concern, ...]) -> frozenset[str]:
    return frozenset(concern.subject for concern in waived if concern.kind == "supply")


def without(problem: Problem, waived: tuple[Concern, ...]) -> Problem:
    """Return the problem without some concerns; parts that need not be had are left in, for they may be had in part."""
    late = {concern.subject for concern in waived if concern.kind == "date"}
    return replace(
        problem,
        tables=tuple(table for table in problem.tables if table.fixed or table.concern not in waived),
        forbidden=tuple(cut for cut in problem.forbidden if cut.concern not in waived),
        offers=tuple(replace(offer, lead_days=0) if offer.part in late else offer for offer in problem.offers),
        budget_minor=None if BUDGET in waived else problem.budget_minor,
        most_orders=None if ORDERS in waived else problem.most_orders,
    )


def _waived(opened: Opened, problem: Problem, answers: Mapping[Key, str], bought: Purchase, concern: Concern) -> Waived:
    """Return a concern given up, with how far it is from being met."""
    if concern.kind == "check":
        return Waived(concern, shortfall_at(opened, concern, answers))
    amount, whole = _amount(problem, bought, concern)
    return Waived(concern, max(1, round(WHOLE * amount / max(whole, 1))), amount)


def _amount(problem: Problem, bought: Purchase, concern: Concern) -> tuple[int, int]:
    """Return by how much a concern is not met, and the limit or the whole of it."""
    if concern == BUDGET:
        limit = problem.budget_minor or 0
        return bought.cost_minor - limit, limit
    if concern == ORDERS:
        limit = problem.most_orders or 0
        return len(bought.orders) - limit, limit
    if concern.kind == "date":
        days = problem.days or 0
        leads = [line.lead_days for order in bought.orders for line in order.lines if line.part == concern.subject]
        return max(leads, default=0) - days, days
    return _lacking(bought, concern.subject)


def _lacking(bought: Purchase, part: str) -> tuple[int, int]:
    """Return how much of a part is missing, and of how much; 1 of 1 where it fits on no board."""
    supplies = [supply for supply in bought.supplies if supply.part == part]
    missing = sum(max(0, -supply.left) for supply in supplies)
    return (missing, sum(supply.need + supply.spares for supply in supplies)) if missing else (1, 1)
