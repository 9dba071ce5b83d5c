"""Drill bits of a workshop, and which of them makes a hole best."""

from __future__ import annotations

from functools import cache

from scantling.errors import LookUpError
from scantling.model.workshop import Workshop
from scantling.tables.bits import Bit, bit, bit_set, bit_sets, nearest_bit

PILOT_MM = 2.0  # for all but small holes; workshop practice
LEAST_PILOT_MM, MOST_PILOT_MM = 1.0, 3.0
STEPPED_FROM_MM = 7.0  # larger holes are opened in two steps; workshop practice
ROUNDING_MM = 1e-6  # of binary fractions only


def bits_at_hand(workshop: Workshop) -> tuple[Bit, ...]:
    """Return the bits of a workshop, by diameter; what is no bit and no set of bits is left out."""
    return _bits(workshop.bits)


def best_bit(wanted_mm: float, least_mm: float, most_mm: float | None, bits: tuple[Bit, ...]) -> Bit | None:
    """Return the bit nearest to ``wanted_mm`` within the limits, the smaller of two; None where there is none."""
    fitting = [
        one
        for one in bits
        if one.diameter_mm >= least_mm - ROUNDING_MM and (most_mm is None or one.diameter_mm <= most_mm + ROUNDING_MM)
    ]
    return nearest_bit(wanted_mm, tuple(fitting)) if fitting else None


def drilling_steps(final: Bit, bits: tuple[Bit, ...]) -> tuple[str, ...]:
    """Return the bits to take one after the other, the final one last: a pilot, for large holes one between."""
    pilots = [b for b in bits if LEAST_PILOT_MM <= b.diameter_mm <= min(MOST_PILOT_MM, final.diameter_mm - 0.5)]
    steps = [nearest_bit(PILOT_MM, tuple(pilots))] if pilots else []
    if final.diameter_mm >= STEPPED_FROM_MM:
        smallest_mm = (steps[0].diameter_mm if steps else 0.0) + 1
        between = [b for b in bits if smallest_mm <= b.diameter_mm <= final.diameter_mm - 1]
        steps += [nearest_bit(0.55 * final.diameter_mm, tuple(between))] if between else []
    return tuple(one.name for one in [*steps, final])


@cache
def _bits(names: tuple[str, ...]) -> tuple[Bit, ...]:
    found: dict[float, Bit] = {}
    for name in names:
        for one in _named(name):
            found.setdefault(one.diameter_mm, one)
    return tuple(found[diameter_mm] for diameter_mm in sorted(found))


def _named(name: str) -> tuple[Bit, ...]:
    if name in bit_sets():
        return bit_set(name)
    try:
        return (bit(name),)
    except LookUpError:
        return ()
