"""Judge decisions by the rules themselves, with nothing of the solver's model: what is broken, in words.

The cost is recomputed from the packs by ``cost``; this adds everything else: answers, tables, totals, what costly
checks forbade, demand, stock, bars, boards, dates, levels, limits.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from scantling.choosing.needs import board_needs, needs, spares
from scantling.choosing.patterns import Bar
from scantling.choosing.problem import Problem, Resource, Sawing
from scantling.choosing.result import Concern, Order, OrderLine, Purchase, Supply
from scantling.choosing.tables import Table
from scantling.choosing.trees import value_at
from scantling.model.build import Key


def broken(
    problem: Problem, answers: Mapping[Key, str], purchase: Purchase, unmet_parts: frozenset[str] = frozenset()
) -> list[str]:
    """Return every rule that a build and its purchase break; an empty list for a sound choice.

    unmet_parts : of which there may be too few
    """
    return [
        *_answers(problem, answers),
        *(f"{concern.code} {concern.subject}" for concern in unmet(problem, answers)),
        *_supplies(problem, answers, purchase, unmet_parts),
        *_cuts(problem, purchase),
        *_orders(problem, purchase),
    ]


def unmet(problem: Problem, answers: Mapping[Key, str]) -> list[Concern]:
    """Return the concerns of tables, and of costly checks, that the answers do not meet; each once, sorted."""
    found = {table.concern for table in problem.tables if not _allows(problem, table, answers)}
    for cut in problem.forbidden:
        if all(answers[key] in given for key, given in cut.answers):
            found.add(cut.concern)
    return sorted(found)


def _allows(problem: Problem, table: Table, answers: Mapping[Key, str]) -> bool:
    try:
        value = value_at(table.tree, answers)
        if table.sum is None:
            return bool(value)
        return table.allows(value, sum(value_at(term, answers) for term in problem.sums[table.sum].terms))
    except KeyError:
        return False


def _answers(problem: Problem, answers: Mapping[Key, str]) -> Iterator[str]:
    for key, given in problem.domains.items():
        if answers.get(key) not in given:
            yield f"{answers.get(key)!r} is no answer to {key}"
    for key, answer in problem.pins.items():
        if answers.get(key) != answer:
            yield f"{key} is pinned to {answer}"


def _supplies(
    problem: Problem, answers: Mapping[Key, str], purchase: Purchase, unmet_parts: frozenset[str]
) -> Iterator[str]:
    have = {(s.part, s.unit, s.length_um): s for s in purchase.supplies}
    for resource, need in needs(problem, answers).items():
        supply = have.get((resource.part, resource.unit, resource.length_um))
        if resource.part in unmet_parts:
            continue
        extra = spares(problem, resource, need)
        if supply is None or (supply.need, supply.spares) != (need, extra) or supply.left < 0:
            yield f"{need} and {extra} spare of {resource} are not met"
        elif supply.unit != "length":
            yield from _counted(problem, purchase, supply)
    for part, sizes in board_needs(problem, answers).items():
        if part in unmet_parts:
            continue
        board = have.get((part, "board", 0))
        need_here = sizes.get(board.board_um) if board else 0
        if (board is None and any(count != 0 for count in sizes.values())) or need_here is None:
            yield f"boards of {part} are not met"
        elif board is not None:
            extra = spares(problem, Resource(part, "board"), need_here)
            if (board.need, board.spares) != (need_here, extra) or board.left < 0:
                yield f"{need_here} boards of {part} are not met"
            yield from _counted(problem, purchase, board)


def _lines(purchase: Purchase) -> Iterator[tuple[Order, OrderLine]]:
    return ((order, line) for order in purchase.orders for line in order.lines)


def _counted(problem: Problem, purchase: Purchase, supply: Supply) -> Iterator[str]:
    """Compare a supply with the packs bought and with the drawer."""
    kind = (supply.part, supply.unit, supply.board_um)
    bought = sum(
        line.packs * line.pack for _, line in _lines(purchase) if (line.part, line.unit, line.board_um) == kind
    )
    if bought != supply.bought:
        yield f"{bought} of {supply.part} are bought, not {supply.bought}"
    if supply.in_hand > sum(i.quantity for i in problem.stock if (i.part, i.unit) == kind[:2]):
        yield f"{supply.in_hand} of {supply.part} are not in hand"


def _cuts(problem: Problem, purchase: Purchase) -> Iterator[str]:
    used: dict[tuple[str, str, int], int] = {}
    pieces: dict[tuple[str, int], int] = {}
    for cut in purchase.cuts:
        bar = Bar(cut.bar_um, problem.sawing.get(cut.part, Sawing()))
        if not bar.fits(cut.pieces):
            yield f"{cut.pieces} do not fit on a bar of {cut.bar_um} µm"
        source = (cut.part, cut.offer, cut.bar_um)
        used[source] = used.get(source, 0) + cut.times
        for um, count in cut.pieces:
            pieces[cut.part, um] = pieces.get((cut.part, um), 0) + count * cut.times
    bars = {(line.part, line.offer, line.bar_um): line.packs * line.pack for _, line in _lines(purchase)}
    for item in problem.stock:
        source = (item.part, "", item.bar_um)
        bars[source] = bars.get(source, 0) + item.quantity
    for source, count in used.items():
        if count > bars.get(source, 0):
            yield f"{count} bars of {source} are cut, {bars.get(source, 0)} are there"
    for supply in purchase.supplies:
        if supply.unit == "length" and pieces.get((supply.part, supply.length_um), 0) != supply.in_hand + supply.bought:
            yield f"pieces of {supply.part} {supply.length_um} µm are not cut"


def _orders(problem: Problem, purchase: Purchase) -> Iterator[str]:
    offers = {offer.id: offer for offer in problem.offers}
    needed = {supply.part for supply in purchase.supplies}
    for order, line in _lines(purchase):
        offer = offers[line.offer]
        if line.packs <= 0 or (offer.stock is not None and line.packs > offer.stock):
            yield f"{line.packs} packs of {offer.id}"
        if problem.days is not None and offer.lead_days > problem.days:
            yield f"{offer.id} comes too late"
        if offer.vendor != order.vendor:
            yield f"{offer.id} is not sold by {order.vendor}"
        if line.part not in needed or (line.top_up and not problem.top_up):
            yield f"{line.top_up} packs of {offer.id} are above need"
    for order in purchase.orders:
        least = problem.vendors[order.vendor].minimum_minor or 0
        if order.goods_with_tax_minor < least:
            yield f"{order.vendor} sells no less than for {least}"
    if problem.most_orders is not None and len(purchase.orders) > problem.most_orders:
        yield f"{len(purchase.orders)} orders"
    if problem.budget_minor is not None and purchase.cost_minor > problem.budget_minor:
        yield f"{purchase.cost_minor} is over the budget"
