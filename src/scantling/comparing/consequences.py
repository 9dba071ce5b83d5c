"""What differs between two plans: the heart of scantling. Complete because facts are, ordered by what matters."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from scantling.comparing.facts import Fact, Topic, facts
from scantling.plans.plan import Plan
from scantling.quantities import show_money, show_value

Weight = Literal["stops", "worse", "act", "note"]
_ORDER: tuple[Weight, ...] = ("stops", "worse", "act", "note")
_ACT = frozenset({Topic.PART, Topic.SETTING, Topic.SCREW, Topic.HOLE, Topic.CUT, Topic.PRINT, Topic.DRAWING})


@dataclass(frozen=True)
class Consequence:
    """One thing that differs.

    weight : ``stops`` (sound before, not now), ``worse``, ``act`` (something must be done otherwise), ``note``
    before, after : for people, "" where it does not exist    change : the difference in words where both are figures
    """

    topic: Topic
    subject: str
    what: str
    before: str
    after: str
    change: str
    weight: Weight
    because: str

    @property
    def order(self) -> tuple[int, int, str, str]:
        """Sort key: what stops the machine first."""
        return (_ORDER.index(self.weight), int(self.topic), self.subject, self.what)


def consequences(before: Plan, after: Plan) -> tuple[Consequence, ...]:
    """Return everything that differs between two plans of one design, what matters first."""
    return differences(facts(before), facts(after))


def differences(
    old: Mapping[tuple[Topic, str, str], Fact], new: Mapping[tuple[Topic, str, str], Fact]
) -> tuple[Consequence, ...]:
    """Return the difference of two sets of facts."""
    keys = [*old, *(key for key in new if key not in old)]
    found = [_consequence(old.get(key), new.get(key)) for key in keys if _differs(old.get(key), new.get(key))]
    return tuple(sorted(found, key=lambda consequence: consequence.order))


def _differs(old: Fact | None, new: Fact | None) -> bool:
    if old is None or new is None:
        return True
    return (old.value, old.number) != (new.value, new.number)


def _consequence(old: Fact | None, new: Fact | None) -> Consequence:
    fact = new or old
    if fact is None:
        raise ValueError("a difference needs at least one fact")
    before, after = (old.value if old else ""), (new.value if new else "")
    if fact.topic is Topic.DRAWING:
        before, after = ("drawn" if old else ""), ("must be drawn again" if new else "")
    return Consequence(
        fact.topic, fact.subject, fact.what, before, after, _change(old, new), _weight(old, new, fact), fact.because
    )


def _change(old: Fact | None, new: Fact | None) -> str:
    """Return the signed difference of two figures, else nothing."""
    if old is None or new is None or old.number is None or new.number is None:
        return ""
    step = new.number - old.number
    sign = "+" if step > 0 else "−"
    if new.topic is Topic.COST:
        return f"{sign}{show_money(round(abs(step)), new.unit)}"
    return f"{sign}{show_value(float(f'{abs(step):.3g}'), new.unit)}"


def _weight(old: Fact | None, new: Fact | None, fact: Fact) -> Weight:
    if fact.topic is Topic.FINDING:
        was, now = (old.grade if old else 0), (new.grade if new else 0)
        if now >= 2 > was:
            return "stops"
        return "worse" if now > was else "note"
    return "act" if fact.topic in _ACT else "note"
