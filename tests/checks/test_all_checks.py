"""All checks together: they read through the reader alone, agree with their tables, and keep what they declare."""

from __future__ import annotations

import math
import random
import re
import sys

import pytest

from scantling.build.masses import MOVING_MASS
from scantling.build.rails import RAIL_POWER
from scantling.build.reader import Reader
from scantling.build.totals import TOTALS, term_units
from scantling.checks.all import CHECKS, Report, by_weight, run_check, run_checks, unlocking_facts
from scantling.choosing.tables import SumTerms, check_table, sum_table, untrue_monotony
from scantling.choosing.trees import grow, value_at
from scantling.findings import Finding, Limit, NotLookedAt, Verdict
from scantling.model.build import Build
from scantling.shapes.mesh import MeshFacts
from scantling.shapes.outline import Outline, rectangle_loop

BUILDS = 25


def everything(bench):
    """Open a machine in which every check has something to say: a gantry with a bed, panel, supply, heater, chain."""
    parts = {
        "ply-8": {"kind": "sheet", "material": "birch plywood", "thickness": "8 mm ± 0.2 mm"},
        "ply-6": {"kind": "sheet", "material": "birch plywood", "thickness": "6 mm"},
        "heater-120": {"kind": "heater", "power": "120 W", "voltage": "24 V"},
        "heater-150": {"kind": "heater", "power": "150 W", "voltage": "12 V"},
        "supply-250": {"kind": "supply", "power": "250 W", "voltage": "24 V"},
        "supply-350": {"kind": "supply", "power": "350 W", "voltage": "24 V"},
        "plate": {"kind": "thing", "heat-capacity": "539 J/K", "mass": "0.3 kg"},
        "clamp": {
            "kind": "printed",
            "meshes": [{"mesh": "a.stl", "suits": {"z-rod.diameter": "10 mm"}}],
            "plastics": ["PETG", "ABS"],
            "zone": "warm",
        },
        "petg": {"kind": "filament", "plastic": "PETG"},
        "bracket": {"kind": "thing", "sizes": {"square": "31 mm"}},
    }
    places = {
        "panel": bench.options("ply-8", "ply-6"),
        "heater": bench.options("heater-120", "heater-150"),
        "supply": bench.options("supply-250", "supply-350"),
        "plate": "plate",
        "clamp": "clamp",
        "bracket": "bracket",
        "z-rod": bench.options("rod-10", "rod-hard", quantity=2, length="250 mm", matched="yes"),
    }
    return bench.screw(
        {"guide.offset": "30 mm", "moves": ["gantry", "z-bearing", "z-nut", "plate"]},
        parts,
        places=places,
        workshop={
            "bits": ["metric 0.5"],
            "print-bed": {"width": "200 mm", "depth": "200 mm", "height": "150 mm", "plastics": ["PETG", "ABS"]},
        },
        outlines={"panel": Outline(rectangle_loop(400, 375), ())},
        meshes={"a.stl": MeshFacts("a.stl", 12, 2400.0, (0, 0, 0), (60, 30, 20), 1, True, 8000.0)},
        mates={"face": {"kind": "face on pattern", "a": "z-motor.face", "b": "bracket.square"}},
        joints={
            "motor": {
                "screw": "socket head M3",
                "through": ["washer", "panel.thickness"],
                "into": "z-motor.tapped",
                "shakes": "yes",
            }
        },
        sheets={"panel": {"outline": "p.dxf", "holes": [{"for": "z-motor.face", "at": ["90 mm", "40 mm"]}]}},
        rails={
            "main": {
                "supply": "supply",
                "voltage": "24 V",
                "loads": [{"place": "heater"}, {"power": "66 W", "for": "rest"}],
            }
        },
        warmings={
            "bed": {
                "heater": "heater",
                "stores": ["plate"],
                "loss": "0.7 W/K",
                "room": "22 °C",
                "target": "90 °C",
                "within": "8 min",
            }
        },
        frames={
            "portal": {
                "panel": "panel",
                "leg-free": "130 mm",
                "leg-width": "60 mm",
                "force": "10 N",
                "sway-limit": "0.25 mm",
            }
        },
        chains={"gap": {"terms": ["+ z-rod.length", "- panel.thickness", "- 236 mm"], "at-least": "2 mm"}},
        steps={"one": {"title": "all", "uses": list(places), "joints": ["motor"]}},
    )


