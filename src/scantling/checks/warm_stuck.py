"""A switch stuck on: the heater goes on at full power until its losses eat it all, at 24 V as on the mains.

Where glue, insulation, holders, sheet or cable do not stand that, an independent thermal cut-out must open first: a
controller's own protection works through the very switch that is stuck.
"""

from __future__ import annotations

from collections.abc import Callable

from scantling.build.missing import MissingFigureError, NotDescribedError
from scantling.build.reader import Reader
from scantling.checks.inputs import Input, known
from scantling.checks.judging import judge, say
from scantling.checks.limits import at_most
from scantling.checks.rule import check_of, part_at
from scantling.checks.subjects import ident, named
from scantling.checks.warming import Warmed, warmed
from scantling.findings import Finding, Verdict
from scantling.formulas.heat import highest_rise_k
from scantling.model.design import Design
from scantling.model.kinds import CutOut
from scantling.model.part import Part
from scantling.quantities import Figure


def _run(reader: Reader, subject: str) -> Finding:
    name = ident(subject)
    on = warmed(reader, subject)
    weakest = _weakest(reader, name, on)
    cut_out = _cut_out(reader, name, on)
    if cut_out is not None and (wrong := _unfit(cut_out, on)):
        return say(CHECK, reader, subject, Verdict.UNSOUND, wrong, "another cut-out")
    inputs = {key: on.inputs[key] for key in ("power", "loss")}
    inputs |= {"room": known("temperature of the room", on.warming.room_c, "°C"), "weakest": weakest}
    words = "and no independent cut-out opens before"
    if cut_out is not None:
        inputs["trips"] = known(f"{cut_out.id}", cut_out.trips_c, "°C")
        words = f"but {cut_out.id} opens at {{trips}}"
    return judge(
        CHECK,
        reader,
        subject,
        rule=_hottest,
        inputs=inputs,
        bounds=at_most(lambda weakest, **_: weakest),
        unit="°C",
        because=f"Stuck on, {{power}} against a loss of {{loss}} end at {{end}}, {words}: it gets to {{value}}; "
        f"{weakest.what} {{limit}}.",
        also={"end": (_end, "°C")},
        mend=f"an independent thermal cut-out below {weakest.low:.0f} °C on the plate, at 24 V too; or less power",
    )


def _end(power: float, loss: float, room: float, **_: float) -> float:
    return room + highest_rise_k(power, loss)


def _hottest(power: float, loss: float, room: float, trips: float | None = None, **_: float) -> float:
    end = _end(power, loss, room)
    return end if trips is None else min(end, trips)


def _weakest(reader: Reader, name: str, on: Warmed) -> Input:
    """What stands least of all that is near; raises where one of them does not say what it stands."""
    if not on.warming.near:
        raise NotDescribedError((f"warmings.{name}.near",))
    found: list[tuple[float, str, Figure]] = []
    for place in on.warming.near:
        part = reader.part(place)
        if part is None:
            continue
        if part.stands_c is None:
            wanted = (f"parts.{part.id}.stands",)
            raise MissingFigureError(wanted) if _others_say(reader, place) else NotDescribedError(wanted)
        found.append((part.stands_c.low, f"{part.id} at {place} stands", part.stands_c))
    if not found:
        raise NotDescribedError((f"warmings.{name}.near",))
    _, what, stands = min(found, key=lambda one: one[:2])
    return known(what, stands, "°C")


def _others_say(reader: Reader, place: str) -> bool:
    """Return whether any other option of a place says what it stands."""
    part_of: Callable[[str], Part] = reader.case.part
    return any(part_of(option.part).stands_c is not None for option in reader.design.places[place].options)


def _cut_out(reader: Reader, name: str, on: Warmed) -> CutOut | None:
    place = on.warming.cut_out
    if place is None or reader.part(place) is None:
        return None
    return part_at(reader, place, CutOut, f"warmings.{name}.cut-out")


def _unfit(cut_out: CutOut, on: Warmed) -> str:
    """What is wrong with a cut-out itself; empty where it serves."""
    target = on.warming.target_c
    if cut_out.trips_c.low <= target.high:
        return f"{cut_out.id} opens at {cut_out.trips_c.value:g} °C, which {target.value:g} °C wanted would reach."
    drawn_a = on.heater.power_w.value / on.heater.voltage_v.value
    if cut_out.current_a is not None and cut_out.current_a.value < drawn_a:
        rated_a = cut_out.current_a.value
        return f"{cut_out.id} breaks {rated_a:g} A at most; {on.heater.id} draws {drawn_a:.3g} A: it would weld shut."
    return ""


def _subjects(design: Design) -> tuple[str, ...]:
    return named("warming", design.warmings)


CHECK = check_of(
    _run,
    code="WARM-03",
    title="Switch stuck on",
    source="energy balance, room + P / k, radiation left out (it ends somewhat cooler); against what is near",
    subjects=_subjects,
)
