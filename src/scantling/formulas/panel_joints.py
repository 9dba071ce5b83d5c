"""How stiff a screw through a panel holds: across its axis, along it, and against turning about its washer.

A joint's stiffness is known to a factor of two at best: slip moduli scatter, holes have play, a block of plastic gives
too. The band below is meant to hold all of that; it is narrowed by a push on the frame that is built.
"""

from __future__ import annotations

from math import pi


def slip_modulus_n_mm(density_kg_m3: float, diameter_mm: float) -> float:
    """Stiffness of one screw or bolt across its axis, in wood and wood-based panels.

    density_kg_m3 : mean density of the panel [kg/m3]
    diameter_mm : of the screw [mm]

    Valid for: working loads, one shear plane, wood to wood; twice that where the other side is steel.
    Source: EN 1995-1-1 table 7.1, ρ^1.5 d / 23 for bolts, dowels and screws (formula from memory).

    >>> round(slip_modulus_n_mm(680.0, 4.0))
    3084
    """
    return float(density_kg_m3**1.5) * diameter_mm / 23


def clamp_stiffness_n_mm(through_mpa: float, washer_mm: float, thickness_mm: float) -> float:
    """Stiffness along a screw of the panel that its washer presses.

    through_mpa : modulus through the panel's thickness [MPa]
    washer_mm : outer diameter of washer or head [mm]
    thickness_mm : of the panel [mm]

    Valid for: screws that stay clamped; the screw itself is far stiffer.
    Source: pressure spreads at 45 degrees from both faces to the middle, mean width washer + t/2: E π D² / (4 t).

    >>> round(clamp_stiffness_n_mm(370.0, 9.0, 9.0))
    5885
    """
    width_mm = washer_mm + thickness_mm / 2
    return through_mpa * pi * width_mm**2 / (4 * thickness_mm)


def clamp_turning_nmm_rad(clamp_n_mm: float, washer_mm: float, thickness_mm: float) -> float:
    """Stiffness of a clamped panel against turning about its washer.

    clamp_n_mm : see clamp_stiffness_n_mm [N/mm]
    washer_mm : outer diameter of washer or head [mm]
    thickness_mm : of the panel [mm]

    Valid for: screws that stay clamped all round.
    Source: a round bed of even stiffness, k D² / 16 with D as in clamp_stiffness_n_mm.

    >>> round(clamp_turning_nmm_rad(5885.0, 9.0, 9.0))
    67034
    """
    return clamp_n_mm * (washer_mm + thickness_mm / 2) ** 2 / 16
