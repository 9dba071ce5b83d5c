"""A printed part must not creep where it sits: its plastic's glass point less a margin, against the heat of its zone.

Softening values of data sheets are for minutes; for hours under load a plastic stays 15 to 20 K below its glass point.
A motor's mount that creeps lets the belt go slack long before it looks soft.
"""

from __future__ import annotations

from dataclasses import replace

from scantling.build.gets import plastic_of
from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge, say
from scantling.checks.limits import at_most
from scantling.checks.printed_places import printable, printed_at
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident
from scantling.checks.zones import zone_heat
from scantling.findings import Finding, Verdict
from scantling.formulas.heat import stands_for_hours_c
from scantling.model.kinds import Printed
from scantling.tables.electric_limits import electric_limit
from scantling.tables.heats import glass_point_c


def _run(reader: Reader, subject: str) -> Finding:
    place = ident(subject)
    part = printed_at(reader, place)
    if part is None:
        return say(CHECK, reader, subject, Verdict.SOUND, f"{place} is not filled by a printed part.")
    plastic = plastic_of(reader.get(place)) or _only(part)
    if plastic is None:
        return say(CHECK, reader, subject, Verdict.SOUND, f"{place} is not printed here, in one plastic or another.")
    glass = glass_point_c(plastic)
    if glass is None:
        because = f"Nothing is known of how soft {plastic} gets with heat."
        mend = "look up its glass point, or take a plastic of the table"
        return say(CHECK, reader, subject, Verdict.UNKNOWN, because, mend, (f"glass point of {plastic}",))
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda zone, **_: zone,
        inputs={
            "zone": zone_heat(reader, part.zone),
            "glass": known(f"glass point of {plastic}", glass, "°C"),
            "margin": known("margin against creep", electric_limit("creep margin"), "K"),
        },
        bounds=replace(at_most(lambda glass, margin, **_: stands_for_hours_c(glass, margin)), nominal_holds=True),
        unit="°C",
        because=f"{place} sits where it gets {{value}} ({part.zone}); loaded for hours, {plastic} stands {{limit}}: "
        "its glass point {glass} less {margin}.",
        mend="ABS or ASA, or keep the heat away; measure it with a thermometer",
    )


def _only(part: Printed) -> str | None:
    """The one plastic that a part is printed in, wherever that is done."""
    return part.plastics[0] if len(part.plastics) == 1 else None


CHECK = check_of(
    _run,
    code="PRINT-03",
    title="Plastic stands its zone",
    source="glass point less 15 to 20 K; table of glass points; heat of the zones: common practice, no source",
    subjects=printable,
)
