"""The small texts that are not figures: counts, pieces of a length, yes and no, dates, currents of motors."""

from __future__ import annotations

import datetime
import re
from typing import Literal

from scantling.errors import QuantityError
from scantling.quantities.figure import Figure
from scantling.quantities.parse import parse_figure

_PIECES = re.compile(r"(?P<count>[0-9]+)\s*(?:[x×*]|off\b)\s*(?P<each>.+)", re.IGNORECASE)
_DATE = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_CURRENT_KIND = re.compile(r"(?<=A)\s*(?:\((?P<inner>rms|peak)\)|(?P<word>rms|peak)(?![A-Za-z]))", re.IGNORECASE)
_TRUTH = {"yes": True, "true": True, "no": False, "false": False}

CurrentKind = Literal["rms", "peak"]


def parse_count(text: str) -> int:
    """Return a whole number of things, zero or more; raises ``QuantityError``."""
    count = int(parse_figure(text, "count").value)
    if count < 0:
        raise QuantityError(f"{text.strip()!r} is a negative count", "write 0 or more")
    return count


def parse_pieces(text: str, dimension_name: str = "length") -> tuple[int, Figure]:
    """Return how many pieces of what size: ``2 x 300 mm`` is (2, 300 mm), ``300 mm`` is (1, 300 mm)."""
    found = _PIECES.fullmatch(text.strip())
    if found is None:
        return 1, parse_figure(text, dimension_name)
    count = parse_count(found["count"])
    if count == 0:
        raise QuantityError(f"{text.strip()!r} is no piece at all", "write one piece or more, as in 2 x 300 mm")
    return count, parse_figure(found["each"], dimension_name)


def parse_bool(text: str) -> bool:
    """Return yes or no; raises ``QuantityError``."""
    word = text.strip().casefold()
    if word not in _TRUTH:
        raise QuantityError(f"{text.strip()!r} is neither yes nor no", "write yes or no")
    return _TRUTH[word]


def parse_date(text: str) -> datetime.date:
    """Return a day written as year-month-day; raises ``QuantityError``."""
    written = text.strip()
    if not _DATE.fullmatch(written):
        raise QuantityError(f"{written!r} is not a date", "write year-month-day, as in 2025-03-31")
    try:
        return datetime.date.fromisoformat(written)
    except ValueError as error:
        raise QuantityError(f"{written!r} is no day of the calendar ({error})", "write a day that exists") from None


def parse_current(text: str) -> tuple[Figure, CurrentKind | None]:
    """Return a current [A] and whether it is said to be rms or peak: ``1.5 A rms``, ``2.1 A peak ± 5 %``, ``1.5 A``."""
    kinds = {(m["inner"] or m["word"]).casefold() for m in _CURRENT_KIND.finditer(text)}
    if len(kinds) > 1:
        raise QuantityError(f"{text.strip()!r} is both rms and peak", "write one of them, as in 1.5 A rms")
    figure = parse_figure(_CURRENT_KIND.sub("", text), "current")
    if not kinds:
        return figure, None
    return figure, "rms" if "rms" in kinds else "peak"
