"""Is there a bit in hand for each hole? The nearest one against what the hole may become.

A bit that is missing is bought or borrowed, or the hole is filed: never worse than marginal.
"""

from __future__ import annotations

from dataclasses import replace

from scantling.build.gets import MADE
from scantling.build.holes import ResolvedHole, entry_holes
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.checks.hole_edge import entries
from scantling.checks.inputs import known
from scantling.checks.judging import judge, say, worst_of
from scantling.checks.limits import at_most
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident
from scantling.findings import Finding, Verdict
from scantling.tables.check_limits import check_number

# How much wider than wanted a hole may become where nothing else limits it: workshop practice, no source.
WIDER_MM = {one: check_number(f"bit wider than {one}") for one in ("clearance", "collar")}
USUALLY_WIDER_MM = check_number("bit wider than others")
LARGEST_DRILLED_MM = check_number("largest drilled hole")


def _run(reader: Reader, subject: str) -> Finding:
    sheet, _, entry = ident(subject).rpartition(".")
    if not reader.workshop.bits:
        raise NotDescribedError(("workshop.bits",))
    if reader.get(sheet) != MADE:
        return say(CHECK, reader, subject, Verdict.SOUND, f"{sheet} is not drilled here.")
    holes = reader.derive(entry_holes, sheet, int(entry))
    if not holes:
        return say(CHECK, reader, subject, Verdict.SOUND, "What this hole is for is not there: no hole.")
    unlike: dict[tuple[object, ...], ResolvedHole] = {}
    for hole in holes:  # those alike get the same word
        unlike.setdefault((hole.purpose, hole.why, hole.diameter_mm, hole.least_mm, hole.most_mm, hole.bit), hole)
    return worst_of([_one(reader, subject, hole) for hole in unlike.values()])


def _one(reader: Reader, subject: str, hole: ResolvedHole) -> Finding:
    if hole.bit is None and hole.diameter_mm > LARGEST_DRILLED_MM:
        because = f"The hole of {hole.diameter_mm:g} mm for {hole.why} is sawn or cut with a hole saw, not drilled."
        return say(CHECK, reader, subject, Verdict.SOUND, because)
    if hole.bit is None or hole.bit_mm is None:
        most = f" to {hole.most_mm:g}" if hole.most_mm is not None else ""
        because = f"No bit in hand makes the hole for {hole.why}: {hole.least_mm:g}{most} mm."
        return say(CHECK, reader, subject, Verdict.MARGINAL, because, f"get a bit of {hole.diameter_mm:g} mm")
    wider_mm = WIDER_MM.get(hole.purpose, USUALLY_WIDER_MM)
    most_mm = hole.diameter_mm + wider_mm if hole.most_mm is None else hole.most_mm
    finding = judge(
        CHECK,
        reader,
        subject,
        rule=lambda bit, wanted: bit - wanted,
        inputs={
            "bit": known(f"bit {hole.bit}", hole.bit_mm, "mm"),
            "wanted": known("diameter wanted", hole.diameter_mm, "mm"),
        },
        bounds=at_most(most_mm - hole.diameter_mm),
        unit="mm",
        because=f"For {hole.why} {{wanted}} is wanted; the nearest bit in hand, {hole.bit}, is {{value}} wider; "
        "{limit}.",
        mend=f"get a bit of {hole.diameter_mm:g} mm, or shim the seat",
    )
    return replace(finding, verdict=Verdict.MARGINAL) if finding.verdict is Verdict.UNSOUND else finding


CHECK = check_of(
    _run,
    code="HOLE-02",
    title="Bit in hand",
    source="hole and bit tables; how much wider is forgiven: workshop practice, no source",
    subjects=entries,
)
