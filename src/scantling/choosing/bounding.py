"""A model that costs never more than the whole one, and close to it: parts bought by sets of vendors.

For each amount that may be wanted of a part, every set of vendors that can share it has its least cost
(``joint_costs``). Only answers, vendors and what is free of a vendor's fee are whole; cutting, boards, shipping by mass
and customs are left out. Its optimum is a bound of the whole model's; its vendors and answers are a good guess.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from scantling.choosing.joint_costs import Joint, Step, joint_costs, steps
from scantling.choosing.linear import Expr, Linear
from scantling.choosing.mode import HOLD, Waivers
from scantling.choosing.model import add_rules, open_domains
from scantling.choosing.model_answers import Answers, Flow
from scantling.choosing.needs import spares
from scantling.choosing.problem import PackOffer, Problem, Resource, Terms
from scantling.choosing.result import Unit

MOST_STATES = 1_500  # combinations of what several demands take of one part
UNITS: tuple[Unit, ...] = ("piece", "g")


@dataclass
class Bounding:
    """The model, its objective, the answers, and the column of each vendor."""

    linear: Linear
    cost: Expr
    answers: Answers
    used: Mapping[str, int]

    def vendors(self, values: list[float]) -> frozenset[str]:
        """Return the vendors that column values use."""
        return frozenset(vendor for vendor, column in self.used.items() if values[column] > 0.5)

    def beyond(self, vendors: frozenset[str]) -> None:
        """Ask for a vendor besides these: what they can do together is known already."""
        others = [column for vendor, column in self.used.items() if vendor not in vendors]
        self.linear.at_least(Expr(0, dict.fromkeys(others, 1)), 1)


@dataclass(frozen=True)
class _Source:
    """What one demand takes of a resource: the amount, with the share of the leaves that take so much."""

    amounts: tuple[tuple[int, Expr], ...]


def bounding(problem: Problem) -> Bounding:
    """Return the bounding model of a problem."""
    linear = Linear()
    answers = Answers(linear, open_domains(problem, HOLD))
    add_rules(problem, answers, Waivers(linear, HOLD))
    sources = _sources(problem, answers)
    linear.whole = [False] * len(linear.whole)
    used = {vendor: linear.binary() for vendor in sorted(problem.vendors)}
    if problem.most_orders is not None:
        linear.at_most(Expr(0, dict.fromkeys(used.values(), 1)), problem.most_orders)
    builder = _Builder(problem, linear, used)
    for resource, taken in sources.items():
        builder.add(resource, taken)
    builder.fees()
    for column in answers.columns.values():
        linear.whole[column] = True
    return Bounding(linear, builder.cost, answers, used)


def certain_fee(terms: Terms, *, free: bool) -> float:
    """Return what a parcel costs at least besides its goods, in home minor units.

    free : where the shipping is waived
    """
    shipping = 0 if free else terms.shipping_minor
    fee = (shipping * (1 + terms.fee_share) + terms.fee_minor) * terms.rate
    roundings = int(terms.rate != 1) + bool(terms.fee_share) + (not terms.with_tax and terms.rounded == "order")
    return float(fee) - 0.5 * roundings * max(1.0, float(terms.rate)) * float(1 + terms.fee_share)


def _sources(problem: Problem, answers: Answers) -> dict[Resource, list[_Source]]:
    """Return what the demands take of every resource that is bought by pieces or mass, sorted."""
    found: dict[Resource, list[_Source]] = {}
    for demand in problem.demands:
        flow = answers.flow(demand.tree, lambda _value: True)
        for resource in sorted({resource for value, _ in flow.leaves for resource, _ in value}):
            if resource.unit in UNITS:
                found.setdefault(resource, []).append(_source(flow, resource))
    return dict(sorted(found.items()))


def _source(flow: Flow, resource: Resource) -> _Source:
    shares: dict[int, Expr] = {}
    for value, share in flow.leaves:
        shares.setdefault(dict(value).get(resource, 0), Expr()).plus(share)
    return _Source(tuple(sorted(shares.items())))


class _Builder:
    """Adds one resource after another."""

    def __init__(self, problem: Problem, linear: Linear, used: Mapping[str, int]) -> None:
        self.problem, self.linear, self.used = problem, linear, used
        self.cost = Expr()
        self.spent: dict[str, Expr] = {vendor: Expr() for vendor in used}  # the most of it that may be spent there
        self.offers: dict[tuple[str, str], dict[str, list[PackOffer]]] = {}
        for offer in problem.offers:
            if problem.days is None or offer.lead_days <= problem.days:
                self.offers.setdefault((offer.part, offer.unit), {}).setdefault(offer.vendor, []).append(offer)

    def add(self, resource: Resource, sources: list[_Source]) -> None:
        """Let what is wanted of a resource be covered by sets of vendors."""
        wanted = self._wanted(resource, sources)
        needs = sorted(need for need in wanted if need > 0)
        if not needs:
            return
        by_vendor: dict[str, list[Step]] = {
            vendor: steps(offers, self.problem.vendors[vendor], needs[-1])
            for vendor, offers in sorted(self.offers.get((resource.part, resource.unit), {}).items())
        }
        touched: dict[str, Expr] = {}
        for share, joint in self._levels(wanted, joint_costs(by_vendor, needs)).values():
            self._cover(share, joint, touched)
        for vendor, share in sorted(touched.items()):
            self.linear.at_most(share.add(self.used[vendor], -1), 0)

    def fees(self) -> None:
        """Add what parcels cost besides their goods, and when they are free of it.

        A share of a part that several vendors supply may be larger than in its cheapest split: all of it is counted for
        each of them, and what the true purchase costs more than the cheapest splits, ``over``, for all vendors at once.
        """
        over = Expr(0, {self.linear.column(): 1})
        self.cost.plus(over)
        others = {offer.vendor for offer in self.problem.offers if offer.unit not in UNITS}
        for vendor, column in self.used.items():
            terms = self.problem.vendors[vendor]
            paid, waived = certain_fee(terms, free=False), certain_fee(terms, free=True)
            if terms.free_above_minor is None:
                self.cost.add(column, paid)
            elif vendor in others:
                self.cost.add(column, waived)
            else:
                free = self.linear.binary()
                self.cost.add(column, paid).add(free, waived - paid)
                self.linear.at_most(Expr(0, {free: 1, column: -1}), 0)
                reached = Expr(1).plus(self.spent[vendor]).plus(over)
                self.linear.at_least(reached.add(free, -float(terms.free_above_minor * terms.rate)), 0)

    def _levels(self, wanted: Mapping[int, Expr], joint: Mapping[int, Joint]) -> dict[int, tuple[Expr, Joint]]:
        """Return the costs of each need, those with the very same costs together."""
        found: dict[int, tuple[Expr, Joint]] = {}
        by_costs: dict[tuple[tuple[tuple[str, ...], float], ...], int] = {}
        for need, costs in joint.items():
            mark = tuple(sorted((tuple(sorted(chosen)), cost) for chosen, cost in costs.items()))
            first = by_costs.setdefault(mark, need)
            share = found[first][0] if first in found else Expr()
            found[first] = (share.plus(wanted[need]), costs)
        return found

    def _cover(self, share: Expr, joint: Joint, touched: dict[str, Expr]) -> None:
        total = Expr()
        for chosen in sorted(joint, key=lambda names: (len(names), sorted(names))):
            column = self.linear.column(0, 1)
            total.add(column)
            self.cost.add(column, joint[chosen])
            for vendor in chosen:
                touched.setdefault(vendor, Expr()).add(column)
                self.spent[vendor].add(column, joint[chosen])
        self.linear.equal(total.plus(share, -1), 0)

    def _wanted(self, resource: Resource, sources: list[_Source]) -> dict[int, Expr]:
        """Return the share of each amount that may be wanted beyond what is in hand, spares included."""
        kind = (resource.part, resource.unit)
        in_hand = sum(item.quantity for item in self.problem.stock if (item.part, item.unit) == kind)
        found: dict[int, Expr] = {}
        for need, share in self._states(sources).items():
            lack = max(0, need + spares(self.problem, resource, need) - in_hand)
            found.setdefault(lack, Expr()).plus(share)
        return found

    def _states(self, sources: list[_Source]) -> dict[int, Expr]:
        """Return the share of each sum of amounts: of all combinations where they are few, else of the least sum."""
        open_ = [source.amounts for source in sources if len(source.amounts) > 1]
        base = sum(source.amounts[0][0] for source in sources if len(source.amounts) == 1)
        if len(open_) <= 1:
            return {base + amount: share for amount, share in (open_[0] if open_ else ((0, Expr(1)),))}
        count = 1
        for amounts in open_:
            count *= len(amounts)
        if count > MOST_STATES:
            return {base + sum(amounts[0][0] for amounts in open_): Expr(1)}
        return self._combined(base, open_)

    def _combined(self, base: int, open_: list[tuple[tuple[int, Expr], ...]]) -> dict[int, Expr]:
        states: list[tuple[int, tuple[int, ...]]] = [(base, ())]
        for amounts in open_:
            states = [(total + amounts[n][0], (*chosen, n)) for total, chosen in states for n in range(len(amounts))]
        found: dict[int, Expr] = {}
        margins: dict[tuple[int, int], Expr] = {}
        for total, chosen in states:
            column = self.linear.column(0, 1)
            found.setdefault(total, Expr()).add(column)
            for position, n in enumerate(chosen):
                margins.setdefault((position, n), Expr()).add(column)
        for (position, n), share in margins.items():
            self.linear.equal(share.plus(open_[position][n][1], -1), 0)
        return found
