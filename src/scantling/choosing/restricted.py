"""A problem cut down to some of its concerns, so small that whether they can all be met is known at once.

What is left out is a true loosening: whatever meets the whole problem meets the cut-down one. Questions that nothing
left speaks of fall out; money falls out unless the budget is held, and then every part must be had.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from functools import partial

from scantling.choosing.concerns import demanded, surely_had
from scantling.choosing.model import BUDGET, ORDERS, pin_concern
from scantling.choosing.problem import Demand, Forbidden, PackOffer, Problem, Resource, Terms
from scantling.choosing.result import Concern
from scantling.choosing.tables import Table
from scantling.choosing.trees import Tree, keys, mapped, values
from scantling.model.build import Key

Held = frozenset[Concern]


class Restricting:
    """Cuts one problem down, again and again; what every cut needs is looked up once."""

    def __init__(self, problem: Problem) -> None:
        """Look up what speaks of which question."""
        self.problem = problem
        self.parts = frozenset(demanded(problem))
        self._asked: dict[int, frozenset[Key]] = {}
        self._anyhow = surely_had(problem, in_time=True)
        self._some_day = surely_had(problem)
        self._by_part = _split(problem.demands)

    def to(self, held: Held, cuts: tuple[Forbidden, ...]) -> Problem:
        """Return the problem of meeting the concerns in ``held`` alone; ``cuts`` are what costly checks forbid."""
        problem = self.problem
        money = BUDGET in held
        parts = self.parts if money else self._hard_to_get(held)
        demands = tuple(demand for part in sorted(parts) for demand in self._by_part.get(part, ()))
        boards = tuple(demand for demand in problem.boards if demand.part in parts)
        pins = {key: answer for key, answer in problem.pins.items() if pin_concern(key, answer) in held}
        cuts = tuple(cut for cut in cuts if cut.concern in held)
        trees = [*(demand.tree for demand in demands), *(demand.tree for demand in boards)]
        asked = frozenset(pins).union(*map(self._keys, trees), *(dict(cut.answers) for cut in cuts))
        tables, asked = self._tables(held, asked)
        offers = tuple(_offer(offer, held) for offer in problem.offers if offer.part in parts)
        return replace(
            problem,
            domains={key: given for key, given in problem.domains.items() if key in asked},
            tables=tables,
            sums={name: terms for name, terms in problem.sums.items() if name in {table.sum for table in tables}},
            demands=demands,
            boards=boards,
            offers=offers,
            vendors=problem.vendors if money else self._vendors(offers),
            stock=tuple(item for item in problem.stock if item.part in parts),
            pins=pins,
            forbidden=cuts,
            budget_minor=problem.budget_minor if money else None,
            most_orders=problem.most_orders if ORDERS in held else None,
        )

    def _hard_to_get(self, held: Held) -> frozenset[str]:
        """Return the parts that must be had and of which that is not certain anyway."""
        certain = frozenset[Concern]() if ORDERS in held else self._anyhow
        parts = frozenset(c.subject for c in held - certain if c.kind == "supply")
        if ORDERS in held:
            return parts
        late = frozenset(c.subject for c in held if c.kind == "date")
        return frozenset(part for part in parts if part in late or Concern("supply", "", part) not in self._some_day)

    def _tables(self, held: Held, asked: frozenset[Key]) -> tuple[tuple[Table, ...], frozenset[Key]]:
        """Return the tables that are held, with those of the design's structure that they hang together with."""
        kept = [table for table in self.problem.tables if not table.fixed and table.concern in held]
        asked = asked.union(*(self._table_keys(table) for table in kept))
        left = [table for table in self.problem.tables if table.fixed]
        touched = kept
        while touched:
            touched = [table for table in left if self._table_keys(table) & asked]
            kept += touched
            left = [table for table in left if not self._table_keys(table) & asked]
            asked = asked.union(*(self._table_keys(table) for table in touched))
        return tuple(kept), asked

    def _table_keys(self, table: Table) -> frozenset[Key]:
        terms = self.problem.sums[table.sum].terms if table.sum is not None else ()
        return self._keys(table.tree).union(*(self._keys(term) for term in terms))

    def _keys(self, tree: Tree) -> frozenset[Key]:
        if id(tree) not in self._asked:
            self._asked[id(tree)] = frozenset(keys(tree))
        return self._asked[id(tree)]

    def _vendors(self, offers: Iterable[PackOffer]) -> dict[str, Terms]:
        """Return the vendors of some offers without their fees.

        A least order stays only where all that the vendor sells must be had: else something else can make it up.
        """
        sold: dict[str, int] = {}
        for offer in offers:
            sold[offer.vendor] = sold.get(offer.vendor, 0) + 1
        whole = {name: sum(offer.vendor == name for offer in self.problem.offers) for name in sold}
        return {name: _bare(self.problem.vendors[name], sold[name] == whole[name]) for name in sorted(sold)}


def _split(demands: Iterable[Demand]) -> dict[str, list[Demand]]:
    """Return the demands by part, each with the amounts of that part alone."""
    found: dict[str, list[Demand]] = {}
    for demand in demands:
        for part in sorted({r.part for value in values(demand.tree) for r, _ in value}):
            found.setdefault(part, []).append(Demand(demand.name, mapped(demand.tree, partial(_of, part))))
    return found


def _of(part: str, value: tuple[tuple[Resource, int], ...]) -> tuple[tuple[Resource, int], ...]:
    return tuple((resource, amount) for resource, amount in value if resource.part == part)


def _offer(offer: PackOffer, held: Held) -> PackOffer:
    return offer if Concern("date", "", offer.part) in held else replace(offer, lead_days=0)


def _bare(terms: Terms, with_least: bool) -> Terms:
    least = terms.minimum_minor if with_least else None
    bare = replace(terms, shipping_minor=0, per_kg_minor=0, free_above_minor=None, minimum_minor=least)
    bare = replace(bare, rate=type(terms.rate)(1), fee_minor=0, fee_share=type(terms.fee_share)(0), customs=None)
    return bare if least else replace(bare, with_tax=True)
