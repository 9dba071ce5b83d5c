"""Sizes that are the same whatever is chosen: those that name no part."""

from __future__ import annotations

from scantling.errors import QuantityError
from scantling.model.design import Design
from scantling.model.expression import Binary, Choice, Name, Negative, Node, Number, references, tree
from scantling.model.sheet import Hole
from scantling.reading.graphs import depths

Points = list[tuple[tuple[str | int, ...], float, float]]


class Constants:
    """The values of all sizes of a design that depend on nothing but numbers."""

    def __init__(self, design: Design) -> None:
        """Work out all sizes, those first on which others stand; circles are left out."""
        trees = {name: node for name, text in design.sizes.items() if (node := _tree(text)) is not None}
        needs = {name: [one.name for one in references(node) if isinstance(one, Name)] for name, node in trees.items()}
        order = depths(needs)
        self._known: dict[str, float | None] = {}
        for name in sorted(order, key=lambda name: order[name]):
            self._known[name] = self._value(trees[name])

    def value_mm(self, text: str) -> float | None:
        """Return the length that a text gives, None where it depends on parts or cannot be read."""
        node = _tree(text)
        return None if node is None else self._value(node)

    def points(self, hole: Hole) -> Points:
        """Return the positions of a hole that are constant, each with its path inside the hole."""
        written = [(("at",), hole.at), *((("repeat", number), point) for number, point in enumerate(hole.repeat))]
        found: Points = []
        for key, (x_text, y_text) in written:
            x_mm, y_mm = self.value_mm(x_text), self.value_mm(y_text)
            if x_mm is not None and y_mm is not None:
                found.append((key, x_mm, y_mm))
        return found

    def _value(self, node: Node) -> float | None:
        if isinstance(node, Number):
            return node.figure.value
        if isinstance(node, Name):
            return self._known.get(node.name)
        if isinstance(node, Negative):
            inner = self._value(node.operand)
            return None if inner is None else -inner
        if isinstance(node, Choice):
            values = [self._value(one) for one in node.operands]
            known = [value for value in values if value is not None]
            if len(known) < len(values):
                return None
            return min(known) if node.function == "min" else max(known)
        return self._binary(node) if isinstance(node, Binary) else None

    def _binary(self, node: Binary) -> float | None:
        left, right = self._value(node.left), self._value(node.right)
        if left is None or right is None:
            return None
        if node.operator in "+-":
            return left + right if node.operator == "+" else left - right
        if node.operator == "*":
            return left * right
        return left / right if right else None


def _tree(text: str) -> Node | None:
    try:
        return tree(text)
    except QuantityError:  # told by the rule for sizes
        return None
