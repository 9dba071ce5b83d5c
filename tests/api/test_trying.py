"""Single questions: the findings of the real checks, with figures by hand; what is wrong is told at its option."""

import shlex
from math import log

import pytest

from scantling.api.data import json_text, tried_data
from scantling.api.trying import TRIALS, try_one
from scantling.errors import FaultsError
from scantling.findings import Verdict


def only(name, code, **given):
    """The one finding of a code; ``_`` stands for a dash."""
    tried = try_one(name, {key.replace("_", "-"): text for key, text in given.items()})
    (finding,) = [f for f in tried.findings if f.code == code]
    return finding


@pytest.mark.parametrize("name", TRIALS)
def test_the_example_of_each_question_answers(name):
    words = shlex.split(TRIALS[name].example)
    given = {words[k].removeprefix("--"): words[k + 1] for k in range(3, len(words), 2)}
    tried = try_one(name, given)
    assert tried.findings
    assert all(f.because and f.source for f in tried.findings)
    assert json_text(tried_data(tried))


def test_a_heater_warms_as_its_store_and_loss_say():
    """t = C / k x -ln(1 - k dT / P), one store and one loss: 539 J/K, 0.70 W/K, 22 to 90 degrees, 120 W."""
    minutes = 539 / 0.70 * -log(1 - 0.70 * (90 - 22) / 120) / 60
    given = {
        "power": "120 W",
        "store": "539 J/K",
        "loss": "0.70 W/K",
        "target": "90 °C",
        "within": "8 min",
        "room": "22 °C",
    }
    found = only("warming", "WARM-01", **given)
    assert found.value * (1 if found.unit == "min" else 1 / 60) == pytest.approx(minutes, rel=1e-3)
    assert found.verdict is Verdict.SOUND
    assert only("warming", "WARM-01", **{**given, "power": "80 W"}).verdict is Verdict.UNSOUND


def test_a_supply_keeps_its_headroom():
    """186 W and a quarter more are 232.5 W: 250 W will do, 232 W will not."""
    assert only("supply", "RAIL-01", power="250 W", load="186 W", headroom="25 %").verdict is Verdict.SOUND
    assert only("supply", "RAIL-01", power="232 W", load="186 W", headroom="25 %").verdict is Verdict.UNSOUND


def test_a_large_washer_lets_a_joint_in_ply_be_drawn_tighter():
    """18 MPa at the least, on rings of 9 and of 12 less 4.5 mm, at K = 0.198 and 4 mm: 0.68 and 1.39 N m."""
    asked = {"screw": "socket head M4", "grip": "9 mm", "nut": "lock", "material": "birch plywood"}
    plain, large = (only("joint", "JOINT-04", washer=washer, **asked).value for washer in ("yes", "large"))
    assert (plain, large) == (pytest.approx(18 * 47.7, rel=0.01), pytest.approx(18 * 97.2, rel=0.01))
    assert only("joint", "JOINT-05", **asked).verdict is Verdict.UNSOUND
    assert only("joint", "JOINT-05", washer="large", **asked).verdict is Verdict.SOUND
    assert only("joint", "JOINT-08", washer="large", slide="30 N", **asked).limit == pytest.approx(100)


def test_a_screw_straight_into_panel_is_asked_for_its_thread():
    asked = {"screw": "socket head M3", "grip": "3 mm", "depth": "12 mm", "material": "PETG", "washer": "yes"}
    found = only("joint", "JOINT-06", **asked, **{"in": "panel", "of": "birch plywood"})
    assert "held by its own thread in birch plywood" in found.because


@pytest.mark.outside
def test_a_shaft_in_a_bore_has_the_play_of_its_classes():
    # Source: ISO 286-2:2010, over 3 to 6 mm: H8 is 0 to +18, h7 is -12 to 0 (micrometres)
    found = only("fit", "MATE-01", shaft="5 mm", shaft_fit="h7", bore="5 mm", bore_fit="H8")
    assert (found.low, found.high, found.unit) == (pytest.approx(0), pytest.approx(30), "µm")


def test_a_motor_at_its_limit():
    """Force 1.5 kg x 2 m/s2 + 3 N = 6 N at 16 teeth of 2 mm: 6 x 16 x 2 / (2 pi) = 30.6 N mm, and the rotor's share."""
    given = {"teeth": "16", "mass": "1.5 kg", "acceleration": "2000 mm/s2", "friction": "3 N"}
    strong, weak = (only("belt", "BELT-03", **given, motor=motor) for motor in ("0.26 N m", "0.08 N m"))
    assert "pull 6 N on the belt" in strong.because
    assert strong.verdict is Verdict.SOUND
    assert weak.verdict is Verdict.UNSOUND
    assert weak.value > strong.value


def test_a_screw_that_turns_itself_back_is_told():
    steep = only("screw", "SCREW-03", thread="Tr8x8(P2)", mass="1.2 kg", motor="0.26 N m")
    flat = only("screw", "SCREW-03", thread="M8", mass="1.2 kg", motor="0.26 N m")
    assert steep.verdict is not Verdict.SOUND
    assert flat.verdict is Verdict.SOUND


