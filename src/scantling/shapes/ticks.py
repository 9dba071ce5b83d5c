"""Lengths as whole tenths of a micrometre, rounded to the safe side, so that no panel comes out short."""

from __future__ import annotations

from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal

_TICKS_PER_MM = 10_000


def ticks_up(length_mm: float) -> int:
    """Return a length in tenths of a micrometre, rounded up."""
    return int(_ticks(length_mm).to_integral_value(ROUND_CEILING))


def ticks_down(length_mm: float) -> int:
    """Return a length in tenths of a micrometre, rounded down."""
    return int(_ticks(length_mm).to_integral_value(ROUND_FLOOR))


def _ticks(length_mm: float) -> Decimal:
    """In decimal, to a tenth of a nanometre: 3/8 in is 9.525 mm, not the 9.524999999999999 of floating point."""
    return Decimal(repr(round(float(length_mm), 7))) * _TICKS_PER_MM
