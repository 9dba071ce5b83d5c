"""Joints: stacks, screws in them, and the hardware they take."""

from __future__ import annotations

import pytest

from scantling.build.demand import joint_needs
from scantling.build.fasteners import joint_screws, standard_part
from scantling.build.hardware import hardware, hardware_totals
from scantling.build.missing import NotDescribedError
from scantling.build.screw_fit import ideal_length, screw_fit, shank
from scantling.build.stacks import holding, joint_count, joint_nuts, named_places, stack
from scantling.model.kinds import Screw
from scantling.quantities import Grade

M3 = "M3x{} socket head screw"


def test_a_stack_adds_its_layers(read):
    found = read().derive(stack, "motor-to-panel")
    assert [layer.what for layer in found.layers] == ["M3 washer", "back-panel.thickness"]
    assert found.grip_mm.value == pytest.approx(9.5)
    assert (found.grip_mm.low, found.grip_mm.high) == pytest.approx((9.45, 9.55))  # ISO 7089 M3: 0.5, at most 0.55


def test_a_stack_follows_the_sheet(read):
    assert read(parts={"back-panel": "ply-6"}).derive(stack, "motor-to-panel").grip_mm.value == pytest.approx(6.5)


def test_a_screw_in_a_blind_hole(read):
    # 9.5 of grip, 4.5 of thread: 12 mm holds 2.5 and leaves 2; 16 mm strikes the bottom 2 mm early
    reader = read()
    short, long = (reader.derive(screw_fit, "motor-to-panel", M3.format(n)) for n in (12, 16))
    assert (short.engagement_mm.value, long.engagement_mm.value) == pytest.approx((2.5, 4.5))
    assert short.bottom_mm is not None
    assert long.bottom_mm is not None
    assert (short.bottom_mm.value, long.bottom_mm.value) == pytest.approx((2.0, -2.0))
    assert not short.is_admissible  # one diameter, 3 mm, is wanted
    assert not long.is_admissible
    thinner = read(parts={"back-panel": "ply-6"})
    assert thinner.derive(screw_fit, "motor-to-panel", M3.format(10)).is_admissible  # 3.5 in, 1.0 left


def test_a_screw_with_a_nut(read):
    # 7 of grip and a lock nut of 4: 12 mm sticks out 1, 10 does not reach, 16 sticks out 5, 20 too far
    reader = read()
    fits = {n: reader.derive(screw_fit, "holder-to-bed", M3.format(n)) for n in (10, 12, 16, 20)}
    assert {n: round(f.protrusion_mm.value, 6) for n, f in fits.items()} == {10: -1, 12: 1, 16: 5, 20: 9}
    assert [n for n, fit in fits.items() if fit.is_admissible] == [12, 16]
    assert fits[12].wants.least_protrusion_mm == 0.5  # one pitch of M3
    assert fits[10].bottom_mm is None


def test_a_free_end_that_matters_shortens_the_screw(read):
    reader = read({"joints.holder-to-bed.free-end": "2 mm"})
    assert not reader.derive(screw_fit, "holder-to-bed", M3.format(16)).is_admissible
    assert reader.derive(screw_fit, "holder-to-bed", M3.format(12)).is_admissible


def test_the_ideal_length_is_one_that_fits(read):
    for parts in ({}, {"back-panel": "ply-6"}):
        reader = read(parts=parts)
        assert reader.derive(ideal_length, "holder-to-bed") == pytest.approx(7 + 4 + 0.75)
        wants = reader.derive(screw_fit, "motor-to-panel", M3.format(12)).wants
        grip_mm = reader.derive(stack, "motor-to-panel").grip_mm.value
        past_mm = reader.derive(ideal_length, "motor-to-panel") - grip_mm
        assert wants.least_engagement_mm <= past_mm <= 4.5 - 0.5


@pytest.mark.parametrize(("holds", "engaged_mm"), [("metal", 3.0), ("plastic", 6.0), ("panel", 6.0), ("insert", 3.0)])
def test_what_holds_the_thread_decides_how_much_is_wanted(read, holds, engaged_mm):
    into = {"place": "bed", "depth": "10 mm", "holds": holds}
    fit = read({"joints.motor-to-panel.into": into}).derive(screw_fit, "motor-to-panel", M3.format(16))
    assert fit.wants.least_engagement_mm == engaged_mm


def test_a_short_insert_is_held_in_all_its_length(read):
    into = {"place": "bed", "depth": "2.5 mm", "holds": "insert", "blind": "no"}
    fit = read({"joints.motor-to-panel.into": into}).derive(screw_fit, "motor-to-panel", M3.format(12))
    assert fit.wants.least_engagement_mm == 2.5
    assert fit.is_admissible
    assert fit.bottom_mm is None


def test_an_insert_and_a_motor_say_their_own_depth(read):
    changes = {
        "parts.insert-3": {"kind": "insert", "thread": "M3", "outer-diameter": "4.6 mm", "length": "5.7 mm"},
        "places.nest": {"reference": "insert-3"},
        "joints.holder-to-bed.into": {"place": "nest", "holds": "insert"},
        "joints.motor-to-panel.into": {"place": "y-motor"},
    }
    assert read(changes).derive(holding, "holder-to-bed").depth_mm.value == 5.7
    assert read(changes).derive(holding, "motor-to-panel").depth_mm.value == 4.5


def test_a_motor_that_does_not_say_its_thread_has_the_usual_depth(read):
    depth_mm = read({"parts.motor-flat.tapped-depth": None}).derive(holding, "motor-to-panel").depth_mm
    assert (depth_mm.value, depth_mm.grade) == (4.5, Grade.TYPICAL)  # table of motor faces, frame 17


