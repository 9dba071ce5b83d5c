"""Invented problems of a stated size, all drawn from a seed: for benchmarks, and for tests that need many problems.

They look like a small machine: places with stand-ins, panels whose thickness decides screw lengths, rods to cut, checks
over a few places each, totals, and vendors with packs, price levels, shipping, tax and a border.
"""

from __future__ import annotations

import random
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from scantling.choosing.problem import (
    CustomsTerms,
    Demand,
    Level,
    PackOffer,
    Problem,
    Resource,
    Sawing,
    Spare,
    Terms,
)
from scantling.choosing.result import Concern, Unit
from scantling.choosing.tables import SumName, SumTerms, Table
from scantling.choosing.trees import Maker, Tree, value_at
from scantling.model.build import Key

SCREW_LENGTHS = (8, 10, 12, 14, 16, 18, 20, 22, 25, 30)
THICKNESSES = (5, 6, 8, 9)
PANEL = Key("part", "panel")


@dataclass(frozen=True)
class Size:
    """How large a problem is to be."""

    places: int = 45
    open_places: int = 25
    joints: int = 40
    rods: int = 6
    checks: int = 54
    sums: int = 6
    vendors: int = 3
    offers_per_part: tuple[int, ...] = (1, 2, 2, 3)
    copies: int = 4


SMALL = Size(places=6, open_places=4, joints=4, rods=2, checks=6, sums=1, vendors=2, copies=2)
ALDER_LIKE = Size()


def invented(seed: int, size: Size = ALDER_LIKE) -> Problem:
    """Return a problem that has at least one sound choice."""
    return _Inventor(seed, size).problem()


