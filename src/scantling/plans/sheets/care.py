"""The care map: the few distances on a panel that must hold, chosen so that they pin down every hole that matters."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations

from scantling.plans.sheets.job import TemplateHole
from scantling.shapes.edges import distance_mm


@dataclass(frozen=True)
class CareDistance:
    """Two holes whose distance is measured after drilling the pilots; ``slack_mm`` is how much it may be off."""

    first: int
    second: int
    length_mm: float
    slack_mm: float


def care_distances(holes: Sequence[TemplateHole]) -> tuple[CareDistance, ...]:
    """Return the distances to measure: within each group its neighbours and its longest way, then group to group.

    The neighbours form a shortest tree, so n holes take n - 1 figures; the longest way of a group of three or more
    (the diagonal of a motor's square) finds the error that neighbours alone let pass. Numbers are those of ``holes``.
    """
    groups: dict[str, list[int]] = {}
    for number, hole in enumerate(holes):
        if hole.care:
            groups.setdefault(hole.group or f"hole {number}", []).append(number)
    pairs = [pair for members in groups.values() for pair in _within(holes, members)]
    pairs += _between(holes, list(groups.values()))
    return tuple(_distance(holes, a, b) for a, b in dict.fromkeys(pairs))


def _within(holes: Sequence[TemplateHole], members: list[int]) -> list[tuple[int, int]]:
    pairs = _tree(holes, [[member] for member in members])
    if len(members) > 2:
        pairs.append(max(combinations(members, 2), key=lambda pair: _length(holes, pair)))
    return pairs


def _between(holes: Sequence[TemplateHole], groups: list[list[int]]) -> list[tuple[int, int]]:
    return _tree(holes, groups)


def _tree(holes: Sequence[TemplateHole], groups: list[list[int]]) -> list[tuple[int, int]]:
    """Join groups to one by their nearest members, the nearest first (a shortest spanning tree)."""
    joined, left, pairs = list(groups[0]) if groups else [], [list(group) for group in groups[1:]], []
    while left:
        ways = [((a, b), group) for group in left for a in joined for b in group]
        (a, b), group = min(ways, key=lambda way: (round(_length(holes, way[0]), 6), way[0]))
        pairs.append((min(a, b), max(a, b)))
        joined += group
        left.remove(group)
    return pairs


def _length(holes: Sequence[TemplateHole], pair: tuple[int, int]) -> float:
    return distance_mm(holes[pair[0]].at, holes[pair[1]].at)


def _distance(holes: Sequence[TemplateHole], first: int, second: int) -> CareDistance:
    slack_mm = min(holes[first].slack_mm, holes[second].slack_mm)
    return CareDistance(first, second, _length(holes, (first, second)), slack_mm)
