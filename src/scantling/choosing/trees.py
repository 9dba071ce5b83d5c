"""Decision trees grown by running a function on a reader and branching at each question that it reads.

Equal sub-trees are one object, and a question whose answers all lead to the same sub-tree is left out, so a tree is
stored as a diagram without repetition. Along every path each question is asked at most once.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Protocol

from scantling.build.reader import Catalogue, Reader, Unread
from scantling.model.build import Key


class Answering(Protocol):
    """What growing needs: the possible answers to a question."""

    def answers(self, key: Key, known: Mapping[Key, str]) -> tuple[str, ...]:
        """Return the possible answers, given those already known."""


class Questions(Catalogue, Answering, Protocol):
    """What running a check needs of a case: what a reader needs, and the possible answers to a question."""


@dataclass(frozen=True, eq=False)
class Leaf:
    """The end of a path: the value."""

    value: Any


@dataclass(frozen=True, eq=False)
class Node:
    """A question and the sub-tree behind each answer, in the order offered; none where nothing can be answered."""

    key: Key
    behind: tuple[tuple[str, Tree], ...]


Tree = Leaf | Node


class TooLargeError(Exception):
    """A tree has more paths than was allowed: the function is to be run on answers instead."""


class Maker:
    """Makes trees in which equal sub-trees are one object."""

    def __init__(self) -> None:
        """Start with no tree made."""
        self._leaves: dict[tuple[type, Hashable], Leaf] = {}
        self._nodes: dict[tuple[Hashable, ...], Node] = {}

    def leaf(self, value: Hashable) -> Leaf:
        """Return the one leaf with this value (``True`` is not ``1``)."""
        return self._leaves.setdefault((type(value), value), Leaf(value))

    def node(self, key: Key, behind: Sequence[tuple[str, Tree]]) -> Tree:
        """Return the one node with these branches; the branch itself where all are the same."""
        if behind and all(tree is behind[0][1] for _, tree in behind):
            return behind[0][1]
        name = (key, *((answer, id(tree)) for answer, tree in behind))
        return self._nodes.setdefault(name, Node(key, tuple(behind)))


def grow(function: Callable[[Reader], Hashable], case: Questions, limit: int, maker: Maker | None = None) -> Tree:
    """Return the tree of ``function`` over all answers that ``case`` offers.

    limit : of paths; raises ``TooLargeError`` beyond it. The function must depend on its readings alone.
    """
    return grow_on(lambda known: function(Reader(case, known)), case, limit, maker)


def grow_on(
    function: Callable[[Mapping[Key, str]], Hashable], case: Answering, limit: int, maker: Maker | None = None
) -> Tree:
    """Return the tree of a function of the answers known so far, which raises ``Unread`` where it needs another."""
    made = maker or Maker()
    count = 0

    def behind(known: dict[Key, str]) -> Tree:
        nonlocal count
        try:
            value = function(known)
        except Unread as unread:
            key = unread.key
        else:
            count += 1
            if count > limit:
                raise TooLargeError(f"more than {limit} paths")
            return made.leaf(value)
        return made.node(key, [(answer, behind({**known, key: answer})) for answer in case.answers(key, known)])

    return behind({})


def mapped(tree: Tree, function: Callable[[Any], Hashable], maker: Maker | None = None) -> Tree:
    """Return the tree with ``function`` applied to every leaf's value."""
    made = maker or Maker()
    done: dict[int, Tree] = {}

    def at(tree: Tree) -> Tree:
        if id(tree) not in done:
            if isinstance(tree, Leaf):
                done[id(tree)] = made.leaf(function(tree.value))
            else:
                done[id(tree)] = made.node(tree.key, [(answer, at(branch)) for answer, branch in tree.behind])
        return done[id(tree)]

    return at(tree)


def value_at(tree: Tree, answers: Mapping[Key, str]) -> Any:
    """Return the value to which ``answers`` lead; raises ``KeyError`` where one is not offered."""
    while isinstance(tree, Node):
        answer = answers[tree.key]
        for offered, branch in tree.behind:
            if offered == answer:
                tree = branch
                break
        else:
            raise KeyError(f"{answer!r} is no answer to {tree.key}")
    return tree.value


def nodes(tree: Tree) -> list[Node]:
    """Return the inner nodes, each once, every node before what is behind it."""
    seen: set[int] = set()
    order: list[Node] = []

    def visit(tree: Tree) -> None:
        if isinstance(tree, Node) and id(tree) not in seen:
            seen.add(id(tree))
            for _, branch in reversed(tree.behind):
                visit(branch)
            order.append(tree)

    visit(tree)
    order.reverse()
    return order


def values(tree: Tree) -> list[Any]:
    """Return the values of the leaves, each leaf once, in the order met."""
    if isinstance(tree, Leaf):
        return [tree.value]
    leaves = {id(b): b for node in nodes(tree) for _, b in node.behind if isinstance(b, Leaf)}
    return [leaf.value for leaf in leaves.values()]


def keys(tree: Tree) -> tuple[Key, ...]:
    """Return the questions a tree asks, each once, in the order met."""
    return tuple(dict.fromkeys(node.key for node in nodes(tree)))


def paths(tree: Tree) -> Iterator[tuple[dict[Key, str], Any]]:
    """Yield every path as its answers and its value."""

    def below(tree: Tree, known: dict[Key, str]) -> Iterator[tuple[dict[Key, str], Any]]:
        if isinstance(tree, Leaf):
            yield known, tree.value
            return
        for answer, branch in tree.behind:
            yield from below(branch, {**known, tree.key: answer})

    return below(tree, {})


@dataclass(frozen=True)
class Size:
    """How large trees are: paths, inner nodes and edges as stored, and the most questions on one path."""

    paths: int
    nodes: int
    edges: int
    depth: int


def size(tree: Tree) -> Size:
    """Return how large a tree is."""
    count: dict[int, tuple[int, int]] = {}

    def at(tree: Tree) -> tuple[int, int]:
        if isinstance(tree, Leaf):
            return 1, 0
        if id(tree) not in count:
            below = [at(branch) for _, branch in tree.behind]
            count[id(tree)] = (sum(p for p, _ in below), 1 + max((d for _, d in below), default=0))
        return count[id(tree)]

    path_count, depth = at(tree)
    inner = nodes(tree)
    return Size(path_count, len(inner), sum(len(node.behind) for node in inner), depth)
