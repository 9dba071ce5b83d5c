"""Invented purchases of a stated size: parts, packs with price levels, vendors with fees, groups of exclusive options.

Eight categories, three of them hardware. A hidden set of vendors, as many as the cap on orders allows, stocks every
part, so that there always is an answer. All drawn from a seed.
"""

from __future__ import annotations

import random
from dataclasses import dataclass

from scantling.choosing.problem import Demand, Level, PackOffer, Problem, Resource, Terms
from scantling.choosing.trees import Leaf, Maker, Tree
from scantling.model.build import Key

CATEGORIES = 8
HARDWARE = 3  # categories 0, 1, 2
HARDWARE_PACKS = (1, 2, 4, 5, 10, 20, 25, 50, 100, 200)
OTHER_PACKS = (1, 1, 1, 2, 4, 5, 10)


@dataclass(frozen=True)
class Size:
    """How large a purchase is, and how many orders may be placed."""

    name: str
    parts: int
    offers: int
    vendors: int
    cap: int

    @property
    def groups(self) -> int:
        """Return how many groups of exclusive options there are."""
        return max(1, self.parts // 10)


SMALL = Size("small", 60, 250, 8, 4)
MIDDLE = Size("middle", 300, 2_000, 20, 7)
LARGE = Size("large", 1_000, 10_000, 40, 10)
BEYOND = Size("beyond", 3_000, 30_000, 60, 10)


def purchase_family(size: Size, seed: int) -> Problem:
    """Return one purchase of the family."""
    return _Inventor(size, seed).problem()


class _Inventor:
    def __init__(self, size: Size, seed: int) -> None:
        self.size = size
        self.draw = random.Random(f"{size.name} {seed}")
        self.parts = [f"part-{number:04d}" for number in range(size.parts)]
        self.category = {part: self.draw.randrange(CATEGORIES) for part in self.parts}
        self.price = {part: self._price(part) for part in self.parts}
        self.maker = Maker()
        self.most: dict[str, int] = dict.fromkeys(self.parts, 0)

    def problem(self) -> Problem:
        """Return the purchase."""
        domains, demands = self._needs()
        vendors, sells = self._vendors()
        return Problem(
            domains=domains,
            tables=(),
            sums={},
            demands=tuple(demands),
            offers=self._offers(sells),
            vendors=vendors,
            currency="XTS",
            copies=1,
            most_orders=self.size.cap,
        )

    def _is_hardware(self, part: str) -> bool:
        return self.category[part] < HARDWARE

    def _price(self, part: str) -> float:
        return (12 if self._is_hardware(part) else 900) * self.draw.lognormvariate(0, 0.9)

    def _needs(self) -> tuple[dict[Key, tuple[str, ...]], list[Demand]]:
        grouped = self.draw.sample(self.parts, round(0.55 * len(self.parts)))
        domains: dict[Key, tuple[str, ...]] = {}
        demands: list[Demand] = []
        unused = list(grouped)
        for number in range(self.size.groups):
            key = Key("part", f"group-{number:03d}")
            options = [f"option-{o}" for o in range(self.draw.randint(2, 5))]
            domains[key] = tuple(options)
            branches: list[tuple[str, Tree]] = [(o, self.maker.leaf(self._option(grouped, unused))) for o in options]
            demands.append(Demand(key.subject, self.maker.node(key, branches)))
            for resource in {r.part for _, leaf in branches if isinstance(leaf, Leaf) for r, _ in leaf.value}:
                amounts = [dict(leaf.value).get(Resource(resource, "piece"), 0) for _, leaf in branches]  # type: ignore[union-attr]
                self.most[resource] += max(amounts)
        for part in self.parts:
            if part not in grouped or self.draw.random() < 0.15:
                count = self.draw.randint(4, 120) if self._is_hardware(part) else self.draw.randint(1, 8)
                self.most[part] += count
                demands.append(Demand(part, self.maker.leaf(((Resource(part, "piece"), count),))))
        return domains, demands

    def _option(self, grouped: list[str], unused: list[str]) -> tuple[tuple[Resource, int], ...]:
        """Return what one option takes; parts not yet named come first."""
        count = self.draw.randint(2, 6)
        chosen = {unused.pop() if unused else self.draw.choice(grouped) for _ in range(count)}
        return tuple(
            (Resource(part, "piece"), self.draw.randint(4, 24) if self._is_hardware(part) else self.draw.randint(1, 4))
            for part in sorted(chosen)
        )

    def _vendors(self) -> tuple[dict[str, Terms], dict[str, list[str]]]:
        names = [f"vendor-{number:02d}" for number in range(self.size.vendors)]
        vendors, sells = {}, {}
        for number, name in enumerate(names):
            free = None if self.draw.random() < 0.3 else self.draw.randint(2_500, 15_000)
            fee = self.draw.randint(390, 1_490)
            vendors[name] = Terms(name, "XTS", shipping_minor=fee, free_above_minor=free)
            every = range(CATEGORIES)
            kinds = set(every) if number % 8 == 0 else set(self.draw.sample(every, self.draw.randint(2, 4)))
            sells[name] = [part for part in self.parts if self.category[part] in kinds]
        return vendors, sells

    def _offers(self, sells: dict[str, list[str]]) -> tuple[PackOffer, ...]:
        level = {vendor: self.draw.uniform(0.75, 1.25) for vendor in sells}
        hidden = self.draw.sample(sorted(sells), self.size.cap)
        pairs = [(self.draw.choice(hidden), part) for part in self.parts]
        every = [(vendor, part) for vendor, parts in sells.items() for part in parts]
        pairs += self.draw.choices(every, k=self.size.offers - len(pairs))
        return tuple(self._offer(number, *pair, level[pair[0]]) for number, pair in enumerate(pairs))

    def _offer(self, number: int, vendor: str, part: str, level: float) -> PackOffer:
        hardware = self._is_hardware(part)
        pack = self.draw.choice(HARDWARE_PACKS if hardware else OTHER_PACKS)
        piece = self.price[part] * level * self.draw.lognormvariate(0, 0.22) * pack ** (-0.12 if hardware else -0.06)
        price = max(1, round(piece * pack * (1.8 if hardware and pack == 1 else 1)))
        levels = [Level(1, price)]
        if self.draw.random() < 0.35:
            levels.append(self._next(levels[-1]))
            if self.draw.random() < 0.4:
                levels.append(self._next(levels[-1]))
        return PackOffer(f"offer-{number:05d}", vendor, part, "piece", pack, tuple(levels))

    def _next(self, level: Level) -> Level:
        packs = level.packs * self.draw.choice((2, 3, 5))
        return Level(packs, max(1, round(level.price_minor * self.draw.uniform(0.85, 0.96))))
