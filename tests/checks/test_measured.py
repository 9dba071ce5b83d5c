"""Nominal and actual: every family of checks runs on what the workshop measured, on whole machines and one by one."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from scantling.build.actuals import as_measured
from scantling.build.case import Case
from scantling.build.reference import reference_build
from scantling.checks.all import CHECKS, run_check
from scantling.findings import Finding, Verdict
from scantling.model.features import figure_fields
from scantling.model.workshop import Actual
from scantling.quantities import Figure, Grade, canonical_unit, dimension_of, parse_figure
from scantling.reading.project import read_project

EXAMPLES = Path(__file__).parents[2] / "examples"
OFF, BAND = 1.004, 0.002  # every figure of every part, measured anew: so much more, so much either way

# Families whose values hang on figures of parts; STEP and the rest count, name or look up.
FAMILIES = {
    "MOTOR",
    "PORT",
    "WIRE",
    "MATE",
    "BELT",
    "SCREW",
    "ROD",
    "SPAN",
    "JOINT",
    "HOLE",
    "RAIL",
    "WARM",
    "FRAME",
    "CHAIN",
}


def texts_of(part) -> dict[str, str]:
    """Return a reading for every figure that a part says, by the name of the figure."""
    found = {}
    said = {name: getattr(part, field) for name, field in figure_fields(type(part)).items()}
    for name, figure in {**said, **part.sizes}.items():
        if figure is None or figure.value <= 0 or isinstance(figure, str):
            continue
        field = figure_fields(type(part)).get(name)
        dimension = (dimension_of(field) if field else None) or "length"
        if dimension == "temperature":
            continue
        unit = canonical_unit(dimension)
        value = figure.value * OFF
        found[name] = f"{value:.6f} {unit} ({value * (1 - BAND):.6f}..{value * (1 + BAND):.6f})".replace("  (", " (")
    return found


def findings_of(case: Case, build) -> dict[tuple[str, str], Finding]:
    """Return what all checks but the costly ones say, by code and subject."""
    reader = case.reader(build)
    said = [one for check in CHECKS if not check.costly for one in run_check(check, reader)]
    return {one.key: one for one in said if isinstance(one, Finding)}


@pytest.fixture(scope="module")
def alder():
    """Return the findings on the same build: as described, with other figures described, with the same measured."""
    project = read_project(EXAMPLES / "alder", "village")
    readings = {name: texts_of(part) for name, part in project.design.parts.items()}
    other = {}
    for name, part in project.design.parts.items():
        fields = figure_fields(type(part))
        read = {
            size: parse_figure(text, dimension_of(fields.get(size, "")) or "length")
            for size, text in readings[name].items()
        }
        sizes = {**part.sizes, **{size: figure for size, figure in read.items() if size not in fields}}
        changed = {fields[size]: figure for size, figure in read.items() if size in fields}
        other[name] = part.model_copy(update={**changed, "sizes": sizes})
    actuals = tuple(
        Actual(part=name, size=size, value=text) for name, read in readings.items() for size, text in read.items()
    )
    plain = Case(project)
    described = Case(replace(project, design=project.design.model_copy(update={"parts": other})))
    shop = project.workshop.model_copy(update={"actuals": actuals})
    measured = Case(replace(project, workshop=shop))
    build = reference_build(plain)
    return [findings_of(case, build) for case in (plain, described, measured)]


def test_what_is_measured_counts_as_if_it_were_described(alder):
    _, described, measured = alder
    assert set(described) == set(measured)
    for key, one in described.items():
        other = measured[key]
        assert (one.verdict, one.limit) == (other.verdict, other.limit), key
        assert (one.value, one.low, one.high) == pytest.approx((other.value, other.low, other.high)), key


def test_every_family_of_checks_sees_what_was_measured(alder):
    plain, _, measured = alder
    moved = {
        key[0].partition("-")[0]
        for key, one in measured.items()
        if key in plain
        and (one.value, one.low, one.high, one.because) != (p := plain[key], p.value, p.low, p.high, p.because)[1:]
    }
    assert moved >= FAMILIES


def ask(bench, make, code, subject, **actual):
    """Return what a check says with and without a reading in the workshop."""
    return [bench.said(make(workshop=shop), code, subject) for shop in ({}, {"actuals": [actual]})]


class TestOneByOne:
    def test_ply_that_measures_5_4_sways_by_its_cube(self, bench):
        parts = {"ply-6": {"kind": "sheet", "material": "birch plywood", "thickness": "6 mm"}}
        frame = {
            "panel": "panel",
            "leg-free": "130 mm",
            "leg-width": "60 mm",
            "force": "10 N",
            "sway-limit": "0.5 mm",
            "joint-softening": "10 %",
        }

        def make(**more):
            return bench.case(parts=parts, places={"panel": "ply-6"}, frames={"portal": frame}, **more)

        before, after = ask(bench, make, "FRAME-01", "frame portal", part="ply-6", size="thickness", value="5.4 mm")
        assert after.value / before.value == pytest.approx((6 / 5.4) ** 3)

    def test_a_screw_in_ply_that_measures_5_4(self, bench):
        joint = {"screw": "socket head M3", "through": ["panel.thickness"], "into": "plain nut"}
        parts = {"ply-6": {"kind": "sheet", "material": "birch plywood", "thickness": "6 mm"}}

        def make(**more):
            return bench.case(parts=parts, places={"panel": "ply-6"}, joints={"j": joint}, **more)

        (before, after) = ask(bench, make, "JOINT-01", "joint j", part="ply-6", size="thickness", value="3.9 mm")
        assert before.because != after.because

    def test_rods_60_um_under_have_more_play(self, bench):
        mate = {"rod": {"kind": "rod in bearing", "a": "y-rod.diameter", "b": "y-bearing.bore"}}

        def make(**more):
            return bench.belt(mates=mate, **more)

        said = {"part": "rod-hard", "size": "diameter", "value": "7.94 mm ± 0.005 mm"}
        before, after = ask(bench, make, "MATE-02", "mate rod", **said)
        assert before.verdict is Verdict.SOUND
        assert after.verdict is not Verdict.SOUND
        assert after.value == pytest.approx(before.value + 60 - 4.5, abs=8)  # from h6, (-9 .. 0) µm, to -60 µm

    def test_rods_60_um_under_sag_more(self, bench):
        before, after = ask(bench, bench.belt, "ROD-01", "axis y", part="rod-hard", size="diameter", value="7.94 mm")
        assert after.value / before.value == pytest.approx((8 / 7.94) ** 4, rel=0.02)

    def test_a_motor_measured_with_a_meter(self, bench):
        said = {"part": "motor-full", "size": "holding-torque", "value": "0.2 N m"}
        before, after = ask(bench, bench.belt, "BELT-03", "axis y", **said)
        assert after.value > before.value * 1.5

    def test_a_nut_measured_lower_than_its_standard(self, bench):
        joint = {"screw": "socket head M3", "through": ["6 mm"], "into": "plain nut"}

        def make(**more):
            return bench.case(joints={"j": joint}, **more)

        said = {"part": "M3 nut", "size": "height", "value": "1.9 mm"}
        before, after = ask(bench, make, "JOINT-01", "joint j", **said)
        assert before.because != after.because

    def test_a_thing_weighed(self, bench):
        before, after = ask(bench, bench.belt, "BELT-03", "axis y", part="bed", size="mass", value="1.3 kg")
        assert after.value > before.value


def test_the_part_itself_is_the_measured_one(bench):
    samples = {"part": "rod-hard", "size": "diameter", "samples": ["7.94 mm", "7.95 mm ± 0.005 mm", "7.96 mm"]}
    part = bench.belt(workshop={"actuals": [samples]}).part("rod-hard")
    assert part.diameter_mm == Figure(pytest.approx(7.95), 7.94, pytest.approx(7.96), Grade.MEASURED, "measured")
    first = [Actual(part="rod-hard", size="diameter", value=one) for one in ("7.9 mm", "8.1 mm")]
    assert as_measured(part, first).diameter_mm.value == 7.9  # the first of two readings counts
    assert bench.belt().part("rod-hard").diameter_mm.grade is Grade.GIVEN


def test_what_was_measured_for_another_design_is_let_be(bench):
    case = bench.belt(workshop={"actuals": [{"part": "no-such", "size": "mass", "value": "1 kg"}]})
    assert case.part("rod-hard").diameter_mm.value == 8
