"""Standard fasteners by name."""

from __future__ import annotations

import pytest

from scantling.build.fasteners import fastener_mass, joint_screws, nut_name, standard_part, washer_name
from scantling.errors import LookUpError
from scantling.model.joint import Joint
from scantling.model.kinds import Nut, Screw, Washer
from scantling.tables.fastener_names import head_and_thread


def joint(screw: str) -> Joint:
    return Joint.model_validate({"screw": screw, "through": [], "into": "plain nut"})


@pytest.mark.parametrize(
    ("name", "head", "thread", "length_mm"),
    [
        ("M3x12 socket head screw", "socket", "M3", 12.0),
        ("M3x12 button head screw", "button", "M3", 12.0),
        ("M4x10 countersunk screw", "countersunk", "M4", 10.0),
        ("M8x40 hexagon head screw", "hexagon", "M8", 40.0),
        ("M8x1x40 hexagon head screw", "hexagon", "M8x1", 40.0),
        ("1/4-20x3/4 in socket head screw", "socket", "1/4-20", 19.05),
        ("#6-32x1/2 in pan head screw", "pan", "#6-32", 12.7),
        ("  M3x12   socket head   screw ", "socket", "M3", 12.0),
    ],
)
def test_a_screw_is_known_by_its_name(name, head, thread, length_mm):
    screw = standard_part(name)
    assert isinstance(screw, Screw)
    assert (screw.head, screw.thread, screw.length_mm.value) == (head, thread, length_mm)
    assert screw.id == name


def test_the_two_families_of_lock_nuts_differ():
    # DIN 985: 4 mm, 3.7 at least; ISO 7040 (as its ASME twin): 4.5 mm, 3.9 at least
    plain, other = standard_part("M3 lock nut"), standard_part("M3 lock nut ISO 7040")
    assert isinstance(plain, Nut)
    assert isinstance(other, Nut)
    assert (plain.height_mm.low, plain.height_mm.value) == (3.7, 4.0)
    assert (other.height_mm.low, other.height_mm.value) == (3.9, 4.5)


@pytest.mark.outside
@pytest.mark.parametrize(
    ("name", "height_mm"),
    # Source: ISO 4032, largest heights, reproduced by an independent fastener library (bd_warehouse)
    [("M3 nut", 2.4), ("M4 nut", 3.2), ("M5 nut", 4.7), ("M6 nut", 5.2), ("M8 nut", 6.8), ("M10 nut", 8.4)],
)
def test_heights_of_plain_nuts(name, height_mm):
    nut = standard_part(name)
    assert isinstance(nut, Nut)
    assert nut.height_mm.value == height_mm


def test_a_washer_has_its_tolerance_on_both_sides():
    washer = standard_part("M6 washer")  # ISO 7089: 1.6 mm, at most 1.8
    assert isinstance(washer, Washer)
    assert (washer.thickness_mm.low, washer.thickness_mm.value, washer.thickness_mm.high) == pytest.approx(
        (1.4, 1.6, 1.8)
    )


@pytest.mark.parametrize("name", ["1/4 in washer", "#6 washer", "M3 large washer", "5/16 in large washer"])
def test_washers_are_named_by_size(name):
    assert isinstance(standard_part(name), Washer)


@pytest.mark.parametrize(
    ("style", "thread", "name"),
    [
        ("plain", "M8x1", "M8 washer"),
        ("large", "M3", "M3 large washer"),
        ("plain", "1/4-20", "1/4 in washer"),
        ("large", "#10-24", "#10 large washer"),
    ],
)
def test_names_of_washers_leave_out_the_pitch(style, thread, name):
    assert washer_name(style, thread) == name
    assert standard_part(name).id == name


def test_every_screw_of_a_joint_is_a_standard_part_and_they_ascend():
    for text in ("socket head M3", "button head M4", "countersunk M5", "hexagon head M8", "socket head 1/4-20"):
        parts = [standard_part(name) for name in joint_screws(joint(text))]
        lengths = [part.length_mm.value for part in parts if isinstance(part, Screw)]
        assert len(lengths) == len(parts) > 4
        assert lengths == sorted(set(lengths))


@pytest.mark.parametrize(
    ("name", "nearest"),
    [
        ("M3x14 socket head screw", "M3x12 socket head screw"),
        ("M3x12 socket screw", "M3x12 socket head screw"),
        ("M3 lok nut", "M3 lock nut"),
        ("foo", "known are"),
        ("M99 nut", "M3 nut"),
        ("1/4 washers", "1/4 in washer"),
    ],
)
def test_a_wrong_name_is_answered_with_the_nearest(name, nearest):
    with pytest.raises(LookUpError) as caught:
        standard_part(name)
    assert repr(name) in str(caught.value)
    assert nearest in str(caught.value)


@pytest.mark.parametrize("text", ["M3 socket head", "socket head", "socket M3", "cheese head M3"])
def test_a_joint_with_an_unknown_screw_is_refused(text):
    with pytest.raises(LookUpError, match="screw of a joint"):
        head_and_thread(text)


def test_a_joint_with_an_unknown_thread_is_refused():
    with pytest.raises(LookUpError, match="M3x9"):
        head_and_thread("socket head M3x9")


@pytest.mark.parametrize(
    ("name", "mass_g"),
    # grams each, from memory of dealers' tables (DIN 912, DIN 933, ISO 4032, DIN 985, ISO 7089)
    [
        ("M3x12 socket head screw", 0.96),
        ("M5x20 socket head screw", 4.5),
        ("M8x40 hexagon head screw", 19.5),
        ("M3 nut", 0.38),
        ("M3 lock nut", 0.49),
        ("M3 washer", 0.12),
    ],
)
def test_masses_by_calculation_are_within_their_band(name, mass_g):
    mass_kg = fastener_mass(standard_part(name))
    assert mass_kg.low * 1000 <= mass_g <= mass_kg.high * 1000


def test_a_mass_that_is_described_counts():
    described = Screw.model_validate({"id": "x", "head": "socket", "thread": "M3", "length": "14 mm", "mass": "1.1 g"})
    assert fastener_mass(described).value == pytest.approx(0.0011)


def test_a_described_screw_without_a_mass_is_weighed_by_calculation():
    described = Screw.model_validate({"id": "x", "head": "socket", "thread": "M3", "length": "14 mm"})
    shorter, longer = (fastener_mass(standard_part(f"M3x{n} socket head screw")).value for n in (12, 16))
    assert shorter < fastener_mass(described).value < longer


def test_names_of_nuts():
    assert [nut_name(style, "M3") for style in ("plain", "lock", "thin")] == ["M3 nut", "M3 lock nut", "M3 thin nut"]