def hanging(bench):
    """Open a belt axis that hangs, with an idler and a motor on a printed end, of which all is described."""
    parts = {
        "end": {"kind": "printed", "meshes": [{"mesh": "a.stl"}], "plastics": ["PETG"]},
        "ball": {**bench.parts["ball"], "mass": "16 g"},
        "smooth": {"kind": "ball-bearing", "bore": "5 mm", "outer-diameter": "16 mm", "width": "5 mm"},
    }
    places = {
        "y-motor": bench.options("motor-full", "motor-mid", "motor-flat", on="end"),
        "end": "end",
        "y-idler": bench.options("pulley-20", "smooth"),
    }
    axis = {
        "vertical": "yes",
        "idler": "y-idler",
        "belt-at": "12 mm",
        "driver-current": "1 A",
        "needs.holds-itself": "yes",
        "needs.lost-motion": "0.1 mm",
    }
    return bench.belt(axis, parts, places=places)


def fastened(bench):
    """Open a box whose screws are pulled, pushed and done up again, straight into the edge of a panel."""
    parts = {
        "ply": {"kind": "sheet", "material": "birch plywood", "thickness": "9 mm"},
        "mdf": {"kind": "sheet", "material": "MDF", "thickness": "12 mm"},
        "block": {"kind": "thing", "material": "birch plywood", "sizes": {"depth": "12 mm"}},
    }
    into = {"place": "block", "depth": "block.depth", "holds": "panel edge"}
    loads = {"tightened": "3", "pull": "20 N", "slide": "10 N"}
    joint = {"screw": "socket head M4", "through": ["panel.thickness"], "into": into, **loads}
    return bench.case(parts=parts, places={"panel": bench.options("ply", "mdf"), "block": "block"}, joints={"j": joint})


@pytest.fixture(scope="module")
def cases(bench):
    """Return the machines on which all checks are tried."""
    guide = {"guide.grip": "10 mm", "guide.parallel": "0.2 mm", "guide.seats": {"askew": "0.05 mm"}}
    return {
        "bed on a belt": bench.belt(guide),
        "hanging on a belt": hanging(bench),
        "gantry and all": everything(bench),
        "a room": bench.span(),
        "wired": bench.wired(),
        "fastened": fastened(bench),
    }


def random_build(case, draw: random.Random) -> Build:
    """Return a build with every question answered by lot."""
    answers = {}
    for key in case.questions:
        answers[key] = draw.choice(case.answers(key, answers))
    return Build.of(answers)


def asked(cases):
    """Yield every check with every subject of every machine."""
    for case in cases.values():
        for check in CHECKS:
            for subject in check.subjects(case.project.design):
                yield case, check, subject


def terms_of(case, check, subject) -> SumTerms:
    """Return the grown contributions of the total that a check uses."""
    total = TOTALS[check.total.name]
    grown = tuple(
        grow(lambda reader, place=place: reader.derive(term_units, total.name, subject, place), case, 1000)
        for place in total.terms(case.project.design, subject)
    )
    return SumTerms(grown, total.scale)