class _Inventor:
    """Draws one problem; a hidden choice is kept sound so that the problem has an answer."""

    def __init__(self, seed: int, size: Size) -> None:
        self.draw = random.Random(seed)
        self.size = size
        self.maker = Maker()
        self.domains: dict[Key, tuple[str, ...]] = {PANEL: tuple(f"sheet-{t}" for t in THICKNESSES)}
        for number in range(size.places):
            options = self.draw.choice((2, 3, 4)) if number < size.open_places else 1
            self.domains[Key("part", f"place-{number:03d}")] = tuple(f"p{number:03d}-{o}" for o in range(options))
        for number in range(size.joints):
            head = f"M{self.draw.choice((3, 3, 4))}"
            self.domains[Key("screw", f"joint-{number:03d}")] = tuple(f"{head}x{n} screw" for n in SCREW_LENGTHS)
        self.hidden = {key: self.draw.choice(given) for key, given in self.domains.items()}
        self.open = [key for key in sorted(self.domains) if key.kind == "part" and len(self.domains[key]) > 1]

    def problem(self) -> Problem:
        """Return the whole problem."""
        joints = [self._joint(number) for number in range(self.size.joints)]
        checks = [self._check(number) for number in range(self.size.checks)]
        sums: dict[SumName, SumTerms] = {}
        checks += [self._sum_check(number, sums) for number in range(self.size.sums)]
        demands = (*self._place_demands(), *self._rod_demands(), *self._joint_demands())
        vendors = {f"vendor-{number}": self._vendor(number) for number in range(self.size.vendors)}
        return Problem(
            domains=self.domains,
            tables=(*joints, *checks),
            sums=sums,
            demands=demands,
            offers=self._offers(demands, list(vendors)),
            vendors=vendors,
            spares={f"M{d}x{n} screw": Spare(Fraction(1, 10), 2) for d in (3, 4) for n in SCREW_LENGTHS},
            sawing={f"rod-{n}": Sawing(1_000, 500) for n in range(self.size.rods)},
            currency="XTS",
            copies=self.size.copies,
        )

    def _tree(self, keys: list[Key], leaf: Mapping[Any, Any]) -> Tree:
        """Return the full tree over some keys, with a leaf for every combination of answers."""

        def below(number: int, chosen: tuple[str, ...]) -> Tree:
            if number == len(keys):
                return self.maker.leaf(leaf[chosen])
            key = keys[number]
            return self.maker.node(key, [(a, below(number + 1, (*chosen, a))) for a in self.domains[key]])

        return below(0, ())

    def _combinations(self, keys: list[Key]) -> list[tuple[str, ...]]:
        found: list[tuple[str, ...]] = [()]
        for key in keys:
            found = [(*chosen, answer) for chosen in found for answer in self.domains[key]]
        return found

    def _joint(self, number: int) -> Table:
        """Return the check of a screw's length against the panel's thickness and what lies between."""
        key = Key("screw", f"joint-{number:03d}")
        between = self.draw.randint(1, 8)
        keys = [PANEL, key]
        fits = {}
        for sheet, screw in self._combinations(keys):
            length = int(screw.split("x")[1].split()[0])
            grip = int(sheet.split("-")[1]) + between
            fits[sheet, screw] = grip + 2.4 <= length <= grip + 5.4
        self.hidden[key] = next(a for a in self.domains[key] if fits[self.hidden[PANEL], a])
        return Table(Concern("check", "JOINT-01", f"joint {number:03d}"), self._tree(keys, fits))

    def _check(self, number: int) -> Table:
        keys = sorted(self.draw.sample(self.open, min(len(self.open), self.draw.choice((1, 2, 2, 3, 3, 4)))))
        allowed = {chosen: self.draw.random() < 0.72 for chosen in self._combinations(keys)}
        allowed[tuple(self.hidden[key] for key in keys)] = True
        return Table(Concern("check", f"CHECK-{number:02d}", f"axis {number:02d}"), self._tree(keys, allowed))

    def _sum_check(self, number: int, sums: dict[SumName, SumTerms]) -> Table:
        """Return a check of a total of some places, whose limit hangs on two others."""
        name = ("mass", f"axis {number}")
        chosen = sorted(self.draw.sample(self.open, min(len(self.open), 8)))
        terms = [self._tree([key], {(a,): self.draw.randint(20, 400) for a in self.domains[key]}) for key in chosen]
        sums[name] = SumTerms(tuple(terms), 1000)
        now = sum(value_at(term, self.hidden) for term in terms)
        keys = sorted(self.draw.sample(self.open, 2))
        limits = {c: self.draw.randint(sums[name].least, sums[name].most) for c in self._combinations(keys)}
        limits[tuple(self.hidden[key] for key in keys)] = now
        return Table(Concern("check", "MOTOR-01", f"axis {number}"), self._tree(keys, limits), name)

    def _place_demands(self) -> list[Demand]:
        found = []
        for key in sorted(self.domains):
            if key.kind == "part" and key != PANEL:
                count = self.draw.choice((1, 1, 2, 2, 3, 4)) * self.size.copies
                leaves = {(a,): ((Resource(a, "piece"), count),) for a in self.domains[key]}
                found.append(Demand(f"place {key.subject}", self._tree([key], leaves)))
        return found

    def _rod_demands(self) -> list[Demand]:
        """Return rods whose length follows the panel's thickness."""
        found = []
        for number in range(self.size.rods):
            base, count = self.draw.randint(220, 420), 2 * self.size.copies
            leaves = {}
            for (sheet,) in self._combinations([PANEL]):
                um = (base + 2 * int(sheet.split("-")[1])) * 1_000
                leaves[sheet,] = ((Resource(f"rod-{number // 2}", "length", um), count),)
            found.append(Demand(f"place rod {number}", self._tree([PANEL], leaves)))
        panel = {(a,): ((Resource(a, "piece"), 6 * self.size.copies),) for a in self.domains[PANEL]}
        return [*found, Demand("place panel", self._tree([PANEL], panel))]

    def _joint_demands(self) -> list[Demand]:
        found = []
        for key in sorted(self.domains):
            if key.kind == "screw":
                count = self.draw.choice((2, 4, 4, 8)) * self.size.copies
                leaves = {(a,): ((Resource(a, "piece"), count),) for a in self.domains[key]}
                found.append(Demand(f"joint {key.subject}", self._tree([key], leaves)))
        return found

    def _vendor(self, number: int) -> Terms:
        shipping = (490, 750, 390)[number % 3]
        if number % 3 == 2:
            customs = CustomsTerms(15_000, Fraction(47, 1000), 0, 1_200)
            return Terms(f"vendor-{number}", "XXX", Fraction(9217, 10_000), True, per_kg_minor=350, customs=customs)
        return Terms(
            f"vendor-{number}",
            "XTS",
            with_tax=number % 3 == 0,
            tax=Fraction(19, 100),
            shipping_minor=shipping,
            free_above_minor=(5_000, 12_000)[number % 2],
            minimum_minor=(None, 1_000)[number % 2],
        )

    def _offers(self, demands: tuple[Demand, ...], vendors: list[str]) -> tuple[PackOffer, ...]:
        from scantling.choosing.trees import values

        resources = sorted({(r.part, r.unit) for d in demands for v in values(d.tree) for r, _ in v})
        found = []
        for part, unit in resources:
            worth = self._worth(part)
            found += [
                self._offer(f"{part}/{number}", part, unit, worth, self.draw.choice(vendors))
                for number in range(self.draw.choice(self.size.offers_per_part))
            ]
        return tuple(found)

    def _worth(self, part: str) -> int:
        """Return a price of one piece in minor units."""
        if "screw" in part:
            return self.draw.randint(4, 12)
        return self.draw.randint(40, 1_500)

    def _offer(self, name: str, part: str, unit: Unit, worth: int, vendor: str) -> PackOffer:
        pack = self.draw.choice((10, 25, 50, 100)) if "screw" in part else self.draw.choice((1, 1, 1, 2, 5, 10))
        if unit == "length":
            pack = 1
        price = max(5, round(worth * pack**0.85 * self.draw.uniform(0.8, 1.25)))
        levels = [Level(1, price)]
        if self.draw.random() < 0.3:
            levels.append(Level(self.draw.choice((3, 5, 10)), round(price * self.draw.uniform(0.7, 0.95))))
        bar = self.draw.choice((1_000_000, 2_000_000)) if unit == "length" else 0
        return PackOffer(
            name, vendor, part, unit, pack, tuple(levels), bar_um=bar, grams=self.draw.randint(5, 300), kind=part[:4]
        )
