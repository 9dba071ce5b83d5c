"""Rods whose ends are held by something that gives: between free supports and clamped ends, load anywhere.

The fixity of an end runs from 0, a support on which it turns freely, to 1, an end that cannot turn. Both ends alike.
"""

from __future__ import annotations

from scantling.formulas.beams import supported_sag_at_mm, supported_sag_mm


def fixity_ratio(turning_nmm_rad: float, span_mm: float, modulus_mpa: float, second_moment_mm4: float) -> float:
    """Fixity of a rod's end in a holder that gives: 0 turns freely, 1 cannot turn.

    turning_nmm_rad : how stiff the holder is against turning of the rod's end [N·mm/rad]
    span_mm : free length between the holders [mm]
    modulus_mpa : modulus of elasticity of the rod [MPa]
    second_moment_mm4 : its second moment of area [mm4]

    Valid for: small angles; a rod that is gripped without play.
    Source: end-fixity factor of beams with semi-rigid connections, 1 / (1 + 3 E I / (k L)) (Monforton and Wu 1963).

    >>> round(fixity_ratio(372_600.0, 332.0, 205_000.0, 201.0619), 3)
    0.5
    """
    if turning_nmm_rad <= 0:
        return 0.0
    return 1 / (1 + 3 * modulus_mpa * second_moment_mm4 / (turning_nmm_rad * span_mm))


def measured_fixity_ratio(
    sag_mm: float, force_n: float, span_mm: float, modulus_mpa: float, second_moment_mm4: float
) -> float:
    """Fixity of both ends of a rod from how far a push in its middle bends it.

    sag_mm : by how much the middle gives [mm]
    force_n : push in the middle [N]
    span_mm : free length between the holders [mm]
    modulus_mpa : modulus of elasticity [MPa]
    second_moment_mm4 : second moment of area [mm4]

    Valid for: both ends alike; between the sag on free supports and a quarter of it, beyond 0 or 1.
    Source: held_sag_at_mm in the middle, 1 - 9 r / (4 (2 + r)) of the sag on free supports, turned round.

    >>> round(measured_fixity_ratio(0.3558, 20.0, 400.0, 205_000.0, 201.0619), 2)
    0.5
    """
    less_ratio = 1 - sag_mm / supported_sag_mm(force_n, span_mm, modulus_mpa, second_moment_mm4)
    return min(1.0, max(0.0, 8 * less_ratio / (9 - 4 * less_ratio)))


def held_end_moments_nmm(
    force_n: float, load_at_mm: float, span_mm: float, end_fixity_ratio: float
) -> tuple[float, float]:
    """Moments with which the holders hold both ends of a rod against turning.

    force_n : load [N]
    load_at_mm : where it stands, from the first end [mm]
    span_mm : free length [mm]
    end_fixity_ratio : see fixity_ratio, the same at both ends [-]

    Valid for: loads between the ends.
    Source: slopes of a beam on two supports, taken back by end moments (slope-deflection); at fixity 1 the fixed-end
        moments F a b² / L² and F a² b / L².

    >>> held_end_moments_nmm(20.0, 100.0, 400.0, 1.0), held_end_moments_nmm(20.0, 100.0, 400.0, 0.0)
    ((1125.0, 375.0), (0.0, 0.0))
    """
    near_mm, far_mm, r = load_at_mm, span_mm - load_at_mm, end_fixity_ratio
    first, second = (force_n * near_mm * far_mm * (span_mm + rest_mm) / span_mm**2 for rest_mm in (far_mm, near_mm))
    return r * (2 * first - r * second) / (4 - r**2), r * (2 * second - r * first) / (4 - r**2)


