"""What is bought anew where most is kept: only what is needed otherwise, and every rule kept."""

from __future__ import annotations

from pathlib import Path

import pytest

from scantling.build.case import Case
from scantling.build.reference import carry_over, reference_build
from scantling.choosing.choose import buy
from scantling.choosing.kept import buy_kept
from scantling.choosing.needs import needs
from scantling.choosing.opened import open_build
from scantling.choosing.problem import BoardDemand, Level, PackOffer, Problem, Terms
from scantling.choosing.result import Purchase
from scantling.choosing.solve import solve_problem
from scantling.choosing.trees import Leaf, Node
from scantling.choosing.verify import broken
from scantling.model.build import Key
from scantling.reading.project import read_project

SEDGE = Path(__file__).parents[2] / "examples" / "plotter"
PANEL = Key("part", "panel")
SMALL, LARGE = (300_000, 300_000), (600_000, 600_000)


def packs(purchase: Purchase) -> dict[str, int]:
    return {line.offer: line.packs for order in purchase.orders for line in order.lines}


@pytest.fixture(scope="module")
def standing():
    """The small example with its reference parts, and what was bought for them."""
    case = Case(read_project(SEDGE, "village"))
    build = reference_build(case, 2)
    bought = buy(open_build(case, build), build)
    assert isinstance(bought, Purchase)
    return case, build, bought


def test_nothing_changed_nothing_bought_anew(standing):
    case, build, bought = standing
    assert buy_kept(open_build(case, build).problem, build.as_dict(), bought) == bought


def test_only_what_is_needed_otherwise_is_bought_anew(standing):
    case, build, bought = standing
    before = needs(open_build(case, build).problem, build.as_dict())
    tried = 0
    for key in case.questions:
        for answer in case.answers(key, build.as_dict()):
            changed = carry_over(case, build, {key: answer})
            problem = open_build(case, changed).problem
            kept = buy_kept(problem, changed.as_dict(), bought)
            if changed == build or kept is None:
                continue
            tried += 1
            assert broken(problem, changed.as_dict(), kept) == []
            after = needs(problem, changed.as_dict())
            other = {r.part for r in {*before, *after} if before.get(r) != after.get(r)} | {"ply-6", "ply-8"}
            lines = {o.id: o.part for o in problem.offers}
            differing = {n for n in {*packs(bought), *packs(kept)} if packs(bought).get(n) != packs(kept).get(n)}
            assert {lines.get(name, name.split("/")[1]) for name in differing} <= other
    assert tried >= 5


def boards(small: int | None, large: int | None) -> Problem:
    """Boards of two sizes on offer, the small ones much the cheaper; one of the answers takes one of either."""

    def offer(size: tuple[int, int], price_minor: int) -> PackOffer:
        return PackOffer(
            f"yard/{size[0]}", "yard", "ply", "board", 1, (Level(1, price_minor),), board_um=size, kind="ply"
        )

    trees = [Node(PANEL, (("low", Leaf(1)), ("high", Leaf(count)))) for count in (small, large)]
    return Problem(
        domains={PANEL: ("low", "high")},
        boards=(BoardDemand("ply", SMALL, trees[0]), BoardDemand("ply", LARGE, trees[1])),
        offers=(offer(SMALL, 300), offer(LARGE, 1000)),
        vendors={"yard": Terms("yard", "EUR")},
    )


@pytest.mark.parametrize(
    ("small", "large", "expected"),
    [(1, 1, {"yard/300000": 1}), (2, 1, {"yard/300000": 2}), (9, 1, {"yard/600000": 1}), (None, 1, {"yard/600000": 1})],
)
def test_boards_count_by_the_size_that_is_kept(small, large, expected):
    problem = boards(small, large)
    low = solve_problem(problem)
    assert low is not None
    assert packs(low.purchase) == {"yard/300000": 1}
    kept = buy_kept(problem, {PANEL: "high"}, low.purchase)
    assert kept is not None
    assert packs(kept) == expected
