"""Small random problems, solved by trying everything, against the solver's model."""

from __future__ import annotations

import itertools
import random
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from scantling.choosing.cost import Bought, orders
from scantling.choosing.needs import needs, spares
from scantling.choosing.problem import (
    CustomsTerms,
    Demand,
    InHand,
    Level,
    PackOffer,
    Problem,
    Resource,
    Spare,
    Terms,
)
from scantling.choosing.result import Concern
from scantling.choosing.solve import solve_problem
from scantling.choosing.tables import SumTerms, Table
from scantling.choosing.trees import Maker
from scantling.choosing.verify import unmet
from scantling.model.build import Key


def random_tree(draw, keys, domains, leaf, depth=3):
    """A tree over some of the keys, each asked at most once on a path, in any order."""
    maker = Maker()

    def below(left, depth):
        if not left or depth == 0 or draw.random() < 0.2:
            return maker.leaf(leaf())
        key = draw.choice(left)
        rest = [other for other in left if other != key]
        return maker.node(key, [(answer, below(rest, depth - 1)) for answer in domains[key]])

    return below(list(keys), depth)


def random_terms(draw, name):
    """A vendor with terms of every kind."""
    customs = None
    if draw.random() < 0.4:
        customs = CustomsTerms(
            draw.choice([None, 300, 700]),
            draw.choice([Fraction(0), Fraction(47, 1000), Fraction(1, 10)]),
            draw.choice([0, 30]),
            draw.choice([0, 150]),
        )
    return Terms(
        name,
        "XTS",
        rate=draw.choice([Fraction(1), Fraction(1), Fraction(9217, 10000), Fraction(100, 83)]),
        with_tax=draw.random() < 0.5,
        tax=draw.choice([Fraction(0), Fraction(19, 100), Fraction(71, 800), Fraction(1, 3)]),
        rounded=draw.choice(["pack", "line", "order"]),
        shipping_minor=draw.choice([0, 90, 250]),
        per_kg_minor=draw.choice([0, 0, 333]),
        free_above_minor=draw.choice([None, 400, 900]),
        minimum_minor=draw.choice([None, None, 350]),
        fee_minor=draw.choice([0, 0, 25]),
        fee_share=draw.choice([Fraction(0), Fraction(0), Fraction(29, 1000)]),
        customs=customs,
    )


def random_levels(draw):
    """One to three price levels, now and then dearer at the higher one."""
    price = draw.randint(20, 400)
    levels = [Level(1, price)]
    for packs in sorted(draw.sample([2, 3, 4, 5], draw.choice([0, 0, 1, 2]))):
        price = max(1, round(price * draw.choice([0.3, 0.6, 0.9, 1.1])))
        levels.append(Level(packs, price))
    return tuple(levels)


def random_offers(draw, parts, vendors, most=2):
    """Two or three offers of every part."""
    offers = []
    for part in parts:
        offers += [
            PackOffer(
                f"{part}-{number}",
                draw.choice(vendors),
                part,
                "piece",
                draw.choice([1, 1, 2, 3, 5]),
                random_levels(draw),
                grams=draw.choice([0, 120, 701]),
                kind=draw.choice(["small", "large"]),
                lead_days=draw.choice([1, 9]),
                stock=draw.choice([None, None, 2]),
            )
            for number in range(draw.choice([1, most, most]))
        ]
    return tuple(offers)


