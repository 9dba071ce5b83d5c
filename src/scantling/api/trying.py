"""Try: one question, no file, the same checks as for a whole machine."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from scantling.api.trials import belt, chain, hot, joint, reach, rods, screw, small, spares
from scantling.api.trials.trial import Ask, Trial
from scantling.build.case import Case
from scantling.build.reference import reference_build
from scantling.checks.all import run_checks
from scantling.errors import Fault, FaultsError, QuantityError, Where, nearest
from scantling.findings import Finding
from scantling.model.project import Project
from scantling.model.workshop import Workshop
from scantling.quantities import parse_count, parse_figure
from scantling.reading.texts import design_from_texts

TRIALS: Mapping[str, Trial] = {
    trial.name: trial
    for trial in (
        belt.TRIAL,
        screw.TRIAL,
        rods.TRIAL,
        spares.TRIAL,
        reach.TRIAL,
        small.FIT,
        joint.TRIAL,
        chain.TRIAL,
        hot.WARMING,
        hot.PLASTIC,
        hot.WIRE,
        small.SUPPLY,
        small.SWAY,
    )
}


@dataclass(frozen=True)
class Tried:
    """The findings of one question, and what it left open.

    notes : what the trial assumed    unasked : further facts that more checks would need
    """

    findings: tuple[Finding, ...]
    notes: tuple[str, ...]
    unasked: tuple[str, ...]


def try_one(name: str, given: Mapping[str, str]) -> Tried:
    """Return what the checks say; raises ``FaultsError`` where a needed text is missing or is not what it should be."""
    trial = TRIALS[name]
    known = {ask.name for ask in trial.asks}
    faults = [_unknown(key, sorted(known)) for key in given if key not in known]
    faults += [_missing(trial, ask.name) for ask in trial.asks if ask.needed and ask.name not in given]
    faults += [fault for ask in trial.asks if ask.name in given for fault in _misread(ask, given[ask.name])]
    if faults:
        raise FaultsError(faults)
    sections = trial.design(given)
    design = design_from_texts({"machine": {"name": trial.title}, **sections}, f"try {name}")
    case = Case(Project(design, Workshop.model_validate({"name": "none", "currency": "XXX", **trial.workshop(given)})))
    report = run_checks(case, reference_build(case))
    findings = tuple(f for f in report.findings if f.code in trial.codes)
    absent = tuple(item for item in report.not_looked_at if item.code in trial.codes)
    return Tried(findings, trial.notes(given), tuple(f"{item.title}: needs {', '.join(item.needs)}" for item in absent))


def _unknown(key: str, known: list[str]) -> Fault:
    return Fault("TRY-01", f"nothing called {key!r} is asked", nearest(key, known), Where(f"--{key}"))


def _missing(trial: Trial, name: str) -> Fault:
    return Fault("TRY-02", f"{trial.name} needs --{name}", f"for example: {trial.example}", Where(f"--{name}"))


def _misread(ask: Ask, text: str) -> Iterator[Fault]:
    """Yield the fault of a text that is not the quantity that is asked for, where the maker typed it."""
    try:
        if ask.dimension == "count":
            parse_count(text)
        elif ask.dimension != "text":
            parse_figure(text, ask.dimension)
    except QuantityError as error:
        yield Fault("TRY-03", error.what, error.mend, Where(f"--{ask.name}"))
