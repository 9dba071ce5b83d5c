"""The one way from a rule and its figures to a finding.

A rule is evaluated at the nominal figures and at the ends of all their bands. With the whole band inside its limit and
the reserve kept it is *sound*; with the whole band outside *unsound*; otherwise *marginal*, and the figure is named on
which it hangs most. A missing figure is tried over all that is physically possible: only where that could turn an
admissible machine into an inadmissible one is the word *unknown*.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import product

from scantling.build.reader import Reader
from scantling.checks.check import Check
from scantling.checks.inputs import Input, show_value_text
from scantling.checks.limits import Bounds, Point, overridden
from scantling.findings import Finding, Limit, Verdict
from scantling.model.design import Accepted
from scantling.quantities import show_number, show_value

_MOST_FREE_ENDS = 4  # this many bands are combined freely; further ones stand together at their kind or unkind ends
_DIGITS = 3
_KEPT_DIGITS = 10
_LEAST_SHARE = 0.5  # of the largest swing that a further figure must have to be named beside it

Rule = Callable[..., float]
Also = Mapping[str, tuple[Rule, str]]


@dataclass(frozen=True)
class Trial:
    """A rule with its figures and its limit."""

    rule: Rule
    inputs: Mapping[str, Input]
    bounds: Bounds

    def point(self, **changed: float) -> Point:
        """Return value and limits at the nominal figures, some of them changed."""
        figures = self.nominal | changed
        return Point(self.rule(**figures), *self.bounds.at(figures))

    @cached_property
    def nominal(self) -> dict[str, float]:
        """Nominal figures; the middle of the range for missing ones."""
        return {name: figure.nominal for name, figure in self.inputs.items()}

    @cached_property
    def missing(self) -> list[str]:
        """Names of the missing figures."""
        return [name for name, figure in self.inputs.items() if figure.missing]

    @cached_property
    def swings(self) -> list[tuple[float, str, bool]]:
        """For every banded figure, widest first: how far the slack moves over its band, and whether less is kind."""
        found = []
        for name, figure in self.inputs.items():
            if figure.is_banded and not figure.missing:
                at_low, at_high = (self.point(**{name: end}).slack for end in (figure.low, figure.high))
                found.append((abs(at_high - at_low), name, at_low > at_high))
        return sorted(found, key=lambda swing: (-swing[0], swing[1]))

    def ends(self) -> Iterator[dict[str, float]]:
        """Yield the settings of the banded figures at which the rule is tried, the nominal one first."""
        yield {}
        free = [self.inputs[name] for _, name, _ in self.swings[:_MOST_FREE_ENDS]]
        names = [name for _, name, _ in self.swings[:_MOST_FREE_ENDS]]
        rest = [(self.inputs[name], name, less) for _, name, less in self.swings[_MOST_FREE_ENDS:]]
        for unkind in (True, False) if rest else (True,):
            pinned = {name: i.high if less is unkind else i.low for i, name, less in rest}
            for corner in product(*((i.low, i.high) for i in free)):
                yield pinned | dict(zip(names, corner, strict=True))

    def cases(self) -> list[dict[str, float]]:
        """Return the settings of the missing figures: every combination of the ends of what is possible."""
        ends = [(self.inputs[name].low, self.inputs[name].high) for name in self.missing]
        return [dict(zip(self.missing, corner, strict=True)) for corner in product(*ends)]


@dataclass(frozen=True)
class Outcome:
    """What a trial gives at one setting of the missing figures."""

    setting: Mapping[str, float]
    nominal: Point
    points: tuple[Point, ...]
    verdict: Verdict


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
    because : a sentence with ``{value}``, ``{limit}``, the names of ``inputs`` and of ``also`` in braces
    also : further numbers for the sentence, each a function of the figures with its unit
    """
    accepted = _accepted(reader, check.code, subject)
    bounds, note = _with_override(bounds, accepted, unit)
    trial = Trial(rule, inputs, bounds)
    outcomes = [_outcome(trial, setting) for setting in trial.cases()]
    worst = min(outcomes, key=lambda outcome: (outcome.verdict.rank, outcome.nominal.slack))
    verdict = _over_all(outcomes)
    turning = _turning(trial, outcomes) if verdict in (Verdict.UNKNOWN, Verdict.MARGINAL) else ()
    values = [point.value for outcome in outcomes for point in outcome.points]
    unknown = verdict is Verdict.UNKNOWN or (bounds.side is Limit.NONE and bool(trial.missing))
    finding = Finding(
        code=check.code,
        subject=subject,
        title=check.title,
        verdict=verdict,
        because=_sentence(trial, worst, values, unit, because, also or {}, unknown) + note,
        source=check.source,
        mend=mend,
        value=None if unknown else _tidy(worst.nominal.value),
        low=_tidy(min(values)),
        high=_tidy(max(values)),
        unit=unit,
        side=bounds.side,
        **_limits(bounds, worst.nominal, unknown),
        missing=tuple(inputs[name].what for name in turning or (trial.missing if unknown else ())),
        assumed=tuple(figure.what for figure in inputs.values() if figure.assumed),
    )
    return _settled(replace(finding, because=finding.because + _hang(trial, worst, verdict, turning)), accepted)


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
    return min(findings, key=lambda finding: (finding.verdict.rank, _by_margin(finding)))


