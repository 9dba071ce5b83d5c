"""What differs between two plans: the heart of scantling. Complete because facts are, ordered by what matters."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from scantling.comparing.fact import Fact, Facts, Topic
from scantling.comparing.facts import facts
from scantling.plans.plan import Plan
from scantling.quantities import show_money, show_value

Weight = Literal["stops", "worse", "act", "better", "note"]
WEIGHTS: tuple[Weight, ...] = ("stops", "worse", "act", "better", "note")
REDRAW = "must be drawn and printed again"
NOT_ADMISSIBLE = 2  # grade from which on a machine is not built
_ACT = frozenset({Topic.PART, Topic.SETTING, Topic.SCREW, Topic.HOLE, Topic.CUT, Topic.PRINT, Topic.DRAWING})
_GRADED = frozenset({Topic.FINDING, Topic.ORDER})
_NOTHING = Fact(Topic.LIST, "", "", "")


@dataclass(frozen=True)
class Consequence:
    """One thing that differs.

    weight : ``stops`` (admissible before, not now), ``worse``, ``act`` (something must be done otherwise), ``better``,
    ``note``    before, after : for people, "" where it does not exist; of lists only what differs
    change : the difference in words where both are figures    amount : how many there are, before and after
    stays : what is done stays the same, only the reason for it differs
    margins : of a finding, before and after
    """

    topic: Topic
    subject: str
    what: str
    before: str
    after: str
    change: str
    weight: Weight
    because: str
    amount: int | None = None
    stays: bool = False
    margins: tuple[float | None, float | None] = (None, None)

    @property
    def order(self) -> tuple[int, int, str, str]:
        """Sort key: what stops the machine first."""
        return (WEIGHTS.index(self.weight), int(self.topic), self.subject, self.what)


def consequences(before: Plan, after: Plan, known: Facts | None = None) -> tuple[Consequence, ...]:
    """Return everything that differs between two plans of one design, what matters first.

    known : the facts of ``before``, where they were found earlier
    Where only one of them could be bought that is told once, and its orders, cost and dates are not.
    """
    old: Facts = facts(before) if known is None else known
    new: Facts = facts(after)
    if (before.purchase is None) != (after.purchase is None):
        old, new = _unbought(old), _unbought(new)
    return differences(old, new)


def _unbought(found: Facts) -> Facts:
    return {key: fact for key, fact in found.items() if not fact.bought}


def differences(old: Facts, new: Facts) -> tuple[Consequence, ...]:
    """Return the difference of two sets of facts."""
    keys = [*old, *(key for key in new if key not in old)]
    pairs = [(old.get(key), new.get(key)) for key in keys]
    found = [_consequence(was, now) for was, now in pairs if _content(was) != _content(now)]
    return tuple(sorted(found, key=lambda consequence: consequence.order))


def _content(fact: Fact | None) -> object:
    return None if fact is None else fact.content


def _consequence(old: Fact | None, new: Fact | None) -> Consequence:
    fact = new or old
    if fact is None:
        raise ValueError("a difference needs at least one fact")
    before, after = _texts(old, new)
    return Consequence(
        fact.topic,
        fact.subject,
        fact.what,
        before,
        after,
        _change(old, new),
        _weight(old, new),
        fact.because,
        fact.amount,
        old is not None and new is not None and old.done == new.done,
        (old.margin if old else None, new.margin if new else None),
    )


def _texts(old: Fact | None, new: Fact | None) -> tuple[str, str]:
    """Both values in words; what stands behind them where the values themselves are the same."""
    if old is None or new is None:
        return (old.value if old else ""), (new.value if new else "")
    if new.topic is Topic.DRAWING:
        return old.value, REDRAW
    if old.items or new.items:
        return _only(old.items, new.items), _only(new.items, old.items)
    pairs = ((old.value, new.value), (old.detail, new.detail), (old.because, new.because))
    return next(pair for pair in pairs if pair[0] != pair[1])


def _only(items: Sequence[str], others: Sequence[str]) -> str:
    """Return the entries that the other list has not, or the order itself where nothing else differs."""
    return ", ".join(item for item in items if item not in others) or (
        ", ".join(items) if sorted(items) == sorted(others) else ""
    )


def _change(old: Fact | None, new: Fact | None) -> str:
    """Return the signed difference of two figures, else nothing."""
    if old is None or new is None or old.number is None or new.number is None:
        return ""
    step = new.number - old.number
    if not float(f"{step:.3g}"):
        return ""
    sign = "+" if step > 0 else "−"
    if new.topic is Topic.COST:
        return f"{sign}{show_money(round(abs(step)), new.unit)}"
    return f"{sign}{show_value(float(f'{abs(step):.3g}'), new.unit)}"


def _weight(old: Fact | None, new: Fact | None) -> Weight:
    topic = (new or old or _NOTHING).topic
    was, now = (old.grade if old else 0), (new.grade if new else 0)
    if topic in _GRADED and was != now:
        return _judged(was, now)
    alike = old is not None and new is not None and old.done == new.done
    return "act" if topic in _ACT and not alike else "note"


def _judged(was: int, now: int) -> Weight:
    if now >= NOT_ADMISSIBLE > was:
        return "stops"
    return "worse" if now > was else "better"
