"""A purchase from bare decisions: packs per offer, bars cut by pattern and a size of board become priced orders.

What it is built from is judged elsewhere (``verify``); here everything is only counted and written out.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from scantling.choosing.cost import Bought, orders
from scantling.choosing.needs import board_needs, needs, spares
from scantling.choosing.patterns import Bar, Pattern
from scantling.choosing.problem import PackOffer, Problem, Resource, Sawing
from scantling.choosing.result import Cut, Purchase, Supply
from scantling.model.build import Key


@dataclass(frozen=True)
class Decisions:
    """What a solver decides besides the answers.

    packs : by offer    cuts : (part, length of the bar in µm, pattern, times)    sizes : of board, by sheet material
    """

    packs: Mapping[str, int] = field(default_factory=dict)
    cuts: tuple[tuple[str, int, Pattern, int], ...] = ()
    sizes: Mapping[str, tuple[int, int]] = field(default_factory=dict)


def purchase(problem: Problem, answers: Mapping[Key, str], decided: Decisions) -> Purchase:
    """Return the purchase that decisions mean for a build."""
    wanted = needs(problem, answers)
    cuts, supplies = _lengths(problem, wanted, decided)
    surplus = _bar_surplus(problem, cuts, decided)
    for resource, need in wanted.items():
        if resource.unit != "length":
            supplies.append(_supply(problem, resource, need, decided))
            surplus[resource.part, resource.unit, 0, (0, 0)] = _surplus(problem, supplies[-1])
    for supply in _boards(problem, answers, decided):
        supplies.append(supply)
        surplus[supply.part, "board", 0, supply.board_um] = supply.left
    return Purchase(
        orders(problem.vendors, _bought(problem, decided, surplus)),
        tuple(sorted(supplies, key=lambda s: (s.part, s.unit, s.length_um))),
        cuts,
        problem.currency,
    )


SourceKey = tuple[str, str, int, tuple[int, int]]


def _source(offer: PackOffer) -> SourceKey:
    return offer.part, offer.unit, offer.bar_um, offer.board_um


def _units(problem: Problem, decided: Decisions, source: SourceKey) -> int:
    """Return the units that all packs of one kind of source hold."""
    packs = decided.packs
    return sum(packs[o.id] * o.pack for o in problem.offers if o.id in packs and _source(o) == source)


def _in_hand(problem: Problem, part: str, unit: str, bar_um: int = 0) -> int:
    return sum(i.quantity for i in problem.stock if (i.part, i.unit, i.bar_um) == (part, unit, bar_um))


def _supply(problem: Problem, resource: Resource, need: int, decided: Decisions) -> Supply:
    extra = spares(problem, resource, need)
    in_hand = min(_in_hand(problem, resource.part, resource.unit), need + extra)
    bought = _units(problem, decided, (resource.part, resource.unit, 0, (0, 0)))
    return Supply(resource.part, resource.unit, need, extra, in_hand, bought)


def _surplus(problem: Problem, supply: Supply) -> int:
    """Return what is over with the whole drawer counted: nothing needs buying that lies there."""
    return supply.left + _in_hand(problem, supply.part, supply.unit) - supply.in_hand


def _boards(problem: Problem, answers: Mapping[Key, str], decided: Decisions) -> list[Supply]:
    found = []
    for part, sizes in board_needs(problem, answers).items():
        size = decided.sizes.get(part, (0, 0))
        need = sizes.get(size) or 0
        if need or any(sizes.values()):
            extra = spares(problem, Resource(part, "board"), need)
            bought = _units(problem, decided, (part, "board", 0, size))
            found.append(Supply(part, "board", need, extra, 0, bought, 0, size))
    return found


def _lengths(
    problem: Problem, wanted: Mapping[Resource, int], decided: Decisions
) -> tuple[tuple[Cut, ...], list[Supply]]:
    """Return the cuts, no piece more than wanted, with where each bar comes from, and the supply of each length."""
    cuts: list[Cut] = []
    supplies: list[Supply] = []
    for part in sorted({resource.part for resource in wanted if resource.unit == "length"}):
        want = {r.length_um: need for r, need in wanted.items() if r.part == part and r.unit == "length"}
        extra = {um: spares(problem, Resource(part, "length", um), need) for um, need in want.items()}
        bars = [(um, p) for name, um, p, times in decided.cuts if name == part for _ in range(times)]
        kept = _trimmed(bars, {um: want[um] + extra[um] for um in want})
        here = _sourced(problem, part, kept, decided)
        cuts += here
        for um in sorted(want):
            in_hand, bought = _cut_from(here, um, hand=True), _cut_from(here, um, hand=False)
            supplies.append(Supply(part, "length", want[um], extra[um], in_hand, bought, um))
    return tuple(cuts), supplies


def _cut_from(cuts: Iterable[Cut], um: int, *, hand: bool) -> int:
    return sum(cut.times * dict(cut.pieces).get(um, 0) for cut in cuts if (cut.offer == "") == hand)


def _trimmed(bars: Sequence[tuple[int, Pattern]], wanted: Mapping[int, int]) -> list[tuple[int, Pattern]]:
    """Return the bars without the pieces beyond what is wanted; the last bars lose them first."""
    left = dict(wanted)
    kept = []
    for length, pattern in sorted(bars, key=lambda bar: (bar[0], bar[1]), reverse=True):
        pieces = tuple((um, min(count, left.get(um, 0))) for um, count in pattern)
        pieces = tuple((um, count) for um, count in pieces if count)
        for um, count in pieces:
            left[um] -= count
        if pieces:
            kept.append((length, pieces))
    return kept


def _sourced(problem: Problem, part: str, bars: Sequence[tuple[int, Pattern]], decided: Decisions) -> list[Cut]:
    """Return the bars as cuts: those in hand are used first, then offers in their order."""
    counted: dict[tuple[str, int, Pattern], int] = {}
    for length in sorted({um for um, _ in bars}):
        sources = [""] * _in_hand(problem, part, "length", length)
        for offer in problem.offers:
            if _source(offer) == (part, "length", length, (0, 0)):
                sources += [offer.id] * (offer.pack * decided.packs.get(offer.id, 0))
        patterns = sorted((pattern for um, pattern in bars if um == length), reverse=True)
        for source, pattern in zip(sources, patterns, strict=False):  # too few bars is what ``verify`` finds
            name = (source, length, pattern)
            counted[name] = counted.get(name, 0) + 1
    found = []
    for (source, length, pattern), times in sorted(counted.items()):
        bar = Bar(length, problem.sawing.get(part, Sawing()))
        found.append(Cut(part, source, length, pattern, times, bar.left_um(pattern), bar.is_whole(pattern)))
    return found


def _bar_surplus(problem: Problem, cuts: Iterable[Cut], decided: Decisions) -> dict[SourceKey, int]:
    surplus: dict[SourceKey, int] = {}
    for offer in problem.offers:
        if offer.unit == "length":
            source = _source(offer)
            used = sum(cut.times for cut in cuts if (cut.part, cut.bar_um) == (offer.part, offer.bar_um))
            have = _in_hand(problem, offer.part, "length", offer.bar_um)
            surplus[source] = have + _units(problem, decided, source) - used
    return surplus


def _bought(problem: Problem, decided: Decisions, surplus: Mapping[SourceKey, int]) -> list[Bought]:
    """Return the packs of each offer, those above need told apart: for a level of the line, or as wished spares."""
    left = dict(surplus)
    found = []
    for offer in sorted(problem.offers, key=lambda o: (-o.pack, o.id)):
        packs = decided.packs.get(offer.id, 0)
        if packs:
            source = _source(offer)
            over = min(packs, max(0, left.get(source, packs * offer.pack)) // offer.pack)
            left[source] = left.get(source, packs * offer.pack) - over * offer.pack
            at_level = packs - over >= offer.least_need(packs)
            found.append(Bought(offer, packs, over if at_level else 0, 0 if at_level else over))
    return found
