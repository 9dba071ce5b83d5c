"""What follows from other parts at some places, at once; then what takes longer; then the same chosen anew."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Literal

from scantling.api.opening import Session, start_build
from scantling.api.planning import chosen_plan, present_choice
from scantling.api.remembering import Chooser, Store
from scantling.api.telling import Tell
from scantling.build.reference import carry_over
from scantling.build.settings import LATE
from scantling.checks.all import CHECKS, Report, run_checks
from scantling.choosing.choose import buy
from scantling.choosing.opened import open_build
from scantling.choosing.result import Infeasible, Purchase
from scantling.choosing.ties import Present
from scantling.comparing.consequences import Consequence as Consequence  # faces name its type
from scantling.comparing.consequences import consequences
from scantling.comparing.fact import Facts
from scantling.comparing.facts import facts
from scantling.comparing.grouping import Group as Group
from scantling.comparing.grouping import Grouped as Grouped
from scantling.comparing.grouping import grouped
from scantling.model.build import Build, Key
from scantling.plans.concerns import infeasible_lines
from scantling.plans.making import make_plan
from scantling.plans.next_builder import next_builder_cost
from scantling.plans.plan import Plan

Stage = Literal["at once", "complete", "chosen anew"]
COSTLY = frozenset(check.code for check in CHECKS if check.costly)


@dataclass(frozen=True)
class Following:
    """One answer to what-if.

    stage : ``at once`` (costly checks still open, listed in ``waiting``), ``complete``, ``chosen anew`` (the same parts
    pinned and everything else chosen again)
    infeasible : where the changed build cannot be bought or nothing sound has these parts
    further : of ``chosen anew``, what differs from the plan with everything else kept
    """

    stage: Stage
    before: Plan
    after: Plan
    consequences: tuple[Consequence, ...]
    waiting: tuple[str, ...] = ()
    infeasible: Infeasible | None = None
    further: tuple[Consequence, ...] = ()


@dataclass(frozen=True)
class Standing:
    """The plan in force, with what is needed to ask about it again and again."""

    session: Session
    plan: Plan
    facts: Facts
    chooser: Chooser


def consequence_groups(following: Following, known: frozenset[Consequence], everything: bool) -> Grouped:
    """Return what differs in groups for a reader: what is not ``known`` already, or what was chosen anew besides."""
    told = following.further if following.stage == "chosen anew" else following.consequences
    return grouped([c for c in told if c not in known], everything)


def why_not(following: Following) -> list[str]:
    """Return in sentences why the changed build cannot be had; nothing where it can."""
    currency = following.after.case.project.workshop.currency
    return infeasible_lines(following.infeasible, currency) if following.infeasible else []


def stand(session: Session, store: Store | None = None) -> Standing:
    """Return the plan in force: of ``plan.lock``, else of the reference parts.

    store : remembers what is chosen, by content
    """
    case, build, chooser = session.case, start_build(session), Chooser(session, store)
    report = run_checks(case, build)
    purchase = _in_force(session, build, chooser) if session.has_offers else None
    alone = next_builder_cost(case, build) if purchase else None
    plan = make_plan(case, build, report, purchase, next_builder=alone)
    return Standing(session, plan, facts(plan), chooser)


def _in_force(session: Session, build: Build, chooser: Chooser) -> Purchase | None:
    """Return the orders of the choice in force: as they were chosen, else as near to them as is cheapest now."""
    present = present_choice(session)
    known = chooser.known(session.lock.pinned if session.lock else {}, present)
    if known is not None and known.build == build:
        return known.purchase
    bought = buy(open_build(session.case, build), build, present=present)
    return bought if isinstance(bought, Purchase) else None


def whatif(
    standing: Standing, changes: Mapping[Key, str], *, anew: bool = True, tell: Tell | None = None
) -> Iterator[Following]:
    """Yield what follows: at once, then complete, then (``anew``) the same parts with everything else chosen anew."""
    build = carry_over(standing.session.case, standing.plan.build, changes)
    at_once = _at_once(standing, build)
    yield at_once
    complete = _complete(standing, at_once)
    yield complete
    if anew and standing.session.has_offers:
        yield _anew(standing, complete, changes, tell)


def _at_once(standing: Standing, build: Build) -> Following:
    case, before = standing.session.case, standing.plan
    report = _with_late(run_checks(case, build, costly=False), before)
    purchase, infeasible = _bought(standing, build, at_once=True)
    alone = before.totals.next_builder if before.totals else None
    late = tuple(setting for setting in before.settings if setting.group == LATE)
    after = make_plan(case, build, report, purchase, infeasible=infeasible, next_builder=alone, late=late)
    waiting = [f"{f.code} {f.subject}" for f in report.findings if f.code in COSTLY]
    waiting += [setting.title for setting in late]
    if infeasible is not None and infeasible.miss is None:
        waiting.append("what comes nearest")
    return _following(standing, "at once", after, tuple(waiting))


def _with_late(report: Report, before: Plan) -> Report:
    """Add the old words of costly checks, which are still being computed."""
    late = tuple(f for f in before.findings if f.code in COSTLY)
    absent = tuple(a for a in before.not_looked_at if a.code in COSTLY)
    return replace(
        report,
        findings=(*(f for f in report.findings if f.code not in COSTLY), *late),
        not_looked_at=(*(a for a in report.not_looked_at if a.code not in COSTLY), *absent),
    )


def _bought(standing: Standing, build: Build, *, at_once: bool) -> tuple[Purchase | None, Infeasible | None]:
    if not standing.session.has_offers:
        return None, None
    bought = buy(open_build(standing.session.case, build), build, keep=standing.plan.purchase, at_once=at_once)
    return (bought, None) if isinstance(bought, Purchase) else (None, bought)


def _complete(standing: Standing, quick: Following) -> Following:
    case, build, purchase = standing.session.case, quick.after.build, quick.after.purchase
    infeasible = quick.infeasible and _bought(standing, build, at_once=False)[1]
    alone = next_builder_cost(case, build) if purchase else None
    report = run_checks(case, build)
    after = make_plan(case, build, report, purchase, infeasible=infeasible, next_builder=alone)
    return _following(standing, "complete", after)


def _anew(standing: Standing, kept: Following, changes: Mapping[Key, str], tell: Tell | None) -> Following:
    found = standing.chooser.choice(changes, _present(standing.plan), tell)
    anew = _following(standing, "chosen anew", chosen_plan(standing.session, found, tell))
    return replace(anew, further=consequences(kept.after, anew.after))


def _present(plan: Plan) -> Present:
    """Return the answers and packs of a plan, to which an equally cheap choice keeps near."""
    packs = {row.offer: row.packs for sheet in plan.orders for row in sheet.rows}
    return Present(plan.build.as_dict(), packs)


def _following(standing: Standing, stage: Stage, after: Plan, waiting: tuple[str, ...] = ()) -> Following:
    differing = consequences(standing.plan, after, standing.facts)
    return Following(stage, standing.plan, after, differing, waiting, after.infeasible)
