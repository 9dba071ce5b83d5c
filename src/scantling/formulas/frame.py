"""Sway of a sheet frame: legs that bend out of the sheet's plane, portals that bend in it, joints that soften both.

The weak way of a portal cut from one sheet is out of its plane: below, gussets hold the legs; above, the crosspiece
ties the legs together but turns with them, for it resists turning only by its own weak twist. So each leg is a
cantilever from the gusset's top to the crosspiece, and the legs share the force evenly. What this leaves out makes the
real frame softer: bolted gussets turn a little (``joint_softening_ratio``; a wooden gusset with two or three screws has
about 1e6 to 1e7 N·mm/rad, from memory, which adds 6 to 60 % at 9 mm plywood), and the foot itself gives way.
"""

from __future__ import annotations

from scantling.formulas.beams import cantilever_sag_mm
from scantling.formulas.sections import rectangle_second_moment_mm4

# How much softer bolted wooden joints make a leg than the beam estimate says; from memory, no source found.
JOINT_SOFTENING_LOW_RATIO = 1.0
JOINT_SOFTENING_HIGH_RATIO = 1.6


def leg_sway_mm(
    force_n: float, free_mm: float, width_mm: float, thickness_mm: float, modulus_mpa: float, legs: int
) -> float:
    """Sway of the crosspiece out of the sheet's plane, beam estimate with stiff joints.

    force_n : force on the crosspiece across the sheet [N]
    free_mm : free height of a leg, from the gusset's top to the crosspiece [mm]
    width_mm : width of a leg in the sheet's plane [mm]
    thickness_mm : thickness of the sheet [mm]
    modulus_mpa : modulus of elasticity along the leg [MPa]
    legs : legs that share the force [-]

    Valid for: legs longer than five thicknesses, stiff foot; multiply by JOINT_SOFTENING_… for bolted wooden joints.
    Source: beam tables, cantilevers side by side, F L³ / (3 n E I) with I = b t³ / 12.

    >>> round(leg_sway_mm(10.0, 130.0, 60.0, 9.0, 7_000.0, 2), 3)
    0.144
    """
    second_moment_mm4 = rectangle_second_moment_mm4(width_mm, thickness_mm)
    return cantilever_sag_mm(force_n / legs, free_mm, modulus_mpa, second_moment_mm4)


def joint_softening_ratio(joint_nmm_rad: float, modulus_mpa: float, second_moment_mm4: float, free_mm: float) -> float:
    """Factor by which a joint that turns makes a cantilever softer.

    joint_nmm_rad : turning stiffness of the joint at the root [N mm/rad]
    modulus_mpa : modulus of elasticity [MPa]
    second_moment_mm4 : second moment of area [mm4]
    free_mm : free length [mm]

    Valid for: small angles, joint elastic.
    Source: beam and turning spring in series, 1 + 3 E I / (k L).

    >>> round(joint_softening_ratio(2e6, 7_000.0, 3645.0, 130.0), 2)
    1.29
    """
    return 1 + 3 * modulus_mpa * second_moment_mm4 / (joint_nmm_rad * free_mm)


def portal_sway_mm(
    force_n: float,
    height_mm: float,
    span_mm: float,
    leg_second_moment_mm4: float,
    beam_second_moment_mm4: float,
    modulus_mpa: float,
) -> float:
    """Sway of a portal in its own plane, feet fixed, force along the crosspiece.

    force_n : force at the crosspiece [N]
    height_mm : from the feet to the crosspiece's axis [mm]
    span_mm : between the legs' axes [mm]
    leg_second_moment_mm4 : second moment of area of one leg [mm4]
    beam_second_moment_mm4 : second moment of area of the crosspiece [mm4]
    modulus_mpa : modulus of elasticity [MPa]

    Valid for: slender members, stiff corners; shear left out (wide short legs sway more).
    Source: frame tables, F h³ / (12 E I) · (3 k + 2) / (6 k + 1), k = (I beam / span) / (I leg / height).

    >>> round(portal_sway_mm(10.0, 343.0, 340.0, 162000.0, 187535.0, 7_000.0), 4)
    0.0204
    """
    k_ratio = (beam_second_moment_mm4 / span_mm) / (leg_second_moment_mm4 / height_mm)
    free_sway_mm = force_n * height_mm**3 / (12 * modulus_mpa * leg_second_moment_mm4)
    return free_sway_mm * (3 * k_ratio + 2) / (6 * k_ratio + 1)
