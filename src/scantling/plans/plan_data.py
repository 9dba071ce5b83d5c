"""A plan as plain data, for programs: everything but what it was read from."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from scantling.model.build import Key
from scantling.plans.digests import plain
from scantling.plans.plan import Plan
from scantling.plans.steps import step_plans
from scantling.quantities import show_money

_SHOWN = ("totals", "dates", "orders", "parts", "bars", "drills", "prints", "settings", "loom", "findings")
_ALSO = ("loom_totals", "not_looked_at", "unlocking", "coverage", "purchase")


def plan_data(plan: Plan, pins: Mapping[Key, str] | None = None) -> dict[str, Any]:
    """Return a plan as JSON's own types; keys are those of the classes in ``plans``, money in minor units."""
    machine, workshop = plan.case.project.design.machine, plan.case.project.workshop
    return {
        "machine": machine.name,
        "revision": machine.revision,
        "workshop": workshop.name,
        "currency": workshop.currency,
        "copies": plan.build.copies,
        "verdict": str(plan.verdict),
        "answers": answers_data(dict(plan.build.answers)),
        "pinned": answers_data(pins or {}),
        "choice": _choice(plan),
        "infeasible": _infeasible(plan),
        **{name: plain(getattr(plan, name)) for name in (*_SHOWN, *_ALSO)},
        "steps": plain(step_plans(plan)),
        "drawings": {sheet: digest for sheet, digest in plan.drawings if digest},
    }


def answers_data(answers: Mapping[Key, str]) -> dict[str, str]:
    """Return answers by question, ``part y-rod``, sorted."""
    return {f"{key.kind} {key.subject}": answer for key, answer in sorted(answers.items())}


def findings_data(plan: Plan) -> dict[str, Any]:
    """Return the verdict with all findings, what was not looked at, and the facts that would unlock most."""
    return {
        "verdict": str(plan.verdict),
        "findings": plain(plan.findings),
        "not looked at": plain(plan.not_looked_at),
        "unlocking": list(plan.unlocking),
    }


def settings_data(plan: Plan) -> dict[str, Any]:
    """Return the values to enter by their keys."""
    return {one.key: {name: value for name, value in plain(one).items() if name != "key"} for one in plan.settings}


def _choice(plan: Plan) -> dict[str, Any] | None:
    """How the choice was made; its build and purchase are the plan's own."""
    choice = plan.choice
    if choice is None:
        return None
    return {
        "cost": show_money(choice.cost_minor, plan.case.project.workshop.currency),
        "cost_minor": choice.cost_minor,
        "bound_minor": choice.bound_minor,
        "proven": choice.proven,
        "rounds": choice.rounds,
        "lazy": plain(choice.lazy),
        "failing": plain(choice.failing),
    }


def _infeasible(plan: Plan) -> dict[str, Any] | None:
    if plan.infeasible is None:
        return None
    miss = plan.infeasible.miss
    return {
        "conflict": plain(plan.infeasible.conflict),
        "waived": plain(miss.waived) if miss else [],
        "miss_proven": bool(miss and miss.proven),
    }
