"""Consequences as a person reads them: what is alike in one row, what changes nothing in a count."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from scantling.comparing.consequences import Consequence, Weight
from scantling.comparing.fact import Topic

_QUIET = {
    Topic.PART: "parts",
    Topic.FINDING: "verdicts stay, with other margins",
    Topic.SETTING: "settings stay, for other reasons",
    Topic.SCREW: "joints",
    Topic.HOLE: "groups of holes stay, for other reasons",
    Topic.DRAWING: "templates",
    Topic.CUT: "ways of cutting",
    Topic.PRINT: "prints stay, with other estimates",
    Topic.STEP: "steps take other parts",
    Topic.LIST: "lines of the parts list differ",
    Topic.ORDER: "orders differ in sums, shares of shipping or what is left over",
    Topic.COST: "costs",
    Topic.DATE: "dates stay, for other reasons",
}
_SUMS = frozenset({"total", "shipping"})  # of an order; goods, tax and the rest follow from its lines
LEAST_LOST = 0.1  # a sound verdict that loses less of its margin, or keeps more than half, is only counted
MUCH_LEFT = 0.5
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
    amount: int | None = None

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
        names, what = few(self.subjects), self.what.removesuffix(", where")
        is_line = self.topic is Topic.ORDER and ": " in names
        return names if is_line or told.get(self.topic) == what else f"{names}: {what}"

    @property
    def body(self) -> str:
        """What was and what is, and by how much it differs."""
        if self.topic is Topic.DRAWING:
            return self.after or "no longer needed"
        many = f"{self.amount} × " if self.amount else ""
        change = f"  ({self.change})" if self.change else ""
        return f"{many}{self.before or 'nothing'} → {self.after or 'nothing'}{change}"


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
    if consequence.weight != "note":
        return False
    if consequence.stays or consequence.topic in (Topic.STEP, Topic.LIST):
        return True
    if consequence.topic is Topic.FINDING:
        return not _loses_margin(consequence)
    is_line = ": " in consequence.subject
    told = is_line or consequence.what in _SUMS or consequence.what.startswith("taken from the drawer")
    return consequence.topic is Topic.ORDER and not told


def _loses_margin(consequence: Consequence) -> bool:
    before, after = consequence.margins
    return before is not None and after is not None and after <= MUCH_LEFT and before - after >= LEAST_LOST


def _groups(consequences: Sequence[Consequence]) -> tuple[Group, ...]:
    alike: dict[tuple[object, ...], list[Consequence]] = {}
    for c in consequences:
        alike.setdefault((c.weight, c.topic, c.what, c.before, c.after, c.change), []).append(c)
    return tuple(_group(together) for together in alike.values())


def _group(together: Sequence[Consequence]) -> Group:
    first, subjects = together[0], tuple(c.subject for c in together)
    amounts = [c.amount for c in together if c.amount is not None]
    amount = sum(amounts) if len(amounts) == len(together) else None
    return Group(
        first.weight,
        first.topic,
        subjects,
        first.what,
        first.before,
        first.after,
        first.change,
        first.because,
        amount,
    )


def few(names: Sequence[str]) -> str:
    """Return the first names, and how many more there are."""
    shown = ", ".join(names[:MOST_SUBJECTS])
    return f"{shown} and {len(names) - MOST_SUBJECTS} more" if len(names) > MOST_SUBJECTS else shown
