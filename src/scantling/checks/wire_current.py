"""Does a wire carry its current for good, lying where it lies, with the others it is tied to?

The table of currents holds for one circuit on a surface at 30 °C. Warmth takes some of it, other circuits in the bundle
take more: four circuits in one sleeve leave two thirds.
"""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.checks.judging import judge, say
from scantling.checks.limits import at_most
from scantling.checks.rule import check_of
from scantling.checks.wiring import ampacity_inputs, carried, carries_for_good_a, laid, way, wire_subjects
from scantling.findings import Finding, Verdict


def _run(reader: Reader, subject: str) -> Finding:
    on = laid(reader, subject)
    if on is None:
        return say(CHECK, reader, subject, Verdict.SOUND, "It falls away with what it leads to.")
    bundle = f" beside {on.row.bundled - 1} more" if on.row.bundled > 1 else ""
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda current, **_: current,
        inputs={"current": carried(reader, on), **ampacity_inputs(on)},
        bounds=at_most(lambda table, stands, room, **_: carries_for_good_a(on, table, stands, room)),
        unit="A",
        because=f"{on.copper_mm2:.3g} mm² {way(on)} carry {{value}}; {{limit}}: {{table}} by the table, at {{room}} "
        f"with insulation for {{stands}}{bundle}.",
        mend="thicker wire, insulation for more heat, or fewer circuits in the bundle",
    )


CHECK = check_of(
    _run,
    code="WIRE-01",
    title="Wire for its current",
    source="DIN VDE 0298-4, tables 11, 17 and 21",
    subjects=lambda design: wire_subjects(design, "power", "return"),
)
