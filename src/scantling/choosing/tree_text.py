"""Grown trees as text and back, to be kept between runs: the same trees, sharing the same sub-trees."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from typing import Any

from scantling.choosing.growing import Grown
from scantling.choosing.problem import Resource
from scantling.choosing.trees import Leaf, Node, Tree, nodes
from scantling.model.build import Key

# A leaf is its value alone; a node the kind and subject of its question, then answer, row, answer, row …
Row = list[Any]


def grown_text(grown: Grown) -> str:
    """Return trees by name as text."""
    rows = {name: None if tree is None else _rows(tree) for name, tree in grown.items()}
    return json.dumps(rows, ensure_ascii=False, separators=(",", ":"))


def read_grown(text: str) -> dict[str, Tree | None]:
    """Return what ``grown_text`` was made from; raises ``ValueError`` for any other text."""
    try:
        return {name: None if rows is None else _tree(rows) for name, rows in json.loads(text).items()}
    except (AttributeError, IndexError, KeyError, RecursionError, TypeError) as error:
        raise ValueError(f"not grown trees: {error}") from error


def _rows(tree: Tree) -> list[Row]:
    """Return a tree as rows, each after all rows that it points to: the last is the root."""
    inner = nodes(tree)[::-1]
    leaves: list[Tree] = [tree] if isinstance(tree, Leaf) else []
    leaves += [branch for node in inner for _, branch in node.behind if isinstance(branch, Leaf)]
    each: dict[int, Tree] = {id(one): one for one in (*leaves, *inner)}
    at = {name: number for number, name in enumerate(each)}
    return [[x.value] if isinstance(x, Leaf) else _node_row(x, at) for x in each.values()]


def _node_row(node: Node, at: Mapping[int, int]) -> Row:
    return [node.key.kind, node.key.subject, *(x for answer, b in node.behind for x in (answer, at[id(b)]))]


def _tree(rows: Sequence[Row]) -> Tree:
    made: list[Tree] = []
    for row in rows:
        made.append(Leaf(_value(row[0])) if len(row) == 1 else _node(row, made))
    return made[-1]


def _node(row: Row, made: Sequence[Tree]) -> Node:
    behind = tuple((answer, made[at]) for answer, at in zip(row[2::2], row[3::2], strict=True))
    return Node(Key(row[0], row[1]), behind)


def _value(value: Any) -> Any:
    """Return a leaf's value: a truth, a number, nothing, or amounts of resources."""
    if isinstance(value, list):
        return tuple((Resource(*resource), amount) for resource, amount in value)
    return value
