"""Bars in the model: pieces of exact lengths cut from bars on offer and in hand, by patterns or by arcs."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from scantling.choosing.linear import Expr, Linear
from scantling.choosing.model_needs import Wanted
from scantling.choosing.patterns import Arc, Bar, Pattern, arcs, patterns, unravelled
from scantling.choosing.problem import Problem, Resource, Sawing
from scantling.choosing.together import together
from scantling.model.build import Key

NO_SAW = Sawing()


@dataclass
class CutBars:
    """The columns of one part's bars of one length: how often each pattern is cut, or how much flows over each arc."""

    part: str
    bar: Bar
    by_pattern: dict[Pattern, int] = field(default_factory=dict)
    by_arc: dict[Arc, int] = field(default_factory=dict)
    exact: bool = True

    def cut(self, values: list[float]) -> list[tuple[Pattern, int]]:
        """Return the patterns that column values mean, with how often each is cut."""
        if self.by_arc:
            return unravelled({arc: round(values[column]) for arc, column in self.by_arc.items()})
        return [(pattern, round(values[column])) for pattern, column in self.by_pattern.items() if values[column] > 0.5]

    @property
    def bars(self) -> Expr:
        """Return how many bars are cut."""
        starts = [column for arc, column in self.by_arc.items() if arc.start == 0]
        return Expr(0, dict.fromkeys((*self.by_pattern.values(), *starts), 1))


def bars_on_hand(problem: Problem, part: str) -> dict[int, int]:
    """Return how many bars of each length are in the drawer."""
    found: dict[int, int] = {}
    for item in problem.stock:
        if item.part == part and item.unit == "length":
            found[item.bar_um] = found.get(item.bar_um, 0) + item.quantity
    return found


def bar_lengths(problem: Problem, part: str) -> list[int]:
    """Return the lengths of bars of a part that are on offer or in hand, sorted."""
    offered = {offer.bar_um for offer in problem.offers if offer.part == part and offer.unit == "length"}
    return sorted(offered | bars_on_hand(problem, part).keys())


def most_pieces(needs: Mapping[Resource, Wanted], part: str) -> dict[int, int]:
    """Return, by length, the most pieces of a part that can be wanted."""
    return {r.length_um: w.most for r, w in needs.items() if r.part == part and r.unit == "length" and w.most}


def cut_bars(
    problem: Problem,
    needs: Mapping[Resource, Wanted],
    part: str,
    domains: Mapping[Key, tuple[str, ...]],
    linear: Linear,
) -> tuple[list[CutBars], dict[int, Expr]]:
    """Add the cutting of one part; return its bars by length, and how many pieces of each length come out of them."""
    most = most_pieces(needs, part)
    meet = together(problem.demands, part, domains)
    found: list[CutBars] = []
    pieces: dict[int, Expr] = {um: Expr() for um in most}
    for length in bar_lengths(problem, part):
        bar = Bar(length, problem.sawing.get(part, NO_SAW))
        fullest = patterns(bar, most, meet)
        cut = _by_arcs(part, bar, most, linear) if fullest is None else _by_patterns(part, bar, fullest, most, linear)
        found.append(cut)
        for pattern, column in cut.by_pattern.items():
            for um, count in pattern:
                pieces[um].add(column, min(count, most[um]))
        for arc, column in cut.by_arc.items():
            pieces[arc.length_um].add(column)
    return found, pieces


def _by_patterns(part: str, bar: Bar, fullest: list[Pattern], most: Mapping[int, int], linear: Linear) -> CutBars:
    columns = {
        pattern: linear.column(0, max(-(-most[um] // count) for um, count in pattern), whole=True)
        for pattern in fullest
    }
    return CutBars(part, bar, by_pattern=columns)


def _by_arcs(part: str, bar: Bar, most: Mapping[int, int], linear: Linear) -> CutBars:
    found, exact = arcs(bar, most)
    columns = {arc: linear.column(0, most[arc.length_um], whole=True) for arc in found}
    passing: dict[int, Expr] = {}
    for arc, column in columns.items():
        passing.setdefault(arc.start, Expr()).add(column, 1)
        passing.setdefault(arc.end, Expr()).add(column, -1)
    for position in sorted(passing):
        if position:
            linear.at_most(passing[position], 0)
    return CutBars(part, bar, by_arc=columns, exact=exact)


def forbid_idle_bars(linear: Linear, bars: list[CutBars], over: Mapping[int, Expr]) -> None:
    """Let no bar be cut that could be left out: it would be a pack above need, bought for the sake of the order.

    over : pieces cut beyond those wanted, by length. A bar is of use where for one of its lengths fewer are over than
    come out of it.
    """
    for cut in bars:
        for pattern, column in cut.by_pattern.items():
            used, reasons = linear.binary(), Expr()
            linear.at_most(Expr(0, {column: 1, used: -linear.upper[column]}), 0)
            for um, count in pattern:
                reason = linear.binary()
                reasons.add(reason)
                most = _largest(linear, over[um])
                slack = max(0.0, most - (count - 1))
                linear.at_most(Expr().plus(over[um]).add(reason, slack), count - 1 + slack)
            linear.at_least(reasons.add(used, -1), 0)


def _largest(linear: Linear, expr: Expr) -> float:
    """Return what a sum can be at most by the bounds of its columns."""
    ends = (factor * (linear.upper[c] if factor > 0 else linear.lower[c]) for c, factor in expr.terms.items())
    return expr.constant + sum(ends)


def most_bars(most: Mapping[int, int], bar: Bar) -> int:
    """Return how many bars of one length could ever be of use: each length cut alone."""
    total = 0
    for um, count in most.items():
        per_bar = max(bar.room_um // bar.width_um(um), 1 if um == bar.length_um else 0)
        total += -(-count // per_bar) if per_bar else 0
    return total


def least_bars(needs: Mapping[Resource, Wanted], part: str, bars: Sequence[Bar]) -> int:
    """Return how many bars it takes at least, whatever is chosen: implied where bars are whole."""
    room = max((bar.room_um for bar in bars), default=0)
    wanted = {r.length_um: w.least for r, w in needs.items() if r.part == part and r.unit == "length"}
    taken = sum(count * min(room, *(bar.width_um(um) for bar in bars)) for um, count in wanted.items()) if room else 0
    return -(-taken // room) if room else 0
