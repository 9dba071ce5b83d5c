"""Columns: the load at which a screw or a rod under pressure bows out."""

from __future__ import annotations

from math import pi, sqrt

# End conditions: C in P = C π² E I / L².
FREE_FIXED_RATIO = 0.25
PINNED_PINNED_RATIO = 1.0
PINNED_FIXED_RATIO = 2.0
FIXED_FIXED_RATIO = 4.0
# A share of the computed load that is customarily not passed (a screw maker's training page).
PERMITTED_RATIO = 0.8


def euler_force_n(modulus_mpa: float, second_moment_mm4: float, length_mm: float, ends_ratio: float) -> float:
    """Load at which a slender column bows out.

    modulus_mpa : modulus of elasticity [MPa]
    second_moment_mm4 : smallest second moment of area [mm4]
    length_mm : length between the ends [mm]
    ends_ratio : 1/4 free and fixed, 1 pinned, 2 pinned and fixed, 4 fixed [-]

    Valid for: slenderness above switch_slenderness_ratio.
    Source: Euler, C π² E I / L².

    >>> round(euler_force_n(207_000.0, 5968.3, 1500.0, 1.0))
    5419
    """
    return ends_ratio * pi**2 * modulus_mpa * second_moment_mm4 / length_mm**2


def slenderness_ratio(area_mm2: float, second_moment_mm4: float, length_mm: float) -> float:
    """Length over radius of gyration.

    area_mm2 : cross-section [mm2]
    second_moment_mm4 : smallest second moment of area [mm4]
    length_mm : length between the ends [mm]

    Valid for: straight columns of one section.
    Source: definition, L / √(I / A).

    >>> round(slenderness_ratio(160.22, 5968.3, 1500.0), 1)
    245.8
    """
    return length_mm / sqrt(second_moment_mm4 / area_mm2)


def switch_slenderness_ratio(modulus_mpa: float, yield_mpa: float, ends_ratio: float) -> float:
    """Slenderness at which Euler's and Johnson's formula give the same load, half the yield load.

    modulus_mpa : modulus of elasticity [MPa]
    yield_mpa : yield strength [MPa]
    ends_ratio : 1/4 free and fixed, 1 pinned, 2 pinned and fixed, 4 fixed [-]

    Valid for: steel and other metals with a clear yield.
    Source: textbook of machine design, columns, √(2 π² C E / Sy).

    >>> round(switch_slenderness_ratio(207_000.0, 300.0, 1.0), 1)
    116.7
    """
    return sqrt(2 * pi**2 * ends_ratio * modulus_mpa / yield_mpa)


def johnson_force_n(
    modulus_mpa: float, yield_mpa: float, area_mm2: float, slender_ratio: float, ends_ratio: float
) -> float:
    """Load at which a stocky column yields and bows out.

    modulus_mpa : modulus of elasticity [MPa]
    yield_mpa : yield strength [MPa]
    area_mm2 : cross-section [mm2]
    slender_ratio : length over radius of gyration [-]
    ends_ratio : 1/4 free and fixed, 1 pinned, 2 pinned and fixed, 4 fixed [-]

    Valid for: slenderness below switch_slenderness_ratio.
    Source: textbook of machine design, columns, A (Sy - (Sy s / 2π)² / (C E)); one copy misprints 2π² for 4π².

    >>> round(johnson_force_n(207_000.0, 300.0, 160.22, 50.0, 1.0))
    43655
    """
    return area_mm2 * (yield_mpa - (yield_mpa * slender_ratio / (2 * pi)) ** 2 / (ends_ratio * modulus_mpa))


def buckling_force_n(
    modulus_mpa: float,
    yield_mpa: float,
    area_mm2: float,
    second_moment_mm4: float,
    length_mm: float,
    ends_ratio: float,
) -> float:
    """Load at which a column of any length fails; Johnson's formula below the switch, Euler's above.

    modulus_mpa : modulus of elasticity [MPa]
    yield_mpa : yield strength [MPa]
    area_mm2 : cross-section [mm2]
    second_moment_mm4 : smallest second moment of area [mm4]
    length_mm : length between the ends [mm]
    ends_ratio : 1/4 free and fixed, 1 pinned, 2 pinned and fixed, 4 fixed [-]

    Valid for: straight, centrally loaded columns; use PERMITTED_RATIO of it at most.
    Source: textbook of machine design, columns.

    >>> round(buckling_force_n(207_000.0, 300.0, 160.22, 5968.3, 1500.0, 4.0))
    21677
    """
    slender_ratio = slenderness_ratio(area_mm2, second_moment_mm4, length_mm)
    if slender_ratio < switch_slenderness_ratio(modulus_mpa, yield_mpa, ends_ratio):
        return johnson_force_n(modulus_mpa, yield_mpa, area_mm2, slender_ratio, ends_ratio)
    return euler_force_n(modulus_mpa, second_moment_mm4, length_mm, ends_ratio)
