"""Lengths of screws in joints, over the bands of stack and screw."""

from __future__ import annotations

import pytest

from scantling.build.reference import reference_build
from scantling.checks.all import CHECKS
from scantling.checks.joint_screw import length_input
from scantling.findings import Verdict
from scantling.model.build import Key

CHECK = next(check for check in CHECKS if check.code == "JOINT-01")


@pytest.fixture
def screwed(bench):
    """Judge a screw of a name in a joint through a panel of a thickness."""

    def judge(screw: str, thickness: str = "8 mm", **joint):
        described = {"screw": "socket head M3", "through": ["washer", "panel.thickness"], "into": "plain nut"} | joint
        parts = {
            "ply": {"kind": "sheet", "material": "birch plywood", "thickness": thickness},
            "motor": bench.parts["motor-flat"],
        }
        case = bench.case(parts=parts, places={"panel": "ply", "motor": "motor"}, joints={"j": described})
        build = reference_build(case).replacing({Key("screw", "j"): screw})
        return CHECK.run(case.reader(build), "joint j")

    return judge


class TestNut:
    # M3 nut 2.4 mm (ISO 4032), washer 0.5 mm (ISO 7089), ply 8 mm: 10.9 mm to the nut's far face, a pitch is 0.5 mm.
    # Source: ISO 4032 and ISO 7089 (published tables), a pitch behind a nut (a published fastener guide)
    @pytest.mark.outside
    def test_a_pitch_must_stick_out(self, screwed):
        finding = screwed("M3x12 socket head screw")
        assert finding.value == pytest.approx(1.1)
        assert finding.verdict is Verdict.SOUND
        short = screwed("M3x10 socket head screw")
        assert (short.verdict, short.value) == (Verdict.UNSOUND, pytest.approx(-0.9))
        assert short.mend == "a longer screw"

    def test_the_band_of_the_stack_counts(self, screwed):
        finding = screwed("M3x12 socket head screw", "8 mm ± 0.5 mm")
        assert finding.verdict is Verdict.MARGINAL
        assert "Hangs on thickness of the stack of j" in finding.because

    def test_too_short_at_nominal_is_unsound_however_thin_the_sheet_may_be(self, screwed):
        assert screwed("M3x12 socket head screw", "8.8 mm ± 0.8 mm").verdict is Verdict.UNSOUND

    def test_too_long_is_unsound_too(self, screwed):
        finding = screwed("M3x20 socket head screw")
        assert finding.verdict is Verdict.UNSOUND
        assert finding.limit == 5.5  # a pitch and the longest step between screws of this size

    def test_a_free_end_may_be_said(self, screwed):
        assert screwed("M3x20 socket head screw", **{"free-end": "12 mm"}).verdict is Verdict.SOUND
        assert screwed("M3x12 socket head screw", **{"free-end": "1 mm"}).verdict is Verdict.UNSOUND

    # Source: DIN 985 (published table): a lock nut M3 is 4.0 mm high, 1.6 mm more than a plain one
    @pytest.mark.outside
    def test_a_lock_nut_wants_a_longer_screw(self, screwed):
        plain = screwed("M3x12 socket head screw")
        lock = screwed("M3x12 socket head screw", into="lock nut")
        assert (plain.verdict, lock.verdict) == (Verdict.SOUND, Verdict.UNSOUND)
        assert screwed("M3x16 socket head screw", into="lock nut").verdict is Verdict.SOUND


class TestBlindHole:
    INTO = "motor.tapped"

    def test_the_thread_must_engage(self, screwed):
        finding = screwed("M3x10 socket head screw", into=self.INTO)
        assert (finding.verdict, finding.value) == (Verdict.UNSOUND, pytest.approx(1.5))
        assert "engages" in finding.because

    def test_and_the_tip_must_not_reach_the_bottom(self, screwed):
        finding = screwed("M3x16 socket head screw", into=self.INTO)
        assert (finding.verdict, finding.value) == (Verdict.UNSOUND, pytest.approx(-3.0))
        assert "room before the bottom: -3 mm" in finding.because

    def test_between_them_there_is_a_millimetre_which_hangs_on_the_sheet(self, screwed):
        finding = screwed("M3x12 socket head screw", "8 mm ± 0.3 mm", into=self.INTO)
        assert finding.verdict is Verdict.MARGINAL
        assert screwed("M3x12 socket head screw", "8 mm ± 0.1 mm", into=self.INTO).verdict is Verdict.SOUND


