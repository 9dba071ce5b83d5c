"""Places that a printed part may fill."""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.checks.subjects import named
from scantling.model.design import Design
from scantling.model.kinds import Printed


def printable(design: Design) -> tuple[str, ...]:
    """Return the places with a printed part among their options."""
    places = design.places.items()
    return named("place", (name for name, p in places if any(_is_printed(design, o.part) for o in p.options)))


def printed_at(reader: Reader, place: str) -> Printed | None:
    """Return the printed part that fills a place; None where it is filled otherwise or empty."""
    part = reader.part(place)
    return part if isinstance(part, Printed) else None


def _is_printed(design: Design, part: str) -> bool:
    return isinstance(design.parts.get(part), Printed)
