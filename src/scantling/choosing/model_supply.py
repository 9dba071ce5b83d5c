"""Supply in the model: covers of every need by packs, bars and boards, and what is in hand at no cost."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from scantling.choosing.linear import Expr
from scantling.choosing.mode import Waivers
from scantling.choosing.model_answers import Answers, Flow, reached
from scantling.choosing.model_cuts import (
    CutBars,
    bars_on_hand,
    cut_bars,
    forbid_idle_bars,
    least_bars,
    most_bars,
    most_pieces,
)
from scantling.choosing.model_needs import Wanted, wanted
from scantling.choosing.model_packs import PackColumns, add_packs, forbid_surplus, has_thresholds, useful_packs
from scantling.choosing.model_splits import add_splits
from scantling.choosing.needs import spares
from scantling.choosing.problem import BoardDemand, PackOffer, Problem, Resource, Terms
from scantling.choosing.result import Concern


@dataclass
class Supplies:
    """The columns of everything that is bought or cut."""

    packs: dict[str, PackColumns] = field(default_factory=dict)
    bars: list[CutBars] = field(default_factory=list)
    sizes: dict[tuple[str, tuple[int, int]], Expr] = field(default_factory=dict)


class Supplier:
    """Adds offers and covers to a model."""

    def __init__(self, problem: Problem, answers: Answers, waivers: Waivers, vendors: Mapping[str, Expr]) -> None:
        """Keep what every part of the supply needs."""
        self.problem = problem
        self.answers = answers
        self.linear = answers.linear
        self.waivers = waivers
        self.vendors = vendors
        self.found = Supplies()
        self.needs = wanted(problem, answers, self.linear)

    def add(self) -> Supplies:
        """Add all supply, part by part in order."""
        self._pieces_and_grams()
        self._mass_together()
        for part in sorted({r.part for r in self.needs if r.unit == "length"}):
            self._bars(part)
        for part in sorted({demand.part for demand in self.problem.boards}):
            self._boards(part)
        return self.found

    def _pieces_and_grams(self) -> None:
        for resource, want in self.needs.items():
            if resource.unit in ("piece", "g") and want.most:
                kind = (resource.part, resource.unit)
                in_hand = sum(item.quantity for item in self.problem.stock if (item.part, item.unit) == kind)
                offers = [offer for offer in self.problem.offers if (offer.part, offer.unit) == kind]
                self._from_vendors([self._cover(resource.part, want, in_hand, offers)])

    def _mass_together(self) -> None:
        """Add how many packs all that is bought by mass takes at least: plastics differ, but something must be printed.

        Implied where packs are whole, but each plastic alone says it only of what no other plastic can do.
        """
        parts = sorted({resource.part for resource in self.needs if resource.unit == "g"})
        firm = (Concern("supply", "", part) for part in parts)
        if parts and all(self.waivers.mode.held(concern) and not self.waivers.may(concern) for concern in firm):
            least = sum(
                min(map(_grams, reached(d.tree, self.answers.domains)), default=0) for d in self.problem.demands
            )
            in_hand = sum(item.quantity for item in self.problem.stock if item.unit == "g")
            self._cover_least(least - in_hand, [c for c in self.found.packs.values() if c.offer.unit == "g"])

    def _cover(self, part: str, want: Wanted, in_hand: int, offers: list[PackOffer]) -> Mapping[str, Expr]:
        """Let the packs of some offers, and what is in hand, cover what is wanted.

        Returned is, by vendor, what is 1 where the cover buys there, and no row says so yet.
        """
        columns = [self._columns(offer, want.most - in_hand) for offer in offers]
        held = self.waivers.mode.held(Concern("supply", "", part))
        if want.states is not None and held and self._may_split(columns):
            touched = add_splits(self.linear, columns, want.states, in_hand, self.problem.vendors)
            if touched is not None:
                return touched
        for column in columns:
            self._add_packs(column, want.some)
        if want.most > in_hand and held:
            self._cover_row(part, want, in_hand, columns)
        return {}

    def _from_vendors(self, touched: Iterable[Mapping[str, Expr]]) -> None:
        """Let covers of which only one holds buy at vendors that are used."""
        together: dict[str, Expr] = {}
        for cover in touched:
            for vendor, share in cover.items():
                together.setdefault(vendor, Expr()).plus(share)
        for vendor in sorted(together):
            self.linear.at_most(together[vendor].plus(self.vendors[vendor], -1), 0)

    def _cover_row(self, part: str, want: Wanted, in_hand: int, columns: list[PackColumns]) -> None:
        """Add the row of a cover.

        A pack counts for no more than the most that can lack: with whole packs that is the same and much tighter.
        """
        most = want.most - in_hand
        lack = Expr(-in_hand).plus(want.expr)
        cover = Expr().plus(lack, -1)
        for column in columns:
            cover.plus(column.packs, min(column.offer.pack, most))
        concern = Concern("supply", "", part)
        if self.waivers.may(concern):
            cover.plus(self.waivers.short(concern, most, most))
        else:
            self._cover_parts(want, in_hand, columns)
            self._cover_least(want.least - in_hand, columns)
        self.linear.at_least(cover, 0)
        self._judge_surplus(columns, lack)

    def _cover_parts(self, want: Wanted, in_hand: int, columns: list[PackColumns]) -> None:
        """Add what each place alone asks for: implied, but it ties every place to whole packs."""
        for amount, share in want.parts:
            lack = amount - in_hand
            if lack > 0:
                cover = Expr().plus(share, -lack)
                for column in columns:
                    cover.plus(column.packs, min(column.offer.pack, lack))
                self.linear.at_least(cover, 0)

    def _cover_least(self, lack: int, columns: list[PackColumns]) -> None:
        """Add how many packs it takes at least, whatever is chosen: implied where packs are whole."""
        largest = max((column.offer.pack for column in columns), default=0)
        if lack > 0 and largest:
            packs = Expr()
            for column in columns:
                packs.plus(column.packs)
            self.linear.at_least(packs, -(-lack // largest))

    def _may_split(self, columns: list[PackColumns]) -> bool:
        """Return whether packs above need are never of use, so that a list of splits is complete."""
        if self.waivers.mode.waive:
            return False
        return not (self.problem.top_up and any(has_thresholds(self._terms(column.offer)) for column in columns))

    def _terms(self, offer: PackOffer) -> Terms:
        return self.problem.vendors[offer.vendor]

    def _judge_surplus(self, columns: list[PackColumns], lack: Expr) -> None:
        surplus = Expr().plus(lack, -1)
        for column in columns:
            surplus.plus(column.packs, column.offer.pack)
        most = round(-lack.constant) + sum(column.most * column.offer.pack for column in columns)
        for column in columns:
            forbid_surplus(self.linear, column, surplus, most)

    def _columns(self, offer: PackOffer, most_units: int) -> PackColumns:
        """Return the empty columns of an offer, of a late one only where a date may be waived or was dropped."""
        terms = self._terms(offer)
        most = useful_packs(offer, terms, max(0, most_units), self.problem.top_up)
        concern = Concern("date", "", offer.part)
        if self._is_late(offer) and self.waivers.mode.held(concern) and not self.waivers.may(concern):
            most = 0
        self.found.packs[offer.id] = PackColumns(offer, most, self._is_lean(terms))
        return self.found.packs[offer.id]

    def _is_lean(self, terms: Terms) -> bool:
        """Return whether packs above need would pay and are not allowed."""
        return has_thresholds(terms) and not self.problem.top_up

    def _is_late(self, offer: PackOffer) -> bool:
        return self.problem.days is not None and offer.lead_days > self.problem.days

    def _add_packs(self, columns: PackColumns, some: Expr) -> None:
        """Add whole packs of an offer.

        some : 0 where the part is not needed at all: then none is bought, not even as a wished spare
        """
        offer, most = columns.offer, columns.most
        add_packs(self.linear, columns, self._terms(offer), self.vendors[offer.vendor])
        concern = Concern("date", "", offer.part)
        if most and self._is_late(offer) and self.waivers.may(concern):
            self._allow_late(columns, concern)
        if most and self.problem.top_up:
            self.linear.at_most(Expr().plus(columns.packs).plus(some, -most), 0)

    def _allow_late(self, columns: PackColumns, concern: Concern) -> None:
        """Let a late offer be bought only where the date is waived, at the price of the days it is late."""
        waiver = self.waivers.column(concern)
        days = self.problem.days or 0
        self.linear.at_most(Expr().plus(columns.packs).add(waiver, -columns.most), 0)
        used = self.linear.binary()
        self.linear.at_most(Expr().plus(columns.packs).add(used, -columns.most), 0)
        late = columns.offer.lead_days - days
        self.waivers.permille[concern].add(used, round(1000 * late / max(days, 1)))
        self.waivers.amounts[concern].add(used, late)

    def _bars(self, part: str) -> None:
        most = most_pieces(self.needs, part)
        if not most:
            return
        bars, pieces = cut_bars(self.problem, self.needs, part, self.answers.domains, self.linear)
        self.found.bars += bars
        concern = Concern("supply", "", part)
        for um in sorted(most):
            want = self.needs[Resource(part, "length", um)]
            cover = Expr().plus(pieces[um]).plus(want.expr, -1)
            if self.waivers.may(concern):
                cover.plus(self.waivers.short(concern, want.most, want.most))
            if self.waivers.mode.held(concern):
                self.linear.at_least(cover, 0)
        if self.waivers.mode.held(concern) and not self.waivers.may(concern):
            self.linear.at_least(_all_bars(bars), least_bars(self.needs, part, [cut.bar for cut in bars]))
        offered = [o for o in self.problem.offers if (o.part, o.unit) == (part, "length")]
        if any(self._is_lean(self._terms(offer)) for offer in offered):
            over = {um: Expr().plus(pieces[um]).plus(self.needs[Resource(part, "length", um)].expr, -1) for um in most}
            forbid_idle_bars(self.linear, bars, over)
        in_hand = bars_on_hand(self.problem, part)
        some = Expr()
        for um in sorted(most):
            some.plus(self.needs[Resource(part, "length", um)].some)
        for cut in bars:
            offers = [
                o for o in self.problem.offers if (o.part, o.unit, o.bar_um) == (part, "length", cut.bar.length_um)
            ]
            have = in_hand.get(cut.bar.length_um, 0)
            self._bar_cover(cut, offers, have, most_bars(most, cut.bar), some)

    def _bar_cover(self, cut: CutBars, offers: list[PackOffer], have: int, most: int, some: Expr) -> None:
        """Let no more bars be cut than are bought and in hand."""
        columns = [self._columns(offer, most - have) for offer in offers]
        for column in columns:
            self._add_packs(column, some)
        lack = Expr(-have).plus(cut.bars)
        cover = Expr().plus(lack, -1)
        for column in columns:
            cover.plus(column.packs, column.offer.pack)
        self.linear.at_least(cover, 0)
        self._judge_surplus(columns, lack)

    def _boards(self, part: str) -> None:
        """Let one size of board be chosen, and enough boards of it be bought."""
        demands = [demand for demand in self.problem.boards if demand.part == part]
        lenient = self.waivers.mode.waive or not self.waivers.mode.held(Concern("supply", "", part))
        flows: list[Flow] = []
        touched: list[Mapping[str, Expr]] = []
        chosen = Expr()
        for demand in demands:
            share = Expr(1) if len(demands) == 1 else Expr(0, {self.linear.binary(): 1})
            chosen.plus(share)
            flow = self.answers.flow(demand.tree, any_size if lenient else fits, share)
            flows.append(flow)
            self.found.sizes[part, demand.board_um] = share
            touched.append(self._board_cover(demand, flow))
        self.linear.equal(chosen, 1)
        self.answers.bind(flows)
        self._from_vendors(touched)

    def _board_cover(self, demand: BoardDemand, flow: Flow) -> Mapping[str, Expr]:
        part = demand.part
        expr, some = Expr(), Expr()
        states: dict[int, Expr] = {}
        for count, share in flow.leaves:
            boards = (count or 0) + spares(self.problem, Resource(part, "board"), count or 0)
            states.setdefault(boards, Expr()).plus(share)
            expr.plus(share, boards)
            some.plus(share if boards else Expr())
            if count is None:
                self._waive_size(part, share)
        kind = (part, "board", demand.board_um)
        offers = [offer for offer in self.problem.offers if (offer.part, offer.unit, offer.board_um) == kind]
        return self._cover(part, Wanted(expr, max(states, default=0), some, states), 0, offers)

    def _waive_size(self, part: str, share: Expr) -> None:
        """Let a panel that fits on no board count as something that cannot be had."""
        concern = Concern("supply", "", part)
        if self.waivers.may(concern):
            self.linear.at_least(self.waivers.short(concern, 1, 1).plus(share, -1), 0)


def _grams(taken: Iterable[tuple[Resource, int]]) -> int:
    return sum(amount for resource, amount in taken if resource.unit == "g")


def _all_bars(bars: Iterable[CutBars]) -> Expr:
    total = Expr()
    for cut in bars:
        total.plus(cut.bars)
    return total


def fits(count: int | None) -> bool:
    """Return whether panels fit on a board."""
    return count is not None


def any_size(_count: int | None) -> bool:
    """Return True: a board that is too small is then told as something that cannot be had."""
    return True
