"""Holes in sheets: distance from the edge, bits in hand. A panel of 400 x 375 mm."""

from __future__ import annotations

import pytest

from scantling.findings import NotLookedAt, Verdict
from scantling.shapes.outline import Outline, rectangle_loop

PANEL = Outline(rectangle_loop(400, 375), ())


@pytest.fixture
def drilled(bench):
    """Say what a check finds in a panel with one entry of holes."""

    def judge(code: str, hole: dict, material: str = "birch plywood", bits=("metric 0.5",), outlines=None, **sheet):
        parts = {
            "board": {"kind": "sheet", "material": material, "thickness": "8 mm"},
            "motor": bench.parts["motor-full"],
            "flat": {**bench.parts["motor-flat"], "frame-size": "14"},
            "rod": bench.parts["rod-inch"],
        }
        places = {"panel": "board", "motor": bench.options("motor", "flat"), "rod": "rod"}
        case = bench.case(
            workshop={"bits": list(bits)},
            outlines={"panel": PANEL} if outlines is None else outlines,
            parts=parts,
            places=places,
            sheets={"panel": {"outline": "panel.dxf", "holes": [hole], **sheet}},
            joints={"j": {"screw": "socket head M3", "through": ["panel.thickness"], "into": "plain nut"}},
        )
        return bench.said(case, code, "hole panel.0")

    return judge


def joint_hole(x_mm: float) -> dict:
    return {"for": "joint:j", "at": [f"{x_mm} mm", "100 mm"]}


class TestEdge:
    @pytest.mark.parametrize(
        ("material", "least"), [("birch plywood", 8.5), ("MDF", 8.5), ("acrylic", 6.8), ("aluminium", 6.8)]
    )
    def test_screws_keep_their_distance_by_material(self, drilled, material, least):
        near, far = (drilled("HOLE-01", joint_hole(at), material) for at in (least - 0.5, least + 0.5))
        assert (near.verdict, far.verdict) == (Verdict.UNSOUND, Verdict.SOUND)
        assert near.limit == pytest.approx(least)  # diameters of the hole of 3.4 mm

    def test_four_mm_are_too_few(self, drilled):
        finding = drilled("HOLE-01", joint_hole(4))
        assert (finding.verdict, finding.value) == (Verdict.UNSOUND, 4)
        assert "M3 of joint j" in finding.because

    def test_a_sheet_may_say_its_own_distance(self, drilled):
        finding = drilled("HOLE-01", joint_hole(6), **{"edge-distance": "5 mm"})
        assert (finding.verdict, finding.limit) == (Verdict.SOUND, 5)

    def test_a_wide_hole_needs_a_rim_and_not_so_many_diameters(self, drilled):
        face = {"for": "motor.face", "at": ["30 mm", "40 mm"]}
        finding = drilled("HOLE-01", face)
        assert finding.verdict is Verdict.SOUND  # the collar of 22.5 mm is 30 mm from the edge, the screws 14.5
        assert drilled("HOLE-01", face | {"at": ["15 mm", "40 mm"]}).verdict is Verdict.UNSOUND

    def test_the_worst_hole_of_a_pattern_counts(self, drilled):
        face = {"for": "motor.face", "at": ["22 mm", "60 mm"]}
        finding = drilled("HOLE-01", face)
        assert (finding.verdict, finding.value) == (Verdict.UNSOUND, 6.5)  # 22 - 31 / 2

    def test_without_an_outline_it_is_not_looked_at(self, drilled):
        finding = drilled("HOLE-01", joint_hole(4), outlines={})
        assert finding == NotLookedAt(
            "HOLE-01", "hole panel.0", "Distance of a hole from the edge", ("sheets.panel.outline",)
        )


class TestBits:
    def test_the_nearest_bit_that_is_not_too_small(self, drilled):
        finding = drilled("HOLE-02", joint_hole(50))
        assert (finding.verdict, finding.value) == (Verdict.SOUND, 0.1)  # M3 wants 3.4, and 3.0 would not pass it
        assert "3.5" in finding.because

    # Source: inch bits: 5/16 in is 7.9375 mm, 21/64 in 8.334 mm; a seat for an 8 mm rod
    @pytest.mark.outside
    def test_inch_bits_for_a_metric_seat_are_marginal(self, drilled):
        seat = {"diameter": "8 mm", "at": ["50 mm", "50 mm"]}
        finding = drilled("HOLE-02", seat, bits=["inch fraction"])
        assert (finding.verdict, finding.value) == (Verdict.MARGINAL, pytest.approx(0.334375))
        assert drilled("HOLE-02", {"for": "rod.seat", "at": ["50 mm", "50 mm"]}, bits=["inch fraction"]).value == 0

    def test_no_bit_is_never_worse_than_marginal(self, drilled):
        finding = drilled("HOLE-02", joint_hole(50), bits=["2 mm"])
        assert (finding.verdict, finding.mend) == (Verdict.MARGINAL, "get a bit of 3.4 mm")

    def test_wide_holes_are_sawn(self, drilled):
        assert "sawn" in drilled("HOLE-02", {"diameter": "40 mm", "at": ["100 mm", "100 mm"]}).because

    def test_without_bits_it_is_not_looked_at(self, drilled):
        assert drilled("HOLE-02", joint_hole(50), bits=()).needs == ("workshop.bits",)
