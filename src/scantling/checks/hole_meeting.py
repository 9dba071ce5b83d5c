"""Do holes made by hand meet the holes of what is screwed to them? The share of copies in which every screw goes in.

The part is set as well as it goes. What is left is taken by the play of the screws; how wide the holes must be for
99.7 % of all copies is computed. A hole that does not meet is filed: never worse than marginal.
"""

from __future__ import annotations

from dataclasses import replace
from math import ceil

from scantling.build.chains import template_scale
from scantling.build.meeting import Meeting, meetings
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.checks.chain_yield import WANTED_RATIO, seed_of
from scantling.checks.hole_edge import entries
from scantling.checks.inputs import Input
from scantling.checks.judging import judge, say
from scantling.checks.limits import at_least
from scantling.checks.rule import check_of
from scantling.checks.sentences import round_shown
from scantling.checks.subjects import ident
from scantling.findings import Finding, Verdict
from scantling.formulas.hole_patterns import SAMPLES, Pattern, going_together
from scantling.tables.tolerances import tolerance

BY_HAND = tolerance("hole by hand")
SEAM = tolerance("seam of tiles")
ENDS = ("value", "low", "high")
TENTH_SPARED = 0.2  # of a tenth of a millimetre: less is not worth the next bit


def _run(reader: Reader, subject: str) -> Finding:
    sheet, _, entry = ident(subject).rpartition(".")
    found = reader.derive(meetings, sheet, int(entry))
    if not found:
        return say(CHECK, reader, subject, Verdict.SOUND, "No holes made by hand here must meet others.")
    wanted = WANTED_RATIO.value
    told = [sampled(reader, found, sheet, end, seed_of(CHECK.code, subject)) for end in ENDS]
    share, best, worst = (100 * one[0][0] for one in told)
    lacking = max(0.0, *(play - one.play_mm for play, one in zip(told[0][2], found, strict=True)))
    first = found[0]
    hole_mm = first.hole_mm + 2 * lacking
    finding = judge(
        CHECK,
        reader,
        subject,
        rule=lambda share: share,
        inputs={"share": Input("places of holes made by hand", share, worst, best, "%", assumed=True)},
        bounds=at_least(100 * wanted),
        unit="%",
        because=f"Every screw goes in at once in {{value}} of {SAMPLES:,} copies sampled; {{limit}}. Holes are placed "
        f"to ± {BY_HAND.value:g} mm by hand and ± {first.mate_mm.value:g} mm in {first.mate}; a screw of "
        f"{first.screw_mm:g} mm has {round_shown(first.play_mm, 'mm')} of play to any side of the middle.",
        mend=_mend(first.hole_mm, hole_mm),
    )
    return replace(finding, verdict=Verdict.MARGINAL) if finding.verdict is Verdict.UNSOUND else finding


def _mend(now_mm: float, enough_mm: float) -> str:
    """Return what would mend it; a wider hole only where the usual hand needs one."""
    wider_mm = ceil(10 * enough_mm - TENTH_SPARED) / 10
    if wider_mm <= now_mm:
        return "a steadier hand than the worst that is usual, or drill through both at once"
    return f"holes of {wider_mm:g} mm under a washer instead of {round_shown(now_mm)} mm, or drill through both at once"


def sampled(reader: Reader, found: tuple[Meeting, ...], sheet: str, end: str, seed: int) -> list[list[float]]:
    """Return what ``going_together`` says of some patterns of one sheet, at one end of what hands and printers do."""
    patterns = tuple(pattern(one, sheet, end) for one in found)
    scale, seam = getattr(template_scale(reader), end), getattr(SEAM, end)
    return reader.kept(going_together, patterns, scale, seam, WANTED_RATIO.value, seed)


def pattern(meeting: Meeting, sheet: str, end: str) -> Pattern:
    """Return a pattern at one end of the band in which hands place holes: ``low`` is the best."""
    return Pattern(
        points_mm=meeting.points_mm,
        play_mm=meeting.play_mm,
        scatter_mm=getattr(BY_HAND, end),
        mate_mm=getattr(meeting.mate_mm, end),
        sheet=sheet,
        seam_mm=meeting.seam_mm,
        slot_mm=meeting.slot_mm,
        slot_turn_rad=meeting.slot_turn_rad,
    )


def all_meetings(reader: Reader) -> dict[str, tuple[Meeting, ...]]:
    """Return what the holes of every entry of every sheet must meet; those of which too little is said are left out."""
    found: dict[str, tuple[Meeting, ...]] = {}
    for sheet, described in reader.design.sheets.items():
        for index in range(len(described.holes)):
            try:
                met = reader.derive(meetings, sheet, index)
            except NotDescribedError:
                continue
            if met:
                found[f"{sheet}.{index}"] = met
    return found


CHECK = check_of(
    _run,
    code="HOLE-03",
    title="Holes that must meet",
    source="sampling; least greatest distance of holes after move and turn; how well hands place holes: common "
    "practice, no source",
    subjects=entries,
    costly=True,
    informs=True,
)
