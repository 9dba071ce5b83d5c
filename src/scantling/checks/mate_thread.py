"""A screw runs in its nut only with the same size, pitch and number of starts.

A metric and an inch thread that look alike jam within a few turns; a nut for four starts does not go on one.
"""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.checks.judging import say
from scantling.checks.pairs import THREAD, pair_of, pairs_of
from scantling.checks.rule import check_of
from scantling.errors import LookUpError
from scantling.findings import Finding, Verdict
from scantling.model.part import Part
from scantling.tables.sources import cite
from scantling.tables.threads import Thread, thread


def _run(reader: Reader, subject: str) -> Finding:
    pair = pair_of(reader.design, subject)
    screw, nut = reader.part(pair.place), reader.part(pair.in_place)
    if screw is None or nut is None:
        empty = pair.place if screw is None else pair.in_place
        return say(CHECK, reader, subject, Verdict.SOUND, f"{empty} stays empty: no thread has to run.")
    names = _name(screw), _name(nut)
    try:
        differences = differing(thread(names[0]), thread(names[1]))
    except LookUpError as error:
        because = f"Threads {names[0] or '(none)'} of {pair.place}, {names[1] or '(none)'} of {pair.in_place}: {error}."
        return say(CHECK, reader, subject, Verdict.UNKNOWN, because, "write the threads", (f"thread of {subject}",))
    if differences:
        because = f"{pair.place} is {names[0]}, {pair.in_place} is {names[1]}: {'; '.join(differences)}."
        return say(CHECK, reader, subject, Verdict.UNSOUND, because, f"a nut for {names[0]}, or a screw {names[1]}")
    return say(CHECK, reader, subject, Verdict.SOUND, f"{pair.place} and {pair.in_place} are both {names[0]}.")


def differing(screw: Thread, nut: Thread) -> list[str]:
    """Return in words all that keeps a screw out of a nut."""
    found = []
    if screw.major_mm != nut.major_mm:
        found.append(f"{screw.major_mm:g} mm against {nut.major_mm:g} mm across")
    if screw.flank_half_angle_deg != nut.flank_half_angle_deg:
        found.append("another form of thread")
    if screw.pitch_mm != nut.pitch_mm:
        found.append(f"pitch {float(screw.pitch_mm):.4g} mm against {float(nut.pitch_mm):.4g} mm")
    if screw.starts != nut.starts:
        found.append(f"{screw.starts} against {nut.starts} starts, so a lead of {float(screw.lead_mm):g} mm against ")
        found[-1] += f"{float(nut.lead_mm):g} mm"
    return found


def _name(part: Part) -> str:
    return str(getattr(part, "thread", ""))


CHECK = check_of(
    _run,
    code="MATE-03",
    title="Thread in nut",
    source=f"{cite('iso-261')}; {cite('asme-b1-1')}; {cite('iso-2904')}",
    subjects=pairs_of(THREAD),
)
