"""The problem that the solver takes: questions and answers, trees, offers and money rules, as pure data.

Amounts are for all copies together: whole pieces, grams, boards; lengths in whole µm; money in minor units of the
vendor's currency. Nothing here knows what a part is for.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from types import MappingProxyType
from typing import Literal, NamedTuple

from scantling.choosing.result import Concern, Unit
from scantling.choosing.tables import SumName, SumTerms, Table
from scantling.choosing.trees import Tree
from scantling.model.build import Key


class Resource(NamedTuple):
    """What is needed and supplied: pieces or grams of a part, or pieces of it of one length."""

    part: str
    unit: Unit
    length_um: int = 0


@dataclass(frozen=True)
class Demand:
    """What one place or joint takes: leaves are tuples of (resource, amount), each resource once."""

    name: str
    tree: Tree


@dataclass(frozen=True)
class BoardDemand:
    """How many boards of one size a sheet material takes; a leaf is None where a panel does not fit on it."""

    part: str
    board_um: tuple[int, int]
    tree: Tree


class Level(NamedTuple):
    """A price that holds for all packs from a number of packs on."""

    packs: int
    price_minor: int


@dataclass(frozen=True)
class PackOffer:
    """A vendor's pack.

    pack : pieces, bars, boards or grams in it    levels : by packs, the first from 1 pack on
    grams : of a pack as posted    kind : of goods, at the customs    stock : packs to be had, None where unlimited
    """

    id: str
    vendor: str
    part: str
    unit: Unit
    pack: int
    levels: tuple[Level, ...]
    bar_um: int = 0
    board_um: tuple[int, int] = (0, 0)
    grams: int = 0
    kind: str = ""
    lead_days: int = 0
    stock: int | None = None

    def price_minor(self, packs: int) -> int:
        """Return the price of a pack where ``packs`` are bought."""
        return next(level.price_minor for level in reversed(self.levels) if level.packs <= packs)

    def least_need(self, packs: int) -> int:
        """Return the fewest packs that must be needed for ``packs`` not to be a mere wish.

        Packs above need are for a level where the line just reaches it, and where the packs needed would have cost
        as much at their own level; then the fewest such packs, else ``packs`` itself.
        """
        if packs not in (level.packs for level in self.levels[1:]):
            return packs
        whole = packs * self.price_minor(packs)
        return next(need for need in range(1, packs + 1) if need * self.price_minor(need) >= whole)


@dataclass(frozen=True)
class CustomsTerms:
    """What is due at the border on a parcel whose goods are above a value (always, where None)."""

    above_minor: int | None = None
    duty: Fraction = Fraction(0)
    per_kind_minor: int = 0
    handling_minor: int = 0


@dataclass(frozen=True)
class Terms:
    """A vendor's terms, in its currency.

    rate : home minor units per minor unit of ``currency``    with_tax : the prices hold the tax
    fee_minor, fee_share : of the payment
    """

    id: str
    currency: str
    rate: Fraction = Fraction(1)
    with_tax: bool = True
    tax: Fraction = Fraction(0)
    rounded: Literal["pack", "line", "order"] = "order"
    shipping_minor: int = 0
    per_kg_minor: int = 0
    free_above_minor: int | None = None
    minimum_minor: int | None = None
    fee_minor: int = 0
    fee_share: Fraction = Fraction(0)
    customs: CustomsTerms | None = None


@dataclass(frozen=True)
class Spare:
    """Extra on purpose: a share of the need rounded up, or a least number where any is needed."""

    extra: Fraction = Fraction(0)
    at_least: int = 0

    def of(self, need: int) -> int:
        """Return the extra for a need."""
        return max(-(-need * self.extra.numerator // self.extra.denominator), self.at_least) if need else 0


@dataclass(frozen=True)
class InHand:
    """Something in the drawer: pieces or grams of a part, or bars of a length."""

    part: str
    unit: Unit
    quantity: int
    bar_um: int = 0


@dataclass(frozen=True)
class Sawing:
    """What cutting costs, of a part: the width the saw removes, and what is left on each end for facing."""

    kerf_um: int = 0
    facing_um: int = 0


@dataclass(frozen=True)
class Forbidden:
    """Answers that must not come together, learnt from a costly check: one of each set at once is not allowed."""

    concern: Concern
    answers: tuple[tuple[Key, frozenset[str]], ...]


@dataclass(frozen=True)
class Problem:
    """One choice to make.

    domains : the answers to every question    pins : answers asked for
    days : until everything must have arrived, None where it does not matter
    """

    domains: Mapping[Key, tuple[str, ...]]
    tables: tuple[Table, ...] = ()
    sums: Mapping[SumName, SumTerms] = field(default_factory=lambda: MappingProxyType({}))
    demands: tuple[Demand, ...] = ()
    boards: tuple[BoardDemand, ...] = ()
    offers: tuple[PackOffer, ...] = ()
    vendors: Mapping[str, Terms] = field(default_factory=lambda: MappingProxyType({}))
    stock: tuple[InHand, ...] = ()
    spares: Mapping[str, Spare] = field(default_factory=lambda: MappingProxyType({}))
    sawing: Mapping[str, Sawing] = field(default_factory=lambda: MappingProxyType({}))
    currency: str = "EUR"
    copies: int = 1
    days: int | None = None
    budget_minor: int | None = None
    most_orders: int | None = None
    top_up: bool = False
    pins: Mapping[Key, str] = field(default_factory=lambda: MappingProxyType({}))
    forbidden: tuple[Forbidden, ...] = ()


def fixed_to(problem: Problem, answers: Mapping[Key, str]) -> Problem:
    """Return the problem of buying one build: no check has a say, and no answer is open."""
    return replace(problem, domains={k: (a,) for k, a in answers.items()}, tables=(), sums={}, forbidden=(), pins={})


def in_order(problem: Problem) -> Problem:
    """Return the same problem with everything sorted by identifier, so that no order of rows decides between ties."""
    return replace(
        problem,
        domains={key: tuple(sorted(problem.domains[key])) for key in sorted(problem.domains)},
        tables=tuple(sorted(problem.tables, key=lambda table: (table.concern, table.sum or ("", "")))),
        sums=dict(sorted(problem.sums.items())),
        demands=tuple(sorted(problem.demands, key=lambda demand: demand.name)),
        boards=tuple(sorted(problem.boards, key=lambda demand: (demand.part, demand.board_um))),
        offers=tuple(sorted(problem.offers, key=lambda offer: offer.id)),
        vendors=dict(sorted(problem.vendors.items())),
        stock=tuple(sorted(problem.stock, key=lambda item: (item.part, item.unit, item.bar_um, item.quantity))),
        spares=dict(sorted(problem.spares.items())),
    )
