"""Does the board have as many drivers, heater switches, inputs and fan outputs as the machine wants?"""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge
from scantling.checks.limits import at_least
from scantling.checks.ports import WORDS, board_of, electronics_of, kinds, ports_taken
from scantling.checks.rule import check_of
from scantling.findings import Finding


def _run(reader: Reader, subject: str) -> Finding:
    name, electronics = electronics_of(reader, subject)
    does = subject.rpartition("/")[2]
    board, ports = board_of(reader, name, electronics)
    taken = [(want.place, ports_taken(reader, want)) for want in electronics.wants if want.does == does]
    there = sum(port.count for port in ports if port.does == does)
    for_what = ", ".join(f"{count} for {place}" for place, count in taken if count)
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda there, **_: there,
        inputs={
            "there": known(f"{WORDS[does]} of {board.id}", float(there)),
            "wanted": known(f"{WORDS[does]} wanted", float(sum(count for _, count in taken))),
        },
        bounds=at_least(lambda wanted, **_: wanted),
        unit="",
        because=f"{board.id} has {{value}} {WORDS[does]}; wanted are {{limit}} ({for_what or 'none'}).",
        mend="another board, two motors on one driver, or a module beside it",
    )


CHECK = check_of(
    _run,
    code="PORT-01",
    title="Enough ports on the board",
    source="definition: ports there against ports wanted",
    subjects=kinds,
)
