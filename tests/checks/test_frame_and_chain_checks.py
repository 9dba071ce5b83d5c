"""Sway of a portal's legs; chains of sizes in the worst case and by sampling; steps that use all pieces."""

from __future__ import annotations

import pytest

from scantling.checks.chain_yield import seed_of
from scantling.findings import NotLookedAt, Verdict

SHEETS = {
    "mdf-6": ("MDF", "6 mm"),
    "acrylic-5": ("acrylic", "5 mm"),
    "ply-6": ("birch plywood", "6 mm"),
    "mdf-9": ("MDF", "9 mm"),
    "ply-8": ("birch plywood", "8 mm"),
    "ply-9": ("birch plywood", "9 mm"),
    "aluminium-4": ("aluminium", "4 mm"),
}
FRAME = {
    "panel": "panel",
    "leg-free": "130 mm",
    "leg-width": "60 mm",
    "legs": 2,
    "force": "10 N",
    "sway-limit": "0.25 mm",
    "joint-softening": "0",
}


class TestSway:
    @pytest.fixture
    def portal(self, bench):
        """Open a portal whose panel may be of any of the sheets; the frame may be changed."""

        def make(**frame):
            parts = {n: {"kind": "sheet", "material": m, "thickness": t} for n, (m, t) in SHEETS.items()}
            place = bench.options("ply-9", *(name for name in parts if name != "ply-9"))
            return bench.case(parts=parts, places={"panel": place}, frames={"portal": {**FRAME, **frame}})

        return make

    # Source: beam tables, two cantilevers F L³ / (3 n E I) with E 7000 (birch plywood, across), 3000 (MDF, acrylic),
    #   70000 MPa (aluminium); by hand
    @pytest.mark.outside
    @pytest.mark.parametrize(
        ("sheet", "sway", "verdict"),
        [
            ("mdf-6", 1.13, Verdict.UNSOUND),
            ("acrylic-5", 1.95, Verdict.UNSOUND),
            ("ply-6", 0.48, Verdict.UNSOUND),
            ("mdf-9", 0.33, Verdict.UNSOUND),
            ("ply-8", 0.20, Verdict.SOUND),
            ("ply-9", 0.14, Verdict.SOUND),
            ("aluminium-4", 0.16, Verdict.SOUND),
        ],
    )
    def test_materials_and_thicknesses(self, bench, portal, sheet, sway, verdict):
        finding = bench.said(portal(), "FRAME-01", "frame portal", panel=sheet)
        assert finding.value == pytest.approx(sway, abs=0.008)
        assert finding.verdict is verdict
        assert finding.assumed == (f"modulus of {sheet}",)

    def test_bolted_joints_are_softer_and_nobody_knows_how_much(self, bench, portal):
        finding = bench.said(portal(**{"joint-softening": None}), "FRAME-01", "frame portal", panel="ply-8")
        assert finding.verdict is Verdict.MARGINAL
        assert "softness of bolted joints" in finding.because

    def test_a_measured_thickness_counts_by_its_cube(self, bench):
        parts = {"ply-6": {"kind": "sheet", "material": "birch plywood", "thickness": "6 mm"}}
        actual = {"part": "ply-6", "size": "thickness", "value": "5.4 mm ± 0.05 mm"}
        case = bench.case(
            workshop={"actuals": [actual]}, parts=parts, places={"panel": "ply-6"}, frames={"portal": FRAME}
        )
        finding = bench.said(case, "FRAME-01", "frame portal")
        assert finding.value == pytest.approx(0.4843 * (6 / 5.4) ** 3, rel=1e-3)

    def test_the_grain_along_the_legs_is_stiffer(self, bench):
        parts = {"ply-8": {"kind": "sheet", "material": "birch plywood", "thickness": "8 mm"}}
        sways = [
            bench.said(
                bench.case(
                    parts=parts,
                    places={"panel": "ply-8"},
                    frames={"portal": FRAME},
                    sheets={"panel": {"outline": "a.dxf", "grain": grain}},
                ),
                "FRAME-01",
                "frame portal",
            ).value
            for grain in ("y", "x")
        ]
        assert sways[0] == pytest.approx(sways[1] * 7000 / 9000)

    def test_an_unknown_material_is_unknown(self, bench):
        parts = {"odd": {"kind": "sheet", "material": "pressed straw", "thickness": "9 mm"}}
        case = bench.case(parts=parts, places={"panel": "odd"}, frames={"portal": FRAME})
        finding = bench.said(case, "FRAME-01", "frame portal")
        assert (finding.verdict, finding.missing) == (Verdict.UNKNOWN, ("modulus of odd",))


TERMS = [
    {"size": "60 mm", "tolerance": "0.2 mm"},
    {"size": "19.9 mm", "sign": "-", "tolerance": "0.1 mm"},
    {"size": "19.9 mm", "sign": "-", "tolerance": "0.1 mm"},
    {"size": "19.9 mm", "sign": "-", "tolerance": "0.05 mm"},
]


