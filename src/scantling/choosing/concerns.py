"""The demands that a problem makes, as concerns in fixed order, and which of them an amount of packs alone can meet."""

from __future__ import annotations

from collections.abc import Iterable

from scantling.choosing.assemble import LazyCheck
from scantling.choosing.model import BUDGET, ORDERS, pin_concern
from scantling.choosing.patterns import Bar
from scantling.choosing.problem import PackOffer, Problem, Resource, Sawing
from scantling.choosing.result import Concern
from scantling.choosing.tables import concern_of
from scantling.choosing.trees import values

KINDS = ("pin", "budget", "orders", "check", "rule", "date", "supply")  # those first are kept in a conflict, if need be


def concerns_of(problem: Problem, lazy: Iterable[LazyCheck] = ()) -> tuple[Concern, ...]:
    """Return every concern of a problem that is not part of the design's structure, by kind, then by name."""
    found = {table.concern for table in problem.tables if not table.fixed}
    found |= {cut.concern for cut in problem.forbidden}
    found |= {concern_of(check, subject) for check, subject in lazy}
    found |= {pin_concern(key, answer) for key, answer in problem.pins.items()}
    found |= {Concern("supply", "", part) for part in demanded(problem)}
    found |= {Concern("date", "", offer.part) for offer in problem.offers if is_late(problem, offer)}
    if problem.budget_minor is not None:
        found.add(BUDGET)
    if problem.most_orders is not None:
        found.add(ORDERS)
    return tuple(sorted(found, key=lambda concern: (KINDS.index(concern.kind), concern)))


def demanded(problem: Problem) -> dict[str, set[Resource]]:
    """Return what some answers take, by part in sorted order."""
    found: dict[str, set[Resource]] = {demand.part: {Resource(demand.part, "board")} for demand in problem.boards}
    for demand in problem.demands:
        for value in values(demand.tree):
            for resource, amount in value:
                if amount:
                    found.setdefault(resource.part, set()).add(resource)
    return dict(sorted(found.items()))


def is_late(problem: Problem, offer: PackOffer) -> bool:
    """Return whether an offer comes after the day by which everything must have arrived."""
    return problem.days is not None and offer.lead_days > problem.days


def surely_had(problem: Problem, *, in_time: bool = False) -> frozenset[Concern]:
    """Return the supply concerns of parts of which any amount can be bought, were it late: they are never in the way.

    in_time : only those that then come in time    Boards are left out: whether panels fit hangs on the answers.
    """
    offers: dict[str, list[PackOffer]] = {}
    for offer in problem.offers:
        if _is_free(problem, offer) and not (in_time and is_late(problem, offer)):
            offers.setdefault(offer.part, []).append(offer)
    return frozenset(
        Concern("supply", "", part)
        for part, wanted in demanded(problem).items()
        if all(any(_covers(problem, offer, resource) for offer in offers.get(part, ())) for resource in wanted)
    )


def _is_free(problem: Problem, offer: PackOffer) -> bool:
    """Return whether as much as is wanted can be bought, with no least order that a small need would not reach."""
    return offer.stock is None and (problem.top_up or not problem.vendors[offer.vendor].minimum_minor)


def _covers(problem: Problem, offer: PackOffer, resource: Resource) -> bool:
    if offer.unit != resource.unit or resource.unit == "board":
        return False
    bar = Bar(offer.bar_um, problem.sawing.get(offer.part, Sawing()))
    return resource.unit != "length" or bar.fits(((resource.length_um, 1),))
