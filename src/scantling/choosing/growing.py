"""Where the trees of a problem come from: grown over all answers, taken as grown before, or read off one build."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping
from types import MappingProxyType
from typing import Protocol

from scantling.build.case import Case
from scantling.build.reader import Reader
from scantling.choosing.tables import MOST_PATHS
from scantling.choosing.trees import Leaf, TooLargeError, Tree, grow
from scantling.model.build import Build

Grown = Mapping[str, Tree | None]  # by name; None where a tree has too many paths
NONE_GROWN: Grown = MappingProxyType({})


class Grower(Protocol):
    """Makes the trees of one problem; each has a name of its own."""

    @property
    def case(self) -> Case:
        """What is asked."""

    def tree(self, name: str, function: Callable[[Reader], Hashable]) -> Tree:
        """Return the tree of ``function``; raises ``TooLargeError`` where it has too many paths."""


class OverAll:
    """Trees over all answers that a case offers.

    grown : every tree made or taken so far, to be taken again for the very same files
    """

    def __init__(self, case: Case, before: Grown = NONE_GROWN) -> None:
        """Grow for ``case`` what is not in ``before``."""
        self.case = case
        self.grown: dict[str, Tree | None] = {}
        self._before = before

    def tree(self, name: str, function: Callable[[Reader], Hashable]) -> Tree:
        """Return the tree of ``function``; raises ``TooLargeError``."""
        return self.made(name, lambda: grow(function, self.case, MOST_PATHS))

    def made(self, name: str, make: Callable[[], Tree]) -> Tree:
        """Return the tree of this name, made now where it is not there yet; raises ``TooLargeError``."""
        if name not in self.grown:
            self.grown[name] = self._before[name] if name in self._before else _unless_too_large(make)
        found = self.grown[name]
        if found is None:
            raise TooLargeError(f"more than {MOST_PATHS} paths: {name}")
        return found


class OfBuild:
    """Trees of one leaf each: what a function says of one build."""

    def __init__(self, case: Case, build: Build) -> None:
        """Read ``build``."""
        self.case = case
        self._answers = build.as_dict()

    def tree(self, name: str, function: Callable[[Reader], Hashable]) -> Tree:  # noqa: ARG002 - the protocol names it
        """Return the leaf."""
        return Leaf(function(Reader(self.case, self._answers)))


def _unless_too_large(make: Callable[[], Tree]) -> Tree | None:
    try:
        return make()
    except TooLargeError:
        return None
