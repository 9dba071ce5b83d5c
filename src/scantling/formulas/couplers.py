"""Couplers of soft tube: at what torque they slip, how far they wind up, what that loses when a screw turns back."""

from __future__ import annotations

from math import pi

RUBBER_SHEAR_RATIO = 1 / 3  # of the modulus, for what keeps its volume (Poisson's ratio 1/2)


def clamped_slip_nmm(clamp_force_n: float, friction_ratio: float, diameter_mm: float) -> float:
    """Torque at which a tube slips on a round end under one clamp.

    clamp_force_n : pull in the band, wire or tie round the tube [N]
    friction_ratio : coefficient of friction of tube on end [-]
    diameter_mm : diameter of the end [mm]

    Valid for: soft tubes that hand the clamp's squeeze on; the squeeze of a stretched tube itself is left out.
    Source: a band of pull F round a circle squeezes it with 2 π F in all; friction of that at half the diameter.

    >>> round(clamped_slip_nmm(40.0, 0.5, 5.0), 1)
    314.2
    """
    return friction_ratio * 2 * pi * clamp_force_n * diameter_mm / 2


def tube_winding_rad(torque_nmm: float, span_mm: float, outer_mm: float, inner_mm: float, modulus_mpa: float) -> float:
    """Angle by which a soft tube winds up between its two ends.

    torque_nmm : torque [N mm]
    span_mm : free length between the two ends in it [mm]
    outer_mm : outside diameter [mm]
    inner_mm : bore [mm]
    modulus_mpa : modulus of elasticity of the tube [MPa]

    Valid for: small strains; rubber-like material, whose shear modulus is a third of its modulus of elasticity.
    Source: torsion of a round tube, T L / (G π (D⁴ - d⁴) / 32).

    >>> round(tube_winding_rad(10.0, 8.0, 9.0, 5.0, 6.0), 4)
    0.0686
    """
    polar_mm4 = pi * (outer_mm**4 - inner_mm**4) / 32
    return torque_nmm * span_mm / (RUBBER_SHEAR_RATIO * modulus_mpa * polar_mm4)


def turned_back_mm(winding_rad: float, lead_mm: float) -> float:
    """Way that a screw loses to the winding of its coupler.

    winding_rad : change of the winding between the two ways of turning [rad]
    lead_mm : travel for one turn [mm]

    Valid for: screws.
    Source: definition of the lead, winding / 2π · lead.

    >>> round(turned_back_mm(0.0686, 8.0), 4)
    0.0873
    """
    return winding_rad / (2 * pi) * lead_mm


def shore_modulus_mpa(shore_a_ratio: float) -> float:
    """Modulus of elasticity of a rubber from its Shore A hardness.

    shore_a_ratio : Shore A hardness, 30 to 60, with less trust up to 80 [-]

    Valid for: rubbers, silicones, soft PVC; within a factor of about 1.5.
    Source: Ruess, log10 E = 0.0235 S - 0.6403, as quoted in a silicone maker's white paper.

    >>> round(shore_modulus_mpa(60.0), 2)
    5.88
    """
    return float(10 ** (0.0235 * shore_a_ratio - 0.6403))
