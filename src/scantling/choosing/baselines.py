"""Three usual ways of choosing, to hold the joint choice against."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from scantling.build.reference import carry_over, reference_build
from scantling.choosing.choose import buy
from scantling.choosing.opened import Opened, failing_lazy
from scantling.choosing.problem import Demand, PackOffer, Terms
from scantling.choosing.result import Concern, Infeasible, Purchase
from scantling.choosing.solve import solve_problem
from scantling.choosing.tables import concern_of
from scantling.choosing.trees import value_at
from scantling.model.build import Build, Key


@dataclass(frozen=True)
class Baseline:
    """What a way of choosing comes to: a build, its best purchase (None where none can be had), what is not sound."""

    build: Build
    purchase: Purchase | None
    unsound: tuple[Concern, ...]


def reference_bought_best(opened: Opened) -> Baseline:
    """Return the reference parts, bought as cheaply as they can be."""
    return _bought(opened, reference_build(opened.case, opened.problem.copies))


def cheapest_unit_price(opened: Opened) -> Baseline:
    """Return, for each place, the part whose pieces cost least by unit price, whatever follows; bought best."""
    case, prices = opened.case, unit_prices(opened)
    build = reference_build(case, opened.problem.copies)
    changes: dict[Key, str] = {}
    for demand in opened.problem.demands:
        kind, _, name = demand.name.partition(" ")
        key = case.part_key(name) if kind == "place" else None
        if key is not None and key not in changes and len(opened.problem.domains[key]) > 1:
            changes[key] = min(
                opened.problem.domains[key], key=lambda part: (_cost(demand, key, part, build, prices), part)
            )
    return _bought(opened, carry_over(case, build, changes))


def choose_then_buy(opened: Opened) -> Baseline:
    """Return the sound build whose parts cost least by unit price, bought only after it was chosen."""
    by_unit = replace(
        opened.problem,
        offers=tuple(_by_unit(offer) for offer in opened.problem.offers),
        vendors={name: _without_fees(terms) for name, terms in opened.problem.vendors.items()},
        spares={},
        most_orders=None,
        budget_minor=None,
    )
    solved = solve_problem(by_unit, tidy=False)
    if solved is None:
        return Baseline(reference_build(opened.case, opened.problem.copies), None, ())
    return _bought(opened, Build.of(solved.answers, opened.problem.copies))


def unit_prices(opened: Opened) -> Mapping[str, Fraction]:
    """Return the least price of a piece, a gram or a µm of each part, in home minor units."""
    found: dict[str, Fraction] = {}
    for offer in opened.problem.offers:
        each = offer.pack * (offer.bar_um or 1)
        price = min(Fraction(level.price_minor) for level in offer.levels) * opened.problem.vendors[offer.vendor].rate
        found[offer.part] = min(found.get(offer.part, price / each), price / each)
    return found


def _cost(demand: Demand, key: Key, part: str, build: Build, prices: Mapping[str, Fraction]) -> Fraction:
    """Return what a place takes with a part, at unit prices; a part that nobody sells is dearest of all."""
    needs = value_at(demand.tree, {**build.as_dict(), key: part}) if _is_known(demand, key, part, build) else ()
    total = Fraction(0)
    for resource, amount in needs:
        if resource.part not in prices:
            return Fraction(10**12)
        total += prices[resource.part] * amount * (resource.length_um or 1)
    return total


def _is_known(demand: Demand, key: Key, part: str, build: Build) -> bool:
    try:
        value_at(demand.tree, {**build.as_dict(), key: part})
    except KeyError:
        return False
    return True


def _by_unit(offer: PackOffer) -> PackOffer:
    """Return an offer at its best level from the first pack on, without its stock limit."""
    best = min(offer.levels, key=lambda level: level.price_minor)
    return replace(offer, levels=(best._replace(packs=1),), stock=None)


def _without_fees(terms: Terms) -> Terms:
    return replace(
        terms, shipping_minor=0, per_kg_minor=0, free_above_minor=None, minimum_minor=None, fee_minor=0, customs=None
    )


def _bought(opened: Opened, build: Build) -> Baseline:
    purchase = buy(opened, build)
    answers = build.as_dict()
    failing = [
        table.concern for table in opened.problem.tables if table.sum is None and not value_at(table.tree, answers)
    ]
    for table in opened.problem.tables:
        if table.sum is not None:
            total = sum(value_at(term, answers) for term in opened.problem.sums[table.sum].terms)
            if not table.allows(value_at(table.tree, answers), total):
                failing.append(table.concern)
    failing += [concern_of(check, subject) for check, subject in failing_lazy(opened, answers)]
    return Baseline(build, None if isinstance(purchase, Infeasible) else purchase, tuple(sorted(set(failing))))
