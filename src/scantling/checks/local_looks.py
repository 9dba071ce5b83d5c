"""Looks at a build by the checks in which one part has a say, with what their verdicts must not fall below."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from math import isfinite

from scantling.build.case import Case, screws_of
from scantling.build.reader import Catalogue, Reader
from scantling.build.varied import Varied
from scantling.checks.all import CHECKS
from scantling.checks.check import Check
from scantling.checks.listening import Listener
from scantling.checks.part_figures import Figured
from scantling.errors import ScantlingError
from scantling.findings import NotLookedAt, Verdict
from scantling.model.build import Key

_PROBES = (0.3, 0.9, 0.98, 1.02, 1.1, 3.0)  # of the present value: a check that none of them moves does not mind it
_LEAST = Verdict.MARGINAL.rank

Answers = Mapping[Key, str]


@dataclass(frozen=True)
class Look:
    """One check on one subject; the rank of its verdict now, or of marginal; the joints whose screws it reads."""

    check: Check
    subject: str
    goal: int
    joints: tuple[str, ...]

    @property
    def label(self) -> str:
        """Code and subject."""
        return f"{self.check.code} {self.subject}"


def looks_at(case: Case, answers: Answers, part: str) -> tuple[Look, ...]:
    """Return the looks that read a part; checks that only inform and costly ones are left out."""
    found = []
    for check in (check for check in CHECKS if not check.informs and not check.costly):
        for subject in check.subjects(case.project.design):
            reader = Reader(case, answers, words=False)
            rank = _rank(check, reader, subject)
            if part in reader.trail.values():
                joints = tuple(key.subject for key in reader.trail if key.kind == "screw")
                found.append(Look(check, subject, max(rank, _LEAST), joints))
    return tuple(found)


def minding(case: Case, answers: Answers, looks: Sequence[Look], one: Figured) -> tuple[Look, ...]:
    """Return the looks whose numbers move with a figure."""
    probes: list[Catalogue] = []
    for value in [one.now * ratio for ratio in _PROBES] if one.now else [-1.0, 0.01, 1.0]:
        try:
            probes.append(Varied(case, answers, one.put(value)))
        except ValueError:
            continue

    def minds(look: Look) -> bool:
        now = _numbers(case, answers, look)
        return any(_numbers(probe, answers, look) != now for probe in probes)

    return tuple(look for look in looks if minds(look))


def fails(answers: Answers) -> Callable[[Varied, Look], bool]:
    """Return the question whether a look gets worse, all else equal."""
    return lambda varied, look: _rank(look.check, Reader(varied, answers, words=False), look.subject) < look.goal


def fails_anew(case: Case, answers: Answers, looks: Sequence[Look]) -> Callable[[Varied, Look], bool]:
    """Return the question whether a look is inadmissible whatever screws its joints take.

    A joint has one screw: all looks that read it must live with the same.
    """

    def keeps(varied: Varied, look: Look, answers: Answers) -> bool:
        return _rank(look.check, Reader(varied, answers, words=False), look.subject) >= _LEAST

    def failing(varied: Varied, look: Look) -> bool:
        if keeps(varied, look, answers):
            return False
        for joint in look.joints:
            alike = [other for other in looks if joint in other.joints]
            others = ({**answers, Key("screw", joint): screw} for screw in case.once(screws_of, joint))
            if any(all(keeps(varied, one, changed) for one in alike) for changed in others):
                return False
        return True

    return failing


def _rank(check: Check, reader: Reader, subject: str) -> int:
    """Return the rank of a verdict; what is not described stands in nobody's way."""
    try:
        found = check.run(reader, subject)
    except (ArithmeticError, ValueError, TypeError, ScantlingError):  # beyond what its rule is valid for
        return Verdict.UNSOUND.rank
    return Verdict.SOUND.rank if isinstance(found, NotLookedAt) else found.verdict.rank


def _numbers(case: Catalogue, answers: Answers, look: Look) -> object:
    """Return what a look is judged by: its verdict and all figures that go into its rules."""
    listener = Listener(case, answers)
    rank = _rank(look.check, listener, look.subject)
    inputs = [tuple(one.trial.inputs.items()) for one in listener.asked]
    limits = [tuple(end for end in one.trial.point().__dict__.values() if isfinite(end)) for one in listener.asked]
    return rank, inputs, limits
