"""What follows from other parts at some places, at once; then what takes longer; then the same chosen anew."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Literal

from scantling.choosing.choose import Opened, buy, choose, open_choice

from scantling.api.opening import Session, start_build
from scantling.api.telling import Tell
from scantling.build.reference import carry_over
from scantling.checks.all import CHECKS, run_checks
from scantling.choosing.result import Choice, Infeasible, Purchase
from scantling.comparing.consequences import Consequence as Consequence  # faces name its type
from scantling.comparing.consequences import consequences
from scantling.comparing.grouping import Group as Group
from scantling.comparing.grouping import Grouped as Grouped
from scantling.comparing.grouping import few as few
from scantling.comparing.grouping import grouped
from scantling.model.build import Build, Key
from scantling.plans.concerns import infeasible_lines
from scantling.plans.making import make_plan
from scantling.plans.next_builder import next_builder_cost
from scantling.plans.plan import Plan

Stage = Literal["at once", "complete", "chosen anew"]


@dataclass(frozen=True)
class Following:
    """One answer to what-if.

    stage : ``at once`` (costly checks still open, listed in ``waiting``), ``complete``, ``chosen anew`` (the same parts
    pinned and everything else chosen again)
    infeasible : where the changed build cannot be bought or nothing sound has these parts
    """

    stage: Stage
    before: Plan
    after: Plan
    consequences: tuple[Consequence, ...]
    waiting: tuple[str, ...] = ()
    infeasible: Infeasible | None = None


@dataclass(frozen=True)
class Standing:
    """The plan in force, with what is needed to ask about it again and again."""

    session: Session
    plan: Plan
    shopping: Opened | None


def consequence_groups(following: Following, known: frozenset[Consequence], everything: bool) -> Grouped:
    """Return what differs in groups for a reader, without what is ``known`` already."""
    return grouped([c for c in following.consequences if c not in known], everything)


def why_not(following: Following) -> list[str]:
    """Return in sentences why the changed build cannot be had; nothing where it can."""
    currency = following.after.case.project.workshop.currency
    return infeasible_lines(following.infeasible, currency) if following.infeasible else []


def stand(session: Session, tell: Tell | None = None) -> Standing:
    """Return the plan in force: of ``plan.lock``, else of the reference parts."""
    build = start_build(session)
    report = run_checks(session.case, build)
    if not session.has_offers:
        return Standing(session, make_plan(session.case, build, report), None)
    shopping = open_choice(session.case, (), session.copies, progress=tell)
    bought = buy(shopping, build)
    purchase = bought if isinstance(bought, Purchase) else None
    alone = next_builder_cost(session.case, build)
    return Standing(session, make_plan(session.case, build, report, purchase, next_builder=alone), shopping)


def whatif(
    standing: Standing, changes: Mapping[Key, str], *, anew: bool = True, tell: Tell | None = None
) -> Iterator[Following]:
    """Yield what follows: at once, then complete, then (``anew``) the same parts with everything else chosen anew."""
    session, before = standing.session, standing.plan
    build = carry_over(session.case, before.build, changes)
    at_once = _at_once(standing, build)
    yield at_once
    yield _complete(standing, at_once)
    if anew and standing.shopping is not None:
        yield _anew(standing, changes, tell)


def _at_once(standing: Standing, build: Build) -> Following:
    case, before = standing.session.case, standing.plan
    report = run_checks(case, build, costly=False)
    purchase, infeasible = _bought(standing, build)
    known = {finding.key for finding in report.findings}
    costly = {check.code for check in CHECKS if check.costly}
    late = tuple(f for f in before.findings if f.code in costly and f.key not in known)
    waiting = tuple(f"{finding.code} {finding.subject}" for finding in late)
    alone = before.totals.next_builder if before.totals else None
    report = replace(report, findings=(*report.findings, *late))
    after = make_plan(case, build, report, purchase, infeasible=infeasible, next_builder=alone)
    return Following("at once", before, after, consequences(before, after), waiting, infeasible)


def _bought(standing: Standing, build: Build) -> tuple[Purchase | None, Infeasible | None]:
    if standing.shopping is None:
        return None, None
    bought = buy(standing.shopping, build, keep=standing.plan.purchase)
    return (bought, None) if isinstance(bought, Purchase) else (None, bought)


def _complete(standing: Standing, quick: Following) -> Following:
    case, before, build = standing.session.case, standing.plan, quick.after.build
    report = run_checks(case, build)
    alone = next_builder_cost(case, build) if quick.after.purchase else None
    after = make_plan(case, build, report, quick.after.purchase, infeasible=quick.infeasible, next_builder=alone)
    return Following("complete", before, after, consequences(before, after), (), quick.infeasible)


def _anew(standing: Standing, changes: Mapping[Key, str], tell: Tell | None) -> Following:
    session, before = standing.session, standing.plan
    opened = open_choice(session.case, CHECKS, session.copies, progress=tell)
    found = choose(opened, pins=changes, present=before.build, progress=tell)
    infeasible = None if isinstance(found, Choice) else found
    build = found.build if isinstance(found, Choice) else (found.miss.build if found.miss else before.build)
    purchase = found.purchase if isinstance(found, Choice) else (found.miss.purchase if found.miss else None)
    alone = next_builder_cost(session.case, build) if purchase else None
    choice = found if isinstance(found, Choice) else None
    report = run_checks(session.case, build)
    after = make_plan(session.case, build, report, purchase, choice=choice, infeasible=infeasible, next_builder=alone)
    return Following("chosen anew", before, after, consequences(before, after), (), infeasible)
