"""Pressure where a ball touches a shaft or a plane, and what steel stands.

Curvatures are 1/radius: positive outward, negative for the hollow side of a track. The exact solution needs the
complete elliptic integrals; they are found by the arithmetic-geometric mean, the shape of the ellipse by halving.
"""

from __future__ import annotations

from math import exp, log, pi, sqrt

# Hardness of steel, Rockwell C and Vickers, as seen in two published tables after ASTM E140.
VICKERS_POINTS = (
    (20.0, 238.0),
    (25.0, 266.0),
    (30.0, 302.0),
    (35.0, 345.0),
    (40.0, 392.0),
    (45.0, 446.0),
    (50.0, 513.0),
    (55.0, 595.0),
    (58.0, 653.0),
    (60.0, 697.0),
    (62.0, 746.0),
    (65.0, 832.0),
)


def contact_modulus_mpa(
    modulus_mpa: float, poisson_ratio: float, other_modulus_mpa: float, other_poisson_ratio: float
) -> float:
    """Modulus of two bodies in contact, E* with 1/E* = (1 - ν1²)/E1 + (1 - ν2²)/E2.

    modulus_mpa : modulus of elasticity of one body [MPa]
    poisson_ratio : its Poisson's ratio [-]
    other_modulus_mpa : modulus of elasticity of the other [MPa]
    other_poisson_ratio : its Poisson's ratio [-]

    Valid for: elastic, even materials.
    Source: Hertz.

    >>> round(contact_modulus_mpa(205_000.0, 0.3, 205_000.0, 0.3))
    112637
    """
    return 1 / ((1 - poisson_ratio**2) / modulus_mpa + (1 - other_poisson_ratio**2) / other_modulus_mpa)


def sphere_on_plane_pressure_mpa(force_n: float, radius_mm: float, contact_mpa: float) -> float:
    """Greatest pressure under a sphere on a plane.

    force_n : load [N]
    radius_mm : radius of the sphere [mm]
    contact_mpa : modulus of the pair, see contact_modulus_mpa [MPa]

    Valid for: elastic contact, much smaller than the sphere.
    Source: Hertz, (6 F E*² / (π³ R²))^(1/3).

    >>> round(sphere_on_plane_pressure_mpa(1.0, 0.6, 112_637.0))
    1896
    """
    return float((6 * force_n * contact_mpa**2 / (pi**3 * radius_mm**2)) ** (1 / 3))


def ellipse_ratio(small_curvature_per_mm: float, large_curvature_per_mm: float) -> float:
    """Long over short axis of the touching ellipse, exact.

    small_curvature_per_mm : sum of both bodies' curvatures in the plane where it is smaller [1/mm]
    large_curvature_per_mm : the same in the other plane [1/mm]

    Valid for: 0 < small_curvature_per_mm up to large_curvature_per_mm; else ValueError.
    Source: Hertz, ((a/b)² E - K) / (K - E) = large / small, solved by halving.

    >>> ellipse_ratio(1.0, 1.0)
    1.0
    """
    if not 0 < small_curvature_per_mm <= large_curvature_per_mm:
        raise ValueError("curvatures must be positive and the first the smaller: else the bodies touch along a line")
    wanted_ratio = large_curvature_per_mm / small_curvature_per_mm
    if wanted_ratio < 1 + 1e-9:
        return 1.0
    low, high = 0.0, log(wanted_ratio)
    for _ in range(100):
        middle = (low + high) / 2
        if _curvature_ratio(middle) < wanted_ratio:
            low = middle
        else:
            high = middle
    return exp((low + high) / 2)


def approximate_ellipse_ratio(small_curvature_per_mm: float, large_curvature_per_mm: float) -> float:
    """Long over short axis of the touching ellipse by a short formula.

    small_curvature_per_mm : sum of both bodies' curvatures in the plane where it is smaller [1/mm]
    large_curvature_per_mm : the same in the other plane [1/mm]

    Valid for: ratios of curvature from 1 to 50, within 3.5 % of the exact one; 6 % too large at 100.
    Source: curve fit of a lubrication textbook, 1.0339 · (large / small)^0.636.

    >>> round(approximate_ellipse_ratio(1.0, 2.0), 3)
    1.607
    """
    return float(1.0339 * (large_curvature_per_mm / small_curvature_per_mm) ** 0.636)


def point_contact_pressure_mpa(
    force_n: float, small_curvature_per_mm: float, large_curvature_per_mm: float, contact_mpa: float
) -> float:
    """Greatest pressure in an elliptical contact, exact.

    force_n : load [N]
    small_curvature_per_mm : sum of both bodies' curvatures in the plane where it is smaller [1/mm]
    large_curvature_per_mm : the same in the other plane [1/mm]
    contact_mpa : modulus of the pair, see contact_modulus_mpa [MPa]

    Valid for: elastic contact, much smaller than the bodies.
    Source: Hertz, 3 F / (2 π a b) with b³ = 3 F E(m) / (π κ E* Σ), Σ the sum of both curvatures.

    >>> round(point_contact_pressure_mpa(1.0, 1 / 0.6, 1 / 0.6, 112_637.0))
    1896
    """
    kappa_ratio = ellipse_ratio(small_curvature_per_mm, large_curvature_per_mm)
    _, second = _elliptic(1 - kappa_ratio**-2)
    curvature_per_mm = small_curvature_per_mm + large_curvature_per_mm
    short_mm = (3 * force_n * second / (pi * kappa_ratio * contact_mpa * curvature_per_mm)) ** (1 / 3)
    return float(3 * force_n / (2 * pi * kappa_ratio * short_mm**2))


