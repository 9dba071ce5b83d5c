"""The whole model of a problem: answers, tables, totals, supply, money and limits, built from sorted identifiers."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from scantling.choosing.linear import Expr, Linear
from scantling.choosing.mode import HOLD, Mode, Waivers
from scantling.choosing.model_answers import Alive, Answers, Domains, narrowed, reached
from scantling.choosing.model_money import parcel
from scantling.choosing.model_supply import Supplier, Supplies
from scantling.choosing.problem import Problem
from scantling.choosing.result import Concern
from scantling.choosing.tables import SumName, Table
from scantling.choosing.trees import Tree
from scantling.model.build import Key

BUDGET = Concern("budget")
ORDERS = Concern("orders")


def pin_concern(key: Key, answer: str) -> Concern:
    """Return the concern that a pin is."""
    return Concern("pin", "", str(key), answer)


@dataclass
class Model:
    """A linear model with what its columns mean."""

    problem: Problem
    linear: Linear
    answers: Answers
    supplies: Supplies
    waivers: Waivers
    cost: Expr
    used: Mapping[str, Expr]


def build_model(problem: Problem, mode: Mode = HOLD) -> Model:
    """Return the model of a problem, each concern held, dropped or waivable as ``mode`` says."""
    linear = Linear()
    waivers = Waivers(linear, mode)
    answers = Answers(linear, open_domains(problem, mode))
    add_rules(problem, answers, waivers)
    used = {vendor: Expr(0, {linear.binary(): 1}) for vendor in sorted(problem.vendors)}
    supplies = Supplier(problem, answers, waivers, used).add()
    cost, most = _cost(problem, linear, supplies, used)
    _limits(problem, linear, waivers, cost, most, used)
    return Model(problem, linear, answers, supplies, waivers, cost, used)


def add_rules(problem: Problem, answers: Answers, waivers: Waivers) -> None:
    """Add all that is said about the answers alone: tables, totals, and what costly checks have forbidden."""
    _tables(problem, answers, waivers)
    _forbidden(problem, answers, waivers)


def open_domains(problem: Problem, mode: Mode) -> Domains:
    """Return the answers left to every question by the pins, and by the tables that may not be waived."""
    domains: Domains = dict(problem.domains)
    for key, answer in sorted(problem.pins.items()):
        if mode.held(pin_concern(key, answer)):
            domains[key] = tuple(given for given in domains[key] if given == answer)
    return narrowed(domains, [_lifeline(problem, table, domains) for table in problem.tables if _strict(table, mode)])


def _strict(table: Table, mode: Mode) -> bool:
    """Return whether a table holds in any case."""
    if table.fixed:
        return True
    return mode.held(table.concern) and not (mode.waive and table.concern.kind == "check")


def _lifeline(problem: Problem, table: Table, domains: Domains) -> tuple[Tree, Alive]:
    """Return a table with the leaves that may be reached: of a sum those whose limit some answers can keep."""
    if table.sum is None:
        return table.tree, not_false
    return table.tree, _within(_reach(problem, table.sum, domains), table.worse)


def _reach(problem: Problem, name: SumName, domains: Domains) -> tuple[int, int]:
    """Return the least and the most that a sum can be under the answers that are left."""
    ends = [reached(term, domains) for term in problem.sums[name].terms]
    return sum(min(end, default=0) for end in ends), sum(max(end, default=0) for end in ends)


def _within(reach: tuple[int, int], worse: str) -> Alive:
    def alive(value: Any) -> bool:
        if isinstance(value, bool):
            return value
        return bool(value >= reach[0] if worse == "more" else value <= reach[1])

    return alive


def not_false(value: Any) -> bool:
    """Return whether a leaf allows anything."""
    return value is not False


def anything(_value: Any) -> bool:
    """Return True: every leaf can be reached where its concern may be waived."""
    return True


def _tables(problem: Problem, answers: Answers, waivers: Waivers) -> None:
    """Add every table, and the sums that some of them limit."""
    sums: dict[SumName, Expr] = {}
    for table in sorted(problem.tables, key=lambda t: (t.concern, t.sum or ("", ""))):
        if not table.fixed and not waivers.mode.held(table.concern):
            continue
        waive = not table.fixed and waivers.may(table.concern)
        if table.sum is None:
            _plain_table(table, answers, waivers, waive=waive)
        else:
            _sum_table(problem, table, table.sum, answers, waivers, sums)


def _plain_table(table: Table, answers: Answers, waivers: Waivers, *, waive: bool) -> None:
    if not waive:
        answers.flow(table.tree, not_false)
        return
    tree = waivers.mode.shortfalls.get(table.concern)
    flow = answers.flow(table.tree if tree is None else tree, anything)
    for value, share in flow.leaves:
        short = (0 if value else 1000) if isinstance(value, bool) else value
        if short:
            column = waivers.column(table.concern)
            answers.linear.at_most(Expr().plus(share).add(column, -1), 0)
            waivers.permille[table.concern].plus(share, short)


def _sum_table(
    problem: Problem, table: Table, name: SumName, answers: Answers, waivers: Waivers, sums: dict[SumName, Expr]
) -> None:
    """Add one row: the sum keeps to the limit of the leaf that the other answers lead to."""
    terms = problem.sums[name]
    if name not in sums:
        sums[name] = _sum(terms.terms, answers)
    waive = waivers.may(table.concern)
    least, most = _reach(problem, name, answers.domains)
    flow = answers.flow(table.tree, anything if waive else _within((least, most), table.worse))
    loosest = terms.most if table.worse == "more" else terms.least
    limits = [(loosest if isinstance(value, bool) else value, share) for value, share in flow.leaves]
    difference = Expr().plus(sums[name]).plus(_shared(limits), -1)  # sum - limit
    for value, share in flow.leaves:
        if value is False:
            answers.linear.at_most(Expr().plus(share).add(waivers.column(table.concern), -1), 0)
            waivers.permille[table.concern].plus(share, 1000)
    if table.worse == "less":
        difference = difference.times(-1)
    if waive:
        given = [abs(value) for value, _ in flow.leaves if not isinstance(value, bool)]
        difference.plus(waivers.short(table.concern, terms.most - terms.least, min(given, default=1)), -1)
    answers.linear.at_most(difference, 0)


def _sum(terms: Iterable[Tree], answers: Answers) -> Expr:
    total = Expr()
    for term in terms:
        total.plus(_shared(answers.flow(term, anything).leaves))
    return total


def _shared(leaves: Sequence[tuple[int, Expr]]) -> Expr:
    """Return the value of the leaf that is reached: the least one, and what the others are above it.

    The shares add up to 1, so this is the sum of all; but the solver sees the least as a bound at once.
    """
    least = min((value for value, _ in leaves), default=0)
    total = Expr(least)
    for value, share in leaves:
        if value != least:
            total.plus(share, value - least)
    return total


def _forbidden(problem: Problem, answers: Answers, waivers: Waivers) -> None:
    """Add what costly checks have forbidden: never all of the sets at once."""
    for cut in problem.forbidden:
        if not waivers.mode.held(cut.concern):
            continue
        together = Expr()
        for key, given in cut.answers:
            for answer in sorted(given):
                together.plus(answers.take(key, answer))
        if waivers.may(cut.concern):
            column = waivers.column(cut.concern)
            together.add(column, -1)
            waivers.permille[cut.concern].add(column, 1000)
        answers.linear.at_most(together, len(cut.answers) - 1)


def _cost(problem: Problem, linear: Linear, supplies: Supplies, used: Mapping[str, Expr]) -> tuple[Expr, int]:
    """Return the cost of all parcels, and the most that it can be."""
    cost, most = Expr(), 0
    for vendor in sorted(problem.vendors):
        packs = [supplies.packs[o] for o in sorted(supplies.packs) if supplies.packs[o].offer.vendor == vendor]
        if packs:
            found = parcel(linear, problem.vendors[vendor], used[vendor], packs)
            cost.plus(found.home)
            most += found.most
    return cost, most


def _limits(
    problem: Problem, linear: Linear, waivers: Waivers, cost: Expr, most: int, used: Mapping[str, Expr]
) -> None:
    """Add the budget and the cap on orders."""
    if problem.budget_minor is not None and waivers.mode.held(BUDGET):
        over = Expr().plus(cost)
        if waivers.may(BUDGET):
            over.plus(waivers.short(BUDGET, most, problem.budget_minor), -1)
        linear.at_most(over, problem.budget_minor)
    if problem.most_orders is not None and waivers.mode.held(ORDERS):
        count = Expr()
        for vendor in sorted(used):
            count.plus(used[vendor])
        if waivers.may(ORDERS):
            count.plus(waivers.short(ORDERS, len(used), max(problem.most_orders, 1)), -1)
        linear.at_most(count, problem.most_orders)
