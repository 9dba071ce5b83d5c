"""Parts that nobody offers and that are not in hand: told at once, with nothing solved."""

from __future__ import annotations

from scantling.choosing.concerns import demanded
from scantling.choosing.problem import Problem
from scantling.choosing.result import Concern, Conflict, Infeasible


def shortage(problem: Problem) -> Infeasible | None:
    """Return why one build cannot be had where some part of it is nowhere to be had; else None.

    The first such part alone is what stands in the way; the nearest miss is not looked for.
    """
    had = {offer.part for offer in problem.offers} | {item.part for item in problem.stock}
    lacking = [part for part in demanded(problem) if part not in had]
    return Infeasible(None, Conflict((Concern("supply", "", lacking[0]),), smallest=True)) if lacking else None
