"""Verdicts as data: what a check says of one subject. Printing is done by the faces."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Verdict(StrEnum):
    """How far a thing can be trusted; the order of ``rank`` is from bad to good."""

    UNSOUND = "unsound"
    UNKNOWN = "unknown"
    MARGINAL = "marginal"
    SOUND = "sound"

    @property
    def rank(self) -> int:
        """0 for the worst, 3 for the best."""
        return _RANKS[self]


_RANKS = {verdict: rank for rank, verdict in enumerate(Verdict)}


class Limit(StrEnum):
    """On which side of the limit the good lies."""

    UPPER = "at most"
    LOWER = "at least"
    RANGE = "between"
    NONE = "for information"


@dataclass(frozen=True)
class Finding:
    """One check's word on one subject.

    code : stable, ``BELT-03``            subject : ``axis y``, ``joint z-motor-to-bracket`` …
    value, low, high : the value and its band in ``unit`` (equal where nothing is assumed); None where a text says it
    limit, limit_high : the limit; both for a range
    margin : signed slack / limit, positive on the good side; None for information and for yes-no rules
    missing : names of figures that are missing and could change the verdict
    assumed : names of figures taken from a class table
    hangs : names of the figures on which an unclear verdict hangs most
    """

    code: str
    subject: str
    title: str
    verdict: Verdict
    because: str
    source: str
    mend: str = ""
    value: float | None = None
    low: float | None = None
    high: float | None = None
    unit: str = ""
    side: Limit = Limit.NONE
    limit: float | None = None
    limit_high: float | None = None
    margin: float | None = None
    missing: tuple[str, ...] = ()
    assumed: tuple[str, ...] = ()
    hangs: tuple[str, ...] = ()

    @property
    def key(self) -> tuple[str, str]:
        """Code and subject: what makes two findings of two builds comparable."""
        return (self.code, self.subject)

    @property
    def admissible(self) -> bool:
        """True where a choice may contain it: sound or marginal."""
        return self.verdict in (Verdict.SOUND, Verdict.MARGINAL)


def worst(verdicts: list[Verdict]) -> Verdict:
    """Return the worst of several verdicts; ``SOUND`` for none."""
    return min(verdicts, key=lambda verdict: verdict.rank, default=Verdict.SOUND)


@dataclass(frozen=True)
class NotLookedAt:
    """A check that could not look at a subject because the files do not describe what it needs.

    needs : the facts that would let it, as paths in the files (``axes.y.guide.free``)
    """

    code: str
    subject: str
    title: str
    needs: tuple[str, ...]
