"""Limits of size after ISO 286: ``limits_um(8, "g6")`` is (-14, -5)."""

from __future__ import annotations

import re
from functools import cache

from scantling.errors import nearest
from scantling.tables.csv_table import Row, UnfitError, rows

LARGEST_MM = 50.0
SHAFTS = ("d", "e", "f", "g", "h", "js", "k", "m", "n", "p", "r", "s")
HOLES = tuple(zone.upper() for zone in SHAFTS)
GRADES = tuple(range(3, 15))
ZONE = re.compile(r"(?P<letters>[A-Za-z]{1,2})(?P<grade>\d{1,2})")


@cache
def limits_um(size_mm: float, zone: str) -> tuple[float, float]:
    """Return (lower, upper) deviation in µm of a hole (capital letter) or a shaft (small letter).

    Sizes up to 50 mm, zones D to S and d to s, grades 3 to 14; a limit of a size range belongs to the smaller range.
    Raises ``UnfitError`` (a ``LookUpError``) outside of these.

    >>> limits_um(10, "H7"), limits_um(8, "g6")
    ((0.0, 15.0), (-14.0, -5.0))
    """
    match = ZONE.fullmatch(zone.strip())
    letters, grade = (match["letters"], int(match["grade"])) if match else ("", 0)
    if letters not in SHAFTS + HOLES:
        known = [f"{letter}{number}" for letter in SHAFTS + HOLES for number in (6, 7, 8)]
        raise UnfitError(f"no tolerance zone {zone!r} is in the table", nearest(zone, known))
    if grade not in GRADES:
        raise UnfitError(f"no tolerance grade {grade} is in the table", f"grades {GRADES[0]} to {GRADES[-1]} are")
    if not 0 < size_mm <= LARGEST_MM:
        raise UnfitError(f"no limits for a size of {size_mm:g} mm", f"the table holds sizes up to {LARGEST_MM:g} mm")
    if letters.islower():
        return _shaft(size_mm, letters, grade)
    return _hole(size_mm, letters.lower(), grade)


def tolerance_um(size_mm: float, grade: int) -> float:
    """Return the width of a zone, the standard tolerance IT of this grade, in µm."""
    lower, upper = limits_um(size_mm, f"h{grade}")
    return upper - lower


def _width(size_mm: float, grade: int) -> float:
    """The standard tolerance of a grade known to be in the table."""
    return float(_row("it_grades", size_mm)[f"it{grade}_um"])


def _shaft(size_mm: float, letter: str, grade: int) -> tuple[float, float]:
    """Limits of a shaft from its fundamental deviation and its width."""
    width = _width(size_mm, grade)
    if letter == "js":
        return -width / 2, width / 2
    deviation = _deviation(size_mm, letter, grade)
    return (deviation - width, deviation) if letter <= "h" else (deviation, deviation + width)


def _hole(size_mm: float, letter: str, grade: int) -> tuple[float, float]:
    """Limits of a hole: the shaft's deviation mirrored, shifted by Δ where the standard says so (K to S)."""
    width = _width(size_mm, grade)
    if letter == "js":
        return -width / 2, width / 2
    if letter <= "h":
        lower = 0.0 - _deviation(size_mm, letter, grade)  # never the minus zero
        return lower, lower + width
    upper = -_row_deviation(size_mm, letter) + _delta(size_mm, letter, grade)
    if grade > 8 and (letter == "k" or (letter == "n" and size_mm > 3)):
        upper = 0.0
    return upper - width, upper


def _deviation(size_mm: float, letter: str, grade: int) -> float:
    """The fundamental deviation of a shaft; k is zero outside grades 4 to 7."""
    if letter == "k" and not 4 <= grade <= 7:
        return 0.0
    return _row_deviation(size_mm, letter)


def _delta(size_mm: float, letter: str, grade: int) -> float:
    """Δ = IT(n) − IT(n−1): for K, M, N up to grade 8 and P to S up to grade 7, over 3 mm only."""
    last = 8 if letter in ("k", "m", "n") else 7
    if size_mm <= 3 or grade > last or grade <= GRADES[0]:
        return 0.0
    return _width(size_mm, grade) - _width(size_mm, grade - 1)


def _row_deviation(size_mm: float, letter: str) -> float:
    """The table's deviation of a shaft."""
    return float(_row("shaft_deviations", size_mm)[f"{letter}_um"])


def _row(table: str, size_mm: float) -> Row:
    """The row of the size range that holds ``size_mm``."""
    return next(row for row in rows(table) if float(row["size_from_mm"]) < size_mm <= float(row["size_to_mm"]))
