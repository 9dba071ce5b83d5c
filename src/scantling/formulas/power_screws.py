"""Power screws: torque to raise and to lower, efficiency, self-locking; and the tightening of fasteners."""

from __future__ import annotations

from fractions import Fraction
from math import atan, cos, pi, radians


def lead_angle_rad(lead_mm: float, pitch_diameter_mm: float) -> float:
    """Slope of the thread on its pitch diameter.

    lead_mm : travel for one turn [mm]
    pitch_diameter_mm : pitch diameter of the thread [mm]

    Valid for: screws.
    Source: geometry, tan λ = lead / (π d).

    >>> round(lead_angle_rad(8.0, 7.0), 4)
    0.3489
    """
    return atan(lead_mm / (pi * pitch_diameter_mm))


def raising_torque_nmm(
    force_n: float, pitch_diameter_mm: float, lead_mm: float, friction_ratio: float, flank_half_angle_deg: float
) -> float:
    """Torque in the thread that moves the nut against its load.

    force_n : load along the screw [N]
    pitch_diameter_mm : pitch diameter of the thread [mm]
    lead_mm : travel for one turn [mm]
    friction_ratio : coefficient of friction in the thread [-]
    flank_half_angle_deg : half the angle between the flanks, 0 for square threads [deg]

    Valid for: f / cos α · tan λ < 1 (else it jams: infinite); small lead angles, where cos α stands for the true angle.
    Source: textbook of machine design, power screws, F d/2 · (l + π f d / cos α) / (π d - f l / cos α).

    >>> round(raising_torque_nmm(100.0, 7.0, 2.0, 0.15, 15.0), 2)
    87.42
    """
    f_ratio = friction_ratio / cos(radians(flank_half_angle_deg))
    below_mm = pi * pitch_diameter_mm - f_ratio * lead_mm
    if below_mm <= 0:
        return float("inf")
    return force_n * pitch_diameter_mm / 2 * (lead_mm + pi * f_ratio * pitch_diameter_mm) / below_mm


def lowering_torque_nmm(
    force_n: float, pitch_diameter_mm: float, lead_mm: float, friction_ratio: float, flank_half_angle_deg: float
) -> float:
    """Torque in the thread that moves the nut with its load; negative where the load drives the screw.

    force_n : load along the screw [N]
    pitch_diameter_mm : pitch diameter of the thread [mm]
    lead_mm : travel for one turn [mm]
    friction_ratio : coefficient of friction in the thread [-]
    flank_half_angle_deg : half the angle between the flanks, 0 for square threads [deg]

    Valid for: small lead angles, as for raising_torque_nmm.
    Source: textbook of machine design, power screws, F d/2 · (π f d / cos α - l) / (π d + f l / cos α).

    >>> round(lowering_torque_nmm(100.0, 7.0, 8.0, 0.15, 15.0), 2)
    -69.07
    """
    f_ratio = friction_ratio / cos(radians(flank_half_angle_deg))
    above_mm = pi * f_ratio * pitch_diameter_mm - lead_mm
    return force_n * pitch_diameter_mm / 2 * above_mm / (pi * pitch_diameter_mm + f_ratio * lead_mm)


def collar_torque_nmm(force_n: float, friction_ratio: float, collar_diameter_mm: float) -> float:
    """Torque that rubs under a collar or a nut's face.

    force_n : load along the screw [N]
    friction_ratio : coefficient of friction under the collar [-]
    collar_diameter_mm : mean diameter of the rubbing ring [mm]

    Valid for: even wear (mean diameter).
    Source: textbook of machine design, power screws, F f d / 2.

    >>> collar_torque_nmm(6400.0, 0.08, 40.0)
    10240.0
    """
    return force_n * friction_ratio * collar_diameter_mm / 2


def screw_efficiency_ratio(force_n: float, lead_mm: float, torque_nmm: float) -> float:
    """Share of the work put into a screw that arrives at its load; 0 where the torque is infinite.

    force_n : load along the screw [N]
    lead_mm : travel for one turn [mm]
    torque_nmm : whole torque, thread and collar [N mm]

    Valid for: raising.
    Source: work, F l / (2 π T).

    >>> round(screw_efficiency_ratio(100.0, 2.0, 87.42), 3)
    0.364
    """
    return force_n * lead_mm / (2 * pi * torque_nmm)


def self_locking_ratio(
    pitch_diameter_mm: float, lead_mm: float, friction_ratio: float, flank_half_angle_deg: float
) -> float:
    """Friction over slope: above 1 the thread holds its load with the motor off, below 1 the load drives the screw.

    pitch_diameter_mm : pitch diameter of the thread [mm]
    lead_mm : travel for one turn [mm]
    friction_ratio : coefficient of friction in the thread, the smallest it may be [-]
    flank_half_angle_deg : half the angle between the flanks [deg]

    Valid for: at rest; shaking lowers friction, so a margin of a fifth or more is asked for.
    Source: textbook of machine design, power screws, holds where f / cos α > tan λ.

    >>> self_locking_ratio(7.0, 2.0, 0.10, 15.0) > 1 > self_locking_ratio(7.0, 8.0, 0.20, 15.0)
    True
    """
    slope_ratio = lead_mm / (pi * pitch_diameter_mm)
    return friction_ratio / cos(radians(flank_half_angle_deg)) / slope_ratio


def rounded_way_mm(exact_per_mm: Fraction, entered_per_mm: Fraction, way_mm: float) -> float:
    """Error over a way when another number of steps per millimetre is entered than the exact one.

    exact_per_mm : steps for a millimetre as lead and motor give them [1/mm]
    entered_per_mm : as entered, rounded or of another screw [1/mm]
    way_mm : way that is asked for [mm]

    Valid for: always; positive where the axis goes too far.
    Source: definition, way · (entered / exact - 1).

    >>> rounded_way_mm(Fraction(320000, 127), Fraction("2519.69"), 160.0) < 0.001
    True
    """
    return way_mm * float(entered_per_mm / exact_per_mm - 1)
