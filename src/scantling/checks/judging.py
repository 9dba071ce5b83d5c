"""The one way from a rule and its figures to a finding.

A rule is evaluated at the nominal figures and at the ends of all their bands. With the whole band inside its limit and
the reserve kept it is *sound*; with the whole band outside *unsound*; otherwise *marginal*, and the figure is named on
which it hangs most. A missing figure is tried over all that is physically possible: only where that could turn an
admissible machine into an inadmissible one is the word *unknown*.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from math import inf

from scantling.build.reader import Reader
from scantling.checks.cards import settling_cards
from scantling.checks.check import Check
from scantling.checks.inputs import Input
from scantling.checks.limits import Bounds, overridden
from scantling.checks.listening import Asked, Listener
from scantling.checks.sentences import Also, deciding, hang, sentence
from scantling.checks.trials import Rule, Trial, Weighed, weigh
from scantling.findings import Finding, Limit, Verdict
from scantling.model.design import Accepted

_KEPT_DIGITS = 10


def judge(
    check: Check,
    reader: Reader,
    subject: str,
    *,
    rule: Rule,
    inputs: Mapping[str, Input],
    bounds: Bounds,
    unit: str,
    because: str,
    mend: str = "",
    also: Also | None = None,
) -> Finding:
    """Return the finding of ``check`` on ``subject``.

    rule : the value from the figures, called with one keyword argument for each of ``inputs``
    The finding carries its verdict alone where the reader wants no words.
    because : a sentence with ``{value}``, ``{limit}``, the names of ``inputs`` and of ``also`` in braces
    also : further numbers for the sentence, each a function of the figures with its unit
    """
    accepted = _accepted(reader, check.code, subject)
    bounds, note = _with_override(bounds, accepted, unit)
    weighed = weigh(Trial(rule, inputs, bounds))
    if isinstance(reader, Listener):
        reader.asked.append(Asked(check.code, subject, weighed.trial, unit, also or {}, is_own=bool(note)))
    if not reader.words:
        return _settled(Finding(check.code, subject, check.title, weighed.verdict, "", check.source), accepted)
    hangs = tuple(figure.what for figure in deciding(weighed))
    cards = [card.number for card in settling_cards(reader.design, hangs)]
    words = sentence(weighed, unit, because, also or {}) + note + hang(weighed, cards)
    low, high = weighed.values
    lacking = weighed.turning or (weighed.trial.missing if weighed.unknown else ())
    finding = Finding(
        code=check.code,
        subject=subject,
        title=check.title,
        verdict=weighed.verdict,
        because=words,
        source=check.source,
        mend="" if weighed.verdict is Verdict.SOUND else mend,
        low=_tidy(low),
        high=_tidy(high),
        unit=unit,
        side=bounds.side,
        **_numbers(weighed),
        missing=tuple(inputs[name].what for name in lacking),
        assumed=tuple(figure.what for figure in inputs.values() if figure.assumed),
        hangs=hangs,
    )
    return _settled(finding, accepted)


def say(
    check: Check,
    reader: Reader,
    subject: str,
    verdict: Verdict,
    because: str,
    mend: str = "",
    missing: Sequence[str] = (),
    assumed: Sequence[str] = (),
) -> Finding:
    """Return the finding of a rule that is kept or not and has no value."""
    finding = Finding(
        code=check.code,
        subject=subject,
        title=check.title,
        verdict=verdict,
        because=because,
        source=check.source,
        mend="" if verdict is Verdict.SOUND else mend,
        missing=tuple(missing),
        assumed=tuple(assumed),
    )
    return _settled(finding, _accepted(reader, check.code, subject))


def worst_of(findings: Sequence[Finding]) -> Finding:
    """Return the finding that matters most of several on one subject: the worst verdict, then the least margin."""
    return min(findings, key=lambda f: (f.verdict.rank, inf if f.margin is None else f.margin))


def _tidy(value: float) -> float:
    """Return a value without the noise of its last binary digits."""
    return float(f"{value:.{_KEPT_DIGITS}g}")


def _numbers(weighed: Weighed) -> dict[str, float | None]:
    """Return value, limits and margin as a finding carries them; no value and margin where they are not known."""
    bounds, point = weighed.trial.bounds, weighed.worst.nominal
    value = None if weighed.unknown else _tidy(point.value)
    if bounds.side is Limit.NONE:
        return {"value": value}
    return {
        "value": value,
        "limit": _tidy(point.high if bounds.side is Limit.UPPER else point.low),
        "limit_high": _tidy(point.high) if bounds.side is Limit.RANGE else None,
        "margin": None if weighed.unknown else _tidy(point.margin),
    }


def _accepted(reader: Reader, code: str, subject: str) -> Accepted | None:
    """Return what the design itself says of this check and subject."""
    return next((a for a in reader.design.accepted if (a.code, a.subject) == (code, subject)), None)


def _with_override(bounds: Bounds, accepted: Accepted | None, unit: str) -> tuple[Bounds, str]:
    """Return the limit that holds, and what the sentence says of it."""
    if accepted is None or accepted.limit is None:
        return bounds, ""
    own = overridden(bounds, accepted.limit, unit)
    if own is None:
        return bounds, f" The design's own limit {accepted.limit!r} cannot be read in {unit or 'this rule'}: not used."
    return own, f" The limit is the design's own: {accepted.because}."


def _settled(finding: Finding, accepted: Accepted | None) -> Finding:
    """Let a design live with an unknown, for the reason that it gives."""
    if accepted is None or accepted.limit is not None or finding.verdict is not Verdict.UNKNOWN:
        return finding
    reason = f" Not known, and accepted by the design: {accepted.because}."
    return replace(finding, verdict=Verdict.MARGINAL, because=finding.because + reason)
