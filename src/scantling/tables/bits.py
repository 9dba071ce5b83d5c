"""Drill bits: by name (``4.2``, ``17/64``, ``#7``, ``F``) and as the sets that makers own."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from scantling.errors import nearest
from scantling.tables.csv_table import MM_PER_INCH, UnfitError, inches_mm, pick, rows

METRIC = re.compile(r"(?P<size>\d+(\.\d+)?)(mm)?")
FRACTION = re.compile(r"(?P<size>(\d+-)?\d+/\d+)(in|\")?")


@dataclass(frozen=True, order=True)
class Bit:
    """A drill bit; bits sort by diameter. series : "metric", "fraction", "number" or "letter"."""

    diameter_mm: float
    name: str
    series: str


@cache
def bit(name: str) -> Bit:
    """Return the bit that ``name`` means; a number without a unit is mm.

    Raises ``UnfitError`` (a ``LookUpError``) for what is no bit.

    >>> bit("17/64").diameter_mm, bit("#7").diameter_mm
    (6.746875, 5.1054)
    """
    text = re.sub(r"\s+", "", name)
    named = _named_bits()
    if text.upper() in named:
        return named[text.upper()]
    metric, fraction = METRIC.fullmatch(text), FRACTION.fullmatch(text)
    if metric and float(metric["size"]) > 0:
        return _metric(Fraction(metric["size"]))
    if fraction and not re.search(r"/0|(^|-)0+/", fraction["size"]):
        return Bit(inches_mm(fraction["size"]), fraction["size"], "fraction")
    mend = nearest(text.upper(), named) if text[:1] in ("#", *"ABCDEFGHIJKLMNOPQRSTUVWXYZ") else ""
    raise UnfitError(f"{name!r} is not the name of a drill bit", mend or "write 4.2 mm, 17/64, #7 or F")


def bit_set(name: str) -> tuple[Bit, ...]:
    """Return the bits of a set in ascending order; ``bit_sets`` lists the names.

    metric 0.5: 1 to 13 mm    metric 0.1: 1 to 10 mm    inch fraction: 1/16 to 1/2 in by 64ths
    inch number: #60 to #1    inch letter: A to Z
    """
    return pick("set of drill bits", name, _sets())


def bit_sets() -> tuple[str, ...]:
    """Return the names of all sets."""
    return tuple(_sets())


def nearest_bit(diameter_mm: float, bits: tuple[Bit, ...]) -> Bit:
    """Return the bit nearest in diameter, the smaller one of two equally near; ``ValueError`` where there is none."""
    if not bits:
        raise ValueError("there are no drill bits to choose from")
    return min(sorted(bits), key=lambda one: abs(one.diameter_mm - diameter_mm))


def smallest_bit_at_least(diameter_mm: float, bits: tuple[Bit, ...]) -> Bit | None:
    """Return the smallest bit that is not smaller than ``diameter_mm``; None where all are smaller."""
    return min((one for one in bits if one.diameter_mm >= diameter_mm - 1e-9), default=None)


@cache
def _named_bits() -> dict[str, Bit]:
    """Number and letter bits."""
    found = (Bit(inches_mm(row["diameter_in"]), row["bit"], row["series"]) for row in rows("inch_bits"))
    return {one.name: one for one in found}


def _metric(size_mm: Fraction) -> Bit:
    """A bit in mm, named as it is stamped."""
    return Bit(float(size_mm), f"{float(size_mm):g}", "metric")


def _fractions(first: int, last: int) -> tuple[Bit, ...]:
    """Bits by 64ths of an inch, both ends included."""
    sizes = [Fraction(n, 64) for n in range(first, last + 1)]
    return tuple(Bit(float(size * MM_PER_INCH), str(size), "fraction") for size in sizes)


@cache
def _sets() -> dict[str, tuple[Bit, ...]]:
    """All sets, each in ascending order."""
    named = _named_bits().values()
    return {
        "metric 0.5": tuple(_metric(Fraction(n, 2)) for n in range(2, 27)),
        "metric 0.1": tuple(_metric(Fraction(n, 10)) for n in range(10, 101)),
        "inch fraction": _fractions(4, 32),
        "inch number": tuple(sorted(one for one in named if one.series == "number")),
        "inch letter": tuple(sorted(one for one in named if one.series == "letter")),
    }
