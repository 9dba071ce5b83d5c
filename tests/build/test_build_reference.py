"""The questions of a case, the reference build, and a build changed in a few answers."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scantling.build.fasteners import standard_part
from scantling.build.reference import carry_over, reference_build
from scantling.build.screw_fit import screw_fit
from scantling.errors import LookUpError
from scantling.model.build import Build, Key
from scantling.model.place import EMPTY


def part(place: str) -> Key:
    return Key("part", place)


def test_places_that_are_alike_are_asked_once(make_case):
    case = make_case()
    asked = [key.subject for key in case.questions if key.kind == "part"]
    assert "front-panel" in asked
    assert "back-panel" not in asked
    reader = case.reader(carry_over(case, reference_build(case), {part("back-panel"): "ply-6"}))
    assert [reader.part(place).id for place in ("front-panel", "back-panel")] == ["ply-6", "ply-6"]


def test_answers_of_a_place_may_be_empty_where_that_can_be(make_case):
    case = make_case()
    assert case.answers(part("bed-heater"), {}) == ("heater-80", "heater-120", EMPTY)
    assert case.answers(part("y-holder"), {}) == ("holder", EMPTY)  # the block may fill it
    assert case.answers(part("bed"), {}) == ("plate",)


def test_a_place_that_is_alike_to_a_filled_one_may_be_empty_too(make_case):
    fills = {"part": "pulley-16", "also-fills": ["back-panel"]}
    case = make_case({"places.y-pulley.stand-ins": [fills]})
    assert EMPTY in case.answers(part("front-panel"), {})
    filled = carry_over(case, reference_build(case), {part("y-pulley"): "pulley-16"})
    assert filled.as_dict()[part("front-panel")] == EMPTY


def test_answers_of_a_get_follow_the_part(make_case):
    case = make_case()
    assert case.answers(Key("get", "y-bearing"), {part("y-bearing"): "block"}) == ("printed PETG",)
    assert case.answers(Key("get", "y-bearing"), {part("y-bearing"): "bushing-ball"}) == ("bought",)
    assert set(case.answers(Key("get", "y-bearing"), {})) == {"bought", "printed PETG"}


def test_the_reference_build_takes_the_reference_parts(make_case):
    case = make_case()
    build = reference_build(case, copies=4)
    answers = build.as_dict()
    assert build.copies == 4
    assert set(answers) == set(case.questions)
    assert answers[part("y-rod")] == "rod-8"
    assert answers[Key("get", "y-rod")] == "cut"
    assert answers[Key("screw", "holder-to-bed")] == "M3x12 socket head screw"
    assert build == reference_build(make_case(), copies=4)


def test_the_reference_screw_is_admissible_where_any_is(make_case):
    case = make_case({"joints.motor-to-panel.through": ["back-panel.thickness"]})  # 9 + 3.0 … 4.0: M3x12 holds 3
    reader = case.reader(reference_build(case))
    for joint in case.project.design.joints:
        assert reader.derive(screw_fit, joint, reader.screw(joint).id).is_admissible


def test_a_screw_that_the_design_describes_can_be_taken(make_case):
    # 14 mm is in no standard series, yet sold: 9.5 of grip, 4.5 in a thread 6 deep with 1.5 to spare
    odd = {"kind": "screw", "head": "socket", "thread": "M3", "length": "14 mm"}
    other = {"kind": "screw", "head": "button", "thread": "M3", "length": "14 mm"}
    changes = {
        "parts.odd": odd,
        "parts.other": other,
        "parts.motor-flat.tapped-depth": "6 mm",
        "places.y-motor.stand-ins": [],
        "joints.motor-to-panel.free-end": "1 mm",
    }
    case = make_case(changes)
    names = case.answers(Key("screw", "motor-to-panel"), {})
    assert names[names.index("odd") - 1] == "M3x12 socket head screw"
    assert names[names.index("odd") + 1] == "M3x16 socket head screw"
    assert "other" not in names
    assert reference_build(case).as_dict()[Key("screw", "motor-to-panel")] == "odd"


def test_a_joint_that_is_not_described_still_has_an_answer(make_case):
    case = make_case({"joints.motor-to-panel.through": ["bed.width"]})
    assert reference_build(case).as_dict()[Key("screw", "motor-to-panel")] == "M3x5 socket head screw"


def test_an_option_that_fills_another_place_empties_it_and_gives_it_back(make_case):
    case = make_case()
    reference = reference_build(case)
    filled = carry_over(case, reference, {part("y-bearing"): "block"})
    assert filled.as_dict()[part("y-holder")] == EMPTY
    assert filled.as_dict()[Key("get", "y-holder")] == EMPTY
    assert carry_over(case, filled, {part("y-bearing"): "bushing-ball"}) == reference


def test_a_place_left_empty_on_purpose_stays_so(make_case):
    case = make_case()
    without = carry_over(case, reference_build(case), {part("bed-heater"): EMPTY})
    assert carry_over(case, without, {part("y-pulley"): "pulley-16"}).as_dict()[part("bed-heater")] == EMPTY


def test_only_what_must_change_changes(make_case):
    case = make_case({"joints.motor-to-panel.through": ["back-panel.thickness"]})
    before = reference_build(case)
    after = carry_over(case, before, {part("front-panel"): "ply-6"})
    changed = {key for key, answer in after.answers if before.as_dict()[key] != answer}
    # 6 mm of panel, 3 to 4 of thread: M3x10 holds 4.0; the nut's joint does not touch the panel
    assert changed == {part("front-panel"), Key("screw", "motor-to-panel")}
    assert after.as_dict()[Key("screw", "motor-to-panel")] == "M3x10 socket head screw"


def test_a_screw_that_is_still_admissible_stays(make_case):
    case = make_case()
    longer = carry_over(case, reference_build(case), {Key("screw", "holder-to-bed"): "M3x16 socket head screw"})
    after = carry_over(case, longer, {part("y-pulley"): "pulley-16"})
    assert after.as_dict()[Key("screw", "holder-to-bed")] == "M3x16 socket head screw"


def test_a_screw_that_no_longer_fits_takes_the_nearest_that_does(make_case):
    case = make_case(
        {
            "parts.thick-plate": {"kind": "thing", "mass": "900 g", "sizes": {"thickness": "12 mm"}},
            "places.bed.stand-ins": ["thick-plate"],
        }
    )
    before = carry_over(case, reference_build(case), {Key("screw", "holder-to-bed"): "M3x16 socket head screw"})
    after = carry_over(case, before, {part("bed"): "thick-plate"})
    # 4 + 12 of grip and a nut of 4: 20 ends flush, 25 sticks out 5: the nearest that holds
    assert after.as_dict()[Key("screw", "holder-to-bed")] == "M3x25 socket head screw"


def test_what_an_option_requires_and_forbids_is_done(make_case):
    stand_in = {"part": "pulley-16", "requires": {"y-bearing": "bushing-polymer"}, "forbids": {"y-motor": "motor-flat"}}
    case = make_case({"places.y-pulley.stand-ins": [stand_in]})
    answers = carry_over(case, reference_build(case), {part("y-pulley"): "pulley-16"}).as_dict()
    assert answers[part("y-bearing")] == "bushing-polymer"
    assert answers[part("y-motor")] == "motor-small"


def test_what_is_pinned_wins_over_what_an_option_requires(make_case):
    stand_in = {"part": "pulley-16", "requires": {"y-bearing": "bushing-polymer"}}
    case = make_case({"places.y-pulley.stand-ins": [stand_in]})
    pins = {part("y-pulley"): "pulley-16", part("y-bearing"): "bushing-ball"}
    assert carry_over(case, reference_build(case), pins).as_dict()[part("y-bearing")] == "bushing-ball"


def test_options_that_contradict_each_other_end(make_case):
    a = {"part": "pulley-16", "requires": {"y-motor": "motor-small"}}
    b = {"part": "motor-small", "requires": {"y-pulley": "pulley-20"}}
    case = make_case({"places.y-pulley.stand-ins": [a], "places.y-motor.stand-ins": [b]})
    answers = carry_over(case, reference_build(case), {part("y-pulley"): "pulley-16"}).as_dict()
    assert answers[part("y-pulley")] == "pulley-16"


@pytest.mark.parametrize(
    ("key", "answer"),
    [
        (part("bed"), "pulley-16"),
        (part("bed"), EMPTY),
        (Key("screw", "holder-to-bed"), "M4x12 socket head screw"),
        (Key("get", "bed"), "cut"),
    ],
)
def test_an_answer_that_cannot_be_is_refused(make_case, key, answer):
    case = make_case()
    with pytest.raises(LookUpError, match="answer to"):
        carry_over(case, reference_build(case), {key: answer})


@given(st.data())
def test_carrying_over_answers_every_question_and_keeps_pins(make_case, data):
    case = make_case()
    build = reference_build(case)
    for _ in range(3):
        keys = [key for key in case.questions if key.kind == "part" and key.subject != "y-holder"]  # others fill it
        key = data.draw(st.sampled_from(keys))
        answer = data.draw(st.sampled_from(case.answers(key, {})))
        build = carry_over(case, build, {key: answer})
        answers = build.as_dict()
        assert answers[key] == answer
        assert all(answers[one] in case.answers(one, answers) for one in case.questions)
        assert carry_over(case, build, {}) == build
        assert carry_over(case, build, {key: answer}) == build


def test_builds_with_equal_answers_are_equal(make_case):
    case = make_case()
    build = reference_build(case)
    assert Build.of(dict(reversed(build.answers)), 1) == build
    assert standard_part(build.as_dict()[Key("screw", "holder-to-bed")]).id == "M3x12 socket head screw"
