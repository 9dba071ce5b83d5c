"""From a build, its findings and its purchase to a plan."""

from __future__ import annotations

from collections.abc import Sequence

from scantling.build.case import Case
from scantling.build.holes import sheet_drawing
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.setting import Setting
from scantling.build.settings import quick_settings, settings, with_late
from scantling.build.steps import coverage, step_order
from scantling.checks.all import Report
from scantling.choosing.result import Choice, Infeasible, Purchase
from scantling.model.build import Build
from scantling.plans.cutting import bar_plans
from scantling.plans.dates import purchase_dates
from scantling.plans.digests import digest
from scantling.plans.drilling import drill_lines
from scantling.plans.landed import four_totals
from scantling.plans.loom import loom_lines, loom_totals
from scantling.plans.orders import order_sheets
from scantling.plans.parts_list import parts_lines
from scantling.plans.plan import Plan
from scantling.plans.printing import print_lines


def make_plan(
    case: Case,
    build: Build,
    report: Report,
    purchase: Purchase | None = None,
    *,
    choice: Choice | None = None,
    infeasible: Infeasible | None = None,
    next_builder: int | None = None,
    late: Sequence[Setting] | None = None,
) -> Plan:
    """Return the plan of ``build``; pure, and quick where derived values are remembered.

    late : values to enter that take long, as they were before: then they are not worked out anew
    """
    reader = case.reader(build)
    design, workshop = case.project.design, case.project.workshop
    return Plan(
        case=case,
        build=build,
        findings=report.findings,
        not_looked_at=report.not_looked_at,
        unlocking=report.unlocking,
        choice=choice,
        infeasible=infeasible,
        purchase=purchase,
        totals=four_totals(purchase, build.copies, next_builder) if purchase else None,
        dates=purchase_dates(workshop, purchase) if purchase else None,
        orders=order_sheets(case, purchase) if purchase else (),
        parts=parts_lines(case, build),
        bars=bar_plans(case, build, purchase) if purchase else (),
        drills=tuple(line for sheet in design.sheets for line in drill_lines(reader, sheet, build.copies)),
        prints=print_lines(case, reader, build.copies),
        settings=reader.derive(settings) if late is None else with_late(reader.derive(quick_settings), late),
        loom=loom_lines(case, build),
        loom_totals=loom_totals(case, build),
        coverage=reader.derive(coverage),
        step_order=step_order(design),
        drawings=tuple((sheet, reader.derive(drawing_digest, sheet)) for sheet in design.sheets),
    )


def drawing_digest(reader: Reader, sheet: str) -> str:
    """Return the digest of all that a panel's template is drawn from; empty where it cannot be drawn."""
    try:
        drawing = reader.derive(sheet_drawing, sheet)
    except NotDescribedError:
        return ""
    return digest(drawing) if drawing is not None else ""
