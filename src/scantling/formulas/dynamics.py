"""The one place where mass at rest becomes mass in motion: kg to t, so that t·mm/s² = N and t·mm²/s² = N·mm."""

from __future__ import annotations

from math import pi, sqrt

GRAVITY_MM_S2 = 9806.65  # standard gravity, exact by definition


def mass_t(mass_kg: float) -> float:
    """Mass in tonnes, the unit in which mm, s and N go together.

    mass_kg : mass [kg]

    Valid for: always.
    Source: definition, 1 t = 1000 kg; 1 t·mm/s² = 1 N.

    >>> mass_t(1.5)
    0.0015
    """
    return mass_kg / 1000


def inertia_force_n(mass_kg: float, acceleration_mm_s2: float) -> float:
    """Force that accelerates a mass.

    mass_kg : mass [kg]
    acceleration_mm_s2 : acceleration [mm/s2]

    Valid for: always.
    Source: force is mass times acceleration.

    >>> inertia_force_n(1.47, 2000.0)
    2.94
    """
    return mass_t(mass_kg) * acceleration_mm_s2


def weight_n(mass_kg: float) -> float:
    """Weight of a mass.

    mass_kg : mass [kg]

    Valid for: on the ground; local gravity differs by up to 0.3 %.
    Source: standard gravity 9.80665 m/s².

    >>> round(weight_n(1.0), 5)
    9.80665
    """
    return inertia_force_n(mass_kg, GRAVITY_MM_S2)


def friction_force_n(friction_ratio: float, normal_n: float, drag_n: float) -> float:
    """Force that keeps a carriage moving on its guides.

    friction_ratio : coefficient of friction of the guide [-]
    normal_n : load on the guide [N]
    drag_n : pull of seals, grease and belt that does not depend on the load [N]

    Valid for: dry or lightly greased guides, slow enough that grease does not dominate.
    Source: dry friction plus a constant.

    >>> friction_force_n(0.25, 14.4, 0.9)
    4.5
    """
    return friction_ratio * normal_n + drag_n


def natural_frequency_hz(stiffness_n_mm: float, mass_kg: float) -> float:
    """Frequency at which a mass on a spring rings.

    stiffness_n_mm : stiffness of the spring [N/mm]
    mass_kg : mass on it [kg]

    Valid for: little damping; the spring's own mass left out.
    Source: f = √(k / m) / (2 π).

    >>> round(natural_frequency_hz(31.0, 2.0), 2)
    19.81
    """
    return sqrt(stiffness_n_mm / mass_t(mass_kg)) / (2 * pi)
