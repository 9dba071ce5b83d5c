"""Purchases of invented parts from many vendors, proven: how long, and what it saves against usual ways."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from families import MIDDLE, SMALL, Size, purchase_family
from measuring import Measure, took

from scantling.choosing.problem import Problem, fixed_to
from scantling.choosing.solve import Solved
from scantling.choosing.wide import cheapest

SEEDS = (0, 1, 2)
TARGETS_S = {"small": 1.0, "middle": 3.0}


def measures() -> Iterator[Measure]:
    """Yield, for each size and seed, the time of the proof and the cost of choosing by unit price beside it."""
    for size in (SMALL, MIDDLE):
        for seed in SEEDS:
            yield from _one(size, seed)


def _one(size: Size, seed: int) -> Iterator[Measure]:
    problem, name = purchase_family(size, seed), f"{size.name}, seed {seed}"
    found: list[Solved | None] = []
    taken = took(lambda: found.append(cheapest(problem, tidy=False)))
    best = found[0]
    if best is None:
        yield Measure(f"{name}: nothing can be had", taken.wall_s, "s", None, taken.note)
        return
    gap = (best.cost_minor - best.bound_minor) / best.cost_minor
    note = f"{taken.note}; cost {best.cost_minor}, bound {best.bound_minor}"
    yield Measure(f"{name}: proven", taken.wall_s, "s", TARGETS_S[size.name], note)
    yield Measure(f"{name}: gap", gap, "", 0.0)
    later = cheapest(_chosen_first(problem), tidy=False)
    if later is not None:
        yield Measure(f"{name}: options by unit price, then bought best", later.cost_minor / best.cost_minor, "")


def _chosen_first(problem: Problem) -> Problem:
    """Return the purchase of the options that the cheapest price of a piece would have chosen."""
    piece: dict[str, float] = {}
    for offer in problem.offers:
        price = min(level.price_minor for level in offer.levels) / offer.pack
        piece[offer.part] = min(price, piece.get(offer.part, price))
    answers = {}
    for demand in problem.demands:
        key = getattr(demand.tree, "key", None)
        if key is not None:
            costs = {a: sum(n * piece.get(r.part, 0.0) for r, n in leaf.value) for a, leaf in demand.tree.behind}
            answers[key] = min(costs, key=lambda answer: (costs[answer], answer))
    return replace(fixed_to(problem, answers), most_orders=problem.most_orders)
