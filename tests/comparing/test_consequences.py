"""What follows from one change of the small example, figure by figure; order, weights, groups."""

import pytest

from scantling.comparing.consequences import WEIGHTS, consequences, differences
from scantling.comparing.fact import Fact, Topic
from scantling.comparing.grouping import few, grouped


@pytest.fixture
def found(plan_of):
    """Consequences of a change of the plotter by topic, subject and what."""

    def all_of(**parts):
        return {(c.topic, c.subject, c.what): c for c in consequences(plan_of("plotter"), plan_of("plotter", **parts))}

    return all_of


def shown(consequence):
    return (consequence.before, consequence.after, consequence.change, consequence.weight)


def test_nothing_follows_from_nothing(plan_of):
    assert consequences(plan_of("plotter"), plan_of("plotter")) == ()


def test_a_pulley_of_other_teeth(found):
    """Steps per mm by hand: 200 full steps x 16 microsteps / (20 x 2 mm) = 80, / (16 x 2 mm) = 100."""
    all_found = found(x_pulley="pulley-16")
    steps = all_found[Topic.SETTING, "axis x", "steps per mm"]
    assert shown(steps) == ("80 1/mm", "100 1/mm", "+20 1/mm", "act")
    full = all_found[Topic.SETTING, "axis x", "a full step moves"]
    assert shown(full) == ("0.2 mm", "0.16 mm", "−0.04 mm", "act")
    belt = all_found[Topic.CUT, "x-belt", "pieces"]
    # path = 2 x 324 mm between the axles + 20 or 16 teeth round the two wheels + 30 mm clamped
    assert shown(belt) == ("718 mm", "710 mm", "−8 mm", "act")
    assert not [key for key in all_found if key[0] in (Topic.HOLE, Topic.DRAWING, Topic.SCREW)]


def test_a_thicker_panel_moves_screws_and_rods(found):
    """Rods reach through both panels: 300 + 2 x 8 = 316 mm; 2 mm more under the head want the next screw but one."""
    all_found = found(panel="ply-8")
    rods = all_found[Topic.CUT, "x-rod", "pieces"]
    assert shown(rods) == ("312 mm", "316 mm", "+4 mm", "act")
    assert rods.amount == 2
    screws = all_found[Topic.SCREW, "motor-to-panel", "screws"]
    assert shown(screws) == ("M3x10 socket head screw", "M3x12 socket head screw", "+2 mm of length", "act")
    assert screws.amount == 4
    assert all_found[Topic.DRAWING, "panel", "template"].after == "must be drawn and printed again"
    kit = all_found[Topic.STEP, "motor", "kit"]
    assert "M3x10" in kit.before
    assert "M3x12" in kit.after
    assert "motor" not in kit.after  # what stays in the kit is not said again


def test_a_motor_with_another_face_moves_holes(found):
    """A face of size 14 has its screws on 26 mm, size 17 on 31 mm (table of motor faces)."""
    all_found = found(x_motor="motor-14")
    where = all_found[Topic.HOLE, "panel", "clearance holes for x-motor.face, where"]
    assert shown(where)[:2] == ("over 31 × 31 mm around 45, 58 mm", "over 26 × 26 mm around 45, 58 mm")
    assert where.weight == "act"
    current = all_found[Topic.SETTING, "axis x", "motor current, rms"]
    assert (current.before, current.after) == ("1.3 A", "0.8 A")


def test_what_stops_the_machine_comes_first_with_its_reason(plan_of):
    rods = consequences(plan_of("plotter"), plan_of("plotter", x_rod="rod-8-soft"))
    assert rods[0].weight == "stops"
    assert rods[0].what.startswith("ROD-03")
    assert "at most" in rods[0].after
    assert rods[0].because
    back = consequences(plan_of("plotter", x_rod="rod-8-soft"), plan_of("plotter"))
    assert {c.weight for c in back if c.what.startswith("ROD-03")} == {"better"}


def test_the_order_is_by_weight_then_topic(plan_of):
    both = consequences(plan_of("plotter"), plan_of("plotter", x_rod="rod-8-soft", x_motor="motor-14", panel="ply-8"))
    ranks = [(WEIGHTS.index(c.weight), int(c.topic)) for c in both]
    assert ranks == sorted(ranks)
    assert len({c.weight for c in both}) >= 3


def test_groups_put_alike_together_and_count_what_changes_nothing(plan_of):
    pulleys = consequences(plan_of("alder"), plan_of("alder", y_pulley="pulley-16"))
    told = grouped(pulleys)
    (steps,) = [group for group in told.groups if group.what == "steps per mm"]
    assert steps.subjects == ("axis x", "axis y")  # the pulleys of both are alike
    assert steps.title == "axis x, axis y: steps per mm"
    assert (steps.before, steps.after) == ("80 1/mm", "100 1/mm")
    (part,) = [group for group in told.groups if group.about == "part"]
    assert part.body == "2 × Pulley 20 teeth → Pulley 16 teeth"
    assert len(told.groups) < len(pulleys) / 2
    assert sum(count for count, _, _ in told.quiet) + sum(len(g.subjects) for g in told.groups) == len(pulleys)
    everything = grouped(pulleys, everything=True)
    assert everything.quiet == ()
    assert sum(len(group.subjects) for group in everything.groups) == len(pulleys)


def test_the_printed_part_that_suits_is_named(plan_of):
    rods = consequences(plan_of("alder"), plan_of("alder", y_rod="rod-10-hardened"))
    assert [c for c in rods if c.topic is Topic.PRINT and "no file exists" in c.after]


@pytest.mark.parametrize(
    ("old", "new", "change"),
    [(80.0, 100.0, "+20 mm"), (100.0, 80.0, "−20 mm"), (1.0, 1.0, ""), (0.0, 0.0004, "+0.0004 mm"), (None, 1.0, "")],
)
def test_the_change_of_a_figure_is_signed(old, new, change):
    def fact(number):
        return Fact(Topic.CUT, "a", "b", f"{number}", "x" if number is old else "y", number=number, unit="mm")

    (one,) = differences({fact(old).key: fact(old)}, {fact(new).key: fact(new)}) if old != new else (None,)
    assert (one.change if one else "") == change


def test_long_lists_are_cut():
    assert few(list("abc")) == "a, b, c"
    assert few(list("abcdefgh")) == "a, b, c, d, e and 3 more"
