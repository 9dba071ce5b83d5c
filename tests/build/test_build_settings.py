"""Settings, steps and chains."""

from __future__ import annotations

import pytest

from scantling.build.chains import chain_terms
from scantling.build.missing import NotDescribedError
from scantling.build.settings import settings
from scantling.build.steps import coverage, joint_coverage, step_circle, step_joints, step_order, step_pieces


def entered(reader) -> dict[str, str]:
    return {one.key: one.value for one in reader.derive(settings)}


def test_settings_follow_the_parts(read):
    before = entered(read())
    assert before["axis.y.steps-per-mm"] == "80"
    assert before["axis.y.travel"] == "139"
    assert before["axis.y.max-speed"] == "160"
    assert before["axis.y.full-step"] == "0.2"
    assert before["axis.z.layer-grid"] == "0.005"
    after = entered(read(parts={"y-pulley": "pulley-16"}))
    assert {key for key in before if before[key] != after.get(key)} == {"axis.y.steps-per-mm", "axis.y.full-step"}


def test_a_setting_that_is_rounded_says_its_exact_value(read):
    found = {one.key: one for one in read(parts={"z-screw": "inch-rod"}).derive(settings)}
    assert found["axis.z.steps-per-mm"].value == "2519.68504"  # 320000 / 127
    assert found["axis.z.steps-per-mm"].exact == "320000/127"
    assert found["axis.z.layer-grid"].exact.startswith("127/20000")


def test_settings_are_sorted_and_have_one_key_each(read):
    keys = [one.key for one in read().derive(settings)]
    assert keys == sorted(set(keys))


@pytest.mark.parametrize(
    ("basis", "value", "peak"), [("rms", "1", "1.41 A peak"), ("peak", "0.71", "1 A peak"), (None, "0.71", "1 A peak")]
)
def test_the_current_of_a_motor_is_taken_kindly_where_its_basis_is_not_said(read, basis, value, peak):
    found = {one.key: one for one in read({"parts.motor-flat.current-basis": basis}).derive(settings)}
    current = found["axis.y.motor-current"]
    assert (current.value, current.exact) == (value, peak)


def test_what_is_not_described_is_left_out(read):
    left = entered(read({"axes.y.guide": None, "axes.y.pulley": "bed", "parts.motor-flat.current": None}))
    assert not [key for key in left if key.startswith("axis.y.") and not key.startswith("axis.y.max")]


@pytest.mark.outside
def test_a_belt_is_tuned_by_its_note(read):
    # Source: tension meter manual, 2 mm belt 6 mm wide: 15.8 N; string formula f = sqrt(T / m) / (2 L)
    # 8 g/m, 330 mm: sqrt(15.8 / 0.008) / 0.66 = 67.3 Hz
    found = {one.key: one for one in read().derive(settings)}
    assert found["axis.y.belt-note"].value == "67"
    assert "15.8 N" in found["axis.y.belt-note"].title
    assumed = {one.key: one for one in read({"parts.belt-6.line-mass": None}).derive(settings)}["axis.y.belt-note"]
    assert "weigh a metre" in assumed.because


def test_a_belt_that_no_table_knows_has_no_note(read):
    wide = entered(read({"parts.belt-6.width": "40 mm"}))
    assert "axis.y.belt-note" not in wide


def test_temperatures_and_the_makers_own(read):
    changes = {
        "warmings.bed": {
            "title": "Bed",
            "heater": "bed-heater",
            "stores": ["bed"],
            "room": "20 °C",
            "target": "90 °C",
            "within": "8 min",
        },
        "settings.probe": {"title": "Probe offset", "value": "back-panel.thickness + 1 mm", "text": "check with card"},
        "settings.dry": {"title": "Turn it by hand", "value": "bed.width", "text": "no tight spot"},
    }
    found = {one.key: one for one in read(changes).derive(settings)}
    assert (found["heat.bed.target"].value, found["heat.bed.target"].unit) == ("90", "°C")
    assert (found["own.probe"].value, found["own.probe"].unit) == ("10", "mm")
    assert (found["own.dry"].value, found["own.dry"].because) == ("", "no tight spot")


def test_steps_keep_what_must_come_first(read):
    design = read().design
    assert step_order(design) == ("base", "motor", "bed")
    assert step_circle(design) == ()


def test_a_sub_assembly_comes_before_the_step_that_uses_it(read):
    design = read({"steps.base.uses-results": ["head"], "steps.bed.after": [], "steps.bed.yields": "head"}).design
    assert step_order(design) == ("bed", "base", "motor")