def test_soft_rods_under_balls():
    given = {"diameter": "8 mm", "span": "350 mm", "mass": "1.5 kg", "spacing": "110 mm"}
    assert only("rods", "ROD-03", **given, hardness="20 HRC").verdict is Verdict.UNSOUND
    assert only("rods", "ROD-03", **given, hardness="60 HRC").verdict is Verdict.SOUND


def test_what_was_assumed_and_left_out_is_said():
    tried = try_one("belt", {"teeth": "16", "mass": "1.5 kg", "acceleration": "2000 mm/s2", "motor": "0.26 N m"})
    assert any("--speed" in note for note in tried.notes)
    assert any("--friction" in note for note in tried.notes)
    assert any("resolution" in line for line in tried.unasked)


def test_a_belt_may_be_told_by_its_pitch_or_its_profile():
    given = {"teeth": "16", "mass": "1.5 kg", "acceleration": "2000 mm/s2", "motor": "0.26 N m"}
    usual = only("belt", "BELT-03", **given)
    assert only("belt", "BELT-03", **given, pitch="2 mm").value == usual.value
    assert only("belt", "BELT-03", **given, pitch="3 mm").value > usual.value  # a larger pulley


@pytest.mark.parametrize(
    ("name", "given", "codes"),
    [
        ("belt", {}, ["TRY-02"] * 4),
        ("supply", {"power": "250 W", "load": "186 W", "vlotage": "24 V"}, ["TRY-01"]),
        ("supply", {"power": "250", "load": "186 kg"}, ["TRY-03", "TRY-03"]),
        ("belt", {"teeth": "1,5", "mass": "1 kg", "acceleration": "1 m/s2", "motor": "1 N m"}, ["TRY-03"]),
    ],
)
def test_all_that_is_wrong_is_told_at_once(name, given, codes):
    with pytest.raises(FaultsError) as caught:
        try_one(name, given)
    assert [fault.code for fault in caught.value.faults] == codes
    assert all(fault.where.file.startswith("--") and fault.mend for fault in caught.value.faults)


@pytest.mark.parametrize(
    ("name", "given"),
    [
        ("screw", {"thread": "Tr8x9x7", "mass": "1 kg", "motor": "0.2 N m"}),
        ("joint", {"screw": "socket head M99", "grip": "9 mm", "nut": "lock"}),
        ("joint", {"screw": "M3", "grip": "9 mm"}),
        ("fit", {"shaft": "5 mm", "bore": "5 mm", "bore-fit": "Q99"}),
        ("sway", {"material": "cheese", "thickness": "8 mm", "leg": "130 mm", "width": "60 mm", "limit": "0.25 mm"}),
        ("rods", {"diameter": "8 mm", "span": "350 mm", "mass": "1 kg", "lining": "wool"}),
        ("rods", {"diameter": "0 mm", "span": "350 mm", "mass": "1 kg"}),
        ("belt", {"teeth": "0", "mass": "1 kg", "acceleration": "1 m/s2", "motor": "1 N m"}),
        ("belt", {"teeth": "16", "mass": "1 kg", "acceleration": "1 m/s2", "motor": "1 N m", "pitch": "7.77 mm"}),
    ],
)
def test_what_no_table_knows_is_refused_or_unknown_never_an_error(name, given):
    try:
        tried = try_one(name, given)
    except FaultsError as error:
        faults = error.faults
    else:
        faults = ()
        assert all(f.verdict is not Verdict.SOUND or f.because for f in tried.findings)
    assert all(fault.what and fault.mend for fault in faults)


def test_a_chain_of_sizes():
    """60 ± 0.2 less 19.9 ± 0.1 and 39.8 ± 0.1: 0.3, worst ± 0.4; nearly all ± √(0.2² + 2 · 0.1²) = 0.245."""
    given = {"sizes": "60 mm ± 0.2 mm; - 19.9 mm ± 0.1 mm; - 39.8 mm ± 0.1 mm", "at_least": "0 mm"}
    worst = only("chain", "CHAIN-01", **given)
    assert (worst.value, worst.low, worst.high) == pytest.approx((0.3, -0.1, 0.7))
    assert "0.0551 to 0.545 mm" in worst.because
    assert only("chain", "CHAIN-02", **given).verdict is Verdict.SOUND
    even = only("chain", "CHAIN-02", spread="even", **{**given, "at_least": "0.15 mm"})
    assert even.verdict is Verdict.UNSOUND
    assert "longer" in even.mend


def test_a_chain_with_a_size_that_may_be_a_sum_or_a_tolerance():
    with pytest.raises(FaultsError, match=r"tolerance or a sum"):
        try_one("chain", {"sizes": "60 mm +0.2 mm -0.1 mm; - 59 mm", "at-least": "0 mm"})
