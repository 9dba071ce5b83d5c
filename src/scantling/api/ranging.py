"""Ranges: within which sizes, materials and ratings the machine stays sound, so that local parts can be taken."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from math import inf

from scantling.api.opening import Session, start_build
from scantling.build.reference import carry_over
from scantling.checks.backwards import Interval
from scantling.checks.figures import FigureRange as FigureRange  # faces name its type
from scantling.checks.figures import figure_ranges, heard
from scantling.checks.local_parts import Local as Local
from scantling.checks.local_parts import LocalRange as LocalRange
from scantling.checks.local_parts import LocalWord as LocalWord
from scantling.checks.local_parts import local_part
from scantling.errors import Fault, FaultsError, Where, nearest
from scantling.model.build import Build, Key
from scantling.plans.csv_text import csv_bytes
from scantling.quantities import show_number, show_value


def rule_ranges(session: Session, changes: Mapping[Key, str] | None = None) -> tuple[FigureRange, ...]:
    """Return where every figure that a rule uses may lie, all else equal, the narrowest first.

    Of the choice in force, else of the reference parts, with some changes.
    """
    found = figure_ranges(session.case, heard(session.case, _build(session, changes))[0])
    return tuple(sorted(found, key=_room))


def local_parts(session: Session, places: Sequence[str], changes: Mapping[Key, str] | None = None) -> Iterator[Local]:
    """Yield for each place what a local part must be like to fill it; for every place where none is named.

    Places that hold the same part are told once, for the first. Raises ``FaultsError`` for a place that is none.
    """
    design, build = session.case.project.design, _build(session, changes)
    unknown = [place for place in places if place not in design.places]
    if unknown:
        raise FaultsError(
            [Fault("ASK-02", f"no place called {p!r}", nearest(p, design.places), Where(p)) for p in unknown]
        )
    seen: set[str] = set()
    for place in places or design.places:
        part = session.case.reader(build).part(place)
        if part is None or (not places and part.id in seen):
            continue
        seen.add(part.id)
        found = local_part(session.case, build, place)
        if found is not None and (found.ranges or found.words or places):
            yield found


def interval_words(intervals: Sequence[Interval], unit: str) -> str:
    """Return intervals as a sentence names them.

    >>> interval_words([Interval(7.97, 8.0)], "mm"), interval_words([Interval(40.0, inf)], "HRC")
    ('7.97 to 8 mm', 'from 40 HRC')
    """
    return " or ".join(_words(one, unit) for one in intervals) or "none"


def ranges_csv(found: Sequence[Local]) -> bytes:
    """Return the ranges of parts as a table, one figure or word a row, for others to build by."""
    rows = [["place", "part", "figure", "now", "sound", "allowed with other screws", "below it", "above it"]]
    for local in found:
        for one in local.ranges:
            sound, allowed = interval_words(one.sound, one.unit), interval_words(one.allowed, one.unit)
            ends = ["; ".join(one.below), "; ".join(one.above)]
            rows.append([local.place, local.part, one.figure, show_value(one.now, one.unit), sound, allowed, *ends])
        for word in local.words:
            against = "; ".join(f"{name}: {', '.join(who)}" for name, who in word.against.items())
            row = [local.place, local.part, word.figure, word.now, ", ".join(word.serve), ", ".join(word.allowed)]
            rows.append([*row, against, ""])
    return csv_bytes(rows)


def _words(one: Interval, unit: str) -> str:
    if one.low == -inf and one.high == inf:
        return "any"
    if one.low == -inf:
        return f"up to {show_value(one.high, unit)}"
    if one.high == inf:
        return f"from {show_value(one.low, unit)}"
    same = one.low == one.high
    return show_value(one.low, unit) if same else f"{show_number(one.low)} to {show_value(one.high, unit)}"


def _build(session: Session, changes: Mapping[Key, str] | None) -> Build:
    build = start_build(session)
    return carry_over(session.case, build, changes) if changes else build


def _room(one: FigureRange) -> tuple[float, str, str]:
    """Return how near the present value lies to an end, as a share of itself; 0 where it is outside."""
    if not one.is_inside:
        return (0.0, one.figure, one.of)
    middle = (one.low + one.high) / 2
    ends = [end for interval in one.intervals if interval.holds(middle) for end in (interval.low, interval.high)]
    return (min((abs(end - middle) / (abs(middle) or 1.0) for end in ends), default=0.0), one.figure, one.of)