def _by_margin(finding: Finding) -> float:
    return float("inf") if finding.margin is None else finding.margin


def round_shown(value: float, unit: str = "") -> str:
    """Return a computed value for a sentence, with three digits that count; whole places stay.

    >>> round_shown(36.637, "%"), round_shown(0.0123456, "mm"), round_shown(14285.7, "mm")
    ('36.6 %', '0.0123 mm', '14286 mm')
    """
    if abs(value) < 10**_DIGITS:
        return show_value(float(f"{value:.{_DIGITS}g}"), unit)
    return show_value_text(show_number(value, 0), unit)


def _outcome(trial: Trial, setting: dict[str, float]) -> Outcome:
    points = tuple(trial.point(**(setting | ends)) for ends in trial.ends())
    nominal = points[0]
    inside = [point.is_inside for point in points]
    safe = all(inside) and nominal.margin >= trial.bounds.reserve_ratio
    if safe or trial.bounds.side is Limit.NONE:
        verdict = Verdict.SOUND
    elif not any(inside) or (trial.bounds.nominal_holds and not nominal.is_inside):
        verdict = Verdict.UNSOUND
    else:
        verdict = Verdict.MARGINAL
    return Outcome(setting, nominal, points, verdict)


def _over_all(outcomes: Sequence[Outcome]) -> Verdict:
    """Return the verdict over all that is possible: unknown where it is admissible here and inadmissible there."""
    verdicts = {outcome.verdict for outcome in outcomes}
    if Verdict.UNSOUND in verdicts and len(verdicts) > 1:
        return Verdict.UNKNOWN
    return min(verdicts, key=lambda verdict: verdict.rank)


def _turning(trial: Trial, outcomes: Sequence[Outcome]) -> tuple[str, ...]:
    """Return the missing figures that turn the verdict while all other missing ones stay."""
    by_setting = {tuple(sorted(outcome.setting.items())): outcome.verdict for outcome in outcomes}
    found = []
    for name in trial.missing:
        ends = trial.inputs[name].low, trial.inputs[name].high
        for outcome in outcomes:
            pair = {by_setting[tuple(sorted((dict(outcome.setting) | {name: end}).items()))] for end in ends}
            if len(pair) > 1:
                found.append(name)
                break
    return tuple(found)


def _limits(bounds: Bounds, point: Point, unknown: bool) -> dict[str, float | None]:
    if bounds.side is Limit.NONE:
        return {}
    low, high = point.low, point.high
    first = high if bounds.side is Limit.UPPER else low
    return {
        "limit": _tidy(first),
        "limit_high": _tidy(high) if bounds.side is Limit.RANGE else None,
        "margin": None if unknown else _tidy(point.margin),
    }


def _tidy(value: float) -> float:
    """Return a value without the noise of its last binary digits."""
    return float(f"{value:.{_KEPT_DIGITS}g}")


def _sentence(
    trial: Trial, worst: Outcome, values: Sequence[float], unit: str, because: str, also: Also, unknown: bool
) -> str:
    figures = trial.nominal | dict(worst.setting)
    words = {name: figure.shown() for name, figure in trial.inputs.items()}
    words |= {name: round_shown(function(**figures), function_unit) for name, (function, function_unit) in also.items()}
    words["value"] = _value_shown(worst.nominal.value, values, unit, unknown)
    words["limit"] = _limit_shown(trial.bounds, worst.nominal, unit)
    return because.format(**words)


def _value_shown(value: float, values: Sequence[float], unit: str, unknown: bool) -> str:
    low, high = round_shown(min(values)), round_shown(max(values))
    if unknown:
        return f"{low}–{high} {unit}".rstrip()
    return round_shown(value, unit) + (f" ({low}–{high})" if low != high else "")


def _limit_shown(bounds: Bounds, point: Point, unit: str) -> str:
    if bounds.side is Limit.NONE:
        return ""
    if bounds.side is Limit.RANGE:
        return f"between {round_shown(point.low)} and {round_shown(point.high, unit)}"
    return f"{bounds.side} {round_shown(point.high if bounds.side is Limit.UPPER else point.low, unit)}"


def _hang(trial: Trial, worst: Outcome, verdict: Verdict, turning: Sequence[str]) -> str:
    """Say what an unclear verdict hangs on."""
    if turning:
        named = " and ".join(f"{trial.inputs[n].what} ({trial.inputs[n].shown()} is possible)" for n in turning)
        return f" Not known: {named}."
    if verdict is not Verdict.MARGINAL:
        return ""
    if all(point.is_inside for point in worst.points):
        asked = round_shown(100 * trial.bounds.reserve_ratio)
        return f" Inside by {round_shown(100 * worst.nominal.margin)} %, where {asked} % of reserve is wished."
    widest = trial.swings[0][0]
    deciding = [trial.inputs[name] for swing, name, _ in trial.swings[:2] if swing >= _LEAST_SHARE * widest]
    return " Hangs on " + " and ".join(f"{i.what} ({i.shown()})" for i in deciding) + ": measure it."


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
    return replace(
        finding,
        verdict=Verdict.MARGINAL,
        because=f"{finding.because} Not known, and accepted by the design: {accepted.because}.",
    )
