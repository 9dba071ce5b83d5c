"""The range of every figure that the rules use: from where to where it may lie, each rule solved backwards for it.

A figure is known by its words; where those name no part, place or joint it belongs to the subject of its check. Several
rules that use one figure leave what all of them allow.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import reduce

from scantling.build.case import Case
from scantling.checks.all import CHECKS
from scantling.checks.backwards import Interval, Solved, intersection, solved
from scantling.checks.inputs import Input
from scantling.checks.listening import Asked, Listener
from scantling.checks.trials import Trial, weigh
from scantling.findings import Finding, Limit, Verdict
from scantling.model.build import Build

_WORD = re.compile(r"[^\s,()]+")


@dataclass(frozen=True)
class FigureRange:
    """Where one figure may lie, all else equal.

    figure : in words    of : the subject that it belongs to, empty where its words say it
    low, high : the band of its present value, as the rules have it    given : not from a class table and not missing
    verdict : what all checks that use it come to inside ``intervals`` (an infinite end where none was found)
    checks : code and subject of those checks    below, above : of these, who ends the interval in which it lies now
    """

    figure: str
    of: str
    unit: str
    low: float
    high: float
    given: bool
    verdict: Verdict
    intervals: tuple[Interval, ...]
    checks: tuple[str, ...]
    below: tuple[str, ...]
    above: tuple[str, ...]

    @property
    def is_inside(self) -> bool:
        """True where the whole present band lies in one of the intervals."""
        return any(one.holds(self.low) and one.holds(self.high) for one in self.intervals)


@dataclass(frozen=True)
class _One:
    """One figure in one rule."""

    check: str
    figure: Input
    solved: Solved


def heard(case: Case, build: Build, codes: Iterable[str] | None = None) -> tuple[list[Asked], list[Finding]]:
    """Return every rule that the checks judge a build by, and what they find; ``codes`` names some checks alone."""
    listener, wanted = Listener(case, build.as_dict()), None if codes is None else set(codes)
    found = [
        check.run(listener, subject)
        for check in CHECKS
        if wanted is None or check.code in wanted
        for subject in check.subjects(case.project.design)
    ]
    return listener.asked, [word for word in found if isinstance(word, Finding)]


def figure_ranges(case: Case, asked: Sequence[Asked]) -> tuple[FigureRange, ...]:
    """Return the range of every figure of some rules, in the order met; rules that only inform set none."""
    names = _names(case)
    together: dict[tuple[str, str, str], list[_One]] = {}
    for one in asked:
        if one.trial.bounds.side is Limit.NONE:
            continue
        for name, figure in one.trial.inputs.items():
            of = "" if names.intersection(_WORD.findall(figure.what)) else one.subject
            found = _One(f"{one.code} {one.subject}", figure, solve_for(one.trial, name))
            together.setdefault((figure.what, of, figure.unit), []).append(found)
    return tuple(_together(*key, ones) for key, ones in together.items() if any(_binds(one.solved) for one in ones))


def solve_for(trial: Trial, name: str) -> Solved:
    """Return where one figure of a rule may lie."""

    def rank_at(value: float) -> int:
        known = replace(trial.inputs[name], nominal=value, low=value, high=value, missing=False)
        try:
            return weigh(Trial(trial.rule, {**trial.inputs, name: known}, trial.bounds)).verdict.rank
        except (ArithmeticError, ValueError, TypeError):  # beyond what the rule is valid for: roots turn complex there
            return Verdict.UNSOUND.rank

    return solved(rank_at, trial.inputs[name].nominal)


def _names(case: Case) -> set[str]:
    design = case.project.design
    sections = (design.parts, design.places, design.joints, design.axes, design.chains, design.rails, design.warmings)
    return {name for section in sections for name in section}


def _binds(found: Solved) -> bool:
    """True where a rule sets a figure any limit, or cannot be met by it."""
    return found.intervals != (Interval(float("-inf"), float("inf")),)


def _together(what: str, of: str, unit: str, ones: Sequence[_One]) -> FigureRange:
    figure = ones[0].figure
    binding = [one for one in ones if _binds(one.solved)]
    intervals = reduce(intersection, (one.solved.intervals for one in binding))
    here = next((one for one in intervals if one.holds(figure.nominal)), None)
    return FigureRange(
        figure=what,
        of=of,
        unit=unit,
        low=figure.low,
        high=figure.high,
        given=not figure.missing and not figure.assumed,
        verdict=min((one.solved.verdict for one in binding), key=lambda verdict: verdict.rank),
        intervals=intervals,
        checks=tuple(dict.fromkeys(one.check for one in ones)),
        below=() if here is None else _ending(binding, "low", here.low),
        above=() if here is None else _ending(binding, "high", here.high),
    )


def _ending(ones: Sequence[_One], side: str, at: float) -> tuple[str, ...]:
    if abs(at) == float("inf"):
        return ()
    return tuple(dict.fromkeys(o.check for o in ones if any(getattr(i, side) == at for i in o.solved.intervals)))