def ball_on_shaft_pressure_mpa(
    force_n: float, ball_diameter_mm: float, shaft_diameter_mm: float, contact_mpa: float
) -> float:
    """Greatest pressure of one ball of a linear bushing on its round shaft.

    force_n : load on the ball [N]
    ball_diameter_mm : diameter of the ball [mm]
    shaft_diameter_mm : diameter of the shaft [mm]
    contact_mpa : modulus of the pair, see contact_modulus_mpa [MPa]

    Valid for: balls that run along the shaft; away from its ends.
    Source: point_contact_pressure_mpa with 2/d along and 2/d + 2/D across the shaft.

    >>> round(ball_on_shaft_pressure_mpa(0.5, 1.2, 8.0, 112_637.0))
    1578
    """
    along_per_mm = 2 / ball_diameter_mm
    return point_contact_pressure_mpa(force_n, along_per_mm, along_per_mm + 2 / shaft_diameter_mm, contact_mpa)


def vickers_from_rockwell_hv(hardness_hrc: float) -> float:
    """Vickers hardness of steel from Rockwell C; ValueError outside the table.

    hardness_hrc : hardness [HRC]

    Valid for: steel, 20 to 65 HRC; ± 3 %.
    Source: ASTM E140, table for non-austenitic steels, as two published tables print it; straight between its points.

    >>> vickers_from_rockwell_hv(60.0)
    697.0
    """
    points = VICKERS_POINTS
    if not points[0][0] <= hardness_hrc <= points[-1][0]:
        raise ValueError(f"no Vickers hardness for {hardness_hrc:g} HRC: the table holds 20 to 65 HRC")
    upper = next(n for n, (hrc, _) in enumerate(points) if hrc >= hardness_hrc)
    low_hrc, low_hv = points[max(upper - 1, 0)]
    high_hrc, high_hv = points[upper]
    share = (hardness_hrc - low_hrc) / (high_hrc - low_hrc) if high_hrc > low_hrc else 0.0
    return low_hv + share * (high_hv - low_hv)


def rockwell_from_vickers_hrc(hardness_hv: float) -> float:
    """Rockwell C hardness of steel from Vickers; ValueError outside the table.

    hardness_hv : hardness [HV]

    Valid for: steel, 238 to 832 HV; ± 2 HRC.
    Source: ASTM E140, the same points as vickers_from_rockwell_hv; straight between them.

    >>> rockwell_from_vickers_hrc(697.0)
    60.0
    """
    points = VICKERS_POINTS
    if not points[0][1] <= hardness_hv <= points[-1][1]:
        raise ValueError(f"no Rockwell hardness for {hardness_hv:g} HV: the table holds 238 to 832 HV")
    upper = max(1, next(n for n, (_, hv) in enumerate(points) if hv >= hardness_hv))
    (low_hrc, low_hv), (high_hrc, high_hv) = points[upper - 1], points[upper]
    return low_hrc + (hardness_hv - low_hv) / (high_hv - low_hv) * (high_hrc - low_hrc)


def yield_from_hardness_mpa(hardness_hv: float) -> float:
    """Yield strength of steel from its Vickers hardness, an estimate.

    hardness_hv : hardness [HV]

    Valid for: steel; ± 20 %, less for cold-drawn bars (a floor of the flow stress after some strain).
    Source: indentation, hardness is three times the yield stress; 1 HV = 9.807 MPa.

    >>> round(yield_from_hardness_mpa(180.0))
    588
    """
    return 9.80665 * hardness_hv / 3


def first_yield_pressure_mpa(yield_mpa: float) -> float:
    """Pressure at which a ball begins to leave a mark for ever.

    yield_mpa : yield strength of the softer body [MPa]

    Valid for: round contacts, Poisson's ratio 0.3; ellipses of a ball on a shaft within 3 %.
    Source: contact mechanics textbook, 1.60 times the yield strength; yield begins below the surface.

    >>> round(first_yield_pressure_mpa(588.0), 1)
    940.8
    """
    return 1.60 * yield_mpa


def shakedown_pressure_mpa(yield_mpa: float) -> float:
    """Pressure up to which a track runs in and then yields no more; above it grooves grow with every pass.

    yield_mpa : yield strength of the softer body [MPa]

    Valid for: free rolling point contacts, no hardening.
    Source: contact mechanics textbook, 4.7 times the shear yield strength σ/√3, from memory.

    >>> round(shakedown_pressure_mpa(588.0))
    1596
    """
    return 4.7 * yield_mpa / sqrt(3)


def _elliptic(parameter_ratio: float) -> tuple[float, float]:
    """Complete elliptic integrals K(m) and E(m) by the arithmetic-geometric mean."""
    mean, geometric, rest, power = 1.0, sqrt(1 - parameter_ratio), parameter_ratio / 2, 0.5
    difference = sqrt(parameter_ratio)
    while abs(difference) > 1e-16:
        mean, geometric, difference = (mean + geometric) / 2, sqrt(mean * geometric), (mean - geometric) / 2
        power *= 2
        rest += power * difference**2
    first = pi / (2 * mean)
    return first, first * (1 - rest)


def _curvature_ratio(log_kappa: float) -> float:
    """Ratio of the curvatures that belongs to an ellipse, by the logarithm of its axes' ratio."""
    kappa_ratio = exp(log_kappa)
    if kappa_ratio < 1 + 1e-7:
        return 1.0
    first, second = _elliptic(1 - kappa_ratio**-2)
    return float((kappa_ratio**2 * second - first) / (first - second))
