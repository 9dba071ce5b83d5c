"""Panels on boards: nothing overlaps, every cut runs from edge to edge, and known cases come out with as few boards."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from scantling.shapes.boards import Board, Panel, count_boards, lay_on_boards

HAIR = 1e-6
PLY = Board("ply", 1220, 2440, None, 5)


def sizes(board):
    return sorted((round(p.width_mm, 3), round(p.height_mm, 3)) for p in board.panels)


def assert_sound(layout, panels, kerf_mm):
    """Every panel is there once, inside the margins, a saw's width from the others, and the cuts really free it."""
    wanted = sorted(name for panel in panels for name in [panel.name] * panel.quantity)
    placed = sorted(p.name for board in layout.boards for p in board.panels)
    assert placed == wanted
    for cut_board in layout.boards:
        board, edge = cut_board.board, cut_board.board.margin_mm
        for k, p in enumerate(cut_board.panels):
            assert p.x_mm >= edge - HAIR
            assert p.y_mm >= edge - HAIR
            assert p.x_mm + p.width_mm <= board.width_mm - edge + HAIR
            assert p.y_mm + p.height_mm <= board.height_mm - edge + HAIR
            for q in cut_board.panels[k + 1 :]:
                apart_x = max(q.x_mm - p.x_mm - p.width_mm, p.x_mm - q.x_mm - q.width_mm)
                apart_y = max(q.y_mm - p.y_mm - p.height_mm, p.y_mm - q.y_mm - q.height_mm)
                assert max(apart_x, apart_y) >= kerf_mm - HAIR
        assert_cuts_free_the_panels(cut_board, kerf_mm)


def assert_cuts_free_the_panels(cut_board, kerf_mm):
    """Saw the board in the order given: each cut must run through one piece from edge to edge."""
    board, edge = cut_board.board, cut_board.board.margin_mm
    cuts = list(cut_board.cuts)
    if edge:
        assert len(cuts) >= 4
        cuts = cuts[4:]
    pieces = [(edge, edge, board.width_mm - edge, board.height_mm - edge)]
    for cut in cuts:
        (x0, y0), (x1, y1) = cut.start, cut.end
        across = abs(y0 - y1) < HAIR
        owner = [
            p
            for p in pieces
            if (across and abs(p[0] - x0) < HAIR and abs(p[2] - x1) < HAIR and p[1] < y0 < p[3] + HAIR)
            or (not across and abs(p[1] - y0) < HAIR and abs(p[3] - y1) < HAIR and p[0] < x0 < p[2] + HAIR)
        ]
        assert len(owner) == 1, (cut, pieces)
        x_low, y_low, x_high, y_high = owner[0]
        pieces.remove(owner[0])
        if across:
            pieces += [(x_low, y_low, x_high, y0), (x_low, y0 + kerf_mm, x_high, y_high)]
        else:
            pieces += [(x_low, y_low, x0, y_high), (x0 + kerf_mm, y_low, x_high, y_high)]
        pieces = [p for p in pieces if p[2] - p[0] > HAIR and p[3] - p[1] > HAIR]
    for p in cut_board.panels:
        box = (p.x_mm, p.y_mm, p.x_mm + p.width_mm, p.y_mm + p.height_mm)
        assert any(all(abs(a - b) < 1e-3 for a, b in zip(box, piece, strict=True)) for piece in pieces)


tenths = st.integers(0, 6000).map(lambda k: k / 10)


