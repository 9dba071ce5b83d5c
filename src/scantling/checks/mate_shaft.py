"""A shaft must enter its bore and not be looser than the fit allows: the play is the bore less the shaft, each within
the limits of its zone.
"""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.checks.fits import SOURCE, judge_fit
from scantling.checks.pairs import SHAFT, pairs_of
from scantling.checks.rule import check_of
from scantling.findings import Finding


def _run(reader: Reader, subject: str) -> Finding:
    return judge_fit(CHECK, reader, subject)


CHECK = check_of(_run, code="MATE-01", title="Shaft in bore", source=SOURCE, subjects=pairs_of(SHAFT))
