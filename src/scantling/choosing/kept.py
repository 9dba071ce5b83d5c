"""Buy what is needed otherwise than by the orders in force, and leave all other lines as they are."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from scantling.choosing.needs import bare_supplies
from scantling.choosing.problem import Problem, Terms
from scantling.choosing.purchase import Decisions, purchase
from scantling.choosing.result import Purchase, Supply
from scantling.choosing.solve import solve_problem
from scantling.choosing.trees import Tree, mapped, values
from scantling.choosing.verify import broken
from scantling.model.build import Key


def buy_kept(problem: Problem, answers: Mapping[Key, str], keep: Purchase) -> Purchase | None:
    """Return a purchase that differs from ``keep`` only in parts whose need differs; None where that breaks a rule.

    The parts that differ are bought at least cost, with a vendor already in use at no further fee; the whole is priced
    exactly. It need not be the cheapest: that is the point of keeping.
    """
    bare = replace(problem, tables=(), sums={}, forbidden=(), pins=dict(answers), budget_minor=None)
    sizes = {s.part: s.board_um for s in keep.supplies if s.unit == "board"}
    before, after = _by_part(keep.supplies), _by_part(bare_supplies(bare, answers, sizes))
    changed = {part for part in {*before, *after} if before.get(part) != after.get(part)}
    used = {order.vendor for order in keep.orders}
    part_of = {offer.id: offer.part for offer in problem.offers}
    packs = {
        line.offer: line.packs
        for order in keep.orders
        for line in order.lines
        if part_of.get(line.offer) not in changed
    }
    cuts = tuple((c.part, c.bar_um, c.pieces, c.times) for c in keep.cuts if c.part not in changed)
    decided = Decisions(packs, cuts, {part: size for part, size in sizes.items() if part not in changed})
    if changed:
        fresh = solve_problem(_only(bare, changed, used), tidy=False)
        if fresh is None:
            return None
        decided = _joined(decided, fresh.decisions)
    found = purchase(bare, answers, decided)
    return None if broken(bare, answers, found) else found


def _by_part(supplies: tuple[Supply, ...]) -> dict[str, list[tuple[str, int, int, int, tuple[int, int]]]]:
    """Return what is needed of each part: unit, amount, spares, length, size of board."""
    found: dict[str, list[tuple[str, int, int, int, tuple[int, int]]]] = {}
    for s in supplies:
        if s.need:
            found.setdefault(s.part, []).append((s.unit, s.need, s.spares, s.length_um, s.board_um))
    return {part: sorted(needs) for part, needs in found.items()}


def _only(problem: Problem, parts: set[str], used: set[str]) -> Problem:
    """Return the problem of buying some parts alone, from vendors whose parcel is partly paid for."""
    demands = [replace(demand, tree=_of(demand.tree, parts)) for demand in problem.demands]
    return replace(
        problem,
        offers=tuple(offer for offer in problem.offers if offer.part in parts),
        boards=tuple(demand for demand in problem.boards if demand.part in parts),
        demands=tuple(demand for demand in demands if any(values(demand.tree))),
        stock=tuple(stock for stock in problem.stock if stock.part in parts),
        vendors={name: _open(terms) if name in used else terms for name, terms in problem.vendors.items()},
        most_orders=None,
    )


def _open(terms: Terms) -> Terms:
    return replace(
        terms, shipping_minor=0, free_above_minor=None, minimum_minor=None, fee_minor=0, customs=None, rounded="order"
    )


def _of(tree: Tree, parts: set[str]) -> Tree:
    return mapped(tree, lambda value: tuple((r, amount) for r, amount in value if r.part in parts))


def _joined(kept: Decisions, fresh: Decisions) -> Decisions:
    return Decisions({**kept.packs, **fresh.packs}, (*kept.cuts, *fresh.cuts), {**kept.sizes, **fresh.sizes})
