"""Chapters on putting together and setting up."""

from __future__ import annotations

from scantling.book.document import Block, Heading, Items, Note, Paragraph, Table
from scantling.plans.plan import Plan
from scantling.plans.steps import StepPlan, kit_text, step_plans


def settings_chapter(plan: Plan) -> list[Block]:
    """Return the values to enter, with room for a tick."""
    if not plan.settings:
        return []
    rows = tuple(
        (one.title, f"{one.value} {one.unit}".strip(), one.exact, one.because, "________") for one in plan.settings
    )
    head = ("value", "enter", "exactly", "because", "done")
    return [Heading("Setting-up sheet"), Table(head, rows, ("1", "auto", "auto", "2", "auto"))]


def steps_chapter(plan: Plan) -> list[Block]:
    """Return the steps with their kits."""
    steps = step_plans(plan)
    blocks: list[Block] = [Heading("Steps")] if steps else []
    for step in steps:
        blocks += _step(step)
    return blocks


def _step(step: StepPlan) -> list[Block]:
    minutes = f" ({step.minutes} min)" if step.minutes is not None else ""
    blocks: list[Block] = [Heading(f"{step.number}. {step.title}{minutes}", 2)]
    blocks += [Note(step.caution, "caution")] if step.caution else []
    said = [
        ("Lay out", kit_text(step.kit)),
        ("With", ", ".join(step.results)),
        ("Tools", ", ".join(step.tools)),
        ("Leave loose", step.loose),
        ("Tighten", "; ".join(step.tighten)),
        ("Makes", step.makes),
        ("Check", step.check),
    ]
    blocks += [Paragraph(step.text)] if step.text else []
    lines = tuple(f"{word}: {text}" for word, text in said if text)
    return [*blocks, Items(lines)] if lines else blocks
