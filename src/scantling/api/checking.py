"""Check a build as it stands, before anything is chosen or bought."""

from __future__ import annotations

from collections.abc import Mapping

from scantling.api.opening import Session, basis, start_build
from scantling.build.reference import carry_over
from scantling.checks.all import run_checks
from scantling.model.build import Key
from scantling.plans.making import make_plan
from scantling.plans.plan import Plan as Plan  # faces name its type
from scantling.plans.summary import plan_title


def check_design(session: Session, changes: Mapping[Key, str] | None = None) -> Plan:
    """Return the plan, without a purchase, of the choice in force (else of the reference parts) with some changes."""
    build = start_build(session)
    if changes:
        build = carry_over(session.case, build, changes)
    return make_plan(session.case, build, run_checks(session.case, build))


def title_of(session: Session, plan: Plan) -> str:
    """Return machine, revision, workshop, copies and what was checked in a line."""
    return f"{plan_title(plan)}, {basis(session)}"