class TestOthers:
    def test_a_joint_that_holds_nothing_falls_away(self, bench):
        place = bench.options("motor-flat", **{"may-be-empty": "yes"})
        parts = {
            "ply": {"kind": "sheet", "material": "MDF", "thickness": "9 mm"},
            "motor-flat": bench.parts["motor-flat"],
        }
        joint = {"screw": "socket head M3", "through": ["panel.thickness"], "into": "motor.tapped"}
        case = bench.case(parts=parts, places={"panel": "ply", "motor": place}, joints={"j": joint})
        finding = bench.said(case, "JOINT-01", "joint j", motor="")
        assert (finding.verdict, finding.because) == (
            Verdict.SOUND,
            "What this joint holds is not there: it falls away.",
        )

    def test_a_plain_shank_may_not_be_longer_than_the_stack(self, screwed):
        finding = screwed("M3x30 socket head screw", "9 mm", **{"free-end": "30 mm"})
        assert finding.verdict is Verdict.UNSOUND
        assert "plain shank" in finding.because

    # Source: ISO 4762 (product standard): M3 x 12 is 11.65 to 12.35 mm long, M3 x 20 19.58 to 20.42 (from memory)
    @pytest.mark.outside
    @pytest.mark.parametrize(("length", "half"), [(6, 0.24), (12, 0.35), (20, 0.42), (50, 0.5)])
    def test_a_screws_length_has_its_tolerance(self, length, half):
        figure = length_input(length)
        assert (figure.low, figure.high) == pytest.approx((length - half, length + half))


class TestLocking:
    @pytest.fixture
    def locked(self, bench):
        """Judge a joint of a motor on a panel of a material."""

        def judge(material: str, into: str = "motor.tapped", **joint: str):
            described = {"screw": "socket head M3", "through": ["panel.thickness"], "into": into, **joint}
            parts = {
                "board": {"kind": "sheet", "material": material, "thickness": "5 mm"},
                "motor": bench.parts["motor-flat"],
            }
            case = bench.case(parts=parts, places={"panel": "board", "motor": "motor"}, joints={"j": described})
            return bench.said(case, "JOINT-03", "joint j").verdict

        return judge

    # Source: reports of the trade: thread-locking fluid cracks ABS, polycarbonate and acrylic
    @pytest.mark.outside
    @pytest.mark.parametrize(
        ("material", "verdict"),
        [("acrylic", Verdict.UNSOUND), ("birch plywood", Verdict.SOUND), ("aluminium", Verdict.SOUND)],
    )
    def test_fluid_cracks_some_plastics(self, locked, material, verdict):
        assert locked(material, locking="threadlocker") is verdict

    def test_what_shakes_is_locked_one_way_or_another(self, locked):
        assert locked("MDF", shakes="yes") is Verdict.MARGINAL
        for ways in ({"locking": "threadlocker"}, {"into": "lock nut"}, {"into": "plain nut", "locking": "two nuts"}):
            assert locked("MDF", shakes="yes", **ways) is Verdict.SOUND

    def test_a_thread_that_the_screw_cut_itself_rubs_on_it(self, locked):
        into = {"place": "panel", "depth": "panel.thickness", "holds": "plastic"}
        assert locked("PETG", into=into, shakes="yes") is Verdict.SOUND
        assert locked("PETG", into=into | {"holds": "insert"}, shakes="yes") is Verdict.MARGINAL

    def test_a_quiet_joint_is_not_asked(self, locked):
        with pytest.raises(AssertionError):
            locked("MDF")
