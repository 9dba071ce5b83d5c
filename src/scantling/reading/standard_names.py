"""Names of standard fasteners: ``M3x12 socket head screw``, ``1/4-20 nut``, ``M3 large washer``. They need no entry."""

from __future__ import annotations

import re
from functools import cache

from scantling.errors import LookUpError
from scantling.tables.nuts import nut
from scantling.tables.screws import screw_lengths
from scantling.tables.threads import known_threads, thread
from scantling.tables.washers import washer

HEADS = {
    "socket head": "socket",
    "button head": "button",
    "countersunk": "countersunk",
    "hexagon head": "hexagon",
    "pan head": "pan",
}
_HEAD = "|".join(HEADS)
_SCREW = re.compile(rf"(?P<thread>\S+?)x(?P<length>[0-9./-]+(?: in)?)\s+(?P<head>{_HEAD})\s+screw")
_NUT = re.compile(r"(?P<thread>\S+)\s+(?:(?P<style>lock|thin)\s+)?nut(?:\s+(?P<standard>[A-Z].*))?")
_WASHER = re.compile(r"(?P<size>\S+?)(?: in)?\s+(?:(?P<style>large)\s+)?washer")
JOINT_SCREW = re.compile(rf"(?P<head>{_HEAD})\s+(?P<thread>\S+)")


@cache
def is_standard_fastener(name: str) -> bool:
    """True for the name of a screw, nut or washer that the tables of standards hold.

    >>> is_standard_fastener("M3x12 socket head screw"), is_standard_fastener("M3x13 socket head screw")
    (True, False)
    """
    tidy = " ".join(name.split())
    try:
        if found := _SCREW.fullmatch(tidy):
            lengths = screw_lengths(HEADS[found["head"]], found["thread"])
            return found["length"] in {length.label for length in lengths}
        if found := _NUT.fullmatch(tidy):
            return _is_nut(found["thread"], found["style"] or "plain", found["standard"])
        if found := _WASHER.fullmatch(tidy):
            return any(_is_washer(one, found["style"] or "plain") for one in _threads_of(found["size"]))
    except LookUpError:
        return False
    return False


def _is_nut(thread_name: str, style: str, standard: str | None) -> bool:
    """A metric lock nut without its standard is a DIN 985 one."""
    if standard is None and style == "lock" and not thread(thread_name).is_inch:
        standard = "DIN 985"
    nut(f"{style} {standard or ''}".strip(), thread_name)
    return True


def _is_washer(thread_name: str, style: str) -> bool:
    try:
        washer(style, thread_name)
    except LookUpError:
        return False
    return True


def _threads_of(size: str) -> list[str]:
    """Return the threads that a washer's size goes with: ``M3``, ``1/4`` and ``#6`` stand for several."""
    return [name for name in known_threads() if re.split(r"[x-]", name)[0] == size]
