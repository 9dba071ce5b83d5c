"""Areas and second moments of area of bars."""

from __future__ import annotations

from math import pi


def round_area_mm2(diameter_mm: float) -> float:
    """Cross-section of a round bar.

    diameter_mm : diameter [mm]

    Valid for: solid bars.
    Source: geometry.

    >>> round(round_area_mm2(8.0), 3)
    50.265
    """
    return pi / 4 * diameter_mm**2


def round_second_moment_mm4(diameter_mm: float) -> float:
    """Second moment of area of a round bar.

    diameter_mm : diameter [mm]

    Valid for: solid bars; for a screw take the root diameter.
    Source: geometry, π d⁴ / 64.

    >>> round(round_second_moment_mm4(8.0), 2)
    201.06
    """
    return pi / 64 * diameter_mm**4


def tube_second_moment_mm4(outer_mm: float, inner_mm: float) -> float:
    """Second moment of area of a round tube.

    outer_mm : outer diameter [mm]
    inner_mm : inner diameter [mm]

    Valid for: inner_mm below outer_mm.
    Source: geometry, π (D⁴ - d⁴) / 64.

    >>> round(tube_second_moment_mm4(20.0, 14.0), 1)
    5968.2
    """
    return pi / 64 * (outer_mm**4 - inner_mm**4)


def rectangle_second_moment_mm4(width_mm: float, height_mm: float) -> float:
    """Second moment of area of a rectangle that bends along its height.

    width_mm : side across the bending [mm]
    height_mm : side along the bending: the sheet's thickness where a sheet bends out of its plane [mm]

    Valid for: rectangles.
    Source: geometry, b h³ / 12.

    >>> rectangle_second_moment_mm4(60.0, 9.0)
    3645.0
    """
    return width_mm * height_mm**3 / 12


def rectangle_torsion_mm4(width_mm: float, height_mm: float) -> float:
    """Torsion constant of a solid rectangle.

    width_mm : one side [mm]
    height_mm : the other side [mm]

    Valid for: solid rectangles; within 4 % of the exact series.
    Source: Roark, a b³ (1/3 - 0.21 b/a (1 - b⁴/(12 a⁴))) with a the longer side.

    >>> round(rectangle_torsion_mm4(20.0, 20.0))
    22533
    """
    short_mm, long_mm = sorted((width_mm, height_mm))
    slim_ratio = short_mm / long_mm
    return long_mm * short_mm**3 * (1 / 3 - 0.21 * slim_ratio * (1 - slim_ratio**4 / 12))


def box_torsion_mm4(width_mm: float, height_mm: float, wall_mm: float) -> float:
    """Torsion constant of a rectangular tube.

    width_mm : outer width [mm]
    height_mm : outer height [mm]
    wall_mm : of the tube [mm]

    Valid for: walls thin against the sides.
    Source: Bredt, 4 A² t / s with the area and the length of the wall's middle line.

    >>> round(box_torsion_mm4(20.0, 20.0, 2.0))
    11664
    """
    across_mm, up_mm = width_mm - wall_mm, height_mm - wall_mm
    return 4 * (across_mm * up_mm) ** 2 * wall_mm / (2 * (across_mm + up_mm))