def held_sag_at_mm(
    force_n: float,
    load_at_mm: float,
    seen_at_mm: float,
    span_mm: float,
    modulus_mpa: float,
    second_moment_mm4: float,
    end_fixity_ratio: float,
) -> float:
    """Sag anywhere of a rod whose holders give, load anywhere.

    force_n : load [N]
    load_at_mm : where the load stands, from one end [mm]
    seen_at_mm : where the sag is wanted, from the same end [mm]
    span_mm : free length between the holders [mm]
    modulus_mpa : modulus of elasticity [MPa]
    second_moment_mm4 : second moment of area [mm4]
    end_fixity_ratio : see fixity_ratio, the same at both ends [-]

    Valid for: both places between the ends; small slopes, no shear; fixity 0 is supported_sag_at_mm, 1 is
        clamped_sag_at_mm.
    Source: beam tables, a load and two end moments superposed.

    >>> [round(held_sag_at_mm(20.0, 200.0, 200.0, 400.0, 205_000.0, 201.0619, r), 4) for r in (0.0, 0.5, 1.0)]
    [0.647, 0.3558, 0.1617]
    """
    supported_mm = supported_sag_at_mm(force_n, load_at_mm, seen_at_mm, span_mm, modulus_mpa, second_moment_mm4)
    if end_fixity_ratio == 0:
        return supported_mm
    first_nmm, second_nmm = held_end_moments_nmm(force_n, load_at_mm, span_mm, end_fixity_ratio)
    x_mm, rest_mm = seen_at_mm, span_mm - seen_at_mm
    lifted_nmm3 = x_mm * rest_mm * (first_nmm * (span_mm + rest_mm) + second_nmm * (span_mm + x_mm))
    return supported_mm - lifted_nmm3 / (6 * span_mm * modulus_mpa * second_moment_mm4)


def held_slope_at_rad(
    force_n: float,
    load_at_mm: float,
    seen_at_mm: float,
    span_mm: float,
    modulus_mpa: float,
    second_moment_mm4: float,
    end_fixity_ratio: float,
) -> float:
    """Slope anywhere of a rod whose holders give, load anywhere; positive where the sag grows from the first end.

    force_n : load [N]
    load_at_mm : where the load stands, from one end [mm]
    seen_at_mm : where the slope is wanted, from the same end [mm]
    span_mm : free length between the holders [mm]
    modulus_mpa : modulus of elasticity [MPa]
    second_moment_mm4 : second moment of area [mm4]
    end_fixity_ratio : see fixity_ratio, the same at both ends [-]

    Valid for: as held_sag_at_mm, whose derivative it is.
    Source: beam tables, a load and two end moments superposed.

    >>> round(held_slope_at_rad(20.0, 200.0, 0.0, 400.0, 205_000.0, 201.0619, 0.0), 5)
    0.00485
    """
    if seen_at_mm > load_at_mm:
        mirrored_mm = span_mm - load_at_mm, span_mm - seen_at_mm
        return -held_slope_at_rad(force_n, *mirrored_mm, span_mm, modulus_mpa, second_moment_mm4, end_fixity_ratio)
    x_mm, far_mm = seen_at_mm, span_mm - load_at_mm
    first_nmm, second_nmm = held_end_moments_nmm(force_n, load_at_mm, span_mm, end_fixity_ratio)
    by_load_nmm2 = force_n * far_mm * (span_mm**2 - far_mm**2 - 3 * x_mm**2)
    by_first_nmm2 = first_nmm * (2 * span_mm**2 - 6 * span_mm * x_mm + 3 * x_mm**2)
    by_second_nmm2 = second_nmm * (span_mm**2 - 3 * x_mm**2)
    bends_nmm2 = by_load_nmm2 - by_first_nmm2 - by_second_nmm2
    return bends_nmm2 / (6 * span_mm * modulus_mpa * second_moment_mm4)


def held_stiffness_n_mm(
    at_mm: float, span_mm: float, modulus_mpa: float, second_moment_mm4: float, end_fixity_ratio: float
) -> float:
    """Force that bends a rod by a millimetre where it acts [N/mm].

    at_mm : where it acts, from one end [mm]
    span_mm : free length between the holders [mm]
    modulus_mpa : modulus of elasticity [MPa]
    second_moment_mm4 : second moment of area [mm4]
    end_fixity_ratio : see fixity_ratio, the same at both ends [-]

    Valid for: places between the ends.
    Source: held_sag_at_mm under a unit load; in the middle 48 E I / L³ up to 192 E I / L³.

    >>> round(held_stiffness_n_mm(200.0, 400.0, 205_000.0, 201.0619, 0.0), 1)
    30.9
    """
    return 1 / held_sag_at_mm(1.0, at_mm, at_mm, span_mm, modulus_mpa, second_moment_mm4, end_fixity_ratio)
