"""Bars cut to length: published instances, brute force, and pieces that are never too short."""

from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from scantling.shapes.bars import (
    Bar,
    Piece,
    best_fit_decreasing,
    fits,
    lay_out,
    least_bars,
    maximal_patterns,
    ticks_down,
    ticks_up,
)

N1C1W1_A = (
    "99 2,96 2,92 2,91 1,88 1,87 1,86 1,85 1,76 1,74 1,72 1,69 1,67 2,62 1,61 1,56 1,52 1,51 1,49 1,46 1,44 1,42 1,"
    "40 2,33 2,30 2,29 1,28 2,27 1,25 1,24 1,23 1,22 1,21 1,20 1,17 1,14 1,13 1,11 1,10 1,7 2,3 1"
)
T60_00 = (
    "495 1,474 1,473 1,472 1,466 1,450 1,445 1,444 1,439 1,430 1,419 1,414 1,410 1,395 1,372 1,370 1,366 3,363 1,361 1,"
    "357 1,355 1,351 1,350 2,347 1,320 1,315 1,307 1,303 1,299 1,298 2,292 1,288 1,287 1,283 1,275 2,274 1,273 2,272 2,"
    "271 1,269 2,268 1,263 1,262 1,261 1,259 1,258 1,255 1,254 1,252 3,251 1"
)


def instance(text, capacity, kerf_mm):
    """The published lengths as sums of a piece and a kerf: the same cuts with the saw's width in them."""
    pairs = [tuple(map(int, pair.split())) for pair in text.split(",")]
    return [Piece(str(w), w - kerf_mm, n) for w, n in pairs], Bar("bar", capacity - kerf_mm)


@pytest.mark.outside
@pytest.mark.parametrize("kerf_mm", [0, 1, 2.5])
@pytest.mark.parametrize(
    ("text", "capacity", "optimum", "best_fit"),
    [
        # Source: ESICUP/datasets (public repository, CC0), Scholl N1C1W1_A: optimum 25 (BPPLIB), best fit 25
        (N1C1W1_A, 100, 25, 25),
        # Source: ESICUP/datasets (public repository, CC0), Falkenauer t60_00: optimum 20, best fit decreasing 23
        (T60_00, 1000, 20, 23),
    ],
)
def test_published_instances(text, capacity, optimum, best_fit, kerf_mm):
    pieces, bar = instance(text, capacity, kerf_mm)
    layout = best_fit_decreasing(pieces, [bar], kerf_mm)
    assert len(layout.bars) == best_fit
    assert least_bars(pieces, bar, kerf_mm) == optimum
    cut = sorted(placed.name for one in layout.bars for placed in one.pieces)
    assert cut == sorted(name for piece in pieces for name in [piece.name] * piece.quantity)


@given(
    st.lists(st.tuples(st.integers(1, 60), st.integers(1, 4)), min_size=1, max_size=5),
    st.integers(20, 100),
    st.integers(0, 5),
)
@settings(deadline=None)
def test_patterns_are_all_the_maximal_ones(kinds, length_mm, kerf_mm):
    pieces = [Piece(f"p{i}", w, n) for i, (w, n) in enumerate(kinds)]
    bar = Bar("bar", length_mm)

    def is_in(counts):
        return fits(counts, pieces, bar, kerf_mm) and all(c <= p.quantity for c, p in zip(counts, pieces, strict=True))

    def plus_one(counts, i):
        return tuple(c + (k == i) for k, c in enumerate(counts))

    every = [c for c in product(*(range(p.quantity + 1) for p in pieces)) if any(c) and is_in(c)]
    maximal = {c for c in every if not any(is_in(plus_one(c, i)) for i in range(len(c)))}
    found = maximal_patterns(pieces, bar, kerf_mm)
    assert not found.capped
    assert len(found.counts) == len(set(found.counts))
    assert set(found.counts) == maximal


def test_the_cap_is_told():
    pieces = [Piece(str(k), 101 + k, 50) for k in range(12)]
    found = maximal_patterns(pieces, Bar("bar", 1000), 1, cap=50)
    assert (len(found.counts), found.capped) == (50, True)
    all_of_them = maximal_patterns(pieces[:3], Bar("bar", 1000), 1)
    assert not all_of_them.capped
    assert maximal_patterns([Piece(str(k), 400 + k) for k in range(301)], Bar("bar", 1000), 1).capped


def test_many_single_pieces_do_not_hang():
    found = maximal_patterns([Piece(str(k), 100 + k % 7, 1) for k in range(60)], Bar("bar", 1000), 1)
    assert found.capped


