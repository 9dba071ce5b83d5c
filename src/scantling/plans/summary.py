"""A plan on one screen: verdict, money, orders, what is chosen instead of the reference, worst findings, dates."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from scantling.findings import Finding, Verdict
from scantling.model.build import Key
from scantling.plans.concerns import infeasible_lines
from scantling.plans.instead import Instead, chosen_instead
from scantling.plans.plan import Plan
from scantling.plans.steps import step_plans, total_minutes
from scantling.quantities import show_money, show_number

CALCULATION = '"Sound" is a calculation on what was described, not a safety approval.'
MOST_FINDINGS = 8
_FEW = 3


@dataclass(frozen=True)
class OrderBrief:
    """One order in a line: how many lines, what it costs, when it is there."""

    vendor: str
    lines: int
    total: str
    arrives: str


@dataclass(frozen=True)
class Summary:
    """The plan in rows of text.

    counts : findings by verdict, the worst first    proof : how sure the cost is    miss : why nothing is sound
    worst : findings that are not sound, at most ``MOST_FINDINGS``; more : how many are left out
    not_looked_at : titles of checks that could not look    making : what is drilled, cut, printed, put together
    """

    title: str
    verdict: Verdict
    counts: tuple[tuple[str, int], ...]
    proof: str
    miss: tuple[str, ...]
    money: tuple[tuple[str, str], ...]
    orders: tuple[OrderBrief, ...]
    dates: tuple[tuple[str, str], ...]
    instead: tuple[Instead, ...]
    worst: tuple[Finding, ...]
    more: int
    not_looked_at: tuple[str, ...]
    unlocking: tuple[str, ...]
    making: tuple[tuple[str, str], ...]


def summarise(plan: Plan, pins: Mapping[Key, str] | None = None) -> Summary:
    """Return the summary of a plan; ``pins`` are the answers that were asked for."""
    project, currency = plan.case.project, plan.case.project.workshop.currency
    bad = [finding for finding in plan.findings if finding.verdict is not Verdict.SOUND]
    return Summary(
        plan_title(plan),
        plan.verdict,
        verdict_counts(plan.findings),
        proof_words(plan),
        tuple(infeasible_lines(plan.infeasible, currency)) if plan.infeasible else (),
        money_rows(plan),
        tuple(_brief(plan)),
        _dates(plan),
        chosen_instead(plan, pins),
        tuple(bad[:MOST_FINDINGS]),
        max(0, len(bad) - MOST_FINDINGS),
        tuple(dict.fromkeys(absent.title for absent in plan.not_looked_at)),
        plan.unlocking,
        _making(plan, project.workshop.paper.size),
    )


def plan_title(plan: Plan) -> str:
    """Return machine, revision, workshop and copies in a line."""
    machine, workshop = plan.case.project.design.machine, plan.case.project.workshop
    copies = "one copy" if plan.build.copies == 1 else f"{plan.build.copies} copies"
    return f"{machine.name}, revision {machine.revision}, {workshop.name}, {copies}"


def verdict_counts(findings: Sequence[Finding]) -> tuple[tuple[str, int], ...]:
    """Return how many findings there are of each verdict, the worst first; none that is zero."""
    counts = {verdict: sum(finding.verdict is verdict for finding in findings) for verdict in Verdict}
    return tuple((str(verdict), count) for verdict, count in counts.items() if count)


def proof_words(plan: Plan) -> str:
    """Return how sure it is that no sound set of parts costs less."""
    choice, currency = plan.choice, plan.case.project.workshop.currency
    if choice is None:
        return ""
    if choice.proven:
        return "proven: no sound choice costs less"
    gap = max(0, choice.cost_minor - choice.bound_minor)
    failing = f"; still failing: {', '.join(' '.join(one) for one in choice.failing)}" if choice.failing else ""
    return f"not proven: a sound choice may cost up to {show_money(gap, currency)} less{failing}"


def money_rows(plan: Plan) -> tuple[tuple[str, str], ...]:
    """Return the four totals in words, never mixed; nothing where there is nothing to buy."""
    totals = plan.totals
    if totals is None:
        return ()
    copies = "one copy" if totals.copies == 1 else f"{totals.copies} copies"
    named = [
        (f"outlay for {copies}", totals.outlay),
        ("value used in one machine", totals.used),
        ("left in the drawer", totals.left),
        ("cost to the next builder, one copy", totals.next_builder),
    ]
    return tuple((words, show_money(minor, totals.currency)) for words, minor in named if minor is not None)


def days_words(days: int) -> str:
    """Return ``1 day``, ``6 days``."""
    return "1 day" if days == 1 else f"{days} days"


def last_words(plan: Plan) -> str:
    """Return what decides the date: the parts by name, or the vendors where they are many."""
    if plan.dates is None:
        return ""
    deciding = plan.dates.deciding
    if len(deciding) <= _FEW:
        return ", ".join(deciding)
    vendors = [s.title for s in plan.orders if any(row.lead_days == plan.dates.lead_days for row in s.rows)]
    return f"{len(deciding)} parts from {', '.join(vendors)}"


def _brief(plan: Plan) -> list[OrderBrief]:
    home = plan.case.project.workshop.currency
    briefs = []
    for sheet in plan.orders:
        total = dict(sheet.sums)["total"]
        if sheet.currency != home:
            total = f"{total} = {show_money(sheet.home_minor, home)}"
        day = f" ({sheet.arrives.isoformat()})" if sheet.arrives else ""
        briefs.append(OrderBrief(sheet.title, len(sheet.rows), total, f"{days_words(sheet.lead_days)}{day}"))
    return briefs


def _dates(plan: Plan) -> tuple[tuple[str, str], ...]:
    if plan.dates is None:
        return ()
    dates, order_on = plan.dates, plan.case.project.workshop.order_on
    ready = f"{days_words(dates.lead_days)} after ordering" + (f", {dates.ready.isoformat()}" if dates.ready else "")
    rows = [
        ("order on", order_on.isoformat() if order_on else ""),
        ("all parts in hand", ready),
        ("needed by", dates.need_by.isoformat() if dates.need_by else ""),
        ("last to come", last_words(plan)),
    ]
    return tuple((words, value) for words, value in rows if value)


def _making(plan: Plan, paper: str) -> tuple[tuple[str, str], ...]:
    steps = step_plans(plan)
    minutes = total_minutes(steps)
    hours = f", about {show_number(minutes / 60, 1)} hours of work" if minutes else ""
    holes = sum(line.for_all for line in plan.drills if line.stage == "size")
    pieces = sum(len(bar.pieces) * bar.times for bar in plan.bars)
    prints = sum(line.for_all for line in plan.prints)
    drawn = sum(1 for _, digest in plan.drawings if digest)
    stock = "bars, belts and rolls of wire" if plan.loom else "bars and belts"
    rows = [
        ("templates", f"{drawn} panel{'s' if drawn > 1 else ''}, for {paper}" if drawn else ""),
        ("holes to drill", f"{holes} for all copies" if holes else ""),
        ("pieces to cut", f"{pieces} out of {sum(bar.times for bar in plan.bars)} {stock}" if pieces else ""),
        ("pieces to print", f"{prints} for all copies" if prints else ""),
        ("steps", f"{len(steps)}{hours} for one machine" if steps else ""),
    ]
    return tuple((words, value) for words, value in rows if value)
