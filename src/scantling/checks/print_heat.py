"""A printed part must not creep where it sits: from where its plastic gives way under load, against the zone's heat.

Softening values of data sheets are for minutes; for hours under load a plastic stays 15 to 20 K below its glass point.
"""

from __future__ import annotations

from scantling.build.gets import plastic_of
from scantling.build.reader import Reader
from scantling.checks.inputs import Input
from scantling.checks.judging import judge, say
from scantling.checks.limits import at_most
from scantling.checks.materials import softens_c
from scantling.checks.printed_places import printable, printed_at
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident
from scantling.findings import Finding, Verdict

# How hot a zone gets for hours: common practice, no source. Warm: beside a motor or under the bed; hot: at the nozzle.
ZONES_C = {"cool": 35.0, "warm": 55.0, "hot": 80.0}


def _run(reader: Reader, subject: str) -> Finding:
    place = ident(subject)
    part = printed_at(reader, place)
    if part is None:
        return say(CHECK, reader, subject, Verdict.SOUND, f"{place} is not filled by a printed part.")
    plastic = plastic_of(reader.get(place))
    if plastic is None:
        return say(CHECK, reader, subject, Verdict.SOUND, f"{place} is not printed here.")
    soft_c = softens_c(plastic)
    if soft_c is None:
        because = f"Nothing is known of how soft {plastic} gets with heat."
        return say(CHECK, reader, subject, Verdict.UNKNOWN, because, missing=(f"softening of {plastic}",))
    zone_c = ZONES_C[part.zone]
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda zone, **_: zone,
        inputs={
            "zone": Input(f"heat of a {part.zone} zone", zone_c, zone_c, zone_c, "°C", assumed=True),
            "soft": Input(f"softening of {plastic}", soft_c, soft_c, soft_c, "°C", assumed=True),
        },
        bounds=at_most(lambda soft, **_: soft),
        unit="°C",
        because=f"{place} sits in a {part.zone} zone of {{value}}; loaded for hours, {plastic} stands {{limit}}.",
        mend="another plastic, or keep the heat away",
    )


CHECK = check_of(
    _run,
    code="PRINT-03",
    title="Plastic stands its zone",
    source="table of materials; heat of the zones: common practice, no source",
    subjects=printable,
)
