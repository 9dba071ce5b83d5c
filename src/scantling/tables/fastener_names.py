"""Names of standard fasteners and what they mean: the one grammar that files, lists, stock and offers share.

``M3x12 socket head screw``, ``1/4-20x3/4 in hexagon head screw``, ``M3 nut``, ``M3 lock nut`` (DIN 985),
``M3 lock nut ISO 7040``, ``M3 thin nut``, ``M3 washer``, ``M3 large washer``, ``1/4 in washer``, ``#6 washer``.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Literal, NamedTuple, cast

from scantling.errors import LookUpError
from scantling.tables.nuts import Nut, nut
from scantling.tables.screws import ScrewLength, screw_lengths
from scantling.tables.threads import known_threads, thread
from scantling.tables.washers import Washer, washer

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
WORDS_OF_HEAD = {head: words for words, head in HEAD_WORDS.items()}
LOCK_NUT = "DIN 985"  # two families of lock nuts share one name; this one is meant where none is said

_HEADS = "|".join(HEAD_WORDS)
JOINT_SCREW = re.compile(rf"(?P<head>{_HEADS})\s+(?P<thread>\S+)")
_SCREW = re.compile(rf"(?P<thread>\S+?)x(?P<length>[0-9./-]+(?: in)?)\s+(?P<head>{_HEADS})\s+screw")
_NUT = re.compile(r"(?P<thread>\S+)\s+(?:(?P<style>lock|thin)\s+)?nut(?:\s+(?P<standard>[A-Z].*))?")
_WASHER = re.compile(r"(?P<size>\S+(?: in)?)\s+(?:(?P<style>large)\s+)?washer")


class ScrewName(NamedTuple):
    """A screw of a standard length."""

    head: Head
    thread: str
    length: ScrewLength


class NutName(NamedTuple):
    """A nut with its row in the tables."""

    style: NutStyle
    row: Nut


class WasherName(NamedTuple):
    """A washer with its row in the tables."""

    style: WasherStyle
    row: Washer


def head_and_thread(text: str) -> tuple[Head, str]:
    """Return ``("socket", "M3")`` for what a joint writes, ``socket head M3``.

    Raises ``LookUpError`` for heads and threads that no table knows.
    """
    found = JOINT_SCREW.fullmatch(" ".join(text.split()))
    if found is None:
        raise LookUpError("screw of a joint", text, [f"{words} M3" for words in HEAD_WORDS])
    return HEAD_WORDS[found["head"]], thread(found["thread"]).name


@cache
def fastener(name: str) -> ScrewName | NutName | WasherName:
    """Return what a name means; raises ``LookUpError`` for what no table holds.

    >>> fastener("M3x12 socket head screw").length.length_mm
    12.0
    """
    tidy = " ".join(name.split())
    if found := _SCREW.fullmatch(tidy):
        return _screw(found)
    if found := _NUT.fullmatch(tidy):
        style = cast(NutStyle, found["style"] or "plain")
        usual = LOCK_NUT if style == "lock" and not thread(found["thread"]).is_inch else ""
        return NutName(style, nut(f"{style} {found['standard'] or usual}".strip(), found["thread"]))
    if found := _WASHER.fullmatch(tidy):
        size = cast(WasherStyle, found["style"] or "plain")
        return WasherName(size, washer(size, thread_of_size(found["size"])))
    raise LookUpError("standard fastener", name, ["M3x12 socket head screw", "M3 nut", "M3 washer"])


def is_standard_fastener(name: str) -> bool:
    """Return True for the name of a screw, nut or washer that the tables of standards hold.

    >>> is_standard_fastener("M3x12 socket head screw"), is_standard_fastener("M3x13 socket head screw")
    (True, False)
    """
    try:
        fastener(name)
    except LookUpError:
        return False
    return True


def thread_of_size(size: str) -> str:
    """Return a thread of this size, for tables that ask for one: ``1/4 in`` gives ``1/4-20``."""
    bare = size.removesuffix(" in")
    if bare.startswith("M"):
        return bare
    known = [name for name in known_threads() if name.partition("-")[0] == bare]
    if not known:
        raise LookUpError("size of a washer", size, ["M3", "1/4 in", "#6"])
    return known[0]


def _screw(found: re.Match[str]) -> ScrewName:
    head, name = HEAD_WORDS[found["head"]], thread(found["thread"]).name
    lengths = screw_lengths(head, name)
    for one in lengths:
        if one.label == found["length"]:
            return ScrewName(head, name, one)
    raise LookUpError("length of a screw", found["length"], [one.label for one in lengths])
