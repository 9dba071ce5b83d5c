"""Ranges: inside them every check stays as good as it is, beyond them one does not, whoever looks."""

from __future__ import annotations

from dataclasses import replace
from math import inf
from pathlib import Path

import pytest

from scantling.api.opening import open_design, start_build
from scantling.build.case import Case
from scantling.build.reader import Reader
from scantling.build.reference import reference_build
from scantling.checks.all import CHECKS, run_checks
from scantling.checks.figures import figure_ranges, heard
from scantling.checks.local_parts import local_part
from scantling.findings import Finding, Verdict
from scantling.quantities import Figure, Grade

ALDER = Path(__file__).parents[2] / "examples" / "alder"
BEYOND = 1e-3


@pytest.fixture(scope="module")
def bed(bench):
    """A moving bed on a belt."""
    return bench.belt()


@pytest.fixture(scope="module")
def alder():
    """The example, with its reference parts."""
    return open_design(ALDER, "village")


@pytest.fixture(scope="module")
def panel(alder):
    """The ranges of the sheet that Alder's panels are cut from."""
    return local_part(alder.case, start_build(alder), "back-panel")


def ranges_of(case):
    """All ranges of a machine's rules, by figure and subject."""
    build = reference_build(case)
    return {(one.figure, one.of): one for one in figure_ranges(case, heard(case, build)[0])}


def put(case: Case, part: str, field: str, value: float) -> Case:
    """The same machine read anew with one figure of a part measured: shares no memory with the first."""
    old = case.project.design.parts[part]
    figure = Figure(value, value, value, Grade.MEASURED)
    parts = {**case.project.design.parts, part: old.model_copy(update={field: figure})}
    return Case(replace(case.project, design=case.project.design.model_copy(update={"parts": parts})))


def verdicts(case: Case, build) -> dict[tuple[str, str], Verdict]:
    """What the quick checks say of one build."""
    return {finding.key: finding.verdict for finding in run_checks(case, build, costly=False).findings}


class TestRules:
    def test_a_sum_backwards_is_its_difference(self, bed):
        """Travel on the rods: free - carriage - stops >= travel, 332 - 134 - 18 = 180 against 180 wanted."""
        found = ranges_of(bed)
        assert found["free length of the rods", "axis y"].intervals[0].low == 332
        assert found["length of the carriage", "axis y"].intervals[0].high == 134

    @pytest.mark.outside
    def test_the_mass_that_a_belt_axis_may_move_is_that_of_the_force_balance(self, bench):
        # Source: statics and F = m a by hand. Half of the torque is trusted: F = 2 pi T / (2 * travel of a turn) on the
        # belt, less what the rotor takes, over acceleration and friction; the drive is asked at its own speed.
        case = bench.belt()
        asked, _ = heard(case, reference_build(case), ["BELT-03"])
        figures = asked[0].trial.nominal
        (found,) = [one for one in figure_ranges(case, asked) if one.figure == "moving mass of axis y"]
        given_nmm = asked[0].also["given"][0](**figures)
        rotor_nmm = figures["rotor"] / 1000 * 2 * 3.141592653589793 / 40 * figures["acceleration"]
        push_n = (0.5 * given_nmm - rotor_nmm) * 2 * 3.141592653589793 / 40
        mass_kg = (push_n - figures["drag"] - figures["process"]) / (
            figures["acceleration"] / 1000 + figures["rubbing"] * 9.80665
        )
        assert found.intervals[0].high == pytest.approx(mass_kg, rel=0.12)  # the bands of friction are kept inside
        assert found.intervals[0].high < mass_kg

    def test_what_several_rules_use_is_left_by_all_of_them(self, bed):
        build = reference_build(bed)
        together = ranges_of(bed)["moving mass of axis y", ""]
        codes = {label.split()[0] for label in together.checks}
        assert codes >= {"BELT-03", "ROD-02", "ROD-03"}
        alone = [one for code in codes for one in figure_ranges(bed, heard(bed, build, [code])[0])]
        highest = [one.intervals[0].high for one in alone if one.figure == "moving mass of axis y"]
        assert together.intervals[0].high == min(highest)

    def test_figures_that_are_now_inside_are_so_for_every_sound_finding(self, bed):
        build = reference_build(bed)
        sound = {finding.key for finding in run_checks(bed, build).findings if finding.verdict is Verdict.SOUND}
        for one in ranges_of(bed).values():
            if one.given and all(tuple(label.split(" ", 1)) in sound for label in one.checks):
                assert one.is_inside, one

    def test_a_voltage_may_lie_between_two_ends(self, bench):
        case = bench.case(
            parts={
                "heater": {"kind": "heater", "power": "100 W", "voltage": "24 V"},
                "supply": {"kind": "supply", "power": "250 W", "voltage": "24 V"},
            },
            places={"heater": "heater", "supply": "supply"},
            rails={"main": {"supply": "supply", "voltage": "24 V", "loads": [{"place": "heater"}]}},
        )
        found = ranges_of(case)["voltage of heater", ""]
        assert [(one.low, one.high) for one in found.intervals] == [(21.6, 26.4)]
        assert found.below == found.above == ("RAIL-02 rail main/heater",)

    def test_the_same_machine_gives_the_same_ranges(self, bed):
        assert ranges_of(bed) == ranges_of(bed)


