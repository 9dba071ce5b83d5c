"""Among equally cheap choices one: fewest changes from the present one, fewest lines, then weights by identifier."""

from __future__ import annotations

import zlib
from collections.abc import Mapping
from dataclasses import dataclass, field

from scantling.choosing.branching import solve_switched
from scantling.choosing.linear import Expr, Linear, solve
from scantling.choosing.model import Model
from scantling.choosing.model_packs import PackColumns
from scantling.model.build import Key

HEAVIEST = 97  # a weight; small enough that the sum of all leaves the solver its last digits
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

    None where this model has no basket so cheap. How bars are cut is settled once it is known which are bought.
    """
    linear = model.linear.copy()
    linear.at_most(model.cost, cost + 0.25)
    lines = _differing(model, linear, {})
    changed = _differing(model, linear, present.packs) if present else lines
    few, weights = Expr(), Expr()
    for name, change in changed.items():
        few.plus(change, len(lines) + 1 if present else 0).plus(lines[name])
        weights.plus(change, weight(name))
    found = solve_switched(linear, few.times(1 + HEAVIEST * len(changed)).plus(weights))
    if found is None:
        return None
    for columns in model.supplies.packs.values():
        linear.equal(columns.packs, round(columns.packs.value(found.values)))
    cut = solve(linear, _cutting(model))
    return (cut or found).values[: len(model.linear.lower)]


def _differing(model: Model, linear: Linear, now: Mapping[str, int]) -> dict[str, Expr]:
    """Return, by offer, 1 where the packs are not as now, else 0."""
    found = sorted(model.supplies.packs.items())
    return {name: _differs(linear, columns, now.get(name, 0)) for name, columns in found if columns.packs.terms}


def _differs(linear: Linear, columns: PackColumns, now: int) -> Expr:
    if not now and columns.used is not None:
        return columns.used
    if columns.counts is not None:
        return Expr(1).plus(columns.counts.get(now, Expr()), -1)
    changed, slack = linear.binary(), max(columns.most, now)
    linear.at_most(Expr().plus(columns.packs).add(changed, -slack), now)
    linear.at_least(Expr().plus(columns.packs).add(changed, slack), now)
    return Expr(0, {changed: 1})


def _cutting(model: Model) -> Expr:
    """Return the sum of the weights of how bars are cut and of which boards are taken."""
    total = Expr()
    for bars in model.supplies.bars:
        for pattern, column in bars.by_pattern.items():
            total.add(column, weight(f"{bars.part} {bars.bar.length_um} {pattern}"))
        for arc, column in bars.by_arc.items():
            total.add(column, weight(f"{bars.part} {bars.bar.length_um} {arc.start} {arc.length_um}"))
    for (part, size), share in sorted(model.supplies.sizes.items()):
        total.plus(share, weight(f"{part} {size}"))
    return total
