"""Results as JSON: the same objects that a screen shows, for programs."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any

from scantling.findings import Verdict
from scantling.model.build import Key
from scantling.plans.digests import plain, to_json
from scantling.plans.plan import Plan
from scantling.plans.plan_data import plan_data

if TYPE_CHECKING:  # a check need not load the solver in order to be shown
    from scantling.api.explaining import Explanation
    from scantling.api.following import Consequence, Following
    from scantling.api.framing import FrameTable
    from scantling.api.ranging import FigureRange, Local
    from scantling.api.serving import Serving
    from scantling.api.trying import Tried
    from scantling.choosing.result import WhyOption


def plan_json(plan: Plan, pins: Mapping[Key, str] | None = None) -> str:
    """Return a plan as JSON, as it stands in ``plan.json``."""
    return to_json(plan_data(plan, pins), indent=1)


def check_data(plan: Plan, serving: Sequence[Serving]) -> dict[str, Any]:
    """Return a check as plain data: the plan, and what each stand-in alone makes of it, where that was asked."""
    found = plan_data(plan)
    return {**found, "stand-ins": plain(tuple(serving))} if serving else found


def following_data(following: Following) -> dict[str, Any]:
    """Return one stage of what follows as plain data."""
    return {
        "stage": following.stage,
        "verdict before": str(following.before.verdict),
        "verdict after": str(following.after.verdict),
        "proven": bool(following.after.choice and following.after.choice.proven),
        "waiting": list(following.waiting),
        "consequences": [_consequence_data(c) for c in following.consequences],
        "further": [_consequence_data(c) for c in following.further],
    }


def _consequence_data(consequence: Consequence) -> dict[str, Any]:
    shown: dict[str, Any] = plain(consequence)
    return {**shown, "topic": consequence.topic.name.lower()}


def why_data(option: WhyOption) -> dict[str, Any]:
    """Return one answer of why as plain data."""
    return {
        "question": str(option.key),
        "answer": option.answer,
        "outcome": option.outcome,
        "extra minor": option.extra_minor,
        "forbidden by": plain(option.conflict.concerns) if option.conflict else [],
    }


def ranges_data(found: Sequence[Local]) -> list[dict[str, Any]]:
    """Return what local parts must be like as plain data; an end that was not found is null."""
    shown: list[dict[str, Any]] = _endless(plain(tuple(found)))
    return shown


def rule_ranges_data(found: Sequence[FigureRange]) -> list[dict[str, Any]]:
    """Return the ranges of the rules' figures as plain data; an end that was not found is null."""
    shown: list[dict[str, Any]] = _endless(plain(tuple(found)))
    return shown


def explanations_data(found: Sequence[Explanation]) -> list[dict[str, Any]]:
    """Return explanations as plain data, each with its paragraph; an end that was not found is null."""
    return [{**_endless(plain(one)), "paragraph": one.paragraph} for one in found]


def _endless(data: Any) -> Any:
    if isinstance(data, dict):
        return {key: _endless(value) for key, value in data.items()}
    if isinstance(data, list):
        return [_endless(value) for value in data]
    return None if data in ("inf", "-inf") else data


def frames_data(found: FrameTable) -> dict[str, Any]:
    """Return a comparison of frames as plain data."""
    shown: dict[str, Any] = plain(found)
    return shown


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