class TestList:
    def test_codes_are_given_once_and_every_check_has_words(self):
        assert len({check.code for check in CHECKS}) == len(CHECKS)
        for check in CHECKS:
            assert re.fullmatch(r"[A-Z]+-\d\d", check.code)
            assert check.title[0].isupper()
            assert len(check.source) > 5
            assert check.run.__module__.startswith("scantling.checks.")

    def test_every_check_has_its_own_file_with_its_words(self):
        files = [check.run.__module__ for check in CHECKS]
        assert len(set(files)) == len(files)
        assert all(len(sys.modules[file].__doc__) > 60 for file in files)

    def test_every_check_has_a_word_to_say(self, cases):
        said = {check.code for case, check, _ in asked(cases)}
        assert said == {check.code for check in CHECKS}

    def test_totals_are_declared_where_they_are_read(self, cases, monkeypatch):
        read = set()
        tries = ((*one, seed) for one in asked(cases) for seed in range(6))
        for case, check, subject, seed in tries:
            reader = case.reader(random_build(case, random.Random(seed)))
            trial = dict.fromkeys((MOVING_MASS.name, RAIL_POWER.name), 1.0)
            spy = Reader(case, reader._answers, trial)
            monkeypatch.setattr(spy, "trial", lambda name, spy=spy, check=check: read.add((check.code, name)) or 1.0)
            check.run(spy, subject)
        declared = {(check.code, check.total.name) for check in CHECKS if check.total}
        assert read == declared


class TestReading:
    def test_what_was_not_read_does_not_matter(self, cases):
        draw = random.Random(7)
        for case, check, subject in asked(cases):
            if check.costly:
                continue
            for _ in range(3):
                first, second = random_build(case, draw).as_dict(), random_build(case, draw).as_dict()
                reader = Reader(case, first)
                outcome = check.run(reader, subject)
                other = Reader(case, {**second, **reader.trail})
                assert check.run(other, subject) == outcome, (check.code, subject)

    def test_a_check_gives_the_same_word_twice_and_to_a_machine_opened_anew(self, bench, cases):
        anew = everything(bench)
        build = random_build(anew, random.Random(3))
        for check in CHECKS:
            for subject in check.subjects(anew.project.design):
                words = [check.run(case.reader(build), subject) for case in (anew, anew, cases["gantry and all"])]
                assert words[0] == words[1] == words[2]

    def test_checks_agree_with_their_tables(self, cases):
        draw = random.Random(11)
        for case, check, subject in asked(cases):
            if check.costly:
                continue
            if check.total is None:
                table, total = check_table(check, subject, case, frozenset()), None
            else:
                terms = terms_of(case, check, subject)
                table = sum_table(check, check.total, subject, case, frozenset(), terms)
                total = terms
            for _ in range(BUILDS):
                answers = random_build(case, draw).as_dict()
                outcome = check.run(Reader(case, answers), subject)
                direct = isinstance(outcome, NotLookedAt) or outcome.admissible
                units = sum(value_at(tree, answers) for tree in total.terms) if total else 0
                assert table.allows(value_at(table.tree, answers), units) == direct, (check.code, subject)

    def test_declared_monotony_is_true(self, cases):
        for case, check, subject in asked(cases):
            if check.total is not None:
                terms = terms_of(case, check, subject)
                wide = SumTerms((*terms.terms, grow(lambda _: 20_000, case, 1)), terms.scale)  # up to 20 kg or W more
                assert untrue_monotony(check, check.total, subject, case, frozenset(), wide) is None, check.code


