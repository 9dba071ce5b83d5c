"""One thing that is so in a plan, with a name of its own: what two plans can differ in."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import IntEnum

Key = tuple[int, str, str]


class Topic(IntEnum):
    """What a fact is about; the order in which consequences are shown where nothing else decides."""

    PART = 0
    FINDING = 1
    SETTING = 2
    SCREW = 3
    HOLE = 4
    DRAWING = 5
    CUT = 6
    PRINT = 7
    STEP = 8
    LIST = 9
    ORDER = 10
    COST = 11
    DATE = 12


@dataclass(frozen=True)
class Fact:
    """One thing that is so in a plan.

    subject, what : its name within the topic    value : for people, short
    detail : in words, what else is done or read off    because : in words, why it is so
    items : where the value is a list, its entries; of two lists only what differs is shown
    amount : how many there are of it, which is told apart
    number, unit : where the value is a figure
    Two facts are the same where value, detail, items and because are.
    grade : 0 for the best; findings carry how bad they are, so that a change for the worse can be told
    margin : of a finding    bought : it is of a purchase, and says nothing where one plan has none
    """

    topic: Topic
    subject: str
    what: str
    value: str
    detail: str = ""
    items: tuple[str, ...] = ()
    number: float | None = None
    unit: str = ""
    grade: int = 0
    because: str = ""
    margin: float | None = None
    amount: int | None = None
    bought: bool = False

    @property
    def key(self) -> Key:
        """What makes facts of two plans comparable."""
        return (int(self.topic), self.subject, self.what)

    @property
    def done(self) -> tuple[str, str, tuple[str, ...]]:
        """What must be equal for nothing to be done otherwise."""
        return (self.value, self.detail, self.items)

    @property
    def content(self) -> tuple[str, str, tuple[str, ...], str]:
        """What must be equal for nothing to have changed."""
        return (*self.done, self.because)


Facts = Mapping[Key, Fact]


def in_words(*named: tuple[str, object]) -> str:
    """Return ``name: value`` pairs as one text; what is empty is left out."""
    return "; ".join(f"{name}: {value}" if name else str(value) for name, value in named if value not in ("", None, ()))
