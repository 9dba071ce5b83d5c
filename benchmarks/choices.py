"""What choosing everything together saves, and how long the proof takes."""

from __future__ import annotations

import math
import time
from collections.abc import Iterator

from measuring import Measure
from planning import ALDER

from scantling.api.opening import open_design
from scantling.checks.all import CHECKS
from scantling.choosing.baselines import Baseline, cheapest_unit_price, choose_then_buy, reference_bought_best
from scantling.choosing.choose import Opened, choose, open_choice
from scantling.choosing.result import Choice
from scantling.choosing.why import why
from scantling.quantities import show_money

SHOPS = ("village", "harbour")
ENOUGH_MINOR = 2000


def measures() -> Iterator[Measure]:
    """Yield, for each workshop of the large example, the proof's time and the cost of three usual ways of choosing."""
    for shop in SHOPS:
        session = open_design(ALDER, shop)
        begun_s = time.perf_counter()
        opened = open_choice(session.case, CHECKS, session.copies)
        yield Measure(f"{shop}: tables of all checks", time.perf_counter() - begun_s, "s")
        begun_s = time.perf_counter()
        best = choose(opened)
        taken_s = time.perf_counter() - begun_s
        if not isinstance(best, Choice):
            yield Measure(f"{shop}: nothing sound can be bought, shown", taken_s, "s")
            continue
        cost = show_money(best.cost_minor, session.case.project.workshop.currency)
        yield Measure(
            f"{shop}: joint choice proven", taken_s, "s", 2.0, f"{cost}, {'' if best.proven else 'NOT '}proven"
        )
        yield from _against(shop, opened, best)
        yield from _why(shop, opened, best)


def _against(shop: str, opened: Opened, best: Choice) -> Iterator[Measure]:
    ways = {
        "cheapest unit price of each part": cheapest_unit_price,
        "reference parts bought best": reference_bought_best,
        "chosen first, bought after": choose_then_buy,
    }
    for words, way in ways.items():
        found: Baseline = way(opened)
        verdict = f"not sound: {len(found.unsound)} checks" if found.unsound else "sound"
        if found.purchase is None:
            yield Measure(f"{shop}: {words}", math.inf, "", None, f"{verdict}; cannot all be had")
            continue
        ratio = found.purchase.cost_minor / best.cost_minor
        yield Measure(f"{shop}: {words}, cost of it / of the best", ratio, "", None, verdict)


def _why(shop: str, opened: Opened, best: Choice) -> Iterator[Measure]:
    """The slowest answer of ``why`` for the first place that has three options or more."""
    key = next(k for k, answers in opened.problem.domains.items() if k.kind == "part" and len(answers) >= 3)
    answers = why(opened, best, key, enough_minor=ENOUGH_MINOR)
    taken = []
    while True:
        begun_s = time.perf_counter()
        if next(answers, None) is None:
            break
        taken.append(time.perf_counter() - begun_s)
    yield Measure(f"{shop}: why, slowest answer about {key.subject}", max(taken), "s", 2.0)