def test_steps_that_wait_for_each_other_are_told_and_come_last(read):
    design = read({"steps.base.after": ["motor"], "steps.last": {"title": "Last"}}).design
    assert set(step_circle(design)) == {"base", "motor"}
    assert step_order(design)[0] == "last"
    assert set(step_order(design)) == set(design.steps)


def test_coverage_sums_pieces_over_steps(read):
    found = {(one.kind, one.ident): one for one in read().derive(coverage)}
    rods = found[("place", "y-rod")]
    assert (rods.used, rods.needed, rods.steps) == (2, 2, ("base", "bed"))  # the left one by name, then one more
    belt = found[("place", "y-belt")]
    assert (belt.used, belt.needed, belt.steps) == (0, 1, ())
    joint = found[("joint", "holder-to-bed")]
    assert (joint.used, joint.needed, joint.steps) == (6, 6, ("bed",))


def test_a_stand_in_with_fewer_pieces_is_seen_in_the_coverage(read):
    changes = {"steps.base.uses": {"y-bearing": "3"}}
    one = {c.ident: c for c in read(changes, parts={"y-bearing": "block"}).derive(coverage)}["y-bearing"]
    assert (one.used, one.needed) == (3, 2)


def test_pieces_and_joints_of_a_step(read):
    reader = read({"joints.holder-to-bed.step": "motor", "steps.bed.joints": {}})
    assert reader.derive(step_pieces, "base") == (("front-panel", 1), ("back-panel", 1), ("y-rod", 1))
    assert reader.derive(step_joints, "motor") == (("holder-to-bed", 6), ("motor-to-panel", 4))
    assert reader.derive(joint_coverage, "holder-to-bed").steps == ("motor",)


def test_joints_of_a_step_may_be_counted(read):
    reader = read({"steps.bed.joints": {"holder-to-bed": "4"}, "steps.motor.joints": {"holder-to-bed": "2"}})
    assert reader.derive(joint_coverage, "holder-to-bed").used == 6
    assert dict(reader.derive(step_joints, "bed")) == {"holder-to-bed": 4}


def test_what_stays_empty_is_in_no_step(read):
    reader = read({"steps.bed.uses": ["y-holder"]}, parts={"y-bearing": "block"})
    assert reader.derive(step_pieces, "bed") == ()
    assert reader.derive(step_joints, "bed") == ()


def test_terms_of_a_chain(read):
    rod, panel, typed = read().derive(chain_terms, "gap")
    assert (rod.sign, rod.nominal_mm, rod.how, rod.minus_mm) == (1, 329, "sawn", 0.5)
    assert (panel.sign, panel.nominal_mm, panel.how) == (-1, 9, "general tolerance")
    assert (typed.nominal_mm, typed.plus_mm, typed.how, typed.assumed) == (3, 0.1, "given", False)


def test_the_band_of_a_size_is_its_tolerance(read):
    panel = read({"parts.ply-9.thickness": "9 mm +0.2/-0.4 mm"}).derive(chain_terms, "gap")[1]
    assert (panel.minus_mm, panel.plus_mm, panel.how) == (pytest.approx(0.4), pytest.approx(0.2), "band of the size")


@pytest.mark.parametrize(
    ("size", "how", "half_mm"),
    [
        ("front-panel to back-panel", "placed by hand", 0.5),
        ("y-bearing.bore", "general tolerance", 0.2),
        ("y-rod.diameter", "general tolerance", 0.2),
        ("bed.thickness + y-rod.length", "general tolerance and sawn", 0.6),
        ("12 mm", "taken as exact", 0.0),
    ],
)
def test_the_way_of_getting_gives_the_tolerance(read, size, how, half_mm):
    (term,) = read({"chains.gap.terms": [size]}).derive(chain_terms, "gap")
    assert term.how == how
    assert term.plus_mm == pytest.approx(half_mm)
    assert term.assumed


def test_a_printed_size_has_the_printers_tolerance(read):
    changes = {"chains.gap.terms": ["y-bearing.clamp"], "parts.block.sizes": {"clamp": "12 mm"}}
    (term,) = read(changes, parts={"y-bearing": "block"}).derive(chain_terms, "gap")
    assert (term.how, term.plus_mm) == ("printed", 0.2)


def test_terms_made_in_one_go_keep_their_group(read):
    (term,) = read({"chains.gap.terms": [{"size": "62 mm ± 0.5 mm", "together": "drilled"}]}).derive(chain_terms, "gap")
    assert term.together == "drilled"


def test_every_missing_size_of_a_chain_is_named(read):
    with pytest.raises(NotDescribedError) as caught:
        read({"chains.gap.terms": ["bed.width", "- bed.depth"]}).derive(chain_terms, "gap")
    assert caught.value.needs == ("parts.plate.sizes.width", "parts.plate.sizes.depth")