def random_problem(seed):
    """A problem of three questions, three parts and two vendors, with a rule, a total, spares and stock."""
    draw = random.Random(seed)
    keys = [Key("part", name) for name in "abc"]
    domains = {key: tuple("xyz"[: draw.choice([1, 2, 3])]) for key in keys}
    parts = ["p", "q", "r"]

    def amounts():
        chosen = draw.sample(parts, draw.choice([0, 1, 1, 2]))
        return tuple((Resource(part, "piece"), draw.randint(1, 4)) for part in sorted(chosen))

    demands = tuple(
        Demand(f"d{n}", random_tree(draw, keys, domains, amounts, depth=2)) for n in range(draw.choice([2, 3]))
    )
    tables = [
        Table(Concern("check", f"C{n}", "s"), random_tree(draw, keys, domains, lambda: draw.random() < 0.7))
        for n in range(2)
    ]
    terms = SumTerms(tuple(random_tree(draw, [key], domains, lambda: draw.randint(0, 9)) for key in keys), 1)
    worse = draw.choice(["more", "less"])

    def limit():
        return draw.choice([True, False, *range(terms.least, terms.most + 1)])

    tables.append(
        Table(Concern("check", "T", "s"), random_tree(draw, keys, domains, limit, depth=1), ("t", "s"), worse)
    )
    vendors = {name: random_terms(draw, name) for name in ("one", "two")}
    top_up = draw.random() < 0.3
    return Problem(
        domains=domains,
        tables=tuple(tables),
        sums={("t", "s"): terms},
        demands=demands,
        offers=random_offers(draw, parts, list(vendors), 1 if top_up else 2),
        vendors=vendors,
        stock=tuple(InHand(part, "piece", draw.randint(1, 3)) for part in parts if draw.random() < 0.3),
        spares={
            part: Spare(draw.choice([Fraction(0), Fraction(1, 10), Fraction(1, 3)]), draw.choice([0, 1, 2]))
            for part in parts
            if draw.random() < 0.5
        },
        days=draw.choice([None, 5, 20]),
        budget_minor=draw.choice([None, None, 1500]),
        most_orders=draw.choice([None, None, 1]),
        top_up=top_up,
    )


def every_purchase(problem, wanted):
    """Every set of packs that meets ``wanted`` without packs above need, or with them where topping up is allowed."""
    usable = [o for o in problem.offers if problem.days is None or o.lead_days <= problem.days]
    usable = [o for o in usable if any(w.part == o.part for w in wanted)]
    ranges = []
    for offer in usable:
        most = max(-(-wanted[Resource(offer.part, "piece")] // offer.pack), *(level.packs for level in offer.levels))
        most += 12 if problem.top_up else 0
        ranges.append(range(min(most, offer.stock if offer.stock is not None else most) + 1))
    for packs in itertools.product(*ranges):
        if keeps_rules(problem, wanted, list(zip(usable, packs, strict=True))):
            yield [Bought(o, n) for o, n in zip(usable, packs, strict=True) if n]


def keeps_rules(problem, wanted, chosen):
    """Whether the packs meet the need, and each line is needed or just reaches a level."""
    for resource, want in wanted.items():
        in_hand = sum(i.quantity for i in problem.stock if i.part == resource.part)
        lines = [(o, n) for o, n in chosen if o.part == resource.part and n]
        over = in_hand + sum(o.pack * n for o, n in lines) - want
        if over < 0:
            return False
        if not problem.top_up:
            for offer, packs in lines:
                if packs - min(packs, over // offer.pack) < offer.least_need(packs):
                    return False
    return True


def cheapest_by_trying(problem):
    """The least cost over all answers and all purchases; None where there is none."""
    best = None
    keys = sorted(problem.domains)
    for combination in itertools.product(*(problem.domains[key] for key in keys)):
        answers = dict(zip(keys, combination, strict=True))
        if unmet(problem, answers):
            continue
        wanted = {r: n + spares(problem, r, n) for r, n in needs(problem, answers).items()}
        for bought in every_purchase(problem, wanted):
            parcels = orders(problem.vendors, bought)
            if problem.most_orders is not None and len(parcels) > problem.most_orders:
                continue
            if any(o.goods_with_tax_minor < (problem.vendors[o.vendor].minimum_minor or 0) for o in parcels):
                continue
            cost = sum(parcel.home_minor for parcel in parcels)
            if problem.budget_minor is not None and cost > problem.budget_minor:
                continue
            best = cost if best is None else min(best, cost)
    return best


@given(st.integers(0, 10**9))
@settings(max_examples=60)
def test_the_model_finds_what_trying_everything_finds(seed):
    problem = random_problem(seed)
    solved = solve_problem(problem, tidy=False)
    cost = cheapest_by_trying(problem)
    assert (None if solved is None else solved.cost_minor) == cost
    assert solved is None or (solved.proven and solved.bound_minor == cost)