def test_nuts_of_a_joint(read):
    joints = read(
        {"joints.motor-to-panel.into": "plain nut", "joints.motor-to-panel.locking": "two nuts"}
    ).design.joints
    assert joint_nuts(joints["motor-to-panel"]) == ("M3 nut", "M3 thin nut")
    assert joint_nuts(joints["holder-to-bed"]) == ("M3 lock nut",)
    locked = read(
        {"joints.motor-to-panel.into": "plain nut", "joints.motor-to-panel.locking": "lock nut"}
    ).design.joints
    assert joint_nuts(locked["motor-to-panel"]) == ("M3 lock nut",)
    assert joint_nuts(read().design.joints["motor-to-panel"]) == ()


def test_a_joint_falls_away_with_what_it_holds(read):
    assert named_places(read().design.joints["holder-to-bed"]) == ("y-holder", "bed")
    assert read().derive(joint_count, "holder-to-bed") == 6
    filled = read(parts={"y-bearing": "block"})
    assert filled.derive(joint_count, "holder-to-bed") == 0
    assert filled.derive(joint_needs, "holder-to-bed") == ()


def test_a_joint_of_three_things_stays_while_two_are_left(read):
    through = ["y-holder.flange", "bed.thickness", "back-panel.thickness"]
    assert read({"joints.holder-to-bed.through": through}, parts={"y-bearing": "block"}).derive(
        joint_count, "holder-to-bed"
    )


def test_a_joint_whose_thread_has_gone_falls_away(read):
    changes = {"joints.motor-to-panel.into": "y-holder.flange", "joints.motor-to-panel.through": ["bed.thickness"]}
    assert read(changes, parts={"y-bearing": "block"}).derive(joint_count, "motor-to-panel") == 0


@pytest.mark.parametrize(
    ("changes", "need"),
    [
        ({"joints.motor-to-panel.through": ["bed.width", "washer"]}, "parts.plate.sizes.width"),
        ({"parts.motor-flat.tapped-depth": None, "parts.motor-flat.frame-size": "23"}, "parts.motor-flat.tapped-depth"),
        ({"joints.motor-to-panel.into": {"place": "bed"}}, "joints.motor-to-panel.into.depth"),
        ({"joints.motor-to-panel.into": {}}, "joints.motor-to-panel.into"),
        ({"joints.motor-to-panel.through": [{}]}, "joints.motor-to-panel.through"),
        (
            {"joints.motor-to-panel.screw": "socket head #4-40", "joints.motor-to-panel.through": ["large washer"]},
            "joints.motor-to-panel.through",
        ),
    ],
)
def test_what_a_joint_lacks_is_named(read, changes, need):
    reader = read(changes)
    with pytest.raises(NotDescribedError) as caught:
        reader.derive(screw_fit, "motor-to-panel", reader.screw("motor-to-panel").id)
    assert any(one.startswith(need) for one in caught.value.needs)


def test_both_halves_of_a_joint_are_named_when_both_lack_something(read):
    changes = {"joints.motor-to-panel.through": ["bed.width"], "joints.motor-to-panel.into": "y-motor.body-length"}
    with pytest.raises(NotDescribedError) as caught:
        read(changes).derive(screw_fit, "motor-to-panel", M3.format(12))
    assert caught.value.needs == ("parts.plate.sizes.width", "parts.motor-flat.body-length")


@pytest.mark.parametrize(
    ("name", "plain_mm"),
    # ISO 4762: M3x20 and M5x25 threaded to the head, M3x25 and M8x40 not (table from memory); b = 18, 22, 28 mm
    [
        ("M3x20 socket head screw", 0),
        ("M5x25 socket head screw", 0),
        ("M3x25 socket head screw", 7),
        ("M8x40 socket head screw", 12),
        ("M8x40 hexagon head screw", 0),
    ],
)
def test_long_screws_have_a_plain_shank(name, plain_mm):
    screw = standard_part(name)
    assert isinstance(screw, Screw)
    assert shank(screw).value == plain_mm


def test_a_plain_shank_must_not_reach_the_nut(read):
    # 5 mm of grip, M3x25 has 7 mm without thread: the nut cannot be tightened
    reader = read({"joints.holder-to-bed.through": ["5 mm"], "joints.holder-to-bed.free-end": "30 mm"})
    fit = reader.derive(screw_fit, "holder-to-bed", M3.format(25))
    assert fit.shank_mm.value > fit.grip_mm.value
    assert not fit.is_admissible


def test_every_grip_of_a_nut_finds_a_screw(read):
    # the usual limit of the free end is one step of the series, so that no stack is left without a screw
    for tenths in range(20, 200, 3):
        reader = read({"joints.holder-to-bed.through": [f"{tenths / 10} mm"]})
        names = joint_screws(reader.design.joints["holder-to-bed"])
        assert any(reader.derive(screw_fit, "holder-to-bed", name).is_admissible for name in names), tenths


def test_hardware_of_a_machine(read):
    reader = read()
    counted = {(one.part, one.where): one.count for one in reader.derive(hardware)}
    screw = reader.screw("holder-to-bed").id
    assert counted[(screw, "joint holder-to-bed")] == 6
    assert counted[("M3 lock nut", "joint holder-to-bed")] == 6
    assert counted[("M3 washer", "joint motor-to-panel")] == 4
    brought = dict(read(parts={"y-bearing": "block"}).derive(hardware_totals))
    assert "M3 lock nut" not in brought
    assert brought["M3x12 socket head screw"] == 4 + 4  # the motor's own and those the block brings


def test_washers_of_one_name_are_counted_together(read):
    reader = read({"joints.holder-to-bed.through": ["washer", "y-holder.flange", "bed.thickness", "washer"]})
    assert {n.part: n.amount for n in reader.derive(joint_needs, "holder-to-bed")}["M3 washer"] == 12
