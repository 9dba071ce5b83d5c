"""Purchases too large to try everything, against another solver with a model of its own."""

from __future__ import annotations

import random
from dataclasses import replace
from fractions import Fraction

import pytest
from choosingkit import random_problem
from inventedkit import Size, invented

from scantling.choosing.needs import spares
from scantling.choosing.problem import Problem, Resource, Terms
from scantling.choosing.solve import solve_problem
from scantling.choosing.trees import paths, values

cp_model = pytest.importorskip("ortools.sat.python.cp_model")

WORKERS = 8  # with fewer it stalls, whatever the number of cores
LARGEST = 10**9


class Second:
    """The same rules written again, table by table and pack by pack, for a solver of another kind."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.model = cp_model.CpModel()
        self.taken = {
            (key, answer): self.model.new_bool_var(f"{key}={answer}")
            for key, given in problem.domains.items()
            for answer in given
        }
        for key, given in problem.domains.items():
            self.model.add_exactly_one(self.taken[key, answer] for answer in given)
        self.packs = {o.id: self.model.new_int_var(0, self.most(o), o.id) for o in problem.offers}

    def most(self, offer) -> int:
        need = sum(
            max((dict(v).get(Resource(offer.part, offer.unit), 0) for v in values(d.tree)), default=0)
            for d in self.problem.demands
        )
        need += spares(self.problem, Resource(offer.part, offer.unit), need)
        return max(-(-need // offer.pack), *(level.packs for level in offer.levels))

    def literals(self, known):
        return [self.taken[key, answer] for key, answer in known.items()]

    def tables(self) -> None:
        for table in self.problem.tables:
            terms = self.problem.sums[table.sum].terms if table.sum else ()
            total = sum((self.weighed(term) for term in terms), 0)
            for known, value in paths(table.tree):
                if value is False:
                    self.model.add_bool_or([literal.negated() for literal in self.literals(known)])
                elif value is not True:
                    rule = total <= value if table.worse == "more" else total >= value
                    self.model.add(rule).only_enforce_if(self.literals(known))

    def weighed(self, tree):
        """A number that is that of the leaf that the answers lead to."""
        given = values(tree)
        number = self.model.new_int_var(min(given), max(given), "term")
        for known, value in paths(tree):
            self.model.add(number == value).only_enforce_if(self.literals(known))
        return number

    def needs(self):
        """What is needed of every resource, as a sum of what the demands take."""
        wanted: dict[Resource, list] = {}
        for demand in self.problem.demands:
            for resource in sorted({r for value in values(demand.tree) for r, _ in value}):
                amounts = [dict(value).get(resource, 0) for value in values(demand.tree)]
                number = self.model.new_int_var(0, max(amounts), "amount")
                for known, value in paths(demand.tree):
                    self.model.add(number == dict(value).get(resource, 0)).only_enforce_if(self.literals(known))
                wanted.setdefault(resource, []).append(number)
        return {resource: sum(numbers) for resource, numbers in wanted.items()}

    def supplies(self) -> None:
        for resource, need in self.needs().items():
            want = self.with_spares(resource, need)
            in_hand = sum(i.quantity for i in self.problem.stock if i.part == resource.part)
            lines = [o for o in self.problem.offers if o.part == resource.part]
            over = in_hand + sum(o.pack * self.packs[o.id] for o in lines) - want
            self.model.add(over >= 0)
            for offer in lines:  # not a pack more than is needed: levels are left out here
                used = self.model.new_bool_var("used")
                self.model.add(self.packs[offer.id] >= 1).only_enforce_if(used)
                self.model.add(self.packs[offer.id] == 0).only_enforce_if(used.negated())
                self.model.add(over < offer.pack).only_enforce_if(used)

    def with_spares(self, resource, need):
        rule = self.problem.spares.get(resource.part)
        if rule is None:
            return need
        share, least = self.model.new_int_var(0, LARGEST, "share"), self.model.new_int_var(0, LARGEST, "spare")
        self.model.add(rule.extra.denominator * share >= need * rule.extra.numerator)
        self.model.add(rule.extra.denominator * share <= need * rule.extra.numerator + rule.extra.denominator - 1)
        anything = self.model.new_bool_var("any")
        self.model.add(need >= 1).only_enforce_if(anything)
        self.model.add(need == 0).only_enforce_if(anything.negated())
        self.model.add(least == 0).only_enforce_if(anything.negated())
        most = self.model.new_int_var(0, LARGEST, "most")
        self.model.add_max_equality(most, [share, rule.at_least])
        self.model.add(least == most).only_enforce_if(anything)
        return need + least

    def cost(self):
        total = []
        for name, terms in self.problem.vendors.items():
            lines = [o for o in self.problem.offers if o.vendor == name]
            goods = sum(o.levels[0].price_minor * self.packs[o.id] for o in lines)
            used, free = self.model.new_bool_var("parcel"), self.model.new_bool_var("free")
            for offer in lines:
                self.model.add(self.packs[offer.id] == 0).only_enforce_if(used.negated())
            if terms.free_above_minor is None:
                self.model.add(free == 0)
            else:
                self.model.add(goods >= terms.free_above_minor).only_enforce_if(free)
            if terms.minimum_minor is not None:
                self.model.add(goods >= terms.minimum_minor).only_enforce_if(used)
            paid = self.model.new_int_var(0, LARGEST, "shipping")
            self.model.add(paid >= terms.shipping_minor).only_enforce_if([used, free.negated()])
            total.append(goods + paid)
        return sum(total)

    def solved(self) -> int | None:
        """Return the least cost, None where nothing keeps the rules."""
        self.tables()
        self.supplies()
        self.model.minimize(self.cost())
        solver = cp_model.CpSolver()
        solver.parameters.num_workers = WORKERS
        solver.parameters.random_seed = 1
        status = solver.solve(self.model)
        assert status in (cp_model.OPTIMAL, cp_model.INFEASIBLE)
        return round(solver.objective_value) if status == cp_model.OPTIMAL else None


def plain(problem: Problem) -> Problem:
    """The problem with one price level, whole prices, no border, no taxes and nothing sold by mass or length."""
    vendors = {
        name: Terms(
            name,
            "XTS",
            Fraction(1),
            shipping_minor=t.shipping_minor,
            free_above_minor=t.free_above_minor,
            minimum_minor=t.minimum_minor,
        )
        for name, t in problem.vendors.items()
    }
    offers = tuple(replace(o, levels=o.levels[:1], stock=None) for o in problem.offers if o.unit == "piece")
    demands = tuple(d for d in problem.demands if all(r.unit == "piece" for v in values(d.tree) for r, _ in v))
    return replace(
        problem,
        vendors=vendors,
        offers=offers,
        demands=demands,
        days=None,
        budget_minor=None,
        most_orders=None,
        top_up=False,
    )


@pytest.mark.outside
@pytest.mark.parametrize("seed", range(12))
def test_small_purchases(seed):
    # Source: the Python library ortools 9 (Apache-2.0), CP-SAT with whole minor units
    problem = plain(random_problem(seed))
    found = solve_problem(problem, tidy=False)
    assert Second(problem).solved() == (None if found is None else found.cost_minor)


@pytest.mark.outside
@pytest.mark.parametrize("seed", range(3))
def test_invented_machines(seed):
    # Source: the Python library ortools 9 (Apache-2.0), CP-SAT with whole minor units
    size = Size(
        places=9,
        open_places=5,
        joints=4,
        rods=1,
        checks=6,
        sums=2,
        vendors=3,
        copies=random.Random(seed).choice([1, 3]),
    )
    problem = plain(invented(seed, size))
    found = solve_problem(problem, tidy=False)
    assert found is not None
    assert found.proven
    assert Second(problem).solved() == found.cost_minor
