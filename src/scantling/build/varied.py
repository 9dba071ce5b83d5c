"""A case in which one part has another figure, all else equal; what does not read that part is not derived again."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping
from dataclasses import replace
from typing import Any, TypeVar

from scantling.build.case import Case
from scantling.build.memo import Branch, Memo, Node
from scantling.model.build import Key
from scantling.model.part import Part
from scantling.model.place import StandIn
from scantling.model.project import Project

T = TypeVar("T")


class Varied:
    """A case with ``part`` in place of the part of its name, seen under one set of answers.

    What was measured on lots of that part is left out: the figures of ``part`` are the actual ones.
    """

    def __init__(self, case: Case, answers: Mapping[Key, str], part: Part) -> None:
        """Vary ``case``; ``answers`` must be those of every reader of this case."""
        self._case, self._part, self.keeper = case, part, case.keeper
        design, workshop = case.project.design, case.project.workshop
        actuals = tuple(actual for actual in workshop.actuals if actual.part != part.id)
        self.project: Project = replace(
            case.project,
            design=design.model_copy(update={"parts": {**design.parts, part.id: part}}),
            workshop=workshop.model_copy(update={"actuals": actuals}),
        )
        self.memo: Memo = _Layered(case.memo, answers, part.id)

    def part_key(self, place: str) -> Key:
        """Return the question which part fills ``place``."""
        return self._case.part_key(place)

    def option(self, place: str, part: str) -> StandIn:
        """Return the option of ``place`` that is ``part``."""
        return self._case.option(place, part)

    def part(self, name: str) -> Part:
        """Return a part by name: the varied one, or one of the case."""
        return self._part if name == self._part.id else self._case.part(name)

    def gets(self, place: str, part: str) -> tuple[str, ...]:
        """Return the ways of getting ``part`` for ``place``; none depends on a figure of it."""
        return self._case.gets(place, part)

    def once(self, function: Callable[..., T], *args: Hashable) -> T:
        """Return what depends on no answer, as in the case itself: bands of totals stay as they are there."""
        return self._case.once(function, *args)


class _Layered(Memo):
    """A memory that lends from another what was derived without reading the varied part."""

    def __init__(self, base: Memo, answers: Mapping[Key, str], part: str) -> None:
        super().__init__()
        self._base, self._answers, self._part = base, answers, part

    def root(self, name: tuple[Any, ...]) -> Node | None:
        """Return the tree of a derived value: our own, else the lent one where it leads past the varied part."""
        own = super().root(name)
        if own is not None:
            return own
        node = lent = self._base.root(name)
        while isinstance(node, Branch):
            answer = self._answers.get(node.key)
            node = None if answer is None or answer == self._part else node.behind.get(answer)
        return None if node is None else lent
