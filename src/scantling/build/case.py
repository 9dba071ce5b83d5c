"""A project opened for building: its questions, their possible answers, all parts, and the memory of derived values."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping
from functools import cached_property
from typing import Any, TypeVar

from scantling.build.actuals import as_measured
from scantling.build.fasteners import joint_screws, standard_part
from scantling.build.gets import gets_of
from scantling.build.keeping import Keeper, Store
from scantling.build.memo import Memo
from scantling.build.reader import Catalogue, Reader
from scantling.errors import BrokenPromiseError, LookUpError
from scantling.model.build import Build, Key
from scantling.model.kinds import Screw
from scantling.model.part import Part
from scantling.model.place import EMPTY, StandIn
from scantling.model.project import Project
from scantling.tables.fastener_names import head_and_thread
from scantling.tables.threads import thread

T = TypeVar("T")


class Case:
    """One design in one workshop. Holds no choice; everything that depends on choices goes through a reader."""

    def __init__(self, project: Project, store: Store | None = None) -> None:
        """Open ``project``; what takes long is kept in ``store``."""
        self.project = project
        self.memo = Memo()
        self.keeper = Keeper(store)
        self._gets: dict[tuple[str, str], tuple[str, ...]] = {}
        self._once: dict[tuple[Any, ...], Any] = {}

    @cached_property
    def leaders(self) -> Mapping[str, str]:
        """For each place the place that is asked for its part: the first of its ``alike`` group, or itself."""
        first: dict[str, str] = {}
        return {
            name: first.setdefault(place.alike, name) if place.alike else name
            for name, place in self.project.design.places.items()
        }

    def part_key(self, place: str) -> Key:
        """Return the question which part fills ``place``."""
        return Key("part", self.leaders[place])

    def option(self, place: str, part: str) -> StandIn:
        """Return the option of ``place`` that is ``part``; raises ``KeyError`` where it has none."""
        for option in self.project.design.places[place].options:
            if option.part == part:
                return option
        raise KeyError(f"{part} is no option of {place}")

    def part(self, name: str) -> Part:
        """Return a part of the design, or a standard fastener by its name, as measured where the workshop did."""
        found: Part | None = self._measured.get(name) or self.project.design.parts.get(name)
        return found if found is not None else standard_part(name)

    @cached_property
    def _measured(self) -> Mapping[str, Part]:
        """The parts on whose lot in hand something was measured; what the workshop measured of other designs is not."""
        design, actuals = self.project.design, self.project.workshop.actuals
        found: dict[str, Part] = {}
        for name in dict.fromkeys(actual.part for actual in actuals):
            try:
                part = design.parts[name] if name in design.parts else standard_part(name)
            except LookUpError:
                continue
            found[name] = as_measured(part, actuals)
        return found

    def gets(self, place: str, part: str) -> tuple[str, ...]:
        """Return the ways in which this workshop can get ``part`` for ``place``, the best liked first."""
        found = self._gets.get((place, part))
        if found is None:
            found = self._gets[place, part] = gets_of(self.project, place, self.part(part))
        return found

    def once(self, function: Callable[..., T], *args: Hashable) -> T:
        """Return ``function(case, *args)``, which depends on the design and the workshop alone, and remember it."""
        name = (function, *args)
        if name not in self._once:
            self._once[name] = function(self, *args)
        found: T = self._once[name]
        return found

    @cached_property
    def questions(self) -> tuple[Key, ...]:
        """All questions, in the design's order: parts, gets, screws."""
        design = self.project.design
        parts = [Key("part", name) for name in design.places if self.leaders[name] == name]
        gets = [Key("get", name) for name in design.places]
        return (*parts, *gets, *(Key("screw", name) for name in design.joints))

    def answers(self, key: Key, known: Mapping[Key, str]) -> tuple[str, ...]:
        """Return the possible answers to a question, given the answers already known.

        The gets of a place depend on its part: where the part is known only its gets are returned.
        """
        if key.kind == "screw":
            return self.screws(key.subject)
        if key.kind == "part":
            return self._part_answers(key.subject)
        part = known.get(self.part_key(key.subject))
        parts = self._part_answers(self.leaders[key.subject]) if part is None else (part,)
        return tuple(dict.fromkeys(g for p in parts for g in self._gets_or_empty(key.subject, p)))

    def screws(self, joint: str) -> tuple[str, ...]:
        """Return the screws that a joint may take, the shortest first: standard ones and those the design describes."""
        return self.once(screws_of, joint)

    def _gets_or_empty(self, place: str, part: str) -> tuple[str, ...]:
        return (EMPTY,) if part == EMPTY else self.gets(place, part)

    def _part_answers(self, leader: str) -> tuple[str, ...]:
        return self.once(Case._common_parts, leader)

    def _common_parts(self, leader: str) -> tuple[str, ...]:
        names = [name for name, first in self.leaders.items() if first == leader]
        group = [self.project.design.places[name] for name in names]
        common = [o.part for o in group[0].options if all(o.part in {p.part for p in q.options} for q in group)]
        empty = group[0].may_be_empty or any(name in filled for filled in self._also_filled for name in names)
        return (*common, EMPTY) if empty else tuple(common)

    @cached_property
    def _also_filled(self) -> tuple[tuple[str, ...], ...]:
        return tuple(o.also_fills for place in self.project.design.places.values() for o in place.options)

    def reader(self, build: Build) -> Reader:
        """Return a reader of a whole build."""
        return Reader(self, build.as_dict())


def screws_of(case: Catalogue, joint: str) -> tuple[str, ...]:
    """Return the screws that a joint of a case may take, the shortest first."""
    described = case.project.design.joints[joint]
    wanted = head_and_thread(described.screw)
    own = [
        p
        for p in case.project.design.parts.values()
        if isinstance(p, Screw) and (p.head, thread(p.thread).name) == wanted
    ]
    parts = [*(case.part(name) for name in joint_screws(described)), *own]
    return tuple(part.id for part in sorted(parts, key=length_of))


def length_of(part: Part) -> float:
    """Return the length in mm of a screw; raises ``BrokenPromiseError`` for any other part."""
    if not isinstance(part, Screw):
        raise BrokenPromiseError(f"{part.id} is not a screw")
    return float(part.length_mm.value)
