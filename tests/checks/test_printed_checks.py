"""Printed parts: a mesh for the chosen parts, room on the bed, plastic for the zone."""

from __future__ import annotations

import pytest

from scantling.build.reference import reference_build
from scantling.checks.all import CHECKS
from scantling.findings import Verdict
from scantling.model.build import Key
from scantling.shapes.mesh import MeshFacts

SMALL = MeshFacts("clamp.stl", 12, 2400.0, (0.0, 0.0, 0.0), (60.0, 30.0, 20.0), 1, True, 8000.0)


@pytest.fixture
def printed(bench):
    """Say what a check finds of a printed clamp for rods, in a workshop with a print bed."""

    def judge(code: str, rod="rod-hard", zone="cool", plastic="PETG", bed=("180 mm", "180 mm", "160 mm"), facts=SMALL):
        plastics = ["PETG", "PLA", "ABS", "ASA", "mystery"]
        clamp = {
            "kind": "printed",
            "meshes": [{"mesh": "clamp.stl", "suits": {"rod.diameter": "8 mm"}}],
            "plastics": plastics,
            "zone": zone,
        }
        width, depth, height = bed or ("", "", "")
        shop = {"width": width, "depth": depth, "height": height, "plastics": plastics}
        case = bench.case(
            workshop={"print-bed": shop} if bed else {},
            meshes={"clamp.stl": facts},
            parts={
                "clamp": clamp,
                **{name: bench.parts[name] for name in ("rod-hard", "rod-10", "rod-inch")},
                **{f"filament-{p}": {"kind": "filament", "plastic": p, "density": "1.2 g/cm3"} for p in plastics},
            },
            places={"clamp": "clamp", "rod": bench.options("rod-hard", "rod-10", "rod-inch")},
        )
        answers = {Key("part", "rod"): rod} | ({Key("get", "clamp"): f"printed {plastic}"} if bed else {})
        build = reference_build(case).replacing(answers)
        return next(check for check in CHECKS if check.code == code).run(case.reader(build), "place clamp")

    return judge


def test_a_mesh_must_exist_for_the_chosen_parts(printed):
    assert printed("PRINT-01").verdict is Verdict.SOUND
    finding = printed("PRINT-01", rod="rod-10")
    assert finding.verdict is Verdict.UNSOUND
    assert finding.because == "No file exists: the meshes of clamp suit rod.diameter 8 mm."
    assert printed("PRINT-01", rod="rod-inch").verdict is Verdict.SOUND  # 62 um: the same clamp


@pytest.mark.parametrize(
    ("bed", "verdict"),
    [
        (("180 mm", "180 mm", "160 mm"), Verdict.SOUND),
        (("30 mm", "60 mm", "20 mm"), Verdict.SOUND),  # turned by a right angle
        (("50 mm", "180 mm", "160 mm"), Verdict.SOUND),
        (("50 mm", "50 mm", "160 mm"), Verdict.UNSOUND),
        (("180 mm", "180 mm", "15 mm"), Verdict.UNSOUND),
    ],
)
def test_it_must_fit_the_bed(printed, bed, verdict):
    assert printed("PRINT-02", bed=bed).verdict is verdict


def test_without_a_bed_it_is_not_looked_at(printed):
    assert printed("PRINT-02", bed=None).needs == ("workshop.print-bed",)


# Source: glass points of plastics (PLA 55-65, PETG 75-85, ABS 105 °C, a published material table), 15-20 K below them
@pytest.mark.outside
@pytest.mark.parametrize(
    ("plastic", "zone", "verdict"),
    [
        ("PLA", "cool", Verdict.SOUND),
        ("PLA", "warm", Verdict.UNSOUND),
        ("PETG", "warm", Verdict.SOUND),
        ("PETG", "hot", Verdict.UNSOUND),
        ("ABS", "hot", Verdict.SOUND),
        ("ASA", "hot", Verdict.MARGINAL),  # glass point from 98 °C in some sheets
        ("mystery", "cool", Verdict.UNKNOWN),
    ],
)
def test_the_plastic_must_stand_its_zone(printed, plastic, zone, verdict):
    assert printed("PRINT-03", plastic=plastic, zone=zone).verdict is verdict


def test_a_bought_part_is_not_asked(bench):
    clamp = {"kind": "printed", "meshes": [{"mesh": "a.stl"}]}
    parts = {"clamp": clamp, "steel-clamp": {"kind": "thing"}}
    case = bench.case(parts=parts, places={"clamp": bench.options("steel-clamp", "clamp")})
    for code in ("PRINT-01", "PRINT-02", "PRINT-03"):
        assert bench.said(case, code, "place clamp").because == "clamp is not filled by a printed part."
