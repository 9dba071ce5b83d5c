"""Whirl: the speed at which a turning screw bows out like a skipping rope."""

from __future__ import annotations

from math import pi, sqrt

# First root of the beam's frequency equation by how the ends are held; exact to the digits shown.
FREE_FIXED_ROOT_RATIO = 1.8751041
SUPPORTED_SUPPORTED_ROOT_RATIO = 3.1415927
FIXED_SUPPORTED_ROOT_RATIO = 3.9266023
FIXED_FIXED_ROOT_RATIO = 4.7300407
# What is customarily run at most; the metric handbook factors 3.4, 9.7, 15.1, 21.9 hold it already.
PERMITTED_RATIO = 0.8


def critical_speed_rpm(
    root_diameter_mm: float, length_mm: float, end_root_ratio: float, modulus_mpa: float, density_kg_m3: float
) -> float:
    """Turning speed at which a screw whirls; run at PERMITTED_RATIO of it at most.

    root_diameter_mm : diameter of the thread's root [mm]
    length_mm : unsupported length [mm]
    end_root_ratio : 1.875 one end free, π supported, 3.927 fixed and supported, 4.730 fixed (constants above) [-]
    modulus_mpa : modulus of elasticity [MPa]
    density_kg_m3 : density [kg/m3]

    Valid for: slender round bars; the thread's own mass and stiffness beyond its root left out.
    Source: beam theory, lowest bending frequency β² / (2 π L²) · √(E I / ρ A); agrees with handbook factors.

    >>> round(critical_speed_rpm(5.5, 300.0, SUPPORTED_SUPPORTED_ROOT_RATIO, 207_000.0, 7850.0) * PERMITTED_RATIO)
    5915
    """
    density_t_mm3 = density_kg_m3 * 1e-12
    radius_of_gyration_mm = root_diameter_mm / 4
    wave_mm_s = sqrt(modulus_mpa / density_t_mm3)
    return 60 / (2 * pi) * end_root_ratio**2 / length_mm**2 * wave_mm_s * radius_of_gyration_mm


def critical_speed_handbook_rpm(root_diameter_mm: float, length_mm: float, factor_ratio: float) -> float:
    """Permitted turning speed by the handbooks' formula; its factor holds steel and the 0.8 already.

    root_diameter_mm : diameter of the thread's root [mm]
    length_mm : unsupported length [mm]
    factor_ratio : 3.4 one end free, 9.7 supported, 15.1 fixed and supported, 21.9 fixed [-]

    Valid for: steel screws.
    Source: a published calculator of critical speeds, n = f d / L² · 10⁷.

    >>> round(critical_speed_handbook_rpm(5.5, 300.0, 9.7))
    5928
    """
    return factor_ratio * root_diameter_mm / length_mm**2 * 1e7