@given(
    st.lists(st.tuples(st.floats(0.1, 900), st.integers(1, 3)), min_size=1, max_size=6),
    st.floats(0, 4),
    st.floats(0, 10),
    st.floats(0, 10),
)
@settings(deadline=None)
def test_no_piece_is_short_and_no_cut_lies_in_a_piece(kinds, kerf_mm, head_mm, tail_mm):
    pieces = [Piece(f"p{i}", w, n) for i, (w, n) in enumerate(kinds)]
    bar = Bar("bar", 1000, None, head_mm, tail_mm)
    layout = best_fit_decreasing(pieces, [bar], kerf_mm)
    assert layout.misfits == ()
    wanted = {piece.name: piece.length_mm for piece in pieces}
    for one in layout.bars:
        at_mm = head_mm
        for placed in one.pieces:
            assert placed.end_mm - placed.start_mm >= wanted[placed.name] - 1e-9
            assert placed.end_mm - placed.start_mm <= wanted[placed.name] + 1e-4 + 1e-9
            assert placed.start_mm >= at_mm - 1e-9
            at_mm = placed.end_mm + kerf_mm
        assert one.pieces[-1].end_mm <= 1000 - tail_mm + 1e-9
        for start_mm, end_mm in one.cuts:
            assert all(end_mm <= p.start_mm + 1e-9 or start_mm >= p.end_mm - 1e-9 for p in one.pieces)
        assert len(one.cuts) in (len(one.pieces), len(one.pieces) - 1)
        assert one.rest_mm <= max(0, 1000 - tail_mm - one.pieces[-1].end_mm - kerf_mm) + 1e-6


def test_a_class_of_triplets_whose_answer_is_known_by_construction():
    # three pieces fill a bar exactly (Falkenauer's rule): 12 bars, proven by the bound
    pieces = []
    for k in range(12):
        a, b = 250 + 7 * k, 300 + 3 * k
        pieces += [Piece(f"{k}a", a), Piece(f"{k}b", b), Piece(f"{k}c", 1000 - a - b - 2 * 3)]
    assert least_bars(pieces, Bar("bar", 1000), 3) == 12
    assert lay_out([1, 1, 1], pieces[:3], Bar("bar", 1000), 3).cuts[-1][1] < 1000


def test_two_of_400_do_not_come_out_of_800():
    # 2 x 400 + one cut of 1 + two facings of 1.5 = 804: a stock of 800 is too short, one of 804 is just enough
    pieces = [Piece("rod", 400, 2)]
    assert not fits([2], pieces, Bar("800", 800, None, 1.5, 1.5), 1.0)
    assert fits([2], pieces, Bar("804", 804, None, 1.5, 1.5), 1.0)
    cut = lay_out([2], pieces, Bar("804", 804, None, 1.5, 1.5), 1.0)
    assert [(p.start_mm, p.end_mm) for p in cut.pieces] == [(1.5, 401.5), (402.5, 802.5)]
    assert cut.cuts == ((401.5, 402.5), (802.5, 803.5))
    assert cut.rest_mm == 0


def test_what_ends_with_the_bar_needs_no_last_cut():
    cut = lay_out([2], [Piece("rod", 499.5, 2)], Bar("bar", 1000), 1.0)
    assert cut.cuts == ((499.5, 500.5),)
    assert lay_out([1], [Piece("rod", 999.8)], Bar("bar", 1000), 1.0).cuts == ((999.8, 1000),)


def test_offcuts_come_first_and_run_out():
    bars = [Bar("offcut", 450, 1), Bar("metre", 1000)]
    layout = best_fit_decreasing([Piece("rod", 400, 3), Piece("long", 1200)], bars, 1.0)
    assert [one.bar.name for one in layout.bars] == ["offcut", "metre"]
    assert layout.misfits == ("long",)
    assert layout.bars[0].rest_mm == 49
    assert layout.bars[1].rest_mm == pytest.approx(198)


def test_rounding_is_always_on_the_safe_side():
    assert (ticks_up(0.1), ticks_down(0.1)) == (1000, 1000)
    assert (ticks_up(25.4 * 3 / 8), ticks_down(25.4 * 3 / 8)) == (95250, 95250)
    assert (ticks_up(1 / 3), ticks_down(1 / 3)) == (3334, 3333)
    assert not fits([3], [Piece("third", 1000 / 3, 3)], Bar("bar", 1000), 0)
    with pytest.raises(ValueError, match="do not fit"):
        lay_out([3], [Piece("third", 1000 / 3, 3)], Bar("bar", 1000), 0)


def test_more_pieces_than_any_job_has():
    with pytest.raises(ValueError, match="limit"):
        best_fit_decreasing([Piece("rod", 1, 10**9)], [Bar("bar", 1000)], 1)


@given(st.lists(st.integers(5, 100), min_size=1, max_size=7), st.integers(0, 4))
@settings(deadline=None, max_examples=40)
def test_the_bound_is_a_bound(lengths, kerf_mm):
    pieces = [Piece(f"p{i}", w) for i, w in enumerate(lengths)]
    bar = Bar("bar", 100)
    bound = least_bars(pieces, bar, kerf_mm)
    assert bound <= fewest(sorted(lengths, reverse=True), [], 100 + kerf_mm, kerf_mm)
    assert bound <= len(best_fit_decreasing(pieces, [bar], kerf_mm).bars)


def fewest(lengths, rooms, room, kerf_mm):
    """The fewest bars by putting each piece into each bar in turn."""
    if not lengths:
        return len(rooms)
    need = lengths[0] + kerf_mm
    ways = [fewest(lengths[1:], [*rooms, room - need], room, kerf_mm)]
    for k, free in enumerate(rooms):
        if free >= need:
            ways.append(fewest(lengths[1:], [*rooms[:k], free - need, *rooms[k + 1 :]], room, kerf_mm))
    return min(ways)
