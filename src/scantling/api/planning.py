"""Plan: choose the cheapest sound build, buy it, lay out everything that is needed to make it."""

from __future__ import annotations

from collections.abc import Mapping

from scantling.api.opening import Session, start_build
from scantling.api.remembering import Chooser, Store, remembering
from scantling.api.telling import Tell
from scantling.book.plan_book import plan_pdf
from scantling.build.reference import carry_over
from scantling.checks.all import run_checks
from scantling.choosing.result import Choice, Infeasible
from scantling.choosing.ties import Present
from scantling.model.build import Key
from scantling.plans.files import plan_files
from scantling.plans.making import make_plan
from scantling.plans.next_builder import next_builder_cost
from scantling.plans.plan import Plan
from scantling.plans.summary import Summary as Summary  # faces name its type
from scantling.plans.summary import summarise
from scantling.plans.templates import check_paper


def make_design_plan(
    session: Session, pins: Mapping[Key, str] | None = None, tell: Tell | None = None, store: Store | None = None
) -> Plan:
    """Return the plan of the cheapest sound build; of the choice in force with the pins where nothing is on offer.

    store : remembers choices by content, so that an unchanged question is answered at once
    Raises ``FaultsError`` at once where the workshop's printer can make no true template (PAPER-nn).
    """
    pins, project = pins or {}, session.case.project
    if project.design.sheets:
        check_paper(project.workshop, project.where("workshop", "printer"))
    if not session.has_offers:
        build = carry_over(session.case, start_build(session), pins)
        return make_plan(session.case, build, run_checks(session.case, build))
    found = Chooser(session, store).choice(pins, present_choice(session), tell)
    return chosen_plan(session, found, tell)


def present_choice(session: Session) -> Present | None:
    """Return the answers and packs in force, so that of equally cheap choices the nearest to them is taken."""
    if session.lock is None:
        return None
    return Present(start_build(session).as_dict(), session.lock.packs)


def chosen_plan(session: Session, found: Choice | Infeasible, tell: Tell | None = None) -> Plan:
    """Return the plan of what a choice gave back; of the nearest miss where nothing is sound."""
    if tell:
        tell(0, 1, "laying out the plan")
    if isinstance(found, Choice):
        report = run_checks(session.case, found.build)
        alone = next_builder_cost(session.case, found.build)
        return make_plan(session.case, found.build, report, found.purchase, choice=found, next_builder=alone)
    build = found.miss.build if found.miss else start_build(session)
    purchase = found.miss.purchase if found.miss else None
    return make_plan(session.case, build, run_checks(session.case, build), purchase, infeasible=found)


def summary_of(plan: Plan, pins: Mapping[Key, str] | None = None) -> Summary:
    """Return the plan on one screen."""
    return summarise(plan, pins)


def files_of_plan(plan: Plan, pins: Mapping[Key, str] | None = None, store: Store | None = None) -> dict[str, bytes]:
    """Return every file of a plan, by its name in the folder; ``store`` remembers drawn templates by content."""
    pinned, remember = pins or {}, remembering(store)
    return {**plan_files(plan, pinned, remember), "plan.pdf": plan_pdf(plan, pinned, remember)}
