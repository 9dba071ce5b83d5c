"""The four totals of a purchase, never mixed: outlay, value used in one machine, left in the drawer, next builder."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from scantling.choosing.result import Order, OrderLine, Purchase, Supply
from scantling.quantities import round_half_up, split_largest_remainder


@dataclass(frozen=True)
class Totals:
    """Money in minor units of the workshop's currency.

    outlay : what leaves the purse for all copies    used : value of what one machine takes, with its share of shipping
    left : outlay less used × copies, spares and leftovers    next_builder : one copy bought anew with an empty drawer,
    with the same parts; None where it was not asked for or cannot be bought
    """

    currency: str
    copies: int
    outlay: int
    used: int
    left: int
    next_builder: int | None


def four_totals(purchase: Purchase, copies: int, next_builder: int | None) -> Totals:
    """Return the four totals; what was in hand counts nothing."""
    lines = [pair for order in purchase.orders for pair in landed_lines(order)]
    used_by_all = sum((used_value(supply, lines) for supply in purchase.supplies), Fraction(0))
    used = round_half_up(used_by_all / copies)
    outlay = purchase.cost_minor
    return Totals(purchase.currency, copies, outlay, used, outlay - used * copies, next_builder)


def landed_lines(order: Order) -> tuple[tuple[OrderLine, int], ...]:
    """Return each line with its landed cost in home minor units: shipping, fees and customs shared by goods value."""
    weights = [max(line.goods_minor + line.tax_minor, 0) for line in order.lines]
    if not any(weights):
        weights = [1] * len(order.lines)
    return tuple(zip(order.lines, split_largest_remainder(order.home_minor, weights), strict=True))


def used_value(supply: Supply, lines: Iterable[tuple[OrderLine, int]]) -> Fraction:
    """Return the landed value of what all machines take of one resource, in home minor units.

    lines : all lines of all orders with their landed cost
    """
    serving = [(line, landed) for line, landed in lines if _serves(line, supply)]
    bought = sum(_size(line) for line, _ in serving)
    if not bought:
        return Fraction(0)
    taken = max(supply.need - supply.in_hand, 0)
    amount = taken * supply.length_um if supply.unit == "length" else taken
    return Fraction(sum(landed for _, landed in serving) * amount, bought)


def _serves(line: OrderLine, supply: Supply) -> bool:
    return line.part == supply.part and line.unit == supply.unit


def _size(line: OrderLine) -> int:
    """Return what a line brings: µm of bars, else pieces, grams or boards."""
    return line.packs * line.pack * (line.bar_um if line.unit == "length" else 1)
