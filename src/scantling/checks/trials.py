"""A rule tried at its nominal figures, at the ends of all their bands, and over all that missing figures may be."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import product

from scantling.checks.inputs import Input
from scantling.checks.limits import Bounds, Point
from scantling.findings import Limit, Verdict

_MOST_FREE_ENDS = 4  # this many bands are combined freely; further ones stand together at their kind or unkind ends

Rule = Callable[..., float]


class Trial:
    """A rule with its figures and its limit.

    nominal : nominal figures; the middle of the range for missing ones    missing : names of the missing figures
    """

    def __init__(self, rule: Rule, inputs: Mapping[str, Input], bounds: Bounds) -> None:
        """Try ``rule`` with ``inputs`` against ``bounds``."""
        self.rule, self.inputs, self.bounds = rule, inputs, bounds
        self.nominal = {name: figure.nominal for name, figure in inputs.items()}
        self.missing = [name for name, figure in inputs.items() if figure.missing]
        self._swings: list[tuple[float, str, bool]] | None = None

    def point(self, **changed: float) -> Point:
        """Return value and limits at the nominal figures, some of them changed."""
        figures = self.nominal | changed
        return Point(self.rule(**figures), *self.bounds.at(figures))

    @property
    def banded(self) -> list[str]:
        """Names of the figures that have a band."""
        return [name for name, figure in self.inputs.items() if figure.is_banded and not figure.missing]

    @property
    def swings(self) -> list[tuple[float, str, bool]]:
        """For every banded figure, widest first: how far the slack moves over its band, and whether less is kind."""
        if self._swings is None:
            ends = [(name, *self._slacks(name)) for name in self.banded]
            found = [(abs(at_high - at_low), name, at_low > at_high) for name, at_low, at_high in ends]
            self._swings = sorted(found, key=lambda swing: (-swing[0], swing[1]))
        return self._swings

    def _slacks(self, name: str) -> tuple[float, float]:
        figure = self.inputs[name]
        return self.point(**{name: figure.low}).slack, self.point(**{name: figure.high}).slack

    def ends(self) -> Iterator[dict[str, float]]:
        """Yield the settings of the banded figures at which the rule is tried, the nominal one first."""
        yield {}
        names, rest = self.banded, []
        if len(names) > _MOST_FREE_ENDS:
            names = [name for _, name, _ in self.swings[:_MOST_FREE_ENDS]]
            rest = [(self.inputs[name], name, less) for _, name, less in self.swings[_MOST_FREE_ENDS:]]
        free = [(self.inputs[name].low, self.inputs[name].high) for name in names]
        for unkind in (True, False) if rest else (True,):
            pinned = {name: i.high if less is unkind else i.low for i, name, less in rest}
            for corner in product(*free) if names else ():
                yield pinned | dict(zip(names, corner, strict=True))

    def cases(self) -> list[dict[str, float]]:
        """Return the settings of the missing figures: every combination of the ends of what is possible."""
        ends = [(self.inputs[name].low, self.inputs[name].high) for name in self.missing]
        return [dict(zip(self.missing, corner, strict=True)) for corner in product(*ends)]

    def points(self, setting: Mapping[str, float]) -> Iterator[Point]:
        """Yield what the trial gives at one setting of the missing figures, the nominal point first."""
        return (self.point(**{**setting, **ends}) for ends in self.ends())


class Outcome:
    """What a trial gives at one setting of the missing figures."""

    def __init__(self, trial: Trial, setting: Mapping[str, float]) -> None:
        """Try ``trial`` at ``setting``."""
        self.trial, self.setting = trial, setting
        self.nominal = trial.point(**setting)
        self.verdict = self._verdict()

    @cached_property
    def points(self) -> tuple[Point, ...]:
        """The points at all ends of the bands, the nominal one first."""
        return tuple(self.trial.points(self.setting))

    def _verdict(self) -> Verdict:
        """Look at no more points than are needed to tell."""
        bounds, inside = self.trial.bounds, self.nominal.is_inside
        if bounds.side is Limit.NONE:
            return Verdict.SOUND
        if bounds.nominal_holds and not inside:
            return Verdict.UNSOUND
        if any(point.is_inside is not inside for point in self.trial.points(self.setting)):
            return Verdict.MARGINAL
        if not inside:
            return Verdict.UNSOUND
        return Verdict.SOUND if self.nominal.margin >= bounds.reserve_ratio else Verdict.MARGINAL


@dataclass(frozen=True)
class Weighed:
    """A trial over all that is possible.

    outcomes : at every setting of the missing figures    worst : the one that is shown
    turning : missing figures that turn the verdict
    """

    trial: Trial
    outcomes: tuple[Outcome, ...]
    worst: Outcome
    verdict: Verdict
    turning: tuple[str, ...]

    @property
    def unknown(self) -> bool:
        """True where a missing figure leaves no one value to show."""
        told = self.trial.bounds.side is Limit.NONE and bool(self.trial.missing)
        return self.verdict is Verdict.UNKNOWN or told

    @cached_property
    def values(self) -> tuple[float, float]:
        """The least and the largest value over all that is possible."""
        found = [point.value for outcome in self.outcomes for point in outcome.points]
        return min(found), max(found)


def weigh(trial: Trial) -> Weighed:
    """Return what a trial comes to."""
    outcomes = tuple(Outcome(trial, setting) for setting in trial.cases())
    worst = min(outcomes, key=lambda outcome: (outcome.verdict.rank, outcome.nominal.slack))
    verdict = _over_all(outcomes)
    unclear = verdict in (Verdict.UNKNOWN, Verdict.MARGINAL)
    return Weighed(trial, outcomes, worst, verdict, _turning(trial, outcomes) if unclear else ())


def weight(weighed: Weighed) -> tuple[int, float]:
    """Return by what several trials on one subject are compared: the worst verdict, then the least margin."""
    return weighed.verdict.rank, weighed.worst.nominal.margin


def _over_all(outcomes: Sequence[Outcome]) -> Verdict:
    """Return the verdict over all that is possible: unknown where it is admissible here and inadmissible there."""
    verdicts = {outcome.verdict for outcome in outcomes}
    if Verdict.UNSOUND in verdicts and len(verdicts) > 1:
        return Verdict.UNKNOWN
    return min(verdicts, key=lambda verdict: verdict.rank)


def _turning(trial: Trial, outcomes: Sequence[Outcome]) -> tuple[str, ...]:
    """Return the missing figures that turn the verdict while all other missing ones stay."""
    verdicts = {frozenset(outcome.setting.items()): outcome.verdict for outcome in outcomes}

    def turns(name: str) -> bool:
        ends = trial.inputs[name].low, trial.inputs[name].high
        moved = ([frozenset({**o.setting, name: end}.items()) for end in ends] for o in outcomes)
        return any(verdicts[low] is not verdicts[high] for low, high in moved)

    return tuple(name for name in trial.missing if turns(name))
