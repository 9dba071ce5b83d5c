"""What the rules on sourcing share: the machine as a whole, lists of parts in words, never worse than marginal."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.sourcing import Bought, bought_parts
from scantling.checks.chain_machine import SUBJECT
from scantling.findings import Finding, Verdict
from scantling.model.design import Design

MOST_NAMED = 6


def whole(design: Design) -> tuple[str, ...]:
    """Return the machine as the one subject, where it has places."""
    return (SUBJECT,) if design.places else ()


def all_bought(reader: Reader) -> tuple[Bought, ...]:
    """Return what is bought; raises ``NotDescribedError`` where the workshop has no offers at all."""
    if not reader.workshop.offers:
        raise NotDescribedError(("workshop.offers",))
    return reader.derive(bought_parts)


def listed(names: Sequence[str]) -> str:
    """Return names in a sentence, the first few of many.

    >>> listed(["a", "b"]), listed(["a", "b", "c", "d", "e", "f", "g", "h"])
    ('a, b', 'a, b, c, d, e, f and 2 more')
    """
    shown = ", ".join(names[:MOST_NAMED])
    return shown if len(names) <= MOST_NAMED else f"{shown} and {len(names) - MOST_NAMED} more"


def softened(finding: Finding) -> Finding:
    """Return a finding that is never worse than marginal: what is bought is decided, and judged, by the choice."""
    return replace(finding, verdict=Verdict.MARGINAL) if finding.verdict is Verdict.UNSOUND else finding
