"""Standard screws, nuts and washers as parts: their names say all, so that nobody has to describe them.

``M3x12 socket head screw``, ``1/4-20x3/4 in hexagon head screw``, ``M3 nut``, ``M3 lock nut`` (DIN 985),
``M3 lock nut ISO 7040``, ``M3 thin nut``, ``M3 washer``, ``M3 large washer``, ``1/4 in washer``, ``#6 washer``.
"""

from __future__ import annotations

import re
from functools import cache

from scantling.build.fastener_masses import nut_mass, screw_mass, washer_mass
from scantling.errors import LookUpError
from scantling.model.joint import Joint
from scantling.model.kinds import Nut, Screw, Washer
from scantling.quantities import Figure
from scantling.tables import screws, threads
from scantling.tables.fastener_names import (
    HEAD_WORDS,
    WORDS_OF_HEAD,
    Head,
    NutName,
    ScrewName,
    WasherName,
    fastener,
    head_and_thread,
    thread_of_size,
)


@cache
def screw_names(head: Head, thread: str) -> tuple[str, ...]:
    """Return the names of all standard lengths of a screw, the shortest first."""
    return tuple(f"{thread}x{one.label} {WORDS_OF_HEAD[head]} screw" for one in screws.screw_lengths(head, thread))


def joint_screws(joint: Joint) -> tuple[str, ...]:
    """Return the names of the standard screws that a joint may take, the shortest first."""
    return screw_names(*head_and_thread(joint.screw))


def nut_name(style: str, thread: str) -> str:
    """Return the name of a nut: ``M3 nut``, ``M3 lock nut``."""
    return f"{thread} nut" if style == "plain" else f"{thread} {style} nut"


def washer_name(style: str, thread: str) -> str:
    """Return the name of a washer; its thread's pitch does not matter: ``M8 washer``, ``1/4 in large washer``."""
    found = threads.thread(thread)
    size = found.name.partition("-")[0] if found.is_inch else f"M{found.major_mm:g}"
    size = f"{size} in" if "/" in size else size
    return f"{size} washer" if style == "plain" else f"{size} {style} washer"


@cache
def standard_part(name: str) -> Screw | Nut | Washer:
    """Return a standard fastener by its name, with its mass by calculation.

    Raises ``LookUpError`` with the nearest names for what is none.

    >>> standard_part("M3x12 socket head screw").length_mm.value
    12.0
    """
    try:
        found = fastener(name)
    except LookUpError as error:
        raise LookUpError("part", name, _near(name)) from error
    if isinstance(found, ScrewName):
        return _screw(name, found)
    return _nut(name, found) if isinstance(found, NutName) else _washer(name, found)


def fastener_mass(part: Screw | Nut | Washer) -> Figure:
    """Return the mass of a fastener in kg: as described, or by calculation from its standard."""
    given: Figure | None = part.mass_kg
    if given is not None:
        return given
    if isinstance(part, Screw):
        return screw_mass(screws.screw_head(part.head, part.thread), part.length_mm.value)
    return nut_mass(part) if isinstance(part, Nut) else washer_mass(part)


def _screw(name: str, found: ScrewName) -> Screw:
    mass_kg = screw_mass(screws.screw_head(found.head, found.thread), found.length.length_mm)
    length_mm = Figure.exact(found.length.length_mm)
    return Screw(id=name, name=name, head=found.head, thread=found.thread, length_mm=length_mm, mass_kg=mass_kg)


def _nut(name: str, found: NutName) -> Nut:
    row = found.row
    low_mm = row.height_mm if row.height_min_mm is None else row.height_min_mm
    part = Nut(
        id=name,
        name=name,
        style=found.style,
        thread=row.thread,
        height_mm=Figure(row.height_mm, low_mm, row.height_mm, source=row.standard),
        across_flats_mm=Figure.exact(row.across_flats_mm),
    )
    return part.model_copy(update={"mass_kg": nut_mass(part)})


def _washer(name: str, found: WasherName) -> Washer:
    row = found.row
    spread_mm = row.thickness_max_mm - row.thickness_mm  # the standards' tolerance is the same on both sides
    part = Washer(
        id=name,
        name=name,
        style=found.style,
        thread=row.thread,
        inner_diameter_mm=Figure.exact(row.inner_diameter_mm),
        outer_diameter_mm=Figure.exact(row.outer_diameter_mm),
        thickness_mm=Figure(row.thickness_mm, row.thickness_mm - spread_mm, row.thickness_max_mm, source=row.standard),
    )
    return part.model_copy(update={"mass_kg": washer_mass(part)})


@cache
def _near(name: str) -> tuple[str, ...]:
    """Return standard names that a wrong one may have meant: those of its size, else of M3."""
    size = re.split(r"[x\s]", name.strip())[0]
    try:
        thread = threads.thread(thread_of_size(size)).name if "-" not in size else threads.thread(size).name
    except LookUpError:
        thread = "M3"
    known = [nut_name(style, thread) for style in ("plain", "lock", "thin")]
    known += [washer_name(style, thread) for style in ("plain", "large")]
    for words, head in HEAD_WORDS.items():
        try:
            known += screw_names(head, thread)
        except LookUpError:
            known.append(f"M3x12 {words} screw")
    return tuple(known)
