"""A plan: a build with its findings, orders, cut list, drill schedules, prints, settings and steps."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.build.case import Case
from scantling.build.settings import Setting
from scantling.build.steps import Coverage
from scantling.choosing.result import Choice, Infeasible, Purchase
from scantling.findings import Finding, NotLookedAt, Verdict
from scantling.model.build import Build
from scantling.plans.cutting import BarPlan
from scantling.plans.dates import Dates
from scantling.plans.drilling import DrillLine
from scantling.plans.landed import Totals
from scantling.plans.loom import LoomLine, LoomTotal
from scantling.plans.orders import OrderSheet
from scantling.plans.parts_list import PartsLine
from scantling.plans.printing import PrintLine


@dataclass(frozen=True)
class Plan:
    """Everything that one build means in one workshop.

    choice : with the proof, where the build was chosen    infeasible : where nothing is sound or can be bought
    purchase, totals, dates : None where there is nothing to buy from
    drawings : by sheet, the digest of all that its template is drawn from
    not_looked_at : what the verdict does not cover    unlocking : the facts that would let most be looked at
    """

    case: Case
    build: Build
    findings: tuple[Finding, ...]
    not_looked_at: tuple[NotLookedAt, ...]
    unlocking: tuple[str, ...]
    choice: Choice | None
    infeasible: Infeasible | None
    purchase: Purchase | None
    totals: Totals | None
    dates: Dates | None
    orders: tuple[OrderSheet, ...]
    parts: tuple[PartsLine, ...]
    bars: tuple[BarPlan, ...]
    drills: tuple[DrillLine, ...]
    prints: tuple[PrintLine, ...]
    settings: tuple[Setting, ...]
    loom: tuple[LoomLine, ...]
    loom_totals: tuple[LoomTotal, ...]
    coverage: tuple[Coverage, ...]
    step_order: tuple[str, ...]
    drawings: tuple[tuple[str, str], ...]

    @property
    def verdict(self) -> Verdict:
        """The worst verdict of all findings, or unsound where nothing serves."""
        if self.infeasible is not None:
            return Verdict.UNSOUND
        return min((finding.verdict for finding in self.findings), key=lambda v: v.rank, default=Verdict.UNKNOWN)
