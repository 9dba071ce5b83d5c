"""Offers in the model: packs by price level, the limits of each, and the rule against packs above need."""

from __future__ import annotations

from dataclasses import dataclass, field

from scantling.choosing.linear import Expr, Linear
from scantling.choosing.problem import PackOffer, Terms
from scantling.quantities import share_minor

FEW = 1


@dataclass
class PackColumns:
    """The columns of one offer.

    most : packs that could ever be of use    lean : packs above need are judged
    packs : bought in all    goods : their price in the vendor's minor units
    pack_tax, line_tax : the tax on them, rounded by pack and by line; line_tax is None where rows must round it
    used : 1 where any is bought, None where nothing says so
    reached : packs above need that a level just reached allows
    counts : by number of packs, 1 where just so many are bought; None where only whole columns say how many
    """

    offer: PackOffer
    most: int
    lean: bool = False
    packs: Expr = field(default_factory=Expr)
    goods: Expr = field(default_factory=Expr)
    pack_tax: Expr = field(default_factory=Expr)
    line_tax: Expr | None = None
    used: Expr | None = None
    reached: Expr = field(default_factory=Expr)
    counts: dict[int, Expr] | None = None

    @property
    def dearest(self) -> int:
        """Return the most that the line can cost before tax."""
        levels = [level for level in self.offer.levels if level.packs <= self.most]
        return max((self.most * level.price_minor for level in levels), default=0)

    def buy(self, packs: Expr, price_minor: int, terms: Terms) -> None:
        """Add packs at a price."""
        self.packs.plus(packs)
        self.goods.plus(packs, price_minor)
        self.pack_tax.plus(packs, share_minor(price_minor, terms.tax))

    def buy_split(self, chosen: Expr, packs: int, terms: Terms) -> None:
        """Add so many packs where ``chosen`` is 1."""
        self.buy(chosen.times(packs), self.offer.price_minor(packs), terms)
        goods = packs * self.offer.price_minor(packs)
        self.line_tax = (self.line_tax or Expr()).plus(chosen, share_minor(goods, terms.tax))
        self.used = (self.used or Expr()).plus(chosen)
        self.counts = self.counts or {}
        self.counts.setdefault(packs, Expr()).plus(chosen)


def has_thresholds(terms: Terms) -> bool:
    """Return whether buying more can ever make an order cheaper."""
    return terms.free_above_minor is not None or terms.minimum_minor is not None


def useful_packs(offer: PackOffer, terms: Terms, most_units: int, top_up: bool) -> int:
    """Return the most packs that could be of use: for the need alone, to reach a level, or to top an order up."""
    need = -(-most_units // offer.pack)
    most = max(need, max((level.packs for level in offer.levels[1:]), default=0)) if need > 0 else 0
    if top_up and need > 0:
        wish = max(terms.free_above_minor or 0, terms.minimum_minor or 0)
        cheapest = max(1, min(level.price_minor for level in offer.levels))
        most += -(-wish // cheapest)
    return most if offer.stock is None else min(most, offer.stock)


def add_packs(linear: Linear, columns: PackColumns, terms: Terms, vendor: Expr) -> None:
    """Add whole packs of an offer, of which any number may be bought; ``vendor`` is 1 where the vendor is used."""
    levels = [level for level in columns.offer.levels if level.packs <= columns.most]
    if not levels:
        return
    if columns.most == 1:
        _one_pack(linear, columns, terms, vendor)
    elif len(levels) == 1 and not columns.lean:
        packs = Expr(0, {linear.column(0, columns.most, whole=True): 1})
        linear.at_most(Expr().plus(packs).plus(vendor, -columns.most), 0)
        columns.buy(packs, levels[0].price_minor, terms)
    else:
        _level_columns(linear, columns, terms, vendor)


def _one_pack(linear: Linear, columns: PackColumns, terms: Terms, vendor: Expr) -> None:
    """Add a switch for the only pack that could be of use: its tax is then a number, however it is rounded."""
    chosen = Expr(0, {linear.binary(): 1})
    linear.at_most(Expr().plus(chosen).plus(vendor, -1), 0)
    columns.buy_split(chosen, 1, terms)


def _level_columns(linear: Linear, columns: PackColumns, terms: Terms, vendor: Expr) -> None:
    """Add packs and a switch per level: at most one level holds, and the packs lie within it."""
    levels = [level for level in columns.offer.levels if level.packs <= columns.most]
    used = Expr()
    for number, level in enumerate(levels):
        last = levels[number + 1].packs - 1 if number + 1 < len(levels) else columns.most
        switch = Expr(0, {linear.binary(): 1})
        packs = Expr(0, {linear.column(0, last, whole=True): 1})
        linear.at_least(Expr().plus(packs).plus(switch, -level.packs), 0)
        linear.at_most(Expr().plus(packs).plus(switch, -last), 0)
        if columns.lean and number:
            just = linear.binary()  # packs are exactly at the level's start
            linear.at_most(Expr(0, {just: 1}).plus(switch, -1), 0)
            linear.at_most(Expr().plus(packs).plus(switch, -last).add(just, last - level.packs), 0)
            columns.reached.add(just, level.packs - columns.offer.least_need(level.packs))
        used.plus(switch)
        columns.buy(packs, level.price_minor, terms)
    linear.at_most(Expr().plus(used).plus(vendor, -1), 0)
    columns.used = used


def forbid_surplus(linear: Linear, columns: PackColumns, surplus: Expr, most_surplus: int) -> None:
    """Let what is over be less than a pack of this offer, but for packs that reach a level, or where none is bought."""
    if not columns.lean or columns.used is None:
        return
    pack = columns.offer.pack
    slack = most_surplus - (pack - 1)
    if slack > 0:
        limit = Expr().plus(surplus).plus(columns.used, slack).plus(columns.reached, -pack)
        linear.at_most(limit, most_surplus)
