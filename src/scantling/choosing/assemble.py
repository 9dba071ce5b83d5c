"""From a case and its checks to the problem that the solver takes."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial

from scantling.build.boards import boards_needed
from scantling.build.case import Case
from scantling.build.demand import Need, joint_needs, place_needs
from scantling.build.missing import MissingFigureError, NotDescribedError
from scantling.build.reader import Reader
from scantling.build.totals import TOTALS, term_units, total_needs
from scantling.checks.check import Check, TotalUse
from scantling.choosing.clauses import clauses
from scantling.choosing.problem import BoardDemand, Demand, PackOffer, Problem, Resource
from scantling.choosing.shop import in_hand, pack_offers, sawing_of, spares_of, vendor_terms
from scantling.choosing.tables import (
    MOST_PATHS,
    SumName,
    SumTerms,
    Table,
    check_table,
    concern_of,
    sum_table,
    term_tables,
)
from scantling.choosing.trees import Leaf, TooLargeError, grow, values
from scantling.quantities import parse_money

Progress = Callable[[int, int, str], None]
LazyCheck = tuple[Check, str]


@dataclass(frozen=True)
class Assembled:
    """A problem, and the checks that are run on its answers because tables of them would be too dear."""

    problem: Problem
    lazy: tuple[LazyCheck, ...]


def assemble(case: Case, checks: Sequence[Check], copies: int, progress: Progress | None = None) -> Assembled:
    """Return the problem of choosing and buying ``copies`` machines; pins are added later."""
    grown = _Tables(case, checks, progress)
    demands, boards = _demands(case, copies)
    parts = frozenset(r.part for d in demands for v in values(d.tree) for r, _ in v) | {b.part for b in boards}
    offers = pack_offers(case, parts)
    workshop = case.project.workshop
    problem = Problem(
        domains={key: case.answers(key, {}) for key in case.questions},
        tables=(*grown.tables, *clauses(case)),
        sums=grown.sums,
        demands=demands,
        boards=_boards(case, offers, boards, copies),
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
    return Assembled(problem, tuple(grown.lazy))


class _Tables:
    """The tables of all checks; costly ones, and those too large to tabulate, are left to be run on answers."""

    def __init__(self, case: Case, checks: Sequence[Check], progress: Progress | None) -> None:
        self.case = case
        self.accepted = frozenset((a.code, a.subject) for a in case.project.design.accepted)
        self.tables: list[Table] = []
        self.sums: dict[SumName, SumTerms] = {}
        self.lazy: list[LazyCheck] = []
        asked = [(check, subject) for check in checks for subject in check.subjects(case.project.design)]
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
        use = check.total
        if use is None:
            return check_table(check, subject, self.case, self.accepted)
        terms = self._terms(check, use, subject)
        if terms is None:
            return None
        return sum_table(check, use, subject, self.case, self.accepted, terms)

    def _terms(self, check: Check, use: TotalUse, subject: str) -> SumTerms | None:
        """Return the terms of a sum, grown once; None where facts are missing that no choice can give."""
        name = (use.name, subject)
        if name not in self.sums:
            if total_needs(self.case, use.name, subject):
                return None
            total = TOTALS[use.name]
            places = total.terms(self.case.project.design, subject)
            grown = tuple(grow(partial(_term, use.name, subject, place), self.case, MOST_PATHS) for place in places)
            self.sums[name], holes = term_tables(concern_of(check, subject), grown, total.scale)
            self.tables.extend(holes)
        return self.sums[name]


def _term(name: str, subject: str, place: str, reader: Reader) -> int | None:
    try:
        return reader.derive(term_units, name, subject, place)
    except (MissingFigureError, NotDescribedError):
        return None


def _demands(case: Case, copies: int) -> tuple[tuple[Demand, ...], frozenset[BoardDemand]]:
    """Return what places and joints take, and the sheet materials that they take (their boards are counted later)."""
    design = case.project.design
    sheets: set[str] = set()

    def wanted(
        needs: Callable[[Reader, str], tuple[Need, ...]], name: str, reader: Reader
    ) -> tuple[tuple[Resource, int], ...]:
        total: dict[Resource, int] = {}
        for need in reader.derive(needs, name):
            if need.unit == "board-piece":
                sheets.add(need.part)
                continue
            resource = Resource(need.part, need.unit, need.length_um or 0)
            total[resource] = total.get(resource, 0) + need.amount * copies
        return tuple(sorted(total.items()))

    places = [Demand(f"place {p}", grow(partial(wanted, place_needs, p), case, MOST_PATHS)) for p in design.places]
    joints = [Demand(f"joint {j}", grow(partial(wanted, joint_needs, j), case, MOST_PATHS)) for j in design.joints]
    return (*places, *joints), frozenset(BoardDemand(part, (0, 0), Leaf(0)) for part in sheets)


def _boards(
    case: Case, offers: Sequence[PackOffer], wanted: frozenset[BoardDemand], copies: int
) -> tuple[BoardDemand, ...]:
    """Return how many boards of each size on offer the sheets of a material take."""
    sizes = sorted({(offer.part, offer.board_um) for offer in offers if offer.unit == "board"})
    unsold = sorted({demand.part for demand in wanted} - {part for part, _ in sizes})
    found = [
        BoardDemand(part, size, grow(partial(_count, part, size, copies), case, MOST_PATHS)) for part, size in sizes
    ]
    found += [
        BoardDemand(part, (1, 1), grow(partial(_count, part, (1, 1), copies), case, MOST_PATHS)) for part in unsold
    ]
    return tuple(found)


def _count(part: str, size: tuple[int, int], copies: int, reader: Reader) -> int | None:
    return reader.derive(boards_needed, part, *size, copies)