@given(
    st.lists(
        st.builds(
            Panel, st.sampled_from("abcdef"), tenths.filter(bool), tenths.filter(bool), st.integers(1, 4), st.booleans()
        ),
        min_size=1,
        max_size=6,
        unique_by=lambda p: p.name,
    ),
    st.integers(0, 60).map(lambda k: k / 10),
    st.integers(0, 120).map(lambda k: k / 10),
)
@settings(max_examples=40, deadline=None)
def test_layouts_are_sound(panels, kerf_mm, margin_mm):
    layout = lay_on_boards(panels, [Board("board", 800, 1000, None, margin_mm)], kerf_mm)
    assert layout.misfits == ()
    assert_sound(layout, panels, kerf_mm)
    assert 1 <= layout.least <= len(layout.boards)
    assert layout == lay_on_boards(panels, [Board("board", 800, 1000, None, margin_mm)], kerf_mm)
    assert count_boards(panels, Board("board", 800, 1000, None, margin_mm), kerf_mm) == len(layout.boards)


def test_what_fills_a_board_exactly_takes_one():
    panels = [Panel("quarter", 398.5, 498.5, 4, False)]
    layout = lay_on_boards(panels, [Board("board", 800, 1000)], 3)
    assert (len(layout.boards), layout.least) == (1, 1)
    assert len(lay_on_boards([Panel("quarter", 398.6, 498.5, 4, False)], [Board("board", 800, 1000)], 3).boards) == 2
    assert_sound(layout, panels, 3)


def test_grain_keeps_a_panel_from_turning():
    strip = Panel("strip", 900, 100, 1, False)
    assert lay_on_boards([strip], [Board("board", 800, 1000)], 3).misfits == ("strip",)
    assert count_boards([strip], Board("board", 800, 1000), 3) is None
    assert count_boards([], Board("board", 800, 1000), 3) == 0
    turned = lay_on_boards([Panel("strip", 900, 100)], [Board("board", 800, 1000)], 3)
    assert turned.boards[0].panels[0].turned
    assert sizes(turned.boards[0]) == [(100, 900)]


def test_boards_at_hand_come_first_and_run_out():
    boards = [Board("offcut", 300, 300, 1), Board("whole", 800, 1000)]
    layout = lay_on_boards([Panel("plate", 290, 290, 3)], boards, 3)
    assert [one.board.name for one in layout.boards] == ["offcut", "whole"]
    only = lay_on_boards([Panel("plate", 290, 290, 3)], boards[:1], 3)
    assert (len(only.boards), only.misfits) == (1, ("plate",))


@pytest.mark.outside
@pytest.mark.parametrize(
    ("board", "pieces"),
    [
        # Source: made by guillotine cuts, so one board without waste is the answer by construction (kerf 0)
        ((100, 60), [(40, 60), (60, 20), (30, 40), (30, 40)]),
        ((120, 80), [(120, 30), (50, 50), (70, 25), (70, 25)]),
        ((90, 90), [(30, 90), (60, 45), (30, 45), (30, 45)]),
    ],
)
def test_small_perfect_boards(board, pieces):
    panels = [Panel(f"p{k}", w, h, 1, False) for k, (w, h) in enumerate(pieces)]
    layout = lay_on_boards(panels, [Board("board", *board)], 0)
    assert len(layout.boards) == layout.least == 1
    assert_sound(layout, panels, 0)


def test_a_machine_s_panels_for_four_copies():
    # portal 400 x 375, base front and back 400 x 90, gussets 150 x 180: about 0.30 m2 a machine, 1.2 m2 for four
    panels = [Panel("portal", 400, 375, 4), Panel("base", 400, 90, 8), Panel("gusset", 150, 180, 8)]
    layout = lay_on_boards(panels, [PLY], 3.2)
    assert len(layout.boards) == layout.least == 1
    assert_sound(layout, panels, 3.2)
    width, height = layout.boards[0].offcut_mm
    assert width * height > 0.8e6  # of 2.98 m2 a large rest stays in one piece


def test_nothing_to_do_and_too_much():
    assert lay_on_boards([], [PLY], 3).boards == ()
    assert lay_on_boards([Panel("a", 10, 10)], [], 3).misfits == ("a",)
    with pytest.raises(ValueError, match="limit"):
        lay_on_boards([Panel("a", 10, 10, 10**6)], [PLY], 3)
