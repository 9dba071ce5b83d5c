"""A memory of derived values that stores, with each value, what was read for it.

For every derived value the memory is a decision tree: inner nodes name the question that was read next, edges its
answers, leaves the value. Walking it with another reader reads the same questions again, so whoever asks for a
cached value has read all that it depends on.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from scantling.errors import BrokenPromiseError
from scantling.model.build import Key


@dataclass
class Leaf:
    """The end of a walk: the value."""

    value: Any


@dataclass
class Branch:
    """A question, with the part of the tree behind each answer seen so far."""

    key: Key
    behind: dict[str, Node] = field(default_factory=dict)


Node = Leaf | Branch


class Memo:
    """The trees of all derived values of one case."""

    def __init__(self) -> None:
        """Start with nothing remembered."""
        self._roots: dict[tuple[Any, ...], Node] = {}

    def root(self, name: tuple[Any, ...]) -> Node | None:
        """Return the tree of a derived value, or None."""
        return self._roots.get(name)

    def insert(self, name: tuple[Any, ...], trail: Sequence[tuple[Key, str]], value: Any) -> None:
        """Remember ``value``, found after reading ``trail`` in this order.

        Raises ``BrokenPromiseError`` where the same answers once led to another question: the function does not
        depend on its readings alone.
        """
        node = self._roots.get(name)
        if node is None:
            self._roots[name] = _chain(trail, value)
            return
        for place, (key, answer) in enumerate(trail):
            if not isinstance(node, Branch) or node.key != key:
                raise BrokenPromiseError(f"{name} reads in an order that its readings do not decide (at {key})")
            after = node.behind.get(answer)
            if after is None:
                node.behind[answer] = _chain(trail[place + 1 :], value)
                return
            node = after
        if not isinstance(node, Leaf):
            raise BrokenPromiseError(f"{name} once read more than now with the same answers")


def _chain(trail: Sequence[tuple[Key, str]], value: Any) -> Node:
    node: Node = Leaf(value)
    for key, answer in reversed(trail):
        node = Branch(key, {answer: node})
    return node
