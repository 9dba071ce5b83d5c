"""Small random problems, what trying everything says of them, and a machine of nothing but questions and checks."""

from __future__ import annotations

import itertools
import random
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from types import SimpleNamespace

from scantling.build.memo import Memo
from scantling.checks.check import Check
from scantling.choosing.concerns import surely_had
from scantling.choosing.cost import Bought, orders
from scantling.choosing.model import BUDGET, ORDERS
from scantling.choosing.needs import needs, spares
from scantling.choosing.opened import Opened
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
from scantling.choosing.tables import SumTerms, Table, check_table
from scantling.choosing.trees import Maker
from scantling.choosing.verify import unmet
from scantling.findings import Finding, Verdict
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


@dataclass
class Bench:
    """A case of bare questions: all that growing, choosing and explaining ask of a real one."""

    domains: Mapping[Key, tuple[str, ...]]
    accepted: tuple[object, ...] = ()
    memo: Memo = field(default_factory=Memo)

    @property
    def project(self):
        """A design that accepts what it accepts, and no workshop."""
        return SimpleNamespace(design=SimpleNamespace(accepted=self.accepted), workshop=None)

    @property
    def questions(self) -> tuple[Key, ...]:
        """All questions."""
        return tuple(sorted(self.domains))

    def answers(self, key: Key, known: Mapping[Key, str]) -> tuple[str, ...]:
        """Return the answers to a question, whatever is known."""
        return self.domains[key]


def drawn_check(draw: random.Random, code: str, domains: Mapping[Key, tuple[str, ...]], good: float, **more) -> Check:
    """A check over two or three questions, read one after another, with a margin of its own for every combination."""
    keys = sorted(draw.sample(sorted(domains), min(len(domains), draw.choice([1, 2, 2, 3]))))
    margins = {}
    for combination in itertools.product(*(domains[key] for key in keys)):
        size = draw.choice([0.001, 0.02, 0.3, 0.5, 1.4])
        margins[combination] = size if draw.random() < good else -size

    def run(reader, subject: str) -> Finding:
        margin = margins[tuple(reader.read(key) for key in keys)]
        verdict = Verdict.SOUND if margin > 0 else Verdict.UNSOUND
        return Finding(code, subject, "drawn", verdict, "", "none", margin=margin)

    return Check(code, "drawn", lambda _: ("s",), run, "none", **more)


def bench_of(problem: Problem, checks: Iterable[Check]) -> Opened:
    """Open a problem with the tables of some checks added; costly ones are left to be run on answers."""
    case, given = Bench(problem.domains), tuple(checks)
    tables = tuple(check_table(check, "s", case, frozenset()) for check in given if not check.costly)
    lazy = tuple((check, "s") for check in given if check.costly)
    return Opened(case, given, replace(problem, tables=(*problem.tables, *tables)), lazy)


def every_answer(problem: Problem) -> Iterator[dict[Key, str]]:
    """Yield every combination of answers."""
    keys = sorted(problem.domains)
    for combination in itertools.product(*(problem.domains[key] for key in keys)):
        yield dict(zip(keys, combination, strict=True))


def cheapest_basket(problem: Problem, answers: Mapping[Key, str], parts: Iterable[str] | None = None) -> int | None:
    """The least cost of what some answers take (of some parts alone), within dates and orders but not the budget."""
    wanted = {r: n + spares(problem, r, n) for r, n in needs(problem, answers).items()}
    if parts is not None:
        wanted = {resource: amount for resource, amount in wanted.items() if resource.part in frozenset(parts)}
    costs = []
    for bought in every_purchase(problem, wanted):
        parcels = orders(problem.vendors, bought)
        few = problem.most_orders is None or len(parcels) <= problem.most_orders
        if few and all(o.goods_with_tax_minor >= (problem.vendors[o.vendor].minimum_minor or 0) for o in parcels):
            costs.append(sum(parcel.home_minor for parcel in parcels))
    return min(costs, default=None)


def can_by_trying(problem: Problem, held: frozenset[Concern]) -> bool:
    """Whether some answers and some basket meet all concerns in ``held``; beside the budget all parts must be had."""
    late = {concern.subject for concern in held if concern.kind == "date"}
    loose = replace(
        problem,
        tables=tuple(table for table in problem.tables if table.fixed or table.concern in held),
        offers=tuple(o if o.part in late else replace(o, lead_days=0) for o in problem.offers),
        most_orders=problem.most_orders if ORDERS in held else None,
    )
    pins = {key: answer for key, answer in problem.pins.items() if _pin(key, answer) in held}
    parts = None if BUDGET in held else {concern.subject for concern in held if concern.kind == "supply"}
    limit = problem.budget_minor if BUDGET in held else None
    for answers in every_answer(loose):
        if any(answers[key] != answer for key, answer in pins.items()) or unmet(loose, answers):
            continue
        cost = cheapest_basket(loose, answers, parts)
        if cost is not None and (limit is None or cost <= limit):
            return True
    return False


def _pin(key: Key, answer: str) -> Concern:
    return Concern("pin", "", str(key), answer)


def firm_parts(problem: Problem) -> set[str]:
    """The parts of which any amount can be bought, were it late: not having them is never a way out."""
    return {concern.subject for concern in surely_had(problem)}
