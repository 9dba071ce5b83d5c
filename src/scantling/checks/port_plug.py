"""Does the plug on a part's own wires go into the board's port? Where not, it is cut off and another one crimped on."""

from __future__ import annotations

from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.checks.judging import say
from scantling.checks.ports import plugged, wants
from scantling.checks.rule import check_of
from scantling.findings import Finding, Verdict


def _run(reader: Reader, subject: str) -> Finding:
    on = plugged(reader, subject)
    part = reader.part(on.want.place)
    if part is None:
        return say(CHECK, reader, subject, Verdict.SOUND, f"{on.want.place} stays empty.")
    own = need(part.plug, f"parts.{part.id}.plug")
    known = {plug for port in on.ports if (plug := port.plug) is not None}
    taken = need(known or None, f"parts.{on.board.id}.ports (plug of {on.want.does})")
    if own in taken or own == "bare":
        return say(CHECK, reader, subject, Verdict.SOUND, f"{part.id} comes with {own!r}, which {on.board.id} takes.")
    because = f"{part.id} comes with the plug {own!r}, {on.board.id} takes {' or '.join(sorted(taken))!r}."
    return say(
        CHECK, reader, subject, Verdict.MARGINAL, because, "crimp on the other plug, and mind the order of wires"
    )


CHECK = check_of(
    _run,
    code="PORT-04",
    title="Plug fits its port",
    source="names of plugs as the files give them",
    subjects=wants("driver", "heater", "sensor", "switch", "fan"),
)
