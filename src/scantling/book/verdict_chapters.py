"""Chapters on how far the machine can be trusted: verdict, what is not sound, what was not looked at."""

from __future__ import annotations

from collections.abc import Sequence

from scantling.book.document import Align, Block, Heading, Items, Note, Paragraph, Table
from scantling.findings import Finding, Limit, Verdict
from scantling.plans.concerns import infeasible_lines
from scantling.plans.plan import Plan
from scantling.plans.summary import CALCULATION, verdict_counts
from scantling.quantities import show_number, show_value


def verdict_chapter(plan: Plan) -> list[Block]:
    """Return what the machine is, the verdict, what is not sound and what was not looked at."""
    machine = plan.case.project.design.machine
    counts = ", ".join(f"{count} {verdict}" for verdict, count in verdict_counts(plan.findings))
    blocks: list[Block] = [Paragraph(machine.about)] if machine.about else []
    blocks.append(Paragraph(f"Verdict: {plan.verdict}" + (f" ({counts})." if counts else "."), strong=True))
    blocks.append(Note(CALCULATION + " Where work can hurt someone, local rules and licensed practice come first."))
    if plan.infeasible is not None:
        lines = infeasible_lines(plan.infeasible, plan.case.project.workshop.currency)
        blocks += [Heading("Nothing sound can be had", 2), *_lines(lines)]
    bad = [finding for finding in plan.findings if finding.verdict is not Verdict.SOUND]
    if bad:
        rows = tuple((f.code, f.subject, str(f.verdict), _why(f)) for f in bad)
        blocks += [
            Heading("What is not sound", 2),
            Table(("code", "subject", "verdict", "why"), rows, ("auto", "auto", "auto", "1")),
        ]
    return blocks + _scope(plan)


def _lines(lines: Sequence[str]) -> list[Block]:
    """Sentences, and runs of lines that begin with a dash as lists."""
    blocks: list[Block] = []
    for line in lines:
        if not line.startswith("- "):
            blocks.append(Paragraph(line))
        elif isinstance(blocks[-1], Items):
            blocks[-1] = Items((*blocks[-1].texts, line[2:]))
        else:
            blocks.append(Items((line[2:],)))
    return blocks


def _why(finding: Finding) -> str:
    return f"{finding.because} Mend: {finding.mend}." if finding.mend else finding.because


def _scope(plan: Plan) -> list[Block]:
    if not plan.not_looked_at:
        return []
    titles = dict.fromkeys(absent.title for absent in plan.not_looked_at)
    blocks: list[Block] = [Heading("Not looked at", 2), Paragraph("; ".join(titles) + ".")]
    if plan.unlocking:
        blocks.append(Paragraph(f"These facts would unlock most: {', '.join(plan.unlocking)}."))
    return blocks


def findings_chapter(plan: Plan) -> list[Block]:
    """Return every finding with its value and limit."""
    if not plan.findings:
        return []
    rows = tuple((f.code, f.subject, str(f.verdict), _value(f), _limit(f), f.source) for f in plan.findings)
    head = ("code", "subject", "verdict", "value", "limit", "source")
    aligns: tuple[Align, ...] = ("left", "left", "left", "right", "right", "left")
    return [Heading("All findings"), Table(head, rows, ("auto", "1", "auto", "auto", "auto", "2"), aligns)]


def _value(finding: Finding) -> str:
    return "" if finding.value is None else show_value(_three(finding.value), finding.unit)


def _limit(finding: Finding) -> str:
    if finding.limit is None or finding.side is Limit.NONE:
        return ""
    high = f" and {show_number(_three(finding.limit_high))}" if finding.limit_high is not None else ""
    return f"{finding.side} {show_number(_three(finding.limit))}{high}"


def _three(value: float) -> float:
    """Three digits that count."""
    return float(f"{value:.3g}")
