"""What is worth measuring on a build: figures on which verdicts hang, that are missing, or that were assumed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from scantling.build.reader import Reader
from scantling.checks.cards import cards_of_needs, settling_card
from scantling.findings import Finding
from scantling.model.kinds import AnyPart
from scantling.tables.measuring import ANY, GUIDE, Card, cards_of, measuring_cards

HANGS, MISSING, ASSUMED = "a verdict hangs on it", "missing", "assumed"
_ORDER = (MISSING, HANGS, ASSUMED)


@dataclass(frozen=True)
class Reading:
    """One figure to measure.

    what : as findings name it, or its path in the files    part : whose it is, "" where it is the machine's
    why : a verdict hangs on it, missing, or assumed    codes : of the checks that take it
    """

    what: str
    part: str
    card: Card
    why: str
    codes: tuple[str, ...]

    @property
    def entry(self) -> str:
        """The line under ``actuals`` of the workshop's file, with an example value; "" where it goes elsewhere."""
        if not self.part or self.card.kind == GUIDE:
            return ""
        return f"- {{part: {self.part}, size: {self.card.figure}, value: {self.card.example}}}"


@dataclass
class _Gathered:
    """What findings say of one figure."""

    card: Card
    part: str
    whys: set[str] = field(default_factory=set)
    codes: set[str] = field(default_factory=set)


def readings(reader: Reader, findings: Sequence[Finding]) -> tuple[Reading, ...]:
    """Return what measuring would tell more, that on which most depends first: each figure once."""
    design = reader.design
    gathered: dict[str, _Gathered] = {}

    def note(what: str, part: str, card: Card | None, why: str, code: str) -> None:
        if card is not None and _is_of(design.parts.get(part), card):
            found = gathered.setdefault(what, _Gathered(card, part))
            found.whys.add(why)
            found.codes.add(code)

    for finding in findings:
        for path in finding.missing:
            for card in cards_of_needs(design, [path]):
                note(path, path.split(".")[1], card, MISSING, finding.code)
        said = ((HANGS, finding.hangs), (MISSING, finding.missing), (ASSUMED, finding.assumed))
        for why, whats in said:
            for what in whats:
                note(what, part_of(reader, what), settling_card(design, what), why, finding.code)
    made = [
        Reading(what, one.part, one.card, min(one.whys, key=_ORDER.index), tuple(sorted(one.codes)))
        for what, one in gathered.items()
    ]
    return tuple(sorted(made, key=lambda one: (_ORDER.index(one.why), one.card.number, one.what)))


def part_of(reader: Reader, what: str) -> str:
    """Return the part that a finding's figure is of, or that fills the place it is of; "" where it names neither."""
    name = what.rpartition(" of ")[2]
    if name in reader.design.places:
        part = reader.part(name)
        return "" if part is None else part.id
    return name if name in reader.design.parts else ""


def _is_of(part: AnyPart | None, card: Card) -> bool:
    """True where a card is for a part's kind, or the figure is no part's."""
    return part is None or card.kind in (ANY, GUIDE, part.kind)


def chosen_cards(kinds: Sequence[str]) -> tuple[Card, ...]:
    """Return the cards of some kinds of part; all where none is named."""
    return tuple(card for kind in kinds for card in cards_of(kind)) if kinds else measuring_cards()


def card_kinds() -> tuple[str, ...]:
    """Return the kinds that have cards, in the order of the cards."""
    return tuple(dict.fromkeys(card.kind for card in measuring_cards()))
