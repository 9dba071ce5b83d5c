"""Rectangular plates on four free supports: deflection and lowest frequency by the double sine series."""

from __future__ import annotations

from functools import cache
from math import pi, sqrt

from scantling.formulas.dynamics import mass_t

# Odd terms each way; the point-load series is then within 0.02 % of its limit.
TERMS = range(1, 160, 2)


def plate_rigidity_nmm(thickness_mm: float, modulus_mpa: float, poisson_ratio: float) -> float:
    """Bending stiffness of a plate per width.

    thickness_mm : thickness [mm]
    modulus_mpa : modulus of elasticity [MPa]
    poisson_ratio : Poisson's ratio [-]

    Valid for: thin, even plates; plywood needs one value each way.
    Source: plate theory, E t³ / (12 (1 - ν²)).

    >>> round(plate_rigidity_nmm(3.0, 70_000.0, 0.33))
    176748
    """
    return modulus_mpa * thickness_mm**3 / (12 * (1 - poisson_ratio**2))


def supported_plate_sag_mm(pressure_mpa: float, side_mm: float, other_side_mm: float, rigidity_nmm: float) -> float:
    """Sag in the middle of a plate on four free supports under an even load.

    pressure_mpa : load per area [MPa]
    side_mm : one side [mm]
    other_side_mm : the other side [mm]
    rigidity_nmm : see plate_rigidity_nmm [N mm]

    Valid for: thin plates, sag below half the thickness, corners held down.
    Source: Navier, 16 q / (π⁶ D) · Σ Σ ± 1 / (m n (m²/a² + n²/b²)²), odd m and n.

    >>> round(supported_plate_sag_mm(0.001, 200.0, 200.0, 176_748.0), 4)
    0.0368
    """
    short_mm, long_mm = sorted((side_mm, other_side_mm))
    return pressure_mpa * short_mm**4 / rigidity_nmm * 16 / pi**6 * _uniform_sum(long_mm / short_mm)


def supported_plate_point_sag_mm(force_n: float, side_mm: float, other_side_mm: float, rigidity_nmm: float) -> float:
    """Sag under a force in the middle of a plate on four free supports.

    force_n : load [N]
    side_mm : one side [mm]
    other_side_mm : the other side [mm]
    rigidity_nmm : see plate_rigidity_nmm [N mm]

    Valid for: thin plates, sag below half the thickness, corners held down.
    Source: Navier, 4 F / (π⁴ D a b) · Σ Σ 1 / (m²/a² + n²/b²)², odd m and n.

    >>> round(supported_plate_point_sag_mm(10.0, 200.0, 200.0, 176_748.0), 4)
    0.0263
    """
    short_mm, long_mm = sorted((side_mm, other_side_mm))
    sides_ratio = long_mm / short_mm
    return force_n * short_mm**2 / rigidity_nmm * 4 / (pi**4 * sides_ratio) * _point_sum(sides_ratio)


def supported_plate_frequency_hz(
    side_mm: float, other_side_mm: float, rigidity_nmm: float, thickness_mm: float, density_kg_m3: float
) -> float:
    """Lowest frequency of a plate on four free supports.

    side_mm : one side [mm]
    other_side_mm : the other side [mm]
    rigidity_nmm : see plate_rigidity_nmm [N mm]
    thickness_mm : thickness [mm]
    density_kg_m3 : density [kg/m3]

    Valid for: thin plates that carry nothing.
    Source: plate theory, π/2 · (1/a² + 1/b²) √(D / (ρ t)).

    >>> round(supported_plate_frequency_hz(200.0, 200.0, 176_748.0, 3.0, 2700.0), 1)
    366.9
    """
    mass_t_mm2 = mass_t(density_kg_m3 * 1e-9) * thickness_mm
    return pi / 2 * (side_mm**-2 + other_side_mm**-2) * sqrt(rigidity_nmm / mass_t_mm2)


@cache
def _uniform_sum(sides_ratio: float) -> float:
    """The series of the even load with the short side as unit."""
    total = 0.0
    for m in TERMS:
        for n in TERMS:
            sign = 1 if (m + n) // 2 % 2 else -1
            total += sign / (m * n * ((m / sides_ratio) ** 2 + n**2) ** 2)
    return total


@cache
def _point_sum(sides_ratio: float) -> float:
    """The series of the point load with the short side as unit."""
    return sum(1 / ((m / sides_ratio) ** 2 + n**2) ** 2 for m in TERMS for n in TERMS)
