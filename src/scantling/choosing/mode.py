"""How a model treats each concern: held, dropped (as if it had never been asked), or waivable at a price."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from scantling.choosing.linear import Expr, Linear
from scantling.choosing.result import Concern
from scantling.choosing.trees import Tree

WAIVABLE = ("check", "supply", "date", "budget", "orders")


@dataclass(frozen=True)
class Mode:
    """Which concerns are dropped, and whether the rest may be waived.

    waive : the model has a column per waivable concern, 1 where it is not met
    firm : concerns that are not waived all the same
    shortfalls : of checks without a sum, trees of thousandths missing to the limit
    """

    dropped: frozenset[Concern] = frozenset()
    waive: bool = False
    firm: frozenset[Concern] = frozenset()
    shortfalls: Mapping[Concern, Tree] = field(default_factory=lambda: MappingProxyType({}))

    def held(self, concern: Concern) -> bool:
        """Return whether the concern counts at all."""
        return concern not in self.dropped


HOLD = Mode()


class Waivers:
    """The columns of waived concerns, with the shortfall of each and its amount in its own unit."""

    def __init__(self, linear: Linear, mode: Mode) -> None:
        """Start with none."""
        self.linear = linear
        self.mode = mode
        self.columns: dict[Concern, int] = {}
        self.permille: dict[Concern, Expr] = {}
        self.amounts: dict[Concern, Expr] = {}

    def may(self, concern: Concern) -> bool:
        """Return whether the concern may be waived in this model."""
        mode = self.mode
        return mode.waive and concern.kind in WAIVABLE and mode.held(concern) and concern not in mode.firm

    def column(self, concern: Concern) -> int:
        """Return the column that is 1 where the concern is waived."""
        if concern not in self.columns:
            self.columns[concern] = self.linear.binary()
            self.permille[concern] = Expr()
            self.amounts[concern] = Expr()
        return self.columns[concern]

    def short(self, concern: Concern, most: float, scale: float) -> Expr:
        """Return a new amount by which the concern may fall short, up to ``most``; a ``scale`` of it is the whole."""
        waiver = self.column(concern)
        amount = Expr(0, {self.linear.column(0, max(most, 0)): 1})
        self.linear.at_most(Expr().plus(amount).add(waiver, -max(most, 0)), 0)
        self.permille[concern].plus(amount, 1000 / max(scale, 1))
        self.amounts[concern].plus(amount)
        return amount
