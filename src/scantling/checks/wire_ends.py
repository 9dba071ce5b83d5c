"""Plugs, rings and ferrules of a wire: rated for the current with a third to spare, made for its copper.

A plug that carries all it is rated for gets hot, the contact spring tires, and the plug burns: the usual fire of such
machines. A ferrule or ring carries what its wire does, if it is of the right size and well crimped.
"""

from __future__ import annotations

from scantling.build.missing import MissingFigureError
from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge, say, worst_of
from scantling.checks.limits import at_most
from scantling.checks.rule import check_of, part_at
from scantling.checks.wiring import Laid, carried, ends_of, laid, wire_subjects
from scantling.findings import Finding, Verdict
from scantling.model.kinds import Terminal
from scantling.tables.electric_limits import electric_limit

RATED = ("plug", "contact")
PERCENT = 100.0
SIZE_NOISE = 1e-6


def _run(reader: Reader, subject: str) -> Finding:
    on = laid(reader, subject)
    if on is None:
        return say(CHECK, reader, subject, Verdict.SOUND, "It falls away with what it leads to.")
    ends = [part_at(reader, place, Terminal, f"loom.{on.name}.from-end") for place in ends_of(on)]
    return worst_of([_end(reader, subject, on, end) for end in ends])


def _end(reader: Reader, subject: str, on: Laid, end: Terminal) -> Finding:
    unfit = _unfit(on, end)
    if unfit:
        return say(CHECK, reader, subject, Verdict.UNSOUND, unfit, "take the size that is made for the wire")
    if end.form not in RATED:
        return say(CHECK, reader, subject, Verdict.SOUND, f"{end.id} is made for {on.copper_mm2:.3g} mm².")
    if end.current_a is None:
        raise MissingFigureError((f"parts.{end.id}.current",))
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda current, rating: PERCENT * current / rating,
        inputs={"current": carried(reader, on), "rating": known(f"rating of {end.id}", end.current_a, "A")},
        bounds=at_most(electric_limit("load of a terminal").value),
        unit="%",
        because=f"{end.id} carries {{current}}, {{value}} of its {{rating}}; {{limit}}. After a quarter of an hour of "
        "full load it must not be too hot to hold.",
        mend="a plug for more current, or a screw terminal with ferrules",
    )


def _unfit(on: Laid, end: Terminal) -> str:
    """What is wrong with the size of an end; empty where it fits or is not said."""
    low, high = end.smallest_mm2, end.largest_mm2
    copper = on.copper_mm2
    if low is not None and copper < low.value - SIZE_NOISE:
        return f"{end.id} is made for {low.value:g} mm² at least: {copper:.3g} mm² slip out of it."
    if high is not None and copper > high.value + SIZE_NOISE:
        return f"{end.id} is made for {high.value:g} mm² at most: {copper:.3g} mm² do not go in, and strands get cut."
    return ""


CHECK = check_of(
    _run,
    code="WIRE-04",
    title="Ends of a wire",
    source="rated for 1.5 times the current: common practice, no source",
    subjects=lambda design: wire_subjects(design, "power", "return"),
)