class TestChains:
    @pytest.fixture
    def chained(self, bench):
        """Say what a check finds of a chain of sizes."""

        def judge(code: str, terms=None, **chain):
            case = bench.case(chains={"gap": {"terms": terms or TERMS, **chain}})
            return bench.said(case, code, "chain gap")

        return judge

    # Source: computed anchor, gap 60 ± 0.2 - 19.9 ± 0.1 - 19.9 ± 0.1 - 19.9 ± 0.05: 0.3, worst ± 0.45, squares ± 0.25
    @pytest.mark.outside
    def test_worst_case_and_squares(self, chained):
        finding = chained("CHAIN-01", **{"at-least": "0 mm", "at-most": "1 mm"})
        assert (finding.value, finding.low, finding.high) == pytest.approx((0.3, -0.15, 0.75))
        assert finding.verdict is Verdict.MARGINAL
        assert "keep 0.05 to 0.55 mm" in finding.because

    # Source: exact normal distribution of the same chain: a share of 1.591e-4 lies below 0
    @pytest.mark.outside
    def test_yield_by_sampling(self, chained):
        finding = chained("CHAIN-02", **{"at-least": "0 mm"})
        assert finding.value == pytest.approx(100 * (1 - 1.591e-4), abs=0.01)
        assert finding.verdict is Verdict.SOUND
        assert chained("CHAIN-02", **{"at-least": "0.2 mm"}).verdict is Verdict.UNSOUND

    def test_sampling_repeats_itself_and_differs_by_subject(self, chained):
        assert chained("CHAIN-02", **{"at-least": "0.1 mm"}) == chained("CHAIN-02", **{"at-least": "0.1 mm"})
        assert seed_of("CHAIN-02", "chain a") != seed_of("CHAIN-02", "chain b")

    def test_sizes_made_in_one_go_deviate_together(self, chained):
        pair = [
            {"size": "60 mm", "tolerance": "0.2 mm", "together": "drilled"},
            {"size": "59 mm", "sign": "-", "tolerance": "0.2 mm", "together": "drilled"},
        ]
        finding = chained("CHAIN-01", pair, **{"at-least": "0.9 mm"})
        assert (finding.low, finding.high, finding.verdict) == (1, 1, Verdict.SOUND)
        apart = [{key: value for key, value in term.items() if key != "together"} for term in pair]
        assert chained("CHAIN-01", apart, **{"at-least": "0.9 mm"}).verdict is Verdict.MARGINAL

    def test_uneven_tolerances_keep_their_sides(self, bench):
        parts = {"block": {"kind": "thing", "sizes": {"height": "10 mm +0.3/-0.1 mm"}}}
        chain = {"gap": {"terms": ["+ block.height"], "at-most": "10.3 mm"}}
        finding = bench.said(bench.case(parts=parts, places={"block": "block"}, chains=chain), "CHAIN-01", "chain gap")
        assert (finding.low, finding.high) == pytest.approx((9.9, 10.3))
        assert finding.verdict is Verdict.SOUND

    def test_a_chain_without_a_limit_is_not_looked_at(self, chained):
        finding = chained("CHAIN-01")
        assert isinstance(finding, NotLookedAt)
        assert finding.needs == ("chains.gap.at-least", "chains.gap.at-most")

    def test_a_design_may_override_the_yield(self, bench):
        chain = {"gap": {"terms": TERMS, "at-least": "0.1 mm", "yield-wanted": "95 %"}}
        assert bench.said(bench.case(chains=chain), "CHAIN-02", "chain gap").limit == 95


class TestSteps:
    @pytest.fixture
    def stepped(self, bench):
        """Open a machine of three places with steps."""

        def make(**steps):
            parts = {"thing": {"kind": "thing"}}
            places = {name: {"reference": "thing", "quantity": 2} for name in ("a", "b", "c")}
            return bench.case(parts=parts, places=places, steps=steps)

        return make

    def test_every_piece_once(self, bench, stepped):
        case = stepped(
            one={"title": "1", "uses": {"a": "1", "b": "all"}}, two={"title": "2", "uses": {"a": "1", "c": "3"}}
        )
        assert bench.said(case, "STEP-01", "place a").verdict is Verdict.SOUND
        finding = bench.said(case, "STEP-01", "place c")
        assert (finding.verdict, finding.because) == (Verdict.MARGINAL, "3 of 2 used by step two.")

    def test_a_forgotten_piece_of_steps_that_look_finished(self, bench, stepped):
        case = stepped(one={"title": "1", "uses": ["a", "b"]})
        finding = bench.said(case, "STEP-01", "place c")
        assert (finding.verdict, finding.because) == (Verdict.MARGINAL, "0 of 2 used by no step.")

    def test_steps_that_are_only_begun_leave_the_rest_undescribed(self, bench, stepped):
        finding = bench.said(stepped(one={"title": "1", "uses": ["a"]}), "STEP-01", "place c")
        assert finding.needs == ("steps (one that uses place c)",)

    def test_steps_in_a_circle(self, bench, stepped):
        case = stepped(one={"title": "1", "after": ["two"]}, two={"title": "2", "after": ["one"]})
        finding = bench.said(case, "STEP-02", "steps in-order")
        assert finding.verdict is Verdict.UNSOUND
        assert bench.said(stepped(one={"title": "1"}), "STEP-02", "steps in-order").verdict is Verdict.SOUND
        assert bench.said(stepped(), "STEP-02", "steps in-order").needs == ("steps",)
