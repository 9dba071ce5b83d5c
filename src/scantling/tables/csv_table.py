"""Reads the CSV files beside this module; every look-up goes through here, once per process and table."""

from __future__ import annotations

import csv
import io
from collections.abc import Mapping
from fractions import Fraction
from functools import cache
from typing import TypeVar

from scantling.errors import LookUpError

Row = Mapping[str, str]
Value = TypeVar("Value")
MM_PER_INCH = Fraction(254, 10)


class UnfitError(LookUpError):
    """A name that reads well but names nothing that exists; unlike its parent it says in words what would mend it."""

    def __init__(self, what: str, mend: str) -> None:
        """Keep both sentences apart, so that a reader can add the place."""
        self.what = what
        self.mend = mend
        Exception.__init__(self, f"{what} - {mend}")


@cache
def rows(name: str) -> tuple[Row, ...]:
    """Return the rows of the table ``name`` (its file name without ``.csv``); lines that begin with # are remarks."""
    from importlib.resources import files  # a third of the import time of this room, so only where a table is read

    text = (files("scantling.tables") / "data" / f"{name}.csv").read_text(encoding="utf-8")
    lines = [line for line in text.splitlines() if line and not line.startswith("#")]
    return tuple(csv.DictReader(io.StringIO("\n".join(lines))))


def pick(kind: str, name: str, table: Mapping[str, Value]) -> Value:
    """Return ``table[name]``; raise ``LookUpError`` with the nearest names where it is not there."""
    if name not in table:
        raise LookUpError(kind, name, sorted(table))
    return table[name]


def number(cell: str) -> float | None:
    """Return the number in a cell, ``None`` where it is empty."""
    return float(cell) if cell else None


def inches_mm(text: str) -> float:
    """Return mm for inches written as ``0.25``, ``1/4`` or ``1-1/4``.

    >>> inches_mm("1-1/4")
    31.75
    """
    whole, _, rest = text.partition("-")
    return float((Fraction(whole) + (Fraction(rest) if rest else 0)) * MM_PER_INCH)
