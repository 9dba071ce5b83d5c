"""What a build takes, read off the demand trees: exact whole amounts."""

from __future__ import annotations

from collections.abc import Mapping

from scantling.choosing.problem import Problem, Resource, Spare
from scantling.choosing.result import Supply
from scantling.choosing.trees import value_at
from scantling.model.build import Key

NO_SPARE = Spare()


def needs(problem: Problem, answers: Mapping[Key, str]) -> dict[Resource, int]:
    """Return the amount of each resource that the answers take, without spares; none that is zero; sorted."""
    total: dict[Resource, int] = {}
    for demand in problem.demands:
        for resource, amount in value_at(demand.tree, answers):
            total[resource] = total.get(resource, 0) + amount
    return {resource: total[resource] for resource in sorted(total) if total[resource]}


def spares(problem: Problem, resource: Resource, need: int) -> int:
    """Return the spares that go with a need; of a mass only the share counts."""
    spare = problem.spares.get(resource.part, NO_SPARE)
    return Spare(spare.extra).of(need) if resource.unit == "g" else spare.of(need)


def board_needs(problem: Problem, answers: Mapping[Key, str]) -> dict[str, dict[tuple[int, int], int | None]]:
    """Return, for each sheet material, the boards it takes of each size; None where a panel does not fit."""
    found: dict[str, dict[tuple[int, int], int | None]] = {}
    for demand in problem.boards:
        found.setdefault(demand.part, {})[demand.board_um] = value_at(demand.tree, answers)
    return found


def bare_supplies(
    problem: Problem, answers: Mapping[Key, str], sizes: Mapping[str, tuple[int, int]]
) -> tuple[Supply, ...]:
    """Return what the answers take with spares, and nothing yet to meet it.

    sizes : of the boards of some materials; where there is none, or a panel does not fit, the fewest of any size
    """
    found = [
        Supply(r.part, r.unit, need, spares(problem, r, need), 0, 0, r.length_um)
        for r, need in needs(problem, answers).items()
    ]
    for part, counts in board_needs(problem, answers).items():
        fitting = [(count, size) for size, count in counts.items() if count is not None]
        usual = [(count, size) for count, size in fitting if size == sizes.get(part)]
        if fitting and min(fitting)[0]:
            count, size = min(usual or fitting)
            found.append(Supply(part, "board", count, spares(problem, Resource(part, "board"), count), 0, 0, 0, size))
    return tuple(sorted(found, key=lambda s: (s.part, s.unit, s.length_um)))
