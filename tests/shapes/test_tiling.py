"""Drawings cut into sheets: never more than trying every way by brute force, seams off the holes, nothing lost."""

from itertools import combinations, pairwise, product
from math import ceil, hypot

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from scantling.errors import FaultsError
from scantling.shapes.outline import rectangle_loop
from scantling.shapes.paper import SIZES_MM, Paper
from scantling.shapes.seams import Rating, Sheets, unlucky
from scantling.shapes.tiling import Spot, tile

SMALL = Paper("slip", 60, 50)  # 50 x 40 to print on
A4 = Paper("A4", *SIZES_MM["A4"])
RING = [(0, 0), (100, 0), (100, 76), (0, 76), (0, 0)]
ELL = [(0, 0), (120, 0), (120, 30), (30, 30), (30, 100), (0, 100), (0, 0)]
FORK = [(0, 0), (20, 0), (20, 70), (100, 70), (100, 0), (120, 0), (120, 90), (0, 90), (0, 0)]


def samples(lines, every_mm=0.5):
    points = []
    for run in lines:
        for (ax, ay), (bx, by) in pairwise(run):
            steps = max(1, ceil(hypot(bx - ax, by - ay) / every_mm))
            points += [(ax + (bx - ax) * k / steps, ay + (by - ay) * k / steps) for k in range(steps + 1)]
    return points


def joined(cells):
    """True where every cell can be reached from the first over common edges."""
    reached, grown = set(), {min(cells)}
    while grown != reached:
        reached = grown
        grown = reached | {c for c in cells for r in reached if abs(c[0] - r[0]) + abs(c[1] - r[1]) == 1}
    return grown == set(cells)


def fewest_by_trying_all(lines, paper, overlap_mm, step_mm, below):
    """Every shift, then every set of cells, smallest sets first: plain and slow, shares nothing with the search."""
    points = samples(lines, 4)
    low_x, low_y = min(x for x, _ in points), min(y for _, y in points)
    px, py = paper.usable_width_mm - overlap_mm, paper.usable_height_mm - overlap_mm
    best = below
    for sx, sy in product(range(0, ceil(px), step_mm), range(0, ceil(py), step_mm)):
        shown = {}
        for i, j in product(range(-1, 6), range(-1, 6)):
            x, y = low_x - sx + i * px - overlap_mm / 2, low_y - sy + j * py - overlap_mm / 2
            inside = {
                k
                for k, (u, v) in enumerate(points)
                if x - 1e-9 <= u <= x + px + overlap_mm + 1e-9 and y - 1e-9 <= v <= y + py + overlap_mm + 1e-9
            }
            if inside:
                shown[i, j] = inside
        best = min(best, smallest_cover(shown, len(points), best))
    return best


def smallest_cover(shown, count, below):
    """Size of the smallest set of cells that show everything, as long as it is smaller than ``below``."""
    must = set()
    for k in range(count):
        holders = [cell for cell, inside in shown.items() if k in inside]
        if len(holders) == 1:
            must.add(holders[0])
    spare = sorted(set(shown) - must)
    for more in range(max(0, below - len(must))):
        for extra in combinations(spare, more):
            cells = must | set(extra)
            if len(set().union(*(shown[c] for c in cells))) == count and joined(cells):
                return len(cells)
    return below


@pytest.mark.parametrize("line", [RING, ELL, FORK], ids=["ring", "ell", "fork"])
@pytest.mark.parametrize("overlap_mm", [6, 12])
def test_no_fewer_sheets_by_trying_all(line, overlap_mm):
    got = tile([line], [], [SMALL], overlap_mm=overlap_mm, step_mm=14)
    assert fewest_by_trying_all([line], SMALL, overlap_mm, 14, below=len(got.tiles)) == len(got.tiles)
    assert joined({(t.column, t.row) for t in got.tiles})


def test_inner_sheets_with_nothing_on_them_are_left_out():
    big = [(0, 0), (200, 0), (200, 150), (0, 150), (0, 0)]
    got = tile([big], [], [SMALL])
    assert len(got.tiles) < max(t.column + 1 for t in got.tiles) * max(t.row + 1 for t in got.tiles)


@given(
    st.lists(st.tuples(st.floats(0, 150), st.floats(0, 120)), min_size=2, max_size=7),
    st.sampled_from([2.0, 8.0, 15.0]),
)
@settings(max_examples=15, deadline=None)
def test_everything_is_on_some_sheet_and_sheets_hang_together(line, overlap_mm):
    got = tile([line], [], [SMALL, SMALL.turned()], overlap_mm=overlap_mm, step_mm=20)
    slack_mm = 1e-6
    for x, y in samples([line], 0.25):
        assert any(
            t.window.x_min_mm - slack_mm <= x <= t.window.x_max_mm + slack_mm
            and t.window.y_min_mm - slack_mm <= y <= t.window.y_max_mm + slack_mm
            for t in got.tiles
        )
    assert joined({(t.column, t.row) for t in got.tiles})
    assert len({t.name for t in got.tiles}) == len(got.tiles)
    for t in got.tiles:
        assert t.window.width_mm == pytest.approx(got.paper.usable_width_mm)
        assert t.window.height_mm == pytest.approx(got.paper.usable_height_mm)
        assert t.window.width_mm - t.cell.width_mm == pytest.approx(overlap_mm)


