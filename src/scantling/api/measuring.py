"""Measuring cards: those of some kinds of part, and what is worth measuring on a design."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from scantling.api.checking import check_design
from scantling.api.opening import Session
from scantling.plans.digests import plain
from scantling.plans.measuring import Reading as Reading  # faces name its type
from scantling.plans.measuring import card_kinds as card_kinds
from scantling.plans.measuring import chosen_cards, readings
from scantling.tables.measuring import Card as Card


def measuring_cards(kinds: Sequence[str] = ()) -> tuple[Card, ...]:
    """Return the cards of some kinds of part, ``rod``, ``motor`` …; all where none is named."""
    return chosen_cards(kinds)


def worth_measuring(session: Session) -> tuple[Reading, ...]:
    """Return what measuring would tell more of the choice in force, else of the reference parts."""
    plan = check_design(session)
    return readings(plan.case.reader(plan.build), plan.findings)


def measuring_data(wanted: Sequence[Reading], cards: Sequence[Card]) -> dict[str, Any]:
    """Return readings and cards as plain data."""
    return {"readings": [{**plain(one), "entry": one.entry} for one in wanted], "cards": plain(tuple(cards))}
