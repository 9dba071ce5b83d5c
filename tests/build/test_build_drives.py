"""Drives, guides and lengths."""

from __future__ import annotations

from fractions import Fraction
from math import pi

import pytest

from scantling.build.axis_loads import guide_geometry, guide_size, travel
from scantling.build.drives import (
    belt_drive,
    belt_gear,
    belt_path,
    belt_run,
    full_steps,
    guide_friction,
    screw_drive,
    steps_per_mm,
)
from scantling.build.lengths import belt_order, cut_length_um, piece_length, whole_um
from scantling.build.missing import NotDescribedError
from scantling.quantities import Grade


@pytest.mark.parametrize(("pulley", "per_mm"), [("pulley-20", 80), ("pulley-16", 100)])
@pytest.mark.outside
def test_steps_of_a_belt(read, pulley, per_mm):
    # Source: arithmetic that published steps calculators share: 200 x 16 / (teeth x 2 mm)
    assert read(parts={"y-pulley": pulley}).derive(steps_per_mm, "y") == per_mm


@pytest.mark.parametrize(
    ("screw", "per_mm", "full_um"),
    # M6 3200 and 5 um, 1/4-20 320000/127 = 2519.685 and 6.35 um, lead 8 mm 400 and 40 um: exact arithmetic
    [("m6-rod", Fraction(3200), 5), ("inch-rod", Fraction(320000, 127), 6.35), ("tr8x8", Fraction(400), 40)],
)
def test_steps_of_a_screw_are_exact(read, screw, per_mm, full_um):
    drive = read(parts={"z-screw": screw}).derive(screw_drive, "z")
    assert drive.steps_per_mm == per_mm
    assert float(drive.full_step_mm) * 1000 == pytest.approx(full_um)
    assert drive.lead_mm == 3200 / per_mm


def test_steps_depend_on_motor_and_pulley_alone(read):
    reader = read()
    assert reader.derive(belt_gear, "y") == reader.derive(belt_drive, "y").gear
    alone = read()
    alone.derive(steps_per_mm, "y")
    assert {key.subject for key in alone.trail} == {"y-motor", "y-pulley"}


def test_a_smaller_pulley_moves_the_belt_line(read):
    # 20 -> 16 teeth of 2 mm: (20 - 16) * 2 / (2 pi) = 1.273 mm nearer to the shaft
    radii = [read(parts={"y-pulley": p}).derive(belt_run, "y").radius_mm for p in ("pulley-20", "pulley-16")]
    assert radii[0] - radii[1] == pytest.approx(1.273, abs=5e-4)


def test_a_belt_is_ordered_round_its_axles_and_with_its_ends(read):
    # 2 * 330 + 20 teeth of 2 mm on pulley and idler together + 100 held = 800 mm
    reader = read()
    assert reader.derive(belt_path, "y").value == pytest.approx(700)
    assert reader.derive(cut_length_um, "y-belt") == 800_000
    assert read(parts={"y-pulley": "pulley-16"}).derive(cut_length_um, "y-belt") == 792_000


def test_the_band_of_the_axles_is_in_the_belt(read):
    path = read({"axes.y.axles": "330 mm ± 1 mm"}).derive(belt_path, "y")
    assert (path.high - path.low) == pytest.approx(4.0)


def test_an_idler_of_its_own_counts(read):
    changes = {
        "parts.idler-16": {"kind": "pulley", "teeth": "16", "profile": "2 mm round"},
        "parts.ball": {"kind": "ball-bearing", "bore": "3 mm", "outer-diameter": "10 mm", "width": "4 mm"},
        "places.y-idler": {"reference": "idler-16", "stand-ins": ["ball"]},
        "axes.y.idler": "y-idler",
    }
    drive = read(changes).derive(belt_run, "y")
    assert drive.idler_radius_mm == pytest.approx(16 / pi)
    assert drive.teeth_in_mesh is not None
    assert drive.teeth_in_mesh > 10  # the larger of the two is wrapped by more than half
    smooth = read(changes, parts={"y-idler": "ball"}).derive(belt_run, "y")
    assert smooth.idler_radius_mm == pytest.approx(6.0)


def test_a_closed_belt_is_not_cut(read):
    reader = read({"parts.belt-6.closed-teeth": "400"})
    assert reader.get("y-belt") == "bought"
    drive = reader.derive(belt_drive, "y")
    assert (drive.closed_length_mm, drive.closed_axles_mm) == (800, pytest.approx(380))  # (800 - 20 teeth of 2 mm) / 2
    assert read({"parts.belt-6.closed-teeth": "18"}).derive(belt_drive, "y").closed_axles_mm is None


