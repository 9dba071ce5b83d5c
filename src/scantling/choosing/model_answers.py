"""Answers as columns, and decision trees as flows over them.

Each tree carries a unit of flow from its root to its leaves; what flows over the edges labelled with one answer may
not exceed that answer's column. With whole answers the flow takes exactly the path that the answers take, and
without whole numbers the flows already describe the hull of the tree's paths.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from scantling.choosing.linear import INFINITY, Expr, Linear
from scantling.choosing.trees import Leaf, Node, Tree, nodes
from scantling.model.build import Key

Domains = dict[Key, tuple[str, ...]]
Alive = Callable[[Any], bool]


@dataclass
class Flow:
    """One tree in the model: (value, flow) of each leaf, and the flow over the edges of each answer.

    always : the questions that every live path asks, so that their answers take all that flows
    """

    leaves: list[tuple[Any, Expr]] = field(default_factory=list)
    always: frozenset[Key] = frozenset()
    labels: dict[tuple[Key, str], Expr] = field(default_factory=dict)


class Answers:
    """The columns of all questions that have more than one answer left."""

    def __init__(self, linear: Linear, domains: Domains) -> None:
        """Add a column per open answer and a row per open question, in the order of the keys."""
        self.linear = linear
        self.domains = domains
        self.columns: dict[tuple[Key, str], int] = {}
        for key in sorted(domains):
            if len(domains[key]) != 1:
                for answer in domains[key]:
                    self.columns[key, answer] = linear.binary()
                linear.equal(Expr(0, {self.columns[key, a]: 1 for a in domains[key]}), 1)

    def take(self, key: Key, answer: str) -> Expr:
        """Return 1 where the answer is taken, else 0."""
        column = self.columns.get((key, answer))
        if column is not None:
            return Expr(0, {column: 1})
        return Expr(1 if self.domains[key] == (answer,) else 0)

    def taken(self, values: list[float]) -> dict[Key, str]:
        """Return the answers that column values mean."""
        return {
            key: next((a for a in given if self.take(key, a).value(values) > 0.5), "")
            for key, given in self.domains.items()
        }

    def flow(self, tree: Tree, alive: Alive, inflow: Expr | None = None) -> Flow:
        """Add the flow of a tree, with the edges that lead only to leaves that are not ``alive`` left out.

        inflow : of the root, 1 where missing; with another inflow the caller adds the rows of the labels (``bind``)
        """
        flow = Flow()
        live = live_branches(tree, self.domains, alive)
        into: dict[int, Expr] = {id(tree): inflow or Expr(1)}
        if not live[id(tree)]:
            self.linear.equal(into[id(tree)], 0)
        for node in nodes(tree):
            if id(node) in into and live[id(node)]:
                self._branch(node, live, into, flow, direct=node is tree and inflow is None)
        ends = [tree] if isinstance(tree, Leaf) else [b for n in nodes(tree) for _, b in n.behind]
        for leaf in {id(end): end for end in ends if isinstance(end, Leaf)}.values():
            if id(leaf) in into and live[id(leaf)]:
                flow.leaves.append((leaf.value, into[id(leaf)]))
        if inflow is None:
            flow.always = always_asked(tree, live)
            self.bind([flow])
        return flow

    def _branch(self, node: Node, live: dict[int, Any], into: dict[int, Expr], flow: Flow, *, direct: bool) -> None:
        """Split what flows into a node over its live branches; at the root the answers' own columns are the flow."""
        branches = live[id(node)]
        inflow = into[id(node)]
        parts: list[Expr] = []
        for answer, branch in branches:
            if direct:
                part = self.take(node.key, answer)
            else:
                part = inflow if len(branches) == 1 else Expr(0, {self.linear.column(0, 1): 1})
                flow.labels.setdefault((node.key, answer), Expr()).plus(part)
            parts.append(part)
            into.setdefault(id(branch), Expr()).plus(part)
        if direct:
            dead = set(self.domains[node.key]) - {answer for answer, _ in branches}
            for answer in sorted(dead):
                self.linear.equal(self.take(node.key, answer), 0)
        elif len(branches) > 1:
            total = Expr()
            for part in parts:
                total.plus(part)
            self.linear.equal(total.plus(inflow, -1), 0)

    def bind(self, flows: Iterable[Flow]) -> None:
        """Let the flows over the edges of an answer, together, not exceed the answer."""
        labels: dict[tuple[Key, str], Expr] = {}
        always: frozenset[Key] = frozenset()
        for flow in flows:
            always |= flow.always
            for label, part in flow.labels.items():
                labels.setdefault(label, Expr()).plus(part)
        for key in sorted(always):
            for answer in self.domains[key]:
                labels.setdefault((key, answer), Expr())
        for (key, answer), part in labels.items():
            part.plus(self.take(key, answer), -1)
            self.linear.row(part, 0 if key in always else -INFINITY, 0)


def always_asked(tree: Tree, live: Mapping[int, Any]) -> frozenset[Key]:
    """Return the questions below the root that every live path asks."""
    asked: dict[int, frozenset[Key]] = {}

    def below(tree: Tree) -> frozenset[Key]:
        if isinstance(tree, Leaf) or not live[id(tree)]:
            return frozenset()
        if id(tree) not in asked:
            found = [below(branch) for _, branch in live[id(tree)]]
            asked[id(tree)] = frozenset({tree.key}).union(frozenset.intersection(*found))
        return asked[id(tree)]

    return below(tree) - ({tree.key} if isinstance(tree, Node) else set())


def live_branches(tree: Tree, domains: Mapping[Key, tuple[str, ...]], alive: Alive) -> dict[int, Any]:
    """Return, by the identity of each sub-tree, its live branches; of a leaf, whether it is alive."""
    live: dict[int, Any] = {}

    def visit(tree: Tree) -> Any:
        if id(tree) not in live:
            if isinstance(tree, Leaf):
                live[id(tree)] = alive(tree.value)
            else:
                given = domains[tree.key]
                live[id(tree)] = [(a, branch) for a, branch in tree.behind if a in given and visit(branch)]
        return live[id(tree)]

    visit(tree)
    return live


def narrowed(domains: Domains, trees: Iterable[tuple[Tree, Alive]]) -> Domains:
    """Return the domains without the answers that some tree's root allows on no account; to a fixed point."""
    kept = dict(domains)
    rooted = [(tree, alive) for tree, alive in trees if isinstance(tree, Node)]
    changed = True
    while changed:
        changed = False
        for tree, alive in rooted:
            allowed = {answer for answer, _ in live_branches(tree, kept, alive)[id(tree)]}
            left = tuple(answer for answer in kept[tree.key] if answer in allowed)
            if len(left) < len(kept[tree.key]):
                kept[tree.key] = left
                changed = True
    return kept


def reached(tree: Tree, domains: Mapping[Key, tuple[str, ...]]) -> set[Any]:
    """Return the values of the leaves that the answers left can lead to."""
    live, found, todo = live_branches(tree, domains, lambda _value: True), set(), [tree]
    seen: set[int] = set()
    while todo:
        at = todo.pop()
        if id(at) not in seen:
            seen.add(id(at))
            if isinstance(at, Leaf):
                found.add(at.value)
            else:
                todo += [branch for _, branch in live[id(at)]]
    return found
