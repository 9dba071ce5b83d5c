"""Standard screws, nuts and washers as parts: their names say all, so that nobody has to describe them.

``M3x12 socket head screw``, ``1/4-20x3/4 in hexagon head screw``, ``M3 nut``, ``M3 lock nut`` (DIN 985),
``M3 lock nut ISO 7040``, ``M3 thin nut``, ``M3 washer``, ``M3 large washer``, ``1/4 in washer``, ``#6 washer``.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Literal, cast

from scantling.build.fastener_masses import nut_mass, screw_mass, washer_mass
from scantling.errors import LookUpError
from scantling.model.joint import Joint
from scantling.model.kinds import Nut, Screw, Washer
from scantling.quantities import Figure
from scantling.tables import nuts, screws, threads, washers

Head = Literal["socket", "button", "countersunk", "hexagon", "pan"]
NutStyle = Literal["plain", "lock", "thin"]
WasherStyle = Literal["plain", "large"]

HEAD_WORDS: dict[str, Head] = {
    "socket head": "socket",
    "button head": "button",
    "countersunk": "countersunk",
    "hexagon head": "hexagon",
    "pan head": "pan",
}
_WORDS_OF = {head: words for words, head in HEAD_WORDS.items()}
_HEADS = "|".join(HEAD_WORDS)
_JOINT = re.compile(rf"(?P<head>{_HEADS})\s+(?P<thread>\S+)")
_SCREW = re.compile(rf"(?P<thread>\S+?)x(?P<length>[0-9./-]+(?: in)?)\s+(?P<head>{_HEADS})\s+screw")
_NUT = re.compile(r"(?P<thread>\S+)\s+(?:(?P<style>lock|thin)\s+)?nut(?:\s+(?P<standard>[A-Z].*))?")
_WASHER = re.compile(r"(?P<size>\S+(?: in)?)\s+(?:(?P<style>large)\s+)?washer")

# Two families of lock nuts share one name; this one is meant where none is said.
LOCK_NUT = "DIN 985"


def head_and_thread(text: str) -> tuple[Head, str]:
    """Return ``("socket", "M3")`` for what a joint writes, ``socket head M3``.

    Raises ``LookUpError`` for heads and threads that no table knows.
    """
    found = _JOINT.fullmatch(" ".join(text.split()))
    if found is None:
        raise LookUpError("screw of a joint", text, [f"{words} M3" for words in HEAD_WORDS])
    return HEAD_WORDS[found["head"]], threads.thread(found["thread"]).name


@cache
def screw_names(head: Head, thread: str) -> tuple[str, ...]:
    """Return the names of all standard lengths of a screw, the shortest first."""
    return tuple(f"{thread}x{one.label} {_WORDS_OF[head]} screw" for one in screws.screw_lengths(head, thread))


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
    tidy = " ".join(name.split())
    try:
        if found := _SCREW.fullmatch(tidy):
            return _screw(name, found)
        if found := _NUT.fullmatch(tidy):
            return _nut(name, found)
        if found := _WASHER.fullmatch(tidy):
            return _washer(name, found)
    except LookUpError as error:
        raise LookUpError("part", name, _near(name)) from error
    raise LookUpError("part", name, _near(name))


def fastener_mass(part: Screw | Nut | Washer) -> Figure:
    """Return the mass of a fastener in kg: as described, or by calculation from its standard."""
    given: Figure | None = part.mass_kg
    if given is not None:
        return given
    if isinstance(part, Screw):
        return screw_mass(screws.screw_head(part.head, part.thread), part.length_mm.value)
    return nut_mass(part) if isinstance(part, Nut) else washer_mass(part)


def _screw(name: str, found: re.Match[str]) -> Screw:
    head, thread = HEAD_WORDS[found["head"]], threads.thread(found["thread"]).name
    for one in screws.screw_lengths(head, thread):
        if one.label == found["length"]:
            mass_kg = screw_mass(screws.screw_head(head, thread), one.length_mm)
            length_mm = Figure.exact(one.length_mm)
            return Screw(id=name, name=name, head=head, thread=thread, length_mm=length_mm, mass_kg=mass_kg)
    raise LookUpError("length of a screw", found["length"], [o.label for o in screws.screw_lengths(head, thread)])


def _nut(name: str, found: re.Match[str]) -> Nut:
    style = cast(NutStyle, found["style"] or "plain")
    is_inch = threads.thread(found["thread"]).is_inch
    standard = found["standard"] or (LOCK_NUT if style == "lock" and not is_inch else "")
    row = nuts.nut(f"{style} {standard}".strip(), found["thread"])
    low_mm = row.height_mm if row.height_min_mm is None else row.height_min_mm
    part = Nut(
        id=name,
        name=name,
        style=style,
        thread=row.thread,
        height_mm=Figure(row.height_mm, low_mm, row.height_mm, source=row.standard),
        across_flats_mm=Figure.exact(row.across_flats_mm),
    )
    return part.model_copy(update={"mass_kg": nut_mass(part)})


def _washer(name: str, found: re.Match[str]) -> Washer:
    style = cast(WasherStyle, found["style"] or "plain")
    row = washers.washer(style, _thread_of_size(found["size"]))
    spread_mm = row.thickness_max_mm - row.thickness_mm  # the standards' tolerance is the same on both sides
    part = Washer(
        id=name,
        name=name,
        style=style,
        thread=row.thread,
        inner_diameter_mm=Figure.exact(row.inner_diameter_mm),
        outer_diameter_mm=Figure.exact(row.outer_diameter_mm),
        thickness_mm=Figure(row.thickness_mm, row.thickness_mm - spread_mm, row.thickness_max_mm, source=row.standard),
    )
    return part.model_copy(update={"mass_kg": washer_mass(part)})


def _thread_of_size(size: str) -> str:
    """Return a thread of this size, for tables that ask for one: ``1/4 in`` -> ``1/4-20``."""
    bare = size.removesuffix(" in")
    if bare.startswith("M"):
        return bare
    known = [name for name in threads.known_threads() if name.partition("-")[0] == bare]
    if not known:
        raise LookUpError("size of a washer", size, ["M3", "1/4 in", "#6"])
    return known[0]


@cache
def _near(name: str) -> tuple[str, ...]:
    """Return standard names that a wrong one may have meant: those of its size, else of M3."""
    size = re.split(r"[x\s]", name.strip())[0]
    try:
        thread = threads.thread(_thread_of_size(size)).name if "-" not in size else threads.thread(size).name
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
