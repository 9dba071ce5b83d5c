"""Among equally cheap choices one: fewest changes from the present one, fewest lines, then weights by identifier."""

from __future__ import annotations

import zlib
from collections.abc import Mapping
from dataclasses import dataclass, field

from scantling.choosing.linear import Expr, Linear, solve
from scantling.choosing.model import Model
from scantling.choosing.model_packs import PackColumns
from scantling.model.build import Key

HEAVIEST = 997  # a weight; small enough that a sum of them keeps its last digit
SHARE = 0.4  # of a minor unit, for all changed answers together: less than what proves the cost


@dataclass(frozen=True)
class Present:
    """The choice in force: its answers, and its packs by offer."""

    answers: Mapping[Key, str] = field(default_factory=dict)
    packs: Mapping[str, int] = field(default_factory=dict)


def weight(name: str) -> int:
    """Return the weight of an identifier, 1 to ``HEAVIEST``."""
    return 1 + zlib.crc32(name.encode()) % HEAVIEST


def preferring(model: Model, present: Present | None) -> Expr:
    """Return the cost with less than half a minor unit on top, in proportion to the answers that change.

    Minimised to within a half it still proves the cost, and of equally cheap builds the one nearest the present wins.
    """
    cost = Expr().plus(model.cost)
    answers = sorted(present.answers.items()) if present else []
    kept = [(key, answer) for key, answer in answers if key in model.answers.domains]
    for key, answer in kept:
        cost.plus(Expr(1).plus(model.answers.take(key, answer), -1), SHARE / (len(kept) + 1))
    return cost


def settle(model: Model, cost: float, present: Present | None) -> list[float] | None:
    """Return the values of one basket of ``cost`` in a model with no open answers: fewest changes, lines, then weights.

    None where this model has no basket so cheap.
    """
    linear = model.linear.copy()
    linear.at_most(model.cost, cost + 0.25)
    lines = _lines(model, linear)
    changes = _changes(model, linear, present) if present else Expr()
    few = Expr().plus(changes, len(lines.terms) + 1).plus(lines)
    first = solve(linear, few)
    if first is None:
        return None
    linear.at_most(few, first.objective + 0.25)
    second = solve(linear, _weights(model), first.values)
    return (second or first).values[: len(model.linear.lower)]


def _lines(model: Model, linear: Linear) -> Expr:
    """Return the number of lines bought."""
    total = Expr()
    for name in sorted(model.supplies.packs):
        columns = model.supplies.packs[name]
        if columns.used is not None:
            total.plus(columns.used)
        elif columns.packs.terms:
            bought = linear.binary()
            linear.at_most(Expr().plus(columns.packs).add(bought, -columns.most), 0)
            total.add(bought)
    return total


def _changes(model: Model, linear: Linear, present: Present) -> Expr:
    """Return how many lines differ from the present ones."""
    total = Expr()
    for name in sorted(model.supplies.packs):
        columns = model.supplies.packs[name]
        if columns.packs.terms:
            changed = linear.binary()
            total.add(changed)
            _differ(linear, columns, changed, present.packs.get(name, 0))
    return total


def _differ(linear: Linear, columns: PackColumns, changed: int, now: int) -> None:
    """Let ``changed`` be 1 where the packs are not as ``now``."""
    slack = max(columns.most, now)
    linear.at_most(Expr().plus(columns.packs).add(changed, -slack), now)
    linear.at_least(Expr().plus(columns.packs).add(changed, slack), now)


def _weights(model: Model) -> Expr:
    """Return the sum of the weights of all that is chosen, bought and cut."""
    total = Expr()
    for (key, answer), column in model.answers.columns.items():
        total.add(column, weight(f"{key}={answer}"))
    for name, columns in sorted(model.supplies.packs.items()):
        total.plus(columns.packs, weight(name))
    for bars in model.supplies.bars:
        for pattern, column in bars.by_pattern.items():
            total.add(column, weight(f"{bars.part} {bars.bar.length_um} {pattern}"))
        for arc, column in bars.by_arc.items():
            total.add(column, weight(f"{bars.part} {bars.bar.length_um} {arc.start} {arc.length_um}"))
    for (part, size), share in sorted(model.supplies.sizes.items()):
        total.plus(share, weight(f"{part} {size}"))
    return total