class TestFindings:
    def test_every_finding_is_whole(self, cases):
        draw = random.Random(5)
        for case, check, subject in asked(cases):
            for _ in range(2):
                word = check.run(case.reader(random_build(case, draw)), subject)
                assert (word.code, word.subject, word.title) == (check.code, subject, check.title)
                if isinstance(word, NotLookedAt):
                    assert word.needs
                    continue
                assert word.because.endswith("."), word.because
                assert "{" not in word.because
                assert word.source == check.source
                if word.verdict is not Verdict.SOUND:
                    assert word.mend or word.verdict is Verdict.UNKNOWN, word
                numbers = [word.value, word.low, word.high, word.limit, word.margin]
                assert all(number is None or math.isfinite(number) for number in numbers)
                if word.value is not None:
                    assert word.low <= word.value <= word.high

    def test_without_words_the_verdict_is_the_same(self, cases):
        draw = random.Random(6)
        for case, check, subject in asked(cases):
            answers = random_build(case, draw).as_dict()
            told = check.run(Reader(case, answers), subject)
            bare = check.run(Reader(case, answers, words=False), subject)
            assert (type(bare), bare.code, bare.subject) == (type(told), told.code, told.subject)
            if isinstance(told, Finding):
                assert bare.verdict is told.verdict, (check.code, subject)
            else:
                assert bare == told

    def test_run_checks_sorts_by_what_matters(self, cases):
        case = cases["gantry and all"]
        report = run_checks(case, random_build(case, random.Random(2)))
        ranks = [finding.verdict.rank for finding in report.findings]
        assert ranks == sorted(ranks)
        assert isinstance(report, Report)
        assert {word.code for word in report.findings} | {w.code for w in report.not_looked_at} >= {
            "JOINT-01",
            "CHAIN-02",
        }

    def test_costly_checks_can_be_left_out(self, cases):
        case = cases["gantry and all"]
        report = run_checks(case, random_build(case, random.Random(2)), costly=False)
        assert "CHAIN-02" not in {finding.code for finding in report.findings}

    def test_a_second_build_runs_only_what_it_changes(self, cases):
        case = cases["bed on a belt"]
        build = random_build(case, random.Random(2))
        check = next(check for check in CHECKS if check.code == "BELT-03")
        first = run_check(check, case.reader(build))
        assert run_check(check, case.reader(build))[0] is first[0]

    def test_information_comes_last(self):
        def finding(code, verdict=Verdict.SOUND, margin=None, side=Limit.UPPER, value=1.0):
            return Finding(code, "axis y", "t", verdict, "b", "s", value=value, margin=margin, side=side)

        told = finding("A", side=Limit.NONE)
        tight, wide = finding("B", margin=0.1), finding("C", margin=0.9)
        rule = finding("D", value=None, side=Limit.NONE)
        bad, odd = finding("E", Verdict.UNSOUND, -1.0), finding("F", Verdict.UNKNOWN)
        assert by_weight([told, wide, rule, odd, tight, bad]) == (bad, odd, tight, wide, rule, told)


class TestUnlocking:
    def test_the_facts_that_would_unlock_most_come_first(self):
        words = [
            NotLookedAt("A-01", "axis y", "t", ("free",)),
            NotLookedAt("A-02", "axis y", "t", ("free", "stops")),
            NotLookedAt("A-03", "axis y", "t", ("stops", "travel", "speed", "life")),
            NotLookedAt("A-04", "axis y", "t", ("bits",)),
        ]
        assert unlocking_facts(words) == ("free", "bits", "stops")
        assert unlocking_facts([]) == ()

    def test_an_axis_of_a_few_lines_is_judged_and_the_rest_named(self, bench):
        parts = {
            "motor": {"kind": "motor", "frame-size": "17", "shaft-diameter": "5 mm", "holding-torque": "0.26 N m"},
            "pulley": {"kind": "pulley", "teeth": "16", "profile": "2 mm round"},
            "belt": {"kind": "belt", "profile": "2 mm round", "width": "6 mm"},
        }
        axis = {
            "drive": "belt",
            "motor": "m",
            "pulley": "p",
            "belt": "b",
            "moves": [{"mass": "1.5 kg", "for": "bed"}],
            "friction": "4 N",
            "needs": {"speed": "150 mm/s", "acceleration": "2000 mm/s2"},
        }
        case = bench.case(parts=parts, places={"m": "motor", "p": "pulley", "b": "belt"}, axes={"y": axis})
        report = run_checks(case, random_build(case, random.Random(1)))
        verdicts = {finding.code: finding.verdict for finding in report.findings}
        assert verdicts["BELT-03"] is Verdict.SOUND
        assert {word.code for word in report.not_looked_at} >= {"BELT-01", "BELT-02"}
        assert "axes.y.axles" in report.unlocking
