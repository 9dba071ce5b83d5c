"""Holders and seats that give: what grips a rod's end or a bushing, as a bed of springs along the gripped length."""

from __future__ import annotations


def bedding_mpa(
    holder_mpa: float, holder_poisson_ratio: float, diameter_mm: float, held_mpa: float, second_moment_mm4: float
) -> float:
    """Force per length with which a solid holder resists each millimetre that a round bar is pressed into it.

    holder_mpa : modulus of elasticity of the holder [MPa]
    holder_poisson_ratio : its Poisson's ratio [-]
    diameter_mm : diameter of the bar [mm]
    held_mpa : modulus of elasticity of the bar [MPa]
    second_moment_mm4 : second moment of area of the bar [mm4]

    Valid for: a bar on a body much thicker than itself; thin walls and clips resist with a part of it.
    Source: beam on an elastic body, 0.65 E / (1 - ν²) · (E d⁴ / (E_b I))^(1/12) (Vesic 1961).

    >>> round(bedding_mpa(2000.0, 0.38, 8.0, 205_000.0, 201.0619))
    1328
    """
    bending_ratio = holder_mpa * diameter_mm**4 / (held_mpa * second_moment_mm4)
    return float(0.65 * holder_mpa / (1 - holder_poisson_ratio**2) * bending_ratio ** (1 / 12))


def gripped_turning_nmm_rad(
    foundation_mpa: float, gripped_mm: float, held_mpa: float, second_moment_mm4: float
) -> float:
    """How stiff a holder is against turning of what it grips.

    foundation_mpa : see bedding_mpa, times the share that its walls give [MPa]
    gripped_mm : length that is gripped without play [mm]
    held_mpa : modulus of elasticity of the held bar [MPa]
    second_moment_mm4 : its second moment of area [mm4]

    Valid for: a short stub, k s³ / 12 as if rigid; a long one no stiffer than a bar held without end.
    Source: rigid body on springs; beam on an elastic foundation, k / (4 λ³) with λ⁴ = k / (4 E I) (Hetényi).

    >>> round(gripped_turning_nmm_rad(1328.0, 15.0, 205_000.0, 201.0619))
    373500
    """
    short_nmm_rad = foundation_mpa * gripped_mm**3 / 12
    decay_per_mm = (foundation_mpa / (4 * held_mpa * second_moment_mm4)) ** 0.25
    return min(short_nmm_rad, foundation_mpa / (4 * decay_per_mm**3)) if foundation_mpa > 0 else 0.0
