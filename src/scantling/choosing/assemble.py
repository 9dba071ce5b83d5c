"""From a case and its checks to the problem that the solver takes."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import partial

from scantling.build.case import Case
from scantling.build.missing import MissingFigureError, NotDescribedError
from scantling.build.reader import Reader
from scantling.build.totals import TOTALS, term_units, total_needs
from scantling.checks.check import Check, TotalUse
from scantling.choosing.amounts import boards, demands, sheet_materials
from scantling.choosing.clauses import clauses
from scantling.choosing.growing import Grower, OfBuild, OverAll
from scantling.choosing.problem import Problem
from scantling.choosing.shop import in_hand, pack_offers, sawing_of, spares_of, vendor_terms
from scantling.choosing.tables import SumName, SumTerms, Table, check_table, concern_of, sum_table, term_tables
from scantling.choosing.trees import Leaf, TooLargeError, Tree, values
from scantling.model.build import Build
from scantling.quantities import parse_money

Progress = Callable[[int, int, str], None]
LazyCheck = tuple[Check, str]


@dataclass(frozen=True)
class Assembled:
    """A problem, and the checks that are run on its answers because tables of them would be too dear."""

    problem: Problem
    lazy: tuple[LazyCheck, ...]


def assemble(grower: OverAll, checks: Sequence[Check], copies: int, progress: Progress | None = None) -> Assembled:
    """Return the problem of choosing and buying ``copies`` machines; pins are added later."""
    case = grower.case
    grown = _Tables(grower, checks, progress)
    tables = (*grown.tables, *clauses(case))
    domains = {key: case.answers(key, {}) for key in case.questions}
    problem = replace(_bought(grower, copies), domains=domains, tables=tables, sums=grown.sums)
    return Assembled(problem, tuple(grown.lazy))


def assemble_build(case: Case, build: Build) -> Problem:
    """Return the problem of buying one build: no check has a say, and no answer is open."""
    domains = {key: (answer,) for key, answer in build.answers}
    return replace(_bought(OfBuild(case, build), build.copies), domains=domains)


def _bought(grower: Grower, copies: int) -> Problem:
    """Return the problem of buying what ``copies`` machines take."""
    case = grower.case
    needs = demands(grower, copies)
    parts = frozenset(r.part for d in needs for v in values(d.tree) for r, _ in v).union(sheet_materials(case))
    offers = pack_offers(case, parts)
    workshop = case.project.workshop
    return Problem(
        domains={},
        demands=needs,
        boards=boards(grower, offers, copies),
        offers=offers,
        vendors=vendor_terms(workshop),
        stock=in_hand(workshop, parts),
        spares=spares_of(case, parts),
        sawing=sawing_of(case, parts),
        currency=workshop.currency,
        copies=copies,
        days=(workshop.need_by - workshop.order_on).days if workshop.need_by and workshop.order_on else None,
        budget_minor=parse_money(workshop.budget, workshop.currency).minor if workshop.budget else None,
        most_orders=workshop.most_orders,
        top_up=workshop.top_up,
    )


class _Tables:
    """The tables of all checks; costly ones, and those too large to tabulate, are left to be run on answers."""

    def __init__(self, grower: OverAll, checks: Sequence[Check], progress: Progress | None) -> None:
        self.grower = grower
        self.case = case = grower.case
        self.accepted = frozenset((a.code, a.subject) for a in case.project.design.accepted)
        self.tables: list[Table] = []
        self.sums: dict[SumName, SumTerms] = {}
        self.lazy: list[LazyCheck] = []
        judging = [check for check in checks if not check.informs]
        asked = [(check, subject) for check in judging for subject in check.subjects(case.project.design)]
        for number, (check, subject) in enumerate(asked):
            if progress:
                progress(number, len(asked), f"tables: {check.title}")
            self._grow(check, subject)

    def _grow(self, check: Check, subject: str) -> None:
        if check.costly:
            self.lazy.append((check, subject))
            return
        try:
            table = self._table(check, subject)
        except TooLargeError:
            self.lazy.append((check, subject))
            return
        if table is not None and not (isinstance(table.tree, Leaf) and table.tree.value is True):
            self.tables.append(table)

    def _table(self, check: Check, subject: str) -> Table | None:
        use, name, case = check.total, f"{check.code} {subject}", self.case
        if use is None:
            tree = self.grower.made(name, lambda: check_table(check, subject, case, self.accepted).tree)
            return Table(concern_of(check, subject), tree)
        terms = self._terms(check, use, subject)
        if terms is None:
            return None
        tree = self.grower.made(name, lambda: sum_table(check, use, subject, case, self.accepted, terms).tree)
        return Table(concern_of(check, subject), tree, (use.name, subject), use.worse)

    def _terms(self, check: Check, use: TotalUse, subject: str) -> SumTerms | None:
        """Return the terms of a sum, grown once; None where facts are missing that no choice can give."""
        name = (use.name, subject)
        if name not in self.sums:
            if total_needs(self.case, use.name, subject):
                return None
            total = TOTALS[use.name]
            places = total.terms(self.case.project.design, subject)
            grown = tuple(self._term_tree(use.name, subject, place) for place in places)
            self.sums[name], holes = term_tables(concern_of(check, subject), grown, total.scale)
            self.tables.extend(holes)
        return self.sums[name]

    def _term_tree(self, total: str, subject: str, place: str) -> Tree:
        return self.grower.tree(f"{total} {subject} {place}", partial(_term, total, subject, place))


def _term(name: str, subject: str, place: str, reader: Reader) -> int | None:
    try:
        return reader.derive(term_units, name, subject, place)
    except (MissingFigureError, NotDescribedError):
        return None
