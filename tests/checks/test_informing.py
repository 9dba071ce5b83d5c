"""A check that only informs must never decide: no table is grown for it, so its verdict would not be asked for."""

from __future__ import annotations

import random
from pathlib import Path

from scantling.api.opening import open_design
from scantling.build.reader import Reader
from scantling.checks.all import CHECKS, run_check
from scantling.findings import Finding, Verdict

ALDER = Path(__file__).parents[2] / "examples" / "alder"
BUILDS = 12


def test_informing_checks_are_sound_or_silent_whatever_is_chosen() -> None:
    """Over random builds of the large example: what only informs is never unsound and never unknown."""
    case, informing = open_design(ALDER, "village", 1).case, [check for check in CHECKS if check.informs]
    draw, found = random.Random(7), set()
    for number in range(BUILDS):
        build: dict[object, str] = {}
        for key in case.questions:
            build[key] = draw.choice(sorted(case.answers(key, build)))
        for check in informing if number == 0 else [check for check in informing if not check.costly]:
            for finding in run_check(check, Reader(case, build)):
                if isinstance(finding, Finding):
                    found.add(finding.code)
                    assert finding.verdict in (Verdict.SOUND, Verdict.MARGINAL), finding.because
    assert found == {check.code for check in informing}
