"""The arcs that bars are cut by, against published instances: never a bar too many, every piece cut."""

from collections import Counter

import numpy as np
import pytest
from scipy.optimize import Bounds, LinearConstraint, milp

from scantling.choosing.patterns import Bar, arcs, unravelled
from scantling.choosing.problem import Sawing

N1C1W1_A = (
    "99 2,96 2,92 2,91 1,88 1,87 1,86 1,85 1,76 1,74 1,72 1,69 1,67 2,62 1,61 1,56 1,52 1,51 1,49 1,46 1,44 1,42 1,"
    "40 2,33 2,30 2,29 1,28 2,27 1,25 1,24 1,23 1,22 1,21 1,20 1,17 1,14 1,13 1,11 1,10 1,7 2,3 1"
)
T60_00 = (
    "495 1,474 1,473 1,472 1,466 1,450 1,445 1,444 1,439 1,430 1,419 1,414 1,410 1,395 1,372 1,370 1,366 3,363 1,361 1,"
    "357 1,355 1,351 1,350 2,347 1,320 1,315 1,307 1,303 1,299 1,298 2,292 1,288 1,287 1,283 1,275 2,274 1,273 2,272 2,"
    "271 1,269 2,268 1,263 1,262 1,261 1,259 1,258 1,255 1,254 1,252 3,251 1"
)


def fewest_bars(bar, wanted):
    """Return the whole flow over the arcs that cuts all that is wanted out of the fewest bars."""
    found, exact = arcs(bar, wanted)
    assert exact
    lengths = sorted(wanted)
    inner = sorted({arc.end for arc in found} - {0})
    stays, cuts = np.zeros((len(inner), len(found))), np.zeros((len(lengths), len(found)))
    for column, arc in enumerate(found):
        cuts[lengths.index(arc.length_um), column] = 1
        stays[inner.index(arc.end), column] += 1
        if arc.start:
            stays[inner.index(arc.start), column] -= 1
    rows = [LinearConstraint(stays, 0, np.inf), LinearConstraint(cuts, [wanted[um] for um in lengths], np.inf)]
    opened = np.array([arc.start == 0 for arc in found], dtype=float)
    answer = milp(opened, integrality=np.ones(len(found)), bounds=Bounds(0, np.inf), constraints=rows)
    return {arc: round(times) for arc, times in zip(found, answer.x, strict=True)}


@pytest.mark.outside
@pytest.mark.parametrize("kerf_um", [0, 2])
@pytest.mark.parametrize(
    ("text", "capacity", "optimum"),
    [
        # Source: ESICUP/datasets (public repository, CC0), Scholl N1C1W1_A: optimum 25 (BPPLIB)
        (N1C1W1_A, 100, 25),
        # Source: ESICUP/datasets (public repository, CC0), Falkenauer t60_00: optimum 20
        (T60_00, 1000, 20),
    ],
)
def test_published_instances_take_their_published_number_of_bars(text, capacity, optimum, kerf_um):
    """The published lengths are sums of a piece and a kerf: the same cuts with the saw's width in them."""
    pairs = [tuple(map(int, pair.split())) for pair in text.split(",")]
    wanted = {length - kerf_um: count for length, count in pairs}
    bar = Bar(capacity - kerf_um, Sawing(kerf_um, 0))
    cut = unravelled(fewest_bars(bar, wanted))
    assert sum(times for _, times in cut) == optimum
    assert all(bar.fits(pattern) for pattern, _ in cut)
    got = Counter()
    for pattern, times in cut:
        got.update({um: count * times for um, count in pattern})
    assert all(got[um] >= count for um, count in wanted.items())
