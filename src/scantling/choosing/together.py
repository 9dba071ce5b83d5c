"""Which lengths of a part can occur in one build: two that need different answers to a question never share a bar."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from itertools import islice

from scantling.choosing.problem import Demand, Resource
from scantling.choosing.trees import paths
from scantling.model.build import Key

MOST_PATHS = 400
Path = Mapping[Key, str]


def together(
    demands: tuple[Demand, ...], part: str, domains: Mapping[Key, tuple[str, ...]]
) -> Callable[[int, int], bool]:
    """Return a test of two lengths of a part; where a tree is too large to look through it says yes."""
    places: dict[int, list[Path]] = {}
    for demand in demands:
        found = list(islice(paths(demand.tree), MOST_PATHS + 1))
        if not any(resource.part == part for _, value in found for resource, _ in value):
            continue
        if len(found) > MOST_PATHS:
            return lambda _a, _b: True
        for known, value in found:
            if all(answer in domains[key] for key, answer in known.items()):
                for um in _lengths(part, value):
                    places.setdefault(um, []).append(known)
    pairs = {(a, b) for a in places for b in places if a <= b and (a == b or _meet(places[a], places[b]))}
    return lambda a, b: (min(a, b), max(a, b)) in pairs


def _lengths(part: str, value: tuple[tuple[Resource, int], ...]) -> list[int]:
    return [r.length_um for r, amount in value if r.part == part and r.unit == "length" and amount]


def _meet(a: list[Path], b: list[Path]) -> bool:
    """Return whether some paths of two lengths agree in every question that both ask."""
    return any(_agree(first, second) for first in a for second in b)


def _agree(first: Path, second: Path) -> bool:
    return all(second.get(key, answer) == answer for key, answer in first.items())
