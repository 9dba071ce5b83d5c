"""Fits: the play between a hole and a shaft from their limits; negative play is interference."""

from __future__ import annotations

from math import hypot


def least_play_um(hole_lower_um: float, shaft_upper_um: float) -> float:
    """Smallest play that the limits allow.

    hole_lower_um : lower deviation of the hole [um]
    shaft_upper_um : upper deviation of the shaft [um]

    Valid for: one nominal size; put both on it first where it differs.
    Source: ISO 286-1.

    >>> least_play_um(0.0, -5.0)
    5.0
    """
    return hole_lower_um - shaft_upper_um


def greatest_play_um(hole_upper_um: float, shaft_lower_um: float) -> float:
    """Greatest play that the limits allow.

    hole_upper_um : upper deviation of the hole [um]
    shaft_lower_um : lower deviation of the shaft [um]

    Valid for: one nominal size.
    Source: ISO 286-1.

    >>> greatest_play_um(15.0, -14.0)
    29.0
    """
    return hole_upper_um - shaft_lower_um


def middle_play_um(least_um: float, greatest_um: float) -> float:
    """Play to be expected.

    least_um : smallest play [um]
    greatest_um : greatest play [um]

    Valid for: sizes made to the middle of their limits; a beginner's holes lie high.
    Source: mean of the limits.

    >>> middle_play_um(5.0, 29.0)
    17.0
    """
    return (least_um + greatest_um) / 2


def probable_half_range_um(hole_width_um: float, shaft_width_um: float) -> float:
    """How far the play of nearly all pairs (99.7 %) lies from the middle play.

    hole_width_um : tolerance of the hole [um]
    shaft_width_um : tolerance of the shaft [um]

    Valid for: both sizes normally spread, three standard deviations at their limits.
    Source: root of the sum of squares.

    >>> round(probable_half_range_um(15.0, 9.0), 2)
    8.75
    """
    return hypot(hole_width_um, shaft_width_um) / 2


def mismatch_um(hole_mm: float, shaft_mm: float) -> float:
    """Play between two nominal sizes, before any tolerance: 62 µm for a 5/16 in shaft in an 8 mm bushing.

    hole_mm : nominal size of the hole [mm]
    shaft_mm : nominal size of the shaft [mm]

    Valid for: always.
    Source: definition.

    >>> round(mismatch_um(8.0, 7.9375), 1)
    62.5
    """
    return 1000 * (hole_mm - shaft_mm)
