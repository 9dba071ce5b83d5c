"""A coupler must fit the motor's shaft at one end and the screw at the other; a clamping one closes a little."""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.checks.fits import SOURCE, judge_fit
from scantling.checks.pairs import COUPLER, pairs_of
from scantling.checks.rule import check_of
from scantling.findings import Finding


def _run(reader: Reader, subject: str) -> Finding:
    return judge_fit(CHECK, reader, subject)


CHECK = check_of(_run, code="MATE-06", title="Coupler on shaft and screw", source=SOURCE, subjects=pairs_of(COUPLER))