def test_a_motor_that_does_not_say_its_step_has_the_usual_one(read):
    assert read(parts={"y-motor": "motor-small"}).derive(full_steps, "y") == 200
    assert read({"parts.motor-flat.step-angle": "0.9 deg"}).derive(full_steps, "y") == 400
    assert read({"parts.motor-flat.step-angle": "7.5 deg"}).derive(full_steps, "y") == 48


@pytest.mark.parametrize(
    ("changes", "call", "need"),
    [
        ({"axes.y.axles": None}, belt_path, "axes.y.axles"),
        ({"axes.y.clamping": None}, belt_order, "axes.y.clamping"),
        ({"axes.y.guide.stops": None, "axes.y.guide.free": None}, travel, "axes.y.guide.free"),
        ({"axes.y.pulley": "bed"}, belt_drive, "axes.y.pulley"),
        ({"axes.y.axles": "0 mm"}, belt_path, "axes.y.axles"),
        ({"axes.y.guide": None}, guide_friction, "axes.y.guide"),
        ({"parts.pulley-20.profile": "round"}, belt_drive, "parts.pulley-20.profile"),
    ],
)
def test_what_a_drive_lacks_is_named(read, changes, call, need):
    with pytest.raises(NotDescribedError) as caught:
        read(changes).derive(call, "y")
    assert any(one.startswith(need) for one in caught.value.needs)


def test_drives_of_the_other_kind_are_named(read):
    with pytest.raises(NotDescribedError):
        read().derive(belt_drive, "z")
    with pytest.raises(NotDescribedError):
        read().derive(screw_drive, "y")


def test_friction_of_a_screw_is_the_axis_own_then_the_nut_then_the_screw_then_typical(read):
    nut = {
        "parts.nut": {"kind": "drive-nut", "thread": "M6", "friction": "0.12", "backlash": "0.1 mm"},
        "places.z-nut": {"reference": "nut"},
        "axes.z.nut": "z-nut",
    }
    assert read().derive(screw_drive, "z").friction.grade is Grade.TYPICAL
    assert read({"parts.m6-rod.friction": "0.14"}).derive(screw_drive, "z").friction.value == 0.14
    with_nut = read({**nut, "parts.m6-rod.friction": "0.14"}).derive(screw_drive, "z")
    assert (with_nut.friction.value, with_nut.nut_thread) == (0.12, "M6")
    assert with_nut.backlash_mm is not None
    assert read({**nut, "axes.z.screw-friction": "0.2"}).derive(screw_drive, "z").friction.value == 0.2


def test_guides(read):
    reader = read()
    guide = reader.derive(guide_geometry, "y")
    assert (guide.rods, guide.bearings) == (2, 3)
    assert guide.bushing is not None
    assert reader.derive(guide_size, "y", "carriage").value == 134  # 110 between the middles + 24
    assert reader.derive(travel, "y").value == 291 - 134 - 18
    assert read({"axes.y.guide.carriage": "140 mm"}).derive(guide_size, "y", "carriage").value == 140


def test_friction_of_a_guide(read):
    ball = read().derive(guide_friction, "y")
    assert ball.drag_n.value == pytest.approx(0.9)
    assert ball.ratio.grade is Grade.TYPICAL
    polymer = read(parts={"y-bearing": "bushing-polymer"}).derive(guide_friction, "y")
    assert polymer.ratio.value > 10 * ball.ratio.value
    typed = read({"axes.y.friction": "3 N ± 1 N"}).derive(guide_friction, "y")
    assert typed.typed_n is not None
    assert typed.typed_n.high == 4


def test_a_guide_without_a_bushing_asks_for_one(read):
    with pytest.raises(NotDescribedError, match="a bushing"):
        read(parts={"y-bearing": "block"}).derive(guide_friction, "y")


@pytest.mark.parametrize(
    ("length_mm", "um"),
    [(352.0, 352_000), (0.1 + 0.2, 300), (352.0000000001, 352_000), (352.00001, 352_001), (7.9375, 7938)],
)
def test_whole_micrometres_never_cut_a_piece_short(length_mm, um):
    assert whole_um(length_mm) == um


def test_a_piece_without_a_length_asks_for_it(read):
    with pytest.raises(NotDescribedError, match=r"places\.bed\.length"):
        read().derive(piece_length, "bed")
