"""Demands that stand against each other: irreducible, found in fixed order by leaving demands out."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from itertools import combinations

from scantling.choosing.concerns import KINDS, concerns_of, surely_had
from scantling.choosing.model import BUDGET, ORDERS
from scantling.choosing.problem import Problem
from scantling.choosing.restricted import Held
from scantling.choosing.result import Concern, Conflict
from scantling.choosing.sounding import Sounding

MOST_ASKED = 400  # smaller sets looked at to prove that a conflict is a smallest one
Can = Callable[[Held], bool]


def conflict(sounding: Sounding, problem: Problem, given_up: Iterable[Concern] | None) -> Conflict:
    """Return an irreducible conflict of a problem that cannot be met.

    given_up : concerns of which it is known that all others can be met together; None where nothing is known.
    That parts can be had which anybody sells without limit goes without saying, but where the number of orders is the
    question; beside the budget it goes without saying of all.
    """
    concerns = concerns_of(problem, sounding.opened.lazy)
    held = frozenset(concerns)
    without_budget = held - {BUDGET}
    of_money = BUDGET in held and sounding.can(without_budget)
    open_to_all = without_budget if not of_money else held
    of_orders = not of_money and ORDERS in held and sounding.can(open_to_all - {ORDERS})
    if not of_money and not of_orders:
        open_to_all -= {ORDERS}
    silent = _silent(open_to_all, problem, of_money=of_money, of_orders=of_orders)
    asked = [concern for concern in concerns if concern in open_to_all and concern not in silent]
    found = irreducible(sounding.can, silent, asked)
    return Conflict(tuple(found), is_smallest(sounding.can, silent, asked, found, given_up))


def _silent(held: Held, problem: Problem, *, of_money: bool, of_orders: bool) -> Held:
    """Return the concerns that go without saying."""
    supply = frozenset(concern for concern in held if concern.kind == "supply")
    if of_money:
        return supply
    return frozenset() if of_orders else supply & surely_had(problem)


def irreducible(can: Can, silent: Held, asked: Sequence[Concern]) -> list[Concern]:
    """Return concerns that cannot be met beside the silent ones, though they can without any one of them.

    asked : sorted by kind; whole kinds are left out first, the last ones first, then ever smaller halves
    """
    left = list(asked)
    for kind in reversed(KINDS):
        fewer = [concern for concern in left if concern.kind != kind]
        if len(fewer) < len(left) and not can(silent | frozenset(fewer)):
            left = fewer
    return _needed(can, silent, left, known=True)


def _needed(can: Can, behind: Held, asked: list[Concern], *, known: bool) -> list[Concern]:
    """Return the concerns of ``asked`` that make ``behind`` impossible; ``known``: it can be met alone."""
    if not known and not can(behind):
        return []
    if len(asked) <= 1:
        return asked
    first, second = asked[: len(asked) // 2], asked[len(asked) // 2 :]
    later = _needed(can, behind | frozenset(first), second, known=False)
    sooner = _needed(can, behind | frozenset(later), first, known=not later)
    return [*sooner, *later]


def is_smallest(
    can: Can, silent: Held, asked: Sequence[Concern], found: Sequence[Concern], given_up: Iterable[Concern] | None
) -> bool:
    """Return whether it is proven that no conflict has fewer demands.

    Every conflict holds one of the demands without which all others can be met, so only such sets are looked at.
    """
    if len(found) <= 1:
        return True
    if given_up is None:
        return False
    pivots = [concern for concern in asked if concern in frozenset(given_up)]
    others = [concern for concern in asked if concern not in pivots]
    smaller = (
        [
            (*some, *rest)
            for size in range(1, len(found))
            for many in range(1, size + 1)
            for some in combinations(pivots, many)
            for rest in combinations(others, size - many)
        ]
        if _count(len(pivots), len(others), len(found)) <= MOST_ASKED
        else None
    )
    return smaller is not None and all(can(silent | frozenset(few)) for few in smaller)


def _count(pivots: int, others: int, size: int) -> int:
    """Return a bound of how many sets smaller than ``size`` hold a pivot."""
    return sum(pivots * (pivots + others) ** (few - 1) for few in range(1, size))
