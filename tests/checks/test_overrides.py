"""What a design says of single findings: read in the unit of its check, shown with its reason, else refused."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from scantling.api.opening import open_design
from scantling.build.reference import reference_build
from scantling.checks.limits import at_least, at_most, between, overridden
from scantling.checks.overrides import override_faults
from scantling.errors import FaultsError
from scantling.findings import Verdict

ALDER = Path(__file__).parents[2] / "examples" / "alder"


def own(code, subject, **more):
    return {"code": code, "subject": subject, "because": "for a reason", **more}


@pytest.mark.parametrize(
    ("text", "unit", "bounds", "ends"),
    [
        ("5 teeth", "teeth", at_least(6), (5, None)),
        ("5", "teeth", at_least(6), (5, None)),
        ("60 %", "%", at_most(50), (None, 60)),
        ("-10..40 um", "µm", between(0, 3), (-10, 40)),
        ("0.1..0.3 mm", "µm", between(0, 3), (100, 300)),
        ("2 GPa", "GPa", at_most(1), (None, 2)),
        ("600 HV", "HV", at_most(1), (None, 600)),
        ("30 min", "min", at_most(1), (None, 30)),
        ("500 km", "km", at_least(1), (500, None)),
    ],
)
def test_a_limit_is_read_in_the_unit_of_its_check(text, unit, bounds, ends):
    found = overridden(bounds, text, unit)
    assert (found.low, found.high) == pytest.approx(ends) if None not in ends else (found.low, found.high) == ends


@pytest.mark.parametrize(("text", "unit"), [("banana", "mm"), ("3 N", "mm"), ("5 teeth", "mm"), ("5 mm", "teeth")])
def test_another_unit_is_no_limit(text, unit):
    assert overridden(at_most(1), text, unit) is None


def test_an_own_limit_holds_and_is_shown_with_its_reason(bench):
    case = bench.belt({"needs.travel": "190 mm"})
    assert bench.said(case, "ROD-05", "axis y").verdict is Verdict.UNSOUND
    case = bench.belt({"needs.travel": "190 mm"}, accepted=[own("ROD-05", "axis y", limit="150 mm")])
    found = bench.said(case, "ROD-05", "axis y")
    assert found.verdict is Verdict.SOUND
    assert found.limit == 150
    assert "The limit is the design's own: for a reason." in found.because


@pytest.mark.parametrize(
    ("entry", "what", "mend"),
    [
        (own("BELT-93", "axis y"), "no check has the code 'BELT-93'", "did you mean BELT-0"),
        (own("ROD-05", "axis q"), "is not asked about 'axis q'", "did you mean axis y"),
        (own("ROD-05", "place bed"), "is not asked about 'place bed'", "axis y"),
        (own("BELT-03", "axis y", limit="60 N"), "'60 N' of BELT-03 cannot be read", "for example 50 %"),
        (own("BELT-06", "axis y", limit="6 mm"), "only informs", "leave limit out"),
        (own("MATE-02", "mate y.rods-bearings", limit="60 um"), "cannot be read", "-10..30 µm"),
    ],
)
def test_what_cannot_be_meant_is_a_fault(bench, entry, what, mend):
    (fault,) = override_faults(bench.belt(accepted=[entry]))
    assert what in fault.what
    assert mend in fault.mend
    assert fault.code == "ACCEPT-01"


def test_what_can_be_meant_is_none(bench):
    entries = [own("ROD-05", "axis y", limit="150 mm"), own("MATE-02", "mate y.rods-bearings", limit="-15..60 um")]
    case = bench.belt(accepted=[*entries, own("BELT-02", "axis y", limit="5 teeth"), own("ROD-04", "axis y")])
    assert override_faults(case) == []
    assert reference_build(case)


def test_an_entry_that_stands_twice_is_a_fault(bench):
    (fault,) = override_faults(bench.belt(accepted=[own("ROD-05", "axis y"), own("ROD-05", "axis y")]))
    assert "stands twice" in fault.what


def test_faults_have_file_line_and_column(tmp_path):
    folder = tmp_path / "alder"
    shutil.copytree(ALDER, folder, ignore=shutil.ignore_patterns("out"))
    with (folder / "design.yaml").open("a", encoding="utf-8") as file:
        file.write("accepted:\n  - {code: BELT-03, subject: axis y, limit: 60 N, because: wrong unit}\n")
        file.write("  - {code: MATE-02, subject: mate y.rods-bearings, limit: -15..60 um, because: loose ones}\n")
    lines = (folder / "design.yaml").read_text(encoding="utf-8").splitlines()
    with pytest.raises(FaultsError) as caught:
        open_design(folder, "village")
    (fault,) = caught.value.faults
    assert (fault.where.file, fault.where.line) == ("design.yaml", len(lines) - 1)
    assert lines[fault.where.line - 1][fault.where.column - 1 :].startswith("60 N")
