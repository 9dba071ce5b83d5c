"""Consequences as a person reads them: what is alike in one row, what changes nothing in a count."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from scantling.comparing.consequences import Consequence, Weight
from scantling.comparing.fact import Topic

_QUIET = {
    Topic.FINDING: "verdicts stay, with nearly the same margins",
    Topic.STEP: "steps take other parts",
    Topic.LIST: "lines of the parts list differ",
    Topic.SETTING: "settings stay, for other reasons",
    Topic.HOLE: "groups of holes stay, for other reasons",
    Topic.PRINT: "prints stay, with other estimates",
}


LEAST_MARGIN = 0.1  # a sound verdict whose margin moves by less is only counted
_ABOUT = {
    Topic.PART: "part",
    Topic.FINDING: "check",
    Topic.SETTING: "setting",
    Topic.SCREW: "joint",
    Topic.HOLE: "holes",
    Topic.DRAWING: "template",
    Topic.CUT: "cut",
    Topic.PRINT: "print",
    Topic.STEP: "step",
    Topic.LIST: "list",
    Topic.ORDER: "order",
    Topic.COST: "cost",
    Topic.DATE: "date",
}
MOST_SUBJECTS = 5


@dataclass(frozen=True)
class Group:
    """Consequences that say the same of several subjects; one line to a reader."""

    weight: Weight
    topic: Topic
    subjects: tuple[str, ...]
    what: str
    before: str
    after: str
    change: str
    because: str = ""

    @property
    def about(self) -> str:
        """The topic in a maker's word."""
        return _ABOUT[self.topic]

    @property
    def title(self) -> str:
        """Subjects and what differs in them; only what a reader does not know from the topic."""
        if self.topic in (Topic.COST, Topic.DATE):
            return self.what
        told = {Topic.PART: "part", Topic.DRAWING: "template", Topic.PRINT: "print", Topic.CUT: "pieces"}
        names = few(self.subjects)
        return names if told.get(self.topic) == self.what else f"{names}: {self.what}"


@dataclass(frozen=True)
class Grouped:
    """What is to be read, and what only is to be known of.

    groups : what matters first    quiet : (how many, in words, the subjects), of what changes nothing that is decided
    """

    groups: tuple[Group, ...]
    quiet: tuple[tuple[int, str, tuple[str, ...]], ...]


def grouped(consequences: Sequence[Consequence], everything: bool = False) -> Grouped:
    """Return consequences in groups, in their own order; ``everything``: nothing only counted."""
    loud = [c for c in consequences if everything or not is_quiet(c)]
    quiet: dict[Topic, list[str]] = {}
    for consequence in consequences:
        if not everything and is_quiet(consequence):
            quiet.setdefault(consequence.topic, []).append(consequence.subject)
    counts = tuple((len(subjects), _QUIET[topic], tuple(dict.fromkeys(subjects))) for topic, subjects in quiet.items())
    return Grouped(_groups(loud), counts)


def is_quiet(consequence: Consequence) -> bool:
    """True where nothing is to be done or decided: told by a count unless everything is asked for."""
    moved = consequence.topic is Topic.FINDING and abs(consequence.margin or 0.0) >= LEAST_MARGIN
    return consequence.weight == "note" and consequence.topic in _QUIET and not moved


def _groups(consequences: Sequence[Consequence]) -> tuple[Group, ...]:
    subjects: dict[tuple[object, ...], list[str]] = {}
    firsts: dict[tuple[object, ...], Consequence] = {}
    for c in consequences:
        alike = (c.weight, c.topic, c.what, c.before, c.after, c.change)
        subjects.setdefault(alike, []).append(c.subject)
        firsts.setdefault(alike, c)
    return tuple(
        Group(c.weight, c.topic, tuple(subjects[alike]), c.what, c.before, c.after, c.change, c.because)
        for alike, c in firsts.items()
    )


def few(names: Sequence[str]) -> str:
    """Return the first names, and how many more there are."""
    shown = ", ".join(names[:MOST_SUBJECTS])
    return f"{shown} and {len(names) - MOST_SUBJECTS} more" if len(names) > MOST_SUBJECTS else shown