def test_a_rectangle_needs_what_the_count_by_hand_says():
    # columns = ceil((w - overlap) / (paper - overlap)): 400 x 375 on 200 x 287 with 12 mm: 3 x 2 upright, 2 x 2 turned
    box = [*rectangle_loop(400, 375).flattened(), (0, 0)]
    middle = [(200, 0), (200, 375), (0, 190), (400, 190)]
    upright = tile([box, middle], [], [A4])
    assert len(upright.tiles) == 6
    turned = tile([box, middle], [], [A4, A4.turned()])
    assert (len(turned.tiles), turned.paper.name) == (4, "A4 turned")


def test_what_fits_exactly_takes_one_sheet():
    assert len(tile([[(3, 3), (203, 290)]], [], [A4]).tiles) == 1
    assert len(tile([[(3, 3), (203.3, 290)]], [], [A4]).tiles) == 2
    one = tile([[(0, 0), (100, 100)]], [], [A4])
    assert (one.seams, one.crosses, one.tiles[0].name) == ((), (), "A1")
    assert one.tiles[0].window.middle == pytest.approx((50, 50))


def test_a_motor_s_holes_stay_on_one_sheet_and_off_the_seam():
    box = [*rectangle_loop(300, 150).flattened(), (0, 0)]
    holes = [Spot((150 + x, 75 + y), 2, "motor") for x in (-21, 21) for y in (-21, 21)]
    got = tile([box], holes, [A4])
    assert (got.near_seams, got.split_groups) == ((), ())
    assert len(got.tiles) == 2
    ((x, _), _) = got.seams[0]
    assert abs(x - 150) >= 26


def test_what_cannot_be_helped_is_told():
    box = [*rectangle_loop(390, 150).flattened(), (0, 0)]
    row = [Spot((10 + 10 * k, 75), 2, "rail") for k in range(38)]
    got = tile([box], row, [A4])
    assert got.split_groups == ("rail",)
    assert len(tile([box], row, [A4], seam_mm=6).near_seams) >= 1


@given(
    st.lists(st.tuples(st.floats(-50, 250), st.floats(-50, 250), st.sampled_from(["", "a", "b"])), max_size=12),
    st.sets(st.tuples(st.integers(-1, 3), st.integers(-1, 3)), min_size=1),
)
def test_the_quick_rating_is_the_plain_one(spots, cells):
    sheets = Sheets((3.0, -4.0), (60.0, 50.0), frozenset(cells))
    places, groups = [(x, y) for x, y, _ in spots], [group for _, _, group in spots]
    near, split = unlucky(sheets, list(zip(places, groups, strict=True)), 5.0)
    assert Rating(places, groups, 5.0, 12.0, (0, 0))(sheets)[:2] == (len(split), len(near))


def test_crosses_are_seen_on_all_sheets_that_meet_there():
    got = tile(
        [[*rectangle_loop(400, 500).flattened(), (0, 0)], [(0, 250), (400, 250)], [(200, 0), (200, 500)]], [], [A4]
    )
    assert len(got.tiles) == 6
    for start, end in got.seams:
        for point in (start, end):
            assert point in got.crosses
            seen = [
                t
                for t in got.tiles
                if t.window.x_min_mm + 5 <= point[0] <= t.window.x_max_mm - 5
                and t.window.y_min_mm + 5 <= point[1] <= t.window.y_max_mm - 5
            ]
            assert len(seen) >= 2
    assert [t.name for t in got.tiles] == ["A1", "B1", "C1", "A2", "B2", "C2"]
    assert got.tiles[0].cell.y_min_mm > got.tiles[-1].cell.y_min_mm


def test_papers_without_room_and_drawings_beyond_all_paper():
    with pytest.raises(FaultsError, match="SHAPE-17"):
        tile([RING], [], [Paper("stamp", 30, 20)])
    with pytest.raises(FaultsError, match="SHAPE-17"):
        tile([RING], [], [SMALL], overlap_mm=0)
    with pytest.raises(FaultsError, match="larger paper"):
        tile([[(0, 0), (9000, 9000)]], [], [A4])


def test_strips_and_turning():
    paper = A4.with_strips(left_mm=9, bottom_mm=16)
    assert (paper.usable_width_mm, paper.usable_height_mm) == (191, 271)
    assert (paper.turned().usable_width_mm, paper.turned().usable_height_mm) == (297 - 42, 210 - 28)
