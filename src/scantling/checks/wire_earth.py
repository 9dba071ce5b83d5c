"""Protective earth: touchable metal that a fault of the mains could reach is tied to the inlet's earth, thick enough.

A frame of plywood needs none, one of aluminium does: it comes with the choice of the sheet. Mains work is done by a
competent person under the local code; this only finds what was forgotten.
"""

from __future__ import annotations

from scantling.build.loom import copper_mm2, end_place, wire_count
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.checks.inputs import known
from scantling.checks.judging import judge, say
from scantling.checks.limits import at_least
from scantling.checks.rule import check_of, part_at
from scantling.checks.subjects import ident, named
from scantling.findings import Finding, Verdict
from scantling.model.design import Design
from scantling.model.kinds import Wire
from scantling.tables.electric_limits import electric_limit

PERCENT = 100.0


def _run(reader: Reader, subject: str) -> Finding:
    place = ident(subject)
    part = reader.part(place)
    if part is None or not part.needs_earth:
        return say(CHECK, reader, subject, Verdict.SOUND, f"{place} needs no earth.")
    if not reader.design.loom:
        raise NotDescribedError(("loom",))
    wires = _way_to_inlet(reader.design, place)
    if not wires:
        because = f"No earth wire leads from {part.id} at {place} to {' or '.join(_inlets(reader.design))}: a fault of "
        because += "the mains would make it live."
        mend = "add an earth wire of its own, ring terminal on bare metal; by a competent person"
        return say(CHECK, reader, subject, Verdict.UNSOUND, because, mend)
    copper = min(_copper(reader, name) for name in wires if reader.derive(wire_count, name))
    lines = [_copper(reader, name) for name, row in reader.design.loom.items() if row.carries == "mains"]
    if not lines:
        return say(CHECK, reader, subject, Verdict.SOUND, f"{place} is tied to earth by {copper:g} mm².")
    line = max(lines)
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda earth, line: PERCENT * earth / line,
        inputs={"earth": known("copper of the earth", copper, "mm²"), "line": known("copper of the line", line, "mm²")},
        bounds=at_least(electric_limit("earth against line").value),
        unit="%",
        because=f"{place} is tied to earth over {' and '.join(wires)} by {{earth}}, {{value}} of the line's {{line}}; "
        "{limit}. Measured from the plug's pin it must be below 0.2 ohm.",
        mend="an earth wire as thick as the line",
    )


def _copper(reader: Reader, name: str) -> float:
    row = reader.design.loom[name]
    return copper_mm2(part_at(reader, row.wire, Wire, f"loom.{name}.wire"))


def _inlets(design: Design) -> tuple[str, ...]:
    """Places at which the earth of the mains comes in."""
    return tuple(dict.fromkeys(rail.inlet for rail in design.rails.values() if rail.inlet is not None)) or (
        "the inlet",
    )


def _way_to_inlet(design: Design, place: str) -> tuple[str, ...]:
    """The earth wires on the shortest way from a place to the inlet; where no inlet is named any earth wire will do."""
    goals = {rail.inlet for rail in design.rails.values() if rail.inlet is not None}
    earths = [(n, end_place(r.start), end_place(r.to)) for n, r in design.loom.items() if r.carries == "earth"]
    ways: dict[str, tuple[str, ...]] = {place: ()}
    edge = [place]
    for here in edge:
        if here in goals or (not goals and ways[here]):
            return ways[here]
        for name, a, b in earths:
            for near, far in ((a, b), (b, a)):
                if near == here and far not in ways:
                    ways[far] = (*ways[here], name)
                    edge.append(far)
    return ()


def _subjects(design: Design) -> tuple[str, ...]:
    places = design.places.items()
    needing = (name for name, p in places if any(_needs_earth(design, option.part) for option in p.options))
    return named("place", needing)


def _needs_earth(design: Design, part: str) -> bool:
    described = design.parts.get(part)
    return described is not None and described.needs_earth


CHECK = check_of(
    _run,
    code="WIRE-05",
    title="Protective earth",
    source="IEC 60364-5-54, as thick as the line up to 16 mm²; local codes go before it",
    subjects=_subjects,
)
