"""The only window through which derived values and checks see a build; it notes what is read.

A full reader answers every question. A partial one raises ``Unread`` at the first question that has no answer yet:
that is how decision tables are grown, by running the check and branching where it stops.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping
from typing import Any, Concatenate, ParamSpec, Protocol, TypeVar

from scantling.build.keeping import Keeper
from scantling.build.memo import Branch, Leaf, Memo
from scantling.build.missing import NotDescribedError
from scantling.errors import BrokenPromiseError
from scantling.model.build import Key
from scantling.model.design import Design
from scantling.model.kinds import Screw
from scantling.model.part import Part
from scantling.model.place import EMPTY, StandIn
from scantling.model.project import Project
from scantling.model.workshop import Workshop

P = ParamSpec("P")
T = TypeVar("T")


class Catalogue(Protocol):
    """What a reader needs of an opened project (``build.case.Case`` is it)."""

    project: Project
    memo: Memo
    keeper: Keeper

    def part_key(self, place: str) -> Key:
        """Return the question which part fills ``place``."""

    def option(self, place: str, part: str) -> StandIn:
        """Return the option of ``place`` that is ``part``."""

    def part(self, name: str) -> Part:
        """Return a part by name."""

    def gets(self, place: str, part: str) -> tuple[str, ...]:
        """Return the ways of getting ``part`` for ``place``."""

    def once(self, function: Callable[..., T], *args: Hashable) -> T:
        """Return ``function(catalogue, *args)``, which depends on no answer, and remember it."""


class Unread(Exception):  # noqa: N818 - a signal to the table grower, never an error that a user sees
    """A question was read to which there is no answer yet."""

    def __init__(self, key: Key) -> None:
        """Carry the question."""
        self.key = key
        super().__init__(str(key))


class Reader:
    """Answers to the questions of one case, whole or in part, with a note of what was read."""

    def __init__(
        self,
        case: Catalogue,
        answers: Mapping[Key, str],
        trial_totals: Mapping[str, float] | None = None,
        *,
        words: bool = True,
    ) -> None:
        """Read ``case`` under ``answers``.

        trial_totals : by name, a value that stands for the sum itself while a table is grown
        words : False where only the verdict of a finding is wanted; derived values are made in full all the same
        """
        self.case = case
        self.words = words
        self._answers = answers
        self._trial = trial_totals
        self.trail: dict[Key, str] = {}
        self._inner = False

    @property
    def design(self) -> Design:
        """The design: the same for every build, so reading it needs no note."""
        return self.case.project.design

    @property
    def workshop(self) -> Workshop:
        """The workshop: the same for every build of this case."""
        return self.case.project.workshop

    def read(self, key: Key) -> str:
        """Return the answer to ``key`` and note it; raises ``Unread`` where there is none."""
        answer = self._answers.get(key)
        if answer is None:
            raise Unread(key)
        self.trail[key] = answer
        return answer

    def option(self, place: str) -> StandIn | None:
        """Return the option chosen for a place (with its own quantity and what it brings); None where empty."""
        answer = self.read(self.case.part_key(place))
        return None if answer == EMPTY else self.case.option(place, answer)

    def part(self, place: str) -> Part | None:
        """Return the part that fills a place; None where it is empty."""
        option = self.option(place)
        return None if option is None else self.case.part(option.part)

    def pieces(self, place: str) -> int:
        """Return how many pieces the place takes in one machine with the chosen option."""
        option = self.option(place)
        if option is None:
            return 0
        return option.quantity if option.quantity is not None else self.design.places[place].count

    def get(self, place: str) -> str:
        """Return how a place is got: ``bought``, ``cut``, ``made`` or ``printed PETG``; "" where it is empty."""
        option = self.option(place)
        if option is None:
            return EMPTY
        gets = self.case.gets(place, option.part)
        return gets[0] if len(gets) == 1 else self.read(Key("get", place))

    def screw(self, joint: str) -> Screw:
        """Return the screw that a joint takes."""
        part = self.case.part(self.read(Key("screw", joint)))
        if not isinstance(part, Screw):
            raise BrokenPromiseError(f"joint {joint} was given {part.id}, which is no screw")
        return part

    def trial(self, name: str) -> float | None:
        """Return the trial value of a total while a table is grown on it, else None.

        Raises ``BrokenPromiseError`` inside a derived value, which would remember the trial for good.
        """
        if self._trial is None or name not in self._trial:
            return None
        if self._inner:
            raise BrokenPromiseError(f"total {name} was read inside a derived value")
        return self._trial[name]

    def kept(self, function: Callable[P, T], *args: P.args, **kwargs: P.kwargs) -> T:
        """Return the result of a slow pure function of plain data (``build.keeping``): reads nothing of the build."""
        return self.case.keeper.kept(function, *args, **kwargs)

    def derive(self, function: Callable[Concatenate[Reader, P], T], *args: P.args, **kwargs: P.kwargs) -> T:
        """Return ``function(reader, *args)``, remembered with all that was read for it; arguments must be hashable.

        Where it raises ``NotDescribedError`` that is remembered and raised, with its readings, in the same way.
        """
        name = (function, *args, *sorted(kwargs.items())) if kwargs else (function, *args)
        node = self.case.memo.root(name)
        while isinstance(node, Branch):
            node = node.behind.get(self.read(node.key))
        if not isinstance(node, Leaf):
            inner = Reader(self.case, self._answers, self._trial)
            inner._inner = True
            node = Leaf(_outcome(function, inner, *args, **kwargs))
            self.case.memo.insert(name, list(inner.trail.items()), node.value)
            self.trail.update({key: answer for key, answer in inner.trail.items() if key not in self.trail})
        value: Any = node.value
        if isinstance(value, NotDescribedError):
            raise type(value)(value.needs)
        return value  # type: ignore[no-any-return]


def _outcome(function: Callable[..., Any], *args: Any, **kwargs: Any) -> Any:
    """Return what the function returns, or the error that says what is not described."""
    try:
        return function(*args, **kwargs)
    except NotDescribedError as error:
        return error.with_traceback(None)
