"""Circles and depths among things that depend on each other; without recursion, for input may be deep."""

from __future__ import annotations

from collections.abc import Hashable, Mapping, Sequence
from typing import TypeVar

N = TypeVar("N", bound=Hashable)


def circles(needs: Mapping[N, Sequence[N]]) -> list[list[N]]:
    """Return circles of things that need each other, every thing in at most one; none where there is no circle.

    needs : what each thing needs first; things that are no keys need nothing

    >>> circles({"a": ["b"], "b": ["a"], "c": ["a"]})
    [['a', 'b']]
    """
    left = dict(needs)
    found: list[list[N]] = []
    while True:
        _peel(left)
        if not left:
            return found
        here = next(iter(left))
        walk: dict[N, None] = {}
        while here not in walk:
            walk[here] = None
            here = next(one for one in left[here] if one in left)
        on_way = list(walk)
        circle = on_way[on_way.index(here) :]
        found.append(circle)
        for one in circle:
            del left[one]


def _peel(left: dict[N, Sequence[N]]) -> None:
    """Take away all things that need nothing which is left, again and again."""
    needed_by: dict[N, list[N]] = {}
    open_needs: dict[N, int] = {}
    for one, needs in left.items():
        inside = {other for other in needs if other in left}
        open_needs[one] = len(inside)
        for other in inside:
            needed_by.setdefault(other, []).append(one)
    ready = [one for one, count in open_needs.items() if count == 0]
    while ready:
        done = ready.pop()
        del left[done]
        for one in needed_by.get(done, ()):
            open_needs[one] -= 1
            if open_needs[one] == 0:
                ready.append(one)


def depths(needs: Mapping[N, Sequence[N]]) -> dict[N, int]:
    """Return how many things stand below each one, counted along the longest way; those in circles are left out.

    >>> depths({"a": ["b"], "b": ["c"], "c": []})
    {'c': 0, 'b': 1, 'a': 2}
    """
    known: dict[N, int] = {}
    for start in needs:
        stack = [start]
        on_way: set[N] = set()
        while stack:
            one = stack[-1]
            below = [other for other in needs.get(one, ()) if other in needs]
            open_ = [other for other in below if other not in known]
            if one in known or (one in on_way and open_):
                stack.pop()
            elif open_:
                on_way.add(one)
                stack += open_
            else:
                known[one] = 1 + max((known[other] for other in below), default=-1)
                stack.pop()
    return known
