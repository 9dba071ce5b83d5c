"""A rod must run in its bushing without slop and without jamming.

Ball bushings: from a touch of preload (h6 in their bore) to the play that shows as ripples. Plain linings: from free to
the widest usual pairing, E10 on h10.
"""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.checks.fits import UM_PER_MM, named_size_mm, pair_um
from scantling.checks.judging import judge, say
from scantling.checks.limits import between
from scantling.checks.pairs import ROD, pair_of, pairs_of
from scantling.checks.rounds import bore_at, shaft_at
from scantling.checks.rule import check_of
from scantling.findings import Finding, Verdict
from scantling.model.kinds import Bushing
from scantling.tables.check_limits import check_number
from scantling.tables.sources import cite

PRELOAD_UM = check_number("preload of balls")
RIPPLE_UM = check_number("play that ripples")


def _run(reader: Reader, subject: str) -> Finding:
    pair = pair_of(reader.design, subject)
    rod, bushing = reader.part(pair.place), reader.part(pair.in_place)
    if rod is None or bushing is None:
        empty = pair.place if rod is None else pair.in_place
        return say(CHECK, reader, subject, Verdict.SOUND, f"{empty} stays empty: nothing has to run.")
    bore = bore_at(reader, pair.in_place, bushing, pair.in_name)
    balls = isinstance(bushing, Bushing) and bushing.lining == "ball"
    range_um = (PRELOAD_UM, RIPPLE_UM) if balls else (0.0, pair_um("E10", "h10")(named_size_mm(bore))[1])
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda rod, bore: (bore - rod) * UM_PER_MM,
        inputs={"rod": shaft_at(reader, pair.place, rod, pair.name), "bore": bore},
        bounds=between(*range_um),
        unit="µm",
        because=f"{pair.place} of {{rod}} in {pair.in_place} of {{bore}}: play {{value}}; {{limit}} is wanted "
        + ("for balls, which ripple when looser." if balls else "for a plain lining (up to E10 on h10)."),
        mend="take rod and bushing of the same system of sizes (both metric or both inch), or a closer rod (g6, h6)",
    )


CHECK = check_of(
    _run,
    code="MATE-02",
    title="Rod in bearing",
    source=f"{cite('iso-286')}; limits of play: common practice, no source",
    subjects=pairs_of(ROD),
)
