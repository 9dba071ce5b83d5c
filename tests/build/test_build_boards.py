"""Boards that sheets are cut from."""

from __future__ import annotations

import pytest

from scantling.build.boards import boards_needed, panels
from scantling.build.missing import NotDescribedError

BOARD_UM = (600_000, 300_000)


def test_panels_follow_the_chosen_material(read):
    assert [(p.sheet, p.width_um, p.height_um, p.pieces) for p in read().derive(panels, "ply-9")] == [
        ("back-panel", 120_000, 90_000, 1),
        ("front-panel", 120_000, 90_000, 1),
    ]
    thinner = read(parts={"front-panel": "ply-6"})
    assert thinner.derive(panels, "ply-9") == ()
    assert len(thinner.derive(panels, "ply-6")) == 2


def test_only_places_that_may_take_the_material_are_read(read):
    reader = read()
    reader.derive(panels, "ply-9")
    assert {key.subject for key in reader.trail} == {"front-panel"}  # the leader of the two that are alike
    other = read()
    other.derive(panels, "petg")
    assert other.trail == {}


@pytest.mark.parametrize("copies", [1, 6, 7, 12, 13, 30])
def test_boards_for_so_many_copies(read, copies):
    # 120 x 90 with 3 mm of kerf on 590 x 290 of usable board: 4 x 3 = 12 in plain rows, 14 by mixing rows and columns
    boards = read().derive(boards_needed, "ply-9", *BOARD_UM, copies)
    assert -(-2 * copies // 14) <= boards <= -(-2 * copies // 12)


def test_no_board_without_a_panel(read):
    assert read().derive(boards_needed, "ply-6", *BOARD_UM, 4) == 0


def test_a_panel_that_is_too_large_fits_on_none(read):
    assert read().derive(boards_needed, "ply-9", 95_000, 600_000, 1) is None  # 85 mm are usable, 90 are wanted


def test_a_grain_forbids_turning(read):
    # 100 x 300 of board, grain along 300: panels of 120 x 90 lie along it only where their y is across
    grained = {"parts.ply-9.grain": "yes"}
    assert read().derive(boards_needed, "ply-9", 100_000, 300_000, 1) == 1
    assert read(grained).derive(boards_needed, "ply-9", 110_000, 300_000, 1) == 1
    across = {**grained, "sheets.back-panel.grain": "y"}
    assert read(across).derive(boards_needed, "ply-9", 110_000, 300_000, 1) is None


def test_kerf_and_margin_are_the_workshops(read):
    exact = {"saw.sheet-kerf": "0 mm", "saw.sheet-margin": "0 mm"}
    assert read(workshop=exact).derive(boards_needed, "ply-9", 240_000, 90_000, 1) == 1
    assert read(workshop={"saw.sheet-margin": "0 mm"}).derive(boards_needed, "ply-9", 240_000, 90_000, 1) == 2


def test_a_sheet_without_an_outline_is_named(read):
    with pytest.raises(NotDescribedError, match=r"sheets\.back-panel\.outline"):
        read(outlines={}).derive(boards_needed, "ply-9", *BOARD_UM, 1)
