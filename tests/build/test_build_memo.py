"""The memory of derived values: it never changes a value, and whoever takes a value from it has read all of it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from scantling.build import (
    axis_loads,
    chains,
    demand,
    drives,
    hardware,
    holes,
    lengths,
    masses,
    meshes,
    sizes,
    stacks,
    steps,
    totals,
)
from scantling.build import (
    settings as setting_up,
)
from scantling.build.case import Case
from scantling.build.memo import Memo
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader, Unread
from scantling.errors import BrokenPromiseError
from scantling.model.build import Build, Key

Derived = tuple[Callable[..., Any], tuple[Any, ...]]


def every_derived(case: Case) -> list[Derived]:
    """Every derived value of a design: function and arguments."""
    design = case.project.design
    found: list[Derived] = [
        (f, ()) for f in (hardware.hardware_totals, setting_up.settings, steps.coverage, demand.machine_needs)
    ]
    for place in design.places:
        each = (sizes.origin, lengths.piece_length, masses.place_mass, demand.place_needs, meshes.mesh_choice)
        found += [(f, (place,)) for f in each]
        found += [(sizes.feature, (place, name)) for name in ("length", "thickness", "diameter", "bore")]
    for axis in design.axes:
        each_axis = (drives.belt_drive, drives.screw_drive, drives.guide_friction, axis_loads.travel, drives.belt_path)
        found += [(f, (axis,)) for f in each_axis]
    for joint in design.joints:
        found += [(f, (joint,)) for f in (stacks.stack, stacks.holding, stacks.joint_count, demand.joint_needs)]
    found += [(holes.sheet_drawing, (sheet,)) for sheet in design.sheets]
    found += [(chains.chain_terms, (chain,)) for chain in design.chains]
    for total in totals.TOTALS.values():
        for subject in total.subjects(design):
            found += [(totals.term_units, (total.name, subject, p)) for p in total.terms(design, subject)]
    return found


def outcome(reader: Reader, derived: Derived) -> Any:
    """The value, or what it lacks."""
    function, arguments = derived
    try:
        return reader.derive(function, *arguments)
    except NotDescribedError as error:
        return error.needs


def answered(case: Case, draw: Callable[[tuple[str, ...]], str]) -> dict[Key, str]:
    """A build with every question answered at random."""
    answers: dict[Key, str] = {}
    for key in case.questions:
        answers[key] = draw(case.answers(key, answers))
    return answers


def differing(case: Case, answers: Mapping[Key, str], every: list[Derived]) -> list[Derived]:
    """The derived values that the case's memory gives otherwise than a fresh case, in value or in readings."""
    found = []
    for derived in every:
        remembered, anew = Reader(case, answers), Reader(Case(case.project), answers)
        same = outcome(remembered, derived) == outcome(anew, derived)
        if not same or remembered.trail != anew.trail or list(remembered.trail) != list(anew.trail):
            found.append(derived)
    return found


@settings(max_examples=30)
@given(st.data())
def test_a_remembered_value_is_the_value(make_case, data):
    case = make_case()
    every = every_derived(case)
    for _ in range(3):
        answers = answered(case, lambda choices: data.draw(st.sampled_from(choices)))
        assert differing(case, answers, every) == []


def sneaky(reader: Reader, place: str) -> str:
    """A function that looks past its reader."""
    return reader._answers[Key("part", place)]


def test_a_function_that_reads_round_the_reader_is_found(make_case):
    case = make_case()
    builds = [{Key("part", "bed"): "plate", Key("part", "y-pulley"): part} for part in ("pulley-20", "pulley-16")]
    derived = (sneaky, ("y-pulley",))
    found = [differing(case, answers, [derived]) for answers in builds]
    assert found == [[], [derived]]


def test_asking_again_reads_the_same(make_case):
    case = make_case()
    reader = case.reader(Build.of({key: case.answers(key, {})[0] for key in case.questions}))
    first, second = Reader(case, reader._answers), Reader(case, reader._answers)
    first.derive(masses.place_mass, "y-rod")
    second.derive(masses.place_mass, "y-rod")
    assert first.trail == second.trail
    assert Key("part", "front-panel") in first.trail  # the panels are alike: the first is asked


def test_a_partial_reader_stops_at_what_it_does_not_know(make_case):
    case = make_case()
    known: dict[Key, str] = {}
    asked = []
    while True:
        try:
            value = Reader(case, known).derive(lengths.piece_length, "y-rod").value
            break
        except Unread as unread:
            asked.append(unread.key)
            known[unread.key] = case.answers(unread.key, known)[-1]
    assert asked == [Key("part", "front-panel")]
    assert value == 326  # 300 - 6 + 2 * 6 + 20


def test_what_is_not_described_is_remembered_with_its_readings(make_case):
    case = make_case()
    for pulley in ("pulley-20", "pulley-16"):
        reader = Reader(case, {Key("part", "bed"): "plate", Key("part", "y-pulley"): pulley})
        for _ in range(2):
            with pytest.raises(NotDescribedError) as caught:
                reader.derive(sizes.size, "bed.width")
            assert caught.value.needs == ("parts.plate.sizes.width",)
        assert reader.trail == {Key("part", "bed"): "plate"}


def test_a_function_that_changes_its_mind_is_refused(make_case):
    turns = iter([("y-pulley",), ("bed", "y-pulley")])

    def moody(reader: Reader) -> int:
        for place in next(turns):
            reader.part(place)
        return 1

    case = make_case()
    answers = {Key("part", "bed"): "plate", Key("part", "y-pulley"): "pulley-20"}
    Reader(case, answers).derive(moody)
    with pytest.raises(BrokenPromiseError, match="order"):
        Reader(case, {**answers, Key("part", "y-pulley"): "pulley-16"}).derive(moody)


def test_more_reading_with_the_same_answers_is_refused():
    memo, key = Memo(), Key("part", "a")
    memo.insert(("f",), [(key, "x"), (Key("part", "b"), "y")], 1)
    with pytest.raises(BrokenPromiseError, match="once read more"):
        memo.insert(("f",), [(key, "x")], 1)
    with pytest.raises(BrokenPromiseError, match="order"):
        memo.insert(("f",), [(key, "x"), (Key("part", "c"), "y")], 1)


def test_a_total_is_not_read_inside_a_derived_value(make_case):
    def total(reader: Reader) -> float | None:
        return reader.trial("moving-mass")

    case = make_case()
    with pytest.raises(BrokenPromiseError, match="inside"):
        Reader(case, {}, {"moving-mass": 1.0}).derive(total)
    assert Reader(case, {}, {"moving-mass": 1.0}).trial("moving-mass") == 1.0
    assert Reader(case, {}).trial("moving-mass") is None


def test_facts_of_the_case_are_asked_once(make_case):
    calls = []

    def fact(case: Case, number: int) -> int:
        calls.append(number)
        return number + len(case.questions)

    case = make_case()
    assert [case.once(fact, 1), case.once(fact, 1), case.once(fact, 2)] == [
        1 + len(case.questions),
        1 + len(case.questions),
        2 + len(case.questions),
    ]
    assert calls == [1, 2]
