"""What choosing everything together saves, and how long the proof takes."""

from __future__ import annotations

import gc
import math
from collections.abc import Iterator

from measuring import Measure, Took, took
from planning import ALDER

from scantling.api.opening import open_design
from scantling.checks.all import CHECKS
from scantling.choosing.baselines import Baseline, cheapest_unit_price, choose_then_buy, reference_bought_best
from scantling.choosing.choose import Opened, choose, open_choice
from scantling.choosing.result import Choice, Infeasible
from scantling.choosing.why import why
from scantling.cli.main import SELDOM
from scantling.quantities import show_money

SHOPS = ("village", "harbour")
ENOUGH_MINOR = 2000


def measures() -> Iterator[Measure]:
    """Yield, for each workshop of the large example, the proof's time and the cost of three usual ways of choosing."""
    gc.set_threshold(*SELDOM)  # as the command does
    for shop in SHOPS:
        session = open_design(ALDER, shop)
        made: list[Opened] = []
        tables = took(lambda: made.append(open_choice(session.case, CHECKS, session.copies)))  # noqa: B023 - run at once
        yield Measure(f"{shop}: tables of all checks", tables.wall_s, "s", None, tables.note)
        first = took(lambda: choose(made[0]))  # noqa: B023 - as above
        yield Measure(f"{shop}: choice, plates and samples of its answer reckoned", first.wall_s, "s", None, first.note)
        found: list[Choice | Infeasible] = []
        chosen = took(lambda: found.append(choose(made[0])))  # noqa: B023 - as above
        best = found[0]
        if not isinstance(best, Choice):
            yield Measure(f"{shop}: nothing sound can be bought, shown", chosen.wall_s, "s", None, chosen.note)
            continue
        cost = show_money(best.cost_minor, session.case.project.workshop.currency)
        note = f"{chosen.note}; {cost}, {'' if best.proven else 'NOT '}proven"
        yield Measure(f"{shop}: joint choice proven", chosen.wall_s, "s", 2.0, note)
        yield from _against(shop, made[0], best)
        yield from _why(shop, made[0], best)


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
    answers, taken = why(opened, best, key, enough_minor=ENOUGH_MINOR), list[Took]()
    for _ in opened.problem.domains[key]:
        taken.append(took(lambda: next(answers)))
    slowest = max(taken, key=lambda run: run.wall_s)
    yield Measure(f"{shop}: why, slowest answer about {key.subject}", slowest.wall_s, "s", 2.0, slowest.note)
