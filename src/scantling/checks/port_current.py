"""Does a port of the board carry what hangs on it? A heater switch or driver at its very rating runs hot."""

from __future__ import annotations

from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge, say
from scantling.checks.limits import at_most
from scantling.checks.ports import WORDS, plugged, port_current_a, wants
from scantling.checks.rule import check_of
from scantling.findings import Finding, Verdict
from scantling.tables.electric_limits import electric_limit

PERCENT = 100.0


def _run(reader: Reader, subject: str) -> Finding:
    on = plugged(reader, subject)
    if not on.ports:
        because = f"{on.board.id} has no {WORDS[on.want.does]}."
        return say(CHECK, reader, subject, Verdict.UNSOUND, because, "another board, or a module beside it")
    ratings = [need(port.current_a, f"parts.{on.board.id}.ports (current of {port.does})") for port in on.ports]
    weakest = min(ratings, key=lambda rating: rating.value)
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda current, rating: PERCENT * current / rating,
        inputs={
            "current": known(f"current of {on.want.place}", port_current_a(reader, on), "A"),
            "rating": known(f"rating of the {on.want.does} of {on.board.id}", weakest, "A"),
        },
        bounds=at_most(PERCENT, reserve_ratio=1 - electric_limit("load of a port wished").value / PERCENT),
        unit="%",
        because=f"{on.want.place} draws {{current}} from a {on.want.does} port of {on.board.id} for {{rating}}: "
        "{value} of it; {limit}.",
        mend="another port, a board that carries more, or a relay module fed straight from the supply",
    )


CHECK = check_of(
    _run,
    code="PORT-02",
    title="Port for its current",
    source="rating of the port; a fifth kept back: common practice, no source",
    subjects=wants("driver", "heater", "fan"),
)
