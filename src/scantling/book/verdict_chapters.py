"""Chapters on how far the machine can be trusted: verdict, what is not sound, what was not looked at."""

from __future__ import annotations

from collections.abc import Sequence
from math import inf

from scantling.book.document import Block, Heading, Items, Note, Paragraph, Table
from scantling.findings import Finding, Limit, Verdict
from scantling.model.project import Project
from scantling.plans.concerns import infeasible_lines
from scantling.plans.plan import Plan
from scantling.plans.summary import CALCULATION, verdict_counts
from scantling.quantities import show_number, show_value


def verdict_chapter(plan: Plan) -> list[Block]:
    """Return what the machine is, the verdict, what is not sound and what was not looked at."""
    machine = plan.case.project.design.machine
    counts = ", ".join(f"{count} {verdict}" for verdict, count in verdict_counts(plan.findings))
    blocks: list[Block] = [Paragraph(text) for text in (machine.about, standing(plan.case.project)) if text]
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


def standing(project: Project) -> str:
    """Return under what licence the design stands, where it is built, and what of it is invented."""
    machine, workshop = project.design.machine, project.workshop
    words = (
        f"Licence: {machine.licence}." if machine.licence else "",
        f"Region: {workshop.region}." if workshop.region else "",
        "The machine is an invented example." if machine.invented else "",
        "The workshop, its vendors and their prices are invented." if workshop.invented else "",
    )
    return " ".join(text for text in words if text)


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
    """Return what every check says: how many subjects, the one nearest to its limit, the source of the rule."""
    if not plan.findings:
        return []
    by_code: dict[str, list[Finding]] = {}
    for finding in plan.findings:
        by_code.setdefault(finding.code, []).append(finding)
    rows = tuple(_check_row(by_code[code]) for code in sorted(by_code))
    head = ("check", "what", "verdicts", "nearest to its limit", "source")
    words = "Each check with the subject that is nearest to its limit; findings.json has all of them."
    return [Heading("All checks"), Paragraph(words), Table(head, rows, ("auto", "2", "auto", "2", "4"))]


def _check_row(findings: Sequence[Finding]) -> tuple[str, ...]:
    counts = ", ".join(f"{count} {verdict}" for verdict, count in verdict_counts(findings))
    nearest = min(findings, key=lambda finding: (finding.verdict.rank, _margin(finding)))
    words = " ".join(text for text in (_value(nearest), _limit(nearest)) if text)
    shown = f"{nearest.subject}: {words}" if words else nearest.subject if nearest.verdict is not Verdict.SOUND else ""
    return (nearest.code, nearest.title, counts, shown, nearest.source)


def _margin(finding: Finding) -> float:
    return finding.margin if finding.margin is not None else inf


def _value(finding: Finding) -> str:
    return "" if finding.value is None else show_value(_three(finding.value), finding.unit)


def _limit(finding: Finding) -> str:
    if finding.limit is None or finding.side is Limit.NONE:
        return ""
    high = f" and {show_number(_three(finding.limit_high))}" if finding.limit_high is not None else ""
    return f"({finding.side} {show_number(_three(finding.limit))}{high})"


def _three(value: float) -> float:
    """Three digits that count."""
    return float(f"{value:.3g}")
