"""Money in the model: what each vendor's parcel costs, exact to the minor unit by whole columns with rounding rows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from scantling.choosing.linear import Expr, Linear
from scantling.choosing.model_packs import PackColumns
from scantling.choosing.problem import CustomsTerms, Terms
from scantling.quantities import share_minor


@dataclass(frozen=True)
class Parcel:
    """What one vendor's parcel costs in home minor units, with the most that it can cost."""

    home: Expr
    most: int


def parcel(linear: Linear, terms: Terms, used: Expr, packs: Sequence[PackColumns]) -> Parcel:
    """Add a vendor's parcel; ``used`` is 1 where anything is bought there."""
    most_goods = sum(column.dearest for column in packs)
    goods = _goods(linear, packs, most_goods)
    basis = terms.free_above_minor is not None or terms.minimum_minor is not None
    tax = _tax(linear, terms, packs, goods, most_goods, both=basis)
    with_tax = Expr().plus(goods).plus(tax)
    if terms.minimum_minor:
        linear.at_least(Expr().plus(with_tax).plus(used, -terms.minimum_minor), 0)
    shipping, most_shipping = _shipping(linear, terms, used, packs, with_tax)
    total = Expr().plus(with_tax).plus(shipping).plus(used, terms.fee_minor)
    most = most_goods + share_minor(most_goods, terms.tax) + sum(column.most for column in packs)
    most += most_shipping + terms.fee_minor
    if terms.fee_share:
        paid = Expr().plus(with_tax).plus(shipping)
        total.plus(_rounded(linear, paid, terms.fee_share, share_minor(most, terms.fee_share) + 1))
        most += share_minor(most, terms.fee_share) + 1
    if terms.customs is not None:
        due, most_due = _customs(linear, terms.customs, used, packs, goods, most_goods)
        total.plus(due)
        most += most_due
    if terms.rate == 1:
        return Parcel(total, most)
    most_home = share_minor(most, terms.rate) + 1
    return Parcel(_rounded(linear, total, terms.rate, most_home), most_home)


def _goods(linear: Linear, packs: Sequence[PackColumns], most_goods: int) -> Expr:
    """Return the price of all goods of a parcel as one column: many rows speak of it, only one spells it out.

    It is whole where the packs are, and need not be said to be: a whole column with a wide range is slow to search.
    """
    column = linear.column(0, most_goods)
    spelt = Expr(0, {column: -1})
    for pack in packs:
        spelt.plus(pack.goods)
    linear.equal(spelt, 0)
    return Expr(0, {column: 1})


def _rounded(linear: Linear, amount: Expr, share: Fraction, most: int, *, both: bool = False) -> Expr:
    """Return a new whole column that is at least ``share`` of a whole amount, rounded half up; ``both``: exactly that.

    With share = a/b, half up is floor((2aN + b) / 2b), and t is at least that where 2b·t >= 2a·N − b + 1.
    """
    column = linear.column(0, most, whole=True)
    a, b = share.numerator, share.denominator
    difference = Expr(0, {column: 2 * b}).plus(amount, -2 * a)
    linear.at_least(difference, 1 - b)
    if both:
        linear.at_most(difference, b)
    return Expr(0, {column: 1})


def _tax(
    linear: Linear, terms: Terms, packs: Sequence[PackColumns], goods: Expr, most_goods: int, *, both: bool
) -> Expr:
    """Return the tax on the goods, rounded per pack, per line or per order."""
    total = Expr()
    if terms.with_tax or not terms.tax:
        return total
    if terms.rounded == "order":
        return _rounded(linear, goods, terms.tax, share_minor(most_goods, terms.tax) + 1, both=both)
    for column in packs:
        if terms.rounded == "pack":
            total.plus(column.pack_tax)
        elif column.line_tax is not None:
            total.plus(column.line_tax)
        elif column.packs.terms:
            most = share_minor(column.dearest, terms.tax) + 1
            total.plus(_rounded(linear, column.goods, terms.tax, most, both=both))
    return total


def _shipping(
    linear: Linear, terms: Terms, used: Expr, packs: Sequence[PackColumns], with_tax: Expr
) -> tuple[Expr, int]:
    """Return the shipping of a parcel, and the most that it can be."""
    grams = Expr()
    for column in packs:
        grams.plus(column.packs, column.offer.grams)
    most_grams = sum(column.most * column.offer.grams for column in packs)
    heavy = share_minor(terms.per_kg_minor * most_grams, Fraction(1, 1000))
    most = terms.shipping_minor + heavy
    if not most:
        return Expr(), 0
    free = Expr()
    if terms.free_above_minor is not None:
        free = Expr(0, {linear.switch(): 1})
        linear.at_most(Expr().plus(free).plus(used, -1), 0)
        linear.at_least(Expr().plus(with_tax).plus(free, -terms.free_above_minor), 0)
    if not heavy:
        return Expr().plus(used, most).plus(free, -most), most
    cost = linear.column(0, most, whole=True)
    exact = Expr(0, {cost: 2000}).plus(grams, -2 * terms.per_kg_minor).plus(used, -2000 * terms.shipping_minor)
    linear.at_least(exact.plus(free, 2000 * most), -999)
    return Expr(0, {cost: 1}), most


def _customs(
    linear: Linear,
    customs: CustomsTerms,
    used: Expr,
    packs: Sequence[PackColumns],
    goods: Expr,
    most_goods: int,
) -> tuple[Expr, int]:
    """Return what is due at the border, and the most that it can be."""
    due = used
    if customs.above_minor is not None:
        if most_goods <= customs.above_minor:
            return Expr(), 0
        due = Expr(0, {linear.switch(): 1})
        slack = most_goods - customs.above_minor
        linear.at_most(Expr().plus(goods).plus(due, -slack), customs.above_minor)
    total = Expr().plus(due, customs.handling_minor)
    most = customs.handling_minor
    if customs.duty:
        most_duty = share_minor(most_goods, customs.duty) + 1
        duty = Expr(0, {linear.column(0, most_duty, whole=True): 1})
        a, b = customs.duty.numerator, customs.duty.denominator
        below = customs.above_minor or 0  # nothing is due up to here
        dutiable = Expr(-below).plus(goods).plus(due, below)
        linear.at_least(Expr().plus(duty, 2 * b).plus(dutiable, -2 * a).plus(due, b - 1), 0)
        total.plus(duty)
        most += most_duty
    if customs.per_kind_minor:
        kinds = sorted({column.offer.kind for column in packs})
        for kind in kinds:
            total.plus(_kind(linear, kind, packs, due), customs.per_kind_minor)
        most += len(kinds) * customs.per_kind_minor
    return total, most


def _kind(linear: Linear, kind: str, packs: Sequence[PackColumns], due: Expr) -> Expr:
    """Return 1 where goods of a kind are bought and something is due on the parcel."""
    both = linear.binary()
    for column in packs:
        if column.offer.kind == kind and column.most:
            some, most = (column.packs, column.most) if column.used is None else (column.used, 1)
            limit = Expr().plus(some).add(both, -most).plus(due, most)  # either the kind counts or nothing is due
            linear.at_most(limit, most)
    return Expr(0, {both: 1})
