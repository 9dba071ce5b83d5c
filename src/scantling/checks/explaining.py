"""A finding in one paragraph: its formula with the numbers put in, where its limit and its figures are from."""

from __future__ import annotations

import re
import sys
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from scantling.build.case import Case
from scantling.checks.all import CHECKS
from scantling.checks.backwards import Interval
from scantling.checks.cards import settling_card
from scantling.checks.figures import heard, solve_for
from scantling.checks.inputs import Input
from scantling.checks.listening import Asked
from scantling.checks.sentences import round_shown
from scantling.findings import Finding, Limit
from scantling.model.build import Build
from scantling.tables.check_formulas import check_formula

_NAME = re.compile(r"\{(\w+)\}")
_SAME = 1e-9


@dataclass(frozen=True)
class ExplainedFigure:
    """One figure of a rule: in words, as shown with its band, and how well it is known.

    known : ``given``, ``assumed`` (of its class) or ``missing``    card : the measuring card that settles it
    intervals : where it may lie by this rule alone, with the best verdict that it can bring about
    """

    what: str
    shown: str
    unit: str
    known: str
    card: str
    best: str
    intervals: tuple[Interval, ...]


@dataclass(frozen=True)
class Explanation:
    """What there is to say of one finding.

    formula : the rule with its figures in words    put_in : the same with the numbers put in
    limit : in words    about : why there is such a rule
    """

    finding: Finding
    about: str
    formula: str
    put_in: str
    limit: str
    figures: tuple[ExplainedFigure, ...]

    @property
    def paragraph(self) -> str:
        """All of it in one paragraph."""
        found = self.finding
        sentences = [f"{found.code} {found.title}, {found.subject}: {found.verdict}.", self.about]
        if self.put_in:
            sentences.append(f"{self.formula}: {self.put_in}; {self.limit}.")
        sentences.append(found.because)
        if found.margin is not None:
            sentences.append(f"Margin {100 * found.margin:+.0f} %.")
        if found.assumed:
            sentences.append(f"Assumed, as usual of their class: {', '.join(found.assumed)}.")
        if found.missing:
            sentences.append(f"Missing: {', '.join(found.missing)}.")
        if found.mend:
            sentences.append(f"What would mend it: {found.mend}.")
        return " ".join([*sentences, f"Source: {found.source}."])


def explain(case: Case, build: Build, code: str, subjects: Sequence[str] = ()) -> tuple[Explanation, ...]:
    """Return the explanations of a check's findings on a build, on some subjects or on all; what matters most first."""
    asked, findings = heard(case, build, [code])
    wanted = [finding for finding in findings if not subjects or finding.subject in subjects]
    ordered = sorted(wanted, key=lambda finding: (finding.verdict.rank, finding.margin is None, finding.margin or 0.0))
    return tuple(_explained(case, finding, asked) for finding in ordered)


def _explained(case: Case, finding: Finding, asked: Sequence[Asked]) -> Explanation:
    check = next(check for check in CHECKS if check.code == finding.code)
    about = " ".join((sys.modules[check.run.__module__].__doc__ or "").partition("\n\n")[0].split())
    one = next((one for one in asked if one.subject == finding.subject and _is_of(finding, one)), None)
    if one is None:
        return Explanation(finding, about, "", "", "", ())
    formula, put_in = formula_of(one)
    return Explanation(finding, about, formula, put_in, _limit(one), tuple(_figures(case, one)))


def _is_of(finding: Finding, one: Asked) -> bool:
    """True where the finding was judged by this rule: of several on one subject it shows the one that matters most."""
    point = one.trial.point()
    limit = point.high if finding.side is Limit.UPPER else point.low
    wanted = ((finding.value, point.value), (finding.limit, limit))
    return finding.value is None or all(
        said is None or found is None or abs(said - found) <= _SAME * max(1.0, abs(found)) for said, found in wanted
    )


def formula_of(one: Asked) -> tuple[str, str]:
    """Return the formula of a rule in words, and with the numbers put in; empty where it has none."""
    trial = one.trial
    formula = check_formula(one.code, {*trial.inputs, *one.also})
    if not formula:
        return "", ""
    words = {name: figure.what for name, figure in trial.inputs.items()}
    numbers = {name: _number(figure) for name, figure in trial.inputs.items()}
    for name, (function, unit) in one.also.items():
        words[name], numbers[name] = name, round_shown(function(**trial.nominal), unit)
    value = round_shown(trial.point().value, one.unit)
    return _filled(formula, words), f"{_filled(formula, numbers)} = {value}"


def _filled(formula: str, words: Mapping[str, str]) -> str:
    filled = _NAME.sub(lambda found: words[found[1]], formula)
    return filled.replace(" ** ", "^").replace("*", "×").replace(" + 1e-9", "")


def _number(figure: Input) -> str:
    return round_shown(figure.nominal, figure.unit)


def _limit(one: Asked) -> str:
    point, side = one.trial.point(), one.trial.bounds.side
    if side is Limit.NONE:
        return "for information, without a limit"
    own = ", the design's own limit" if one.is_own else ""
    if side is Limit.RANGE:
        return f"between {round_shown(point.low)} and {round_shown(point.high, one.unit)}{own}"
    return f"{side} {round_shown(point.high if side is Limit.UPPER else point.low, one.unit)}{own}"


def _figures(case: Case, one: Asked) -> list[ExplainedFigure]:
    found = []
    for name, figure in one.trial.inputs.items():
        known = "missing" if figure.missing else "assumed" if figure.assumed else "given"
        where = solve_for(one.trial, name) if one.trial.bounds.side is not Limit.NONE else None
        best, intervals = (str(where.verdict), where.intervals) if where else ("", ())
        card = settling_card(case.project.design, figure.what)
        settled = f"card {card.number}: {card.title}" if card is not None else ""
        found.append(ExplainedFigure(figure.what, figure.shown(), figure.unit, known, settled, best, intervals))
    return found
