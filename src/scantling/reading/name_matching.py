"""Which part of ours somebody's words may mean; proposals only."""

from __future__ import annotations

import re
from collections.abc import Iterable
from difflib import SequenceMatcher

from scantling.tables.fastener_names import HEAD_WORDS, is_standard_fastener

_METRIC_SCREW = re.compile(r"\bM(?P<size>[0-9.]+)\s*[x×*]\s*(?P<length>[0-9]+)\s*(?:mm)?\b", re.IGNORECASE)
_METRIC = re.compile(r"\bM(?P<size>[0-9.]+)\b", re.IGNORECASE)
_HEAD_WORDS = {
    "socket head": ("socket", "cap head", "allen", "din 912", "iso 4762"),
    "button head": ("button", "iso 7380"),
    "countersunk": ("countersunk", "csk", "flat head", "din 7991", "iso 10642"),
    "hexagon head": ("hexagon head", "hex head", "hex bolt", "din 933", "iso 4017"),
    "pan head": ("pan head", "din 7985", "iso 7045"),
}
_LEAST_LIKENESS = 0.6


def name_proposals(text: str, known: Iterable[str], most: int = 3) -> tuple[str, ...]:
    """Return the parts that a text may mean, the likeliest first: standard fasteners it spells out, then likenesses.

    >>> name_proposals("M3 x 12 socket cap screw", ["rod-8"])
    ('M3x12 socket head screw',)
    """
    plain = _plain(text)
    scored = [(SequenceMatcher(None, plain, _plain(name)).ratio(), name) for name in known]
    alike = [name for score, name in sorted(scored, key=lambda one: (-one[0], one[1])) if score >= _LEAST_LIKENESS]
    return tuple(dict.fromkeys([*_fasteners(text), *alike]))[:most]


def _plain(text: str) -> str:
    return re.sub(r"[\s_\-–/,;:()]+", " ", text.casefold()).strip()


def _fasteners(text: str) -> list[str]:
    folded = text.casefold()
    found = _METRIC_SCREW.search(text)
    if found is not None:
        heads = [head for head in HEAD_WORDS if any(word in folded for word in _HEAD_WORDS[head])] or list(HEAD_WORDS)
        names = [f"M{found['size']}x{found['length']} {head} screw" for head in heads]
        return [name for name in names if is_standard_fastener(name)]
    size = _METRIC.search(text)
    if size is None:
        return []
    style = "lock " if any(word in folded for word in ("lock", "nylon", "din 985")) else ""
    style = "thin " if "thin" in folded else style
    large = "large " if any(word in folded for word in ("large", "fender", "penny", "9021", "7093")) else ""
    names = [f"M{size['size']} {style}nut"] if "nut" in folded else []
    names += [f"M{size['size']} {large}washer"] if "washer" in folded else []
    return [name for name in names if is_standard_fastener(name)]