class TestLocalParts:
    def test_the_sheet_has_a_range_of_thickness_and_kinds_that_serve(self, panel):
        (thickness,) = [one for one in panel.ranges if one.figure.endswith(".thickness")]
        (sound,) = thickness.sound
        (allowed,) = thickness.allowed
        assert allowed.low < sound.low <= 9 <= sound.high < allowed.high
        assert any("FRAME-01" in label for label in thickness.stops_below)
        (material,) = [one for one in panel.words if one.figure.endswith(".material")]
        assert "softwood" in material.against

    @pytest.mark.parametrize(("place", "field"), [("y-rod", "diameter_mm"), ("supply", "power_w")])
    def test_inside_nothing_gets_worse_and_beyond_something_does(self, alder, place, field):
        """The ends are asked again on a machine that is read anew, with no memory in common."""
        build = start_build(alder)
        local = local_part(alder.case, build, place)
        named = field.rsplit("_", 1)[0].replace("_", "-")
        one = next(one for one in local.ranges if one.figure.split(".")[-1] == named)
        before = verdicts(alder.case, build)
        for interval in one.sound:
            for end, way in ((interval.low, -1), (interval.high, 1)):
                if abs(end) == inf:
                    continue
                inside = verdicts(put(alder.case, local.part, field, end), build)
                assert not {key for key, was in before.items() if inside[key].rank < min(was.rank, 3)}
                beyond = verdicts(put(alder.case, local.part, field, end + way * BEYOND * abs(end)), build)
                worse = {" ".join(key) for key, was in before.items() if beyond[key].rank < was.rank}
                assert worse == set(one.below if way < 0 else one.above)

    def test_other_screws_widen_the_range_of_a_sheet(self, panel):
        (thickness,) = [one for one in panel.ranges if one.figure.endswith(".thickness")]
        assert any(label.startswith("JOINT-01") for label in thickness.below)
        assert not any(label.startswith("JOINT-01") for label in thickness.stops_below)

    def test_a_count_is_counted(self, alder):
        local = local_part(alder.case, start_build(alder), "y-pulley")
        (teeth,) = [one for one in local.ranges if one.figure.endswith(".teeth")]
        assert [(one.low, one.high) for one in teeth.sound] == [(13, 32)]  # 32 * 2 mm / 3200 = 0.02 mm, as wanted

    def test_what_was_derived_without_the_part_is_lent_and_the_rest_is_not(self, alder):
        """A varied case agrees with one that is read anew, for every check."""
        from scantling.build.varied import Varied

        build = start_build(alder)
        part = alder.case.part("ply-9")
        thinner = part.model_copy(update={"thickness_mm": Figure(8.7, 8.7, 8.7, Grade.MEASURED)})
        varied = Varied(alder.case, build.as_dict(), thinner)
        anew = put(alder.case, "ply-9", "thickness_mm", 8.7)
        for check in CHECKS:
            if check.costly:
                continue
            for subject in check.subjects(alder.case.project.design):
                lent = check.run(Reader(varied, build.as_dict()), subject)
                fresh = check.run(Reader(anew, build.as_dict()), subject)
                if isinstance(fresh, Finding):
                    assert lent == fresh, (check.code, subject)

    def test_an_empty_place_and_a_standard_part_have_none(self, alder):
        build = start_build(alder)
        empty = next(key.subject for key, answer in build.answers if key.kind == "part" and answer == "")
        assert local_part(alder.case, build, empty) is None
