"""Results as JSON: the same objects that a screen shows, for programs."""

from __future__ import annotations

import dataclasses
from typing import TYPE_CHECKING, Any

from scantling.findings import Verdict
from scantling.plans.digests import plain, to_json
from scantling.plans.plan import Plan

if TYPE_CHECKING:  # a check need not load the solver in order to be shown
    from scantling.api.following import Following
    from scantling.api.trying import Tried
    from scantling.choosing.result import WhyOption


def plan_json(plan: Plan) -> str:
    """Return a plan as JSON, without the files that it was read from."""
    return to_json(plan_data(plan), indent=1)


def plan_data(plan: Plan) -> dict[str, Any]:
    """Return a plan as plain data."""
    shown = {f.name: plain(getattr(plan, f.name)) for f in dataclasses.fields(plan) if f.name not in ("case", "build")}
    answers = {f"{key.kind} {key.subject}": answer for key, answer in plan.build.answers}
    return {"verdict": str(plan.verdict), "copies": plan.build.copies, "answers": answers, **_without_build(shown)}


def _without_build(shown: dict[str, Any]) -> dict[str, Any]:
    """Drop the answers a second time: a choice repeats the build that the plan states."""
    choice = shown.get("choice")
    if isinstance(choice, dict):
        shown["choice"] = {name: value for name, value in choice.items() if name not in ("build", "purchase")}
    infeasible = shown.get("infeasible")
    if isinstance(infeasible, dict) and isinstance(infeasible.get("miss"), dict):
        infeasible["miss"].pop("build", None)
    return shown


def following_data(following: Following) -> dict[str, Any]:
    """Return one stage of what follows as plain data."""
    rows = [{**plain(c), "topic": c.topic.name.lower()} for c in following.consequences]
    return {
        "stage": following.stage,
        "verdict before": str(following.before.verdict),
        "verdict after": str(following.after.verdict),
        "proven": bool(following.after.choice and following.after.choice.proven),
        "waiting": list(following.waiting),
        "consequences": rows,
    }


def why_data(option: WhyOption) -> dict[str, Any]:
    """Return one answer of why as plain data."""
    return {
        "question": str(option.key),
        "answer": option.answer,
        "outcome": option.outcome,
        "extra minor": option.extra_minor,
        "forbidden by": plain(option.conflict.concerns) if option.conflict else [],
    }


def is_sound(plan: Plan) -> bool:
    """Return True where everything that was looked at is sound or marginal."""
    return plan.verdict in (Verdict.SOUND, Verdict.MARGINAL)


def json_text(data: Any) -> str:
    """Return plain data as JSON text."""
    return to_json(data, indent=1)


def tried_data(tried: Tried) -> dict[str, Any]:
    """Return the answer to one question as plain data."""
    shown: dict[str, Any] = plain(tried)
    return shown
