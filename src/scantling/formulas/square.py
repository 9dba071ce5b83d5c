"""Squareness from the diagonals of a four-sided figure."""

from __future__ import annotations

from math import asin, hypot, sqrt, tan


def skew_rad(diagonal_mm: float, other_diagonal_mm: float, side_mm: float, other_side_mm: float) -> float:
    """Angle by which a parallelogram differs from a rectangle; positive where the first diagonal is longer.

    diagonal_mm : one diagonal [mm]
    other_diagonal_mm : the other [mm]
    side_mm : one side [mm]
    other_side_mm : the next side [mm]

    Valid for: opposite sides equal.
    Source: law of cosines, sin γ = (d1² - d2²) / (4 a b).

    >>> round(skew_rad(500.41902, 499.58126, 400.0, 300.0), 6)
    0.001745
    """
    return asin((diagonal_mm**2 - other_diagonal_mm**2) / (4 * side_mm * other_side_mm))


def diagonal_difference_mm(skew_rad: float, side_mm: float, other_side_mm: float) -> float:
    """Difference of the diagonals that a skew makes: what to measure.

    skew_rad : angle from square [rad]
    side_mm : one side [mm]
    other_side_mm : the next side [mm]

    Valid for: small angles.
    Source: γ ≈ (d1 - d2) √(a² + b²) / (2 a b).

    >>> round(diagonal_difference_mm(0.00174533, 400.0, 300.0), 5)
    0.83776
    """
    return skew_rad * 2 * side_mm * other_side_mm / hypot(side_mm, other_side_mm)


def skew_uncertainty_rad(reading_mm: float, side_mm: float, other_side_mm: float) -> float:
    """How uncertain a skew is that comes from two measured diagonals.

    reading_mm : uncertainty of one reading [mm]
    side_mm : one side [mm]
    other_side_mm : the next side [mm]

    Valid for: small angles, independent readings.
    Source: √2 readings through diagonal_difference_mm.

    >>> round(skew_uncertainty_rad(0.03, 100.0, 100.0), 5)
    0.0003
    """
    return reading_mm * sqrt(2) * hypot(side_mm, other_side_mm) / (2 * side_mm * other_side_mm)


def tan_skew_from_three_lengths_ratio(diagonal_mm: float, other_diagonal_mm: float, side_mm: float) -> float:
    """Tangent of the skew from both diagonals and one side of a printed or scribed figure.

    diagonal_mm : one diagonal, AC [mm]
    other_diagonal_mm : the other, BD [mm]
    side_mm : one side, AD [mm]

    Valid for: opposite sides equal.
    Source: law of cosines; the other side is √(2 AC² + 2 BD² - 4 AD²) / 2.

    >>> round(tan_skew_from_three_lengths_ratio(141.6, 141.2, 100.0), 6)
    0.002829
    """
    other_side_mm = sqrt(2 * diagonal_mm**2 + 2 * other_diagonal_mm**2 - 4 * side_mm**2) / 2
    return tan(skew_rad(diagonal_mm, other_diagonal_mm, side_mm, other_side_mm))


def move_to_square_mm(skew_rad: float, length_mm: float) -> float:
    """How far the end of a side must be moved to make the figure square.

    skew_rad : angle from square [rad]
    length_mm : length of the side, from its pivot to the screw that is loosened [mm]

    Valid for: small angles.
    Source: geometry, length · tan γ.

    >>> round(move_to_square_mm(0.0035, 300.0), 2)
    1.05
    """
    return length_mm * tan(skew_rad)
