"""Values to enter that follow from what an axis reaches and where it is homed. All invented."""

from __future__ import annotations

import pytest

from scantling.build.case import Case
from scantling.build.missing import NotDescribedError
from scantling.build.reach import home_size, reach_sizes
from scantling.build.reader import Reader
from scantling.build.reference import reference_build
from scantling.build.settings import axis_settings
from scantling.model.design import Design
from scantling.model.project import Project
from scantling.model.workshop import Workshop

GUIDE = {"rods": "rod", "bearings": "bushing", "free": "300 mm", "carriage": "60 mm", "stops": "20 mm"}
PARTS = {
    "rod-8": {"kind": "rod", "diameter": "8 mm"},
    "ball": {"kind": "bushing", "lining": "ball", "bore": "8 mm"},
    "rod-m6": {"kind": "threaded-rod", "thread": "M6"},
    "tube": {"kind": "coupler", "motor-bore": "5 mm", "screw-bore": "5 mm", "body": "tube"},
    "clip": {"kind": "thing", "sizes": {"reach": "12 mm"}},
}
PLACES = {"rod": "rod-8", "bushing": "ball", "screw": "rod-m6", "coupler": "tube", "clip": "clip"}


def reader_of(**axis) -> Reader:
    """Return a reader of a machine with one screw axis."""
    described = {"drive": "screw", "screw": "screw", "coupler": "coupler", "guide": GUIDE, **axis}
    sections = {
        "parts": {name: {**part, "id": name} for name, part in PARTS.items()},
        "places": {name: {"reference": part, "id": name} for name, part in PLACES.items()},
        "axes": {"x": {**described, "id": "x"}},
    }
    design = Design.model_validate({"machine": {"name": "Test"}, **sections})
    case = Case(Project(design, Workshop(name="bench", currency="EUR")))
    return case.reader(reference_build(case))


def entered(reader: Reader) -> dict[str, str]:
    """Return the values to enter of the axis."""
    return {one.key: one.value for one in reader.derive(axis_settings, "x")}


@pytest.mark.parametrize(
    ("start", "end", "reach", "offset"),
    # travel 300 - 60 - 20 = 220 on a bed of 200 with 12 mm of clips at its low edge
    [("-15 mm", "low", "188", "-27"), ("-15 mm", "high", "188", "193"), ("20 mm", "low", "180", "0")],
)
def test_position_at_the_switch_and_what_can_be_used(start, end, reach, offset):
    reach_of = {"start": start, "over": "200 mm", "lost-low": "clip.reach"}
    values = entered(reader_of(reach=reach_of, home={"end": end, "trips": "3 mm"}))
    assert (values["axis.x.reach"], values["axis.x.home-offset"]) == (reach, offset)
    assert (values["axis.x.travel"], values["axis.x.switch"]) == ("220", "3")


def test_without_a_switch_or_a_reach_nothing_is_made_up():
    values = entered(reader_of(reach={"start": "0 mm"}))
    assert "axis.x.home-offset" not in values
    bare = reader_of()
    assert not {"axis.x.reach", "axis.x.switch"} & set(entered(bare))
    with pytest.raises(NotDescribedError, match=r"axes\.x\.reach"):
        reach_sizes(bare, "x")
    with pytest.raises(NotDescribedError, match=r"axes\.x\.home"):
        home_size(bare, "x", "trips")


def test_two_soft_couplers_ask_for_a_mark_of_paint_and_one_does_not():
    assert "axis.x.coupler-marks" in entered(reader_of(screws=2))
    assert "axis.x.coupler-marks" not in entered(reader_of())
