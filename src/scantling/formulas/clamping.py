"""Tightening a screw: torque and clamp load, what a hand gives, and how hard a head or washer presses."""

from __future__ import annotations

from math import cos, pi, radians

# Preload of joints that are undone again, as a share of the proof load (machine design textbook, eq. 8-31).
REUSED_RATIO = 0.75
# Half angle of the flanks of metric and unified threads.
FLANK_DEG = 30.0
# The head rubs on a ring of about 1.25 diameters (machine design textbook, eq. 8-26).
COLLAR_RATIO = 0.625
# What two fingers on the short arm of the key give, N mm per mm³ of diameter: 0.3–0.5 N m at M3, 0.8–1.0 at M4,
# 1.5–2 at M5. Common practice, no source.
HAND_LOW, HAND_USUAL, HAND_HIGH = 12.0, 14.4, 16.5


def nut_factor_ratio(
    major_mm: float, pitch_mm: float, pitch_diameter_mm: float, thread_friction_ratio: float, head_friction_ratio: float
) -> float:
    """Torque of tightening over clamp load times diameter.

    major_mm : nominal diameter [mm]
    pitch_mm : pitch [mm]
    pitch_diameter_mm : pitch diameter [mm]
    thread_friction_ratio : friction in the thread [-]
    head_friction_ratio : friction under the head [-]

    Valid for: single-start 60° threads, head or nut turned on a flat face.
    Source: machine design textbook eq. 8-26, dm/2d (tan λ + f sec α)/(1 - f tan λ sec α) + 0.625 fc.

    >>> round(nut_factor_ratio(5.0, 0.8, 4.48, 0.15, 0.15), 3)
    0.198
    """
    rise_ratio = pitch_mm / (pi * pitch_diameter_mm)
    rubbing_ratio = thread_friction_ratio / cos(radians(FLANK_DEG))
    in_thread_ratio = (rise_ratio + rubbing_ratio) / (1 - rubbing_ratio * rise_ratio)
    return pitch_diameter_mm / (2 * major_mm) * in_thread_ratio + COLLAR_RATIO * head_friction_ratio


def clamp_load_n(torque_nmm: float, major_mm: float, nut_factor_ratio: float) -> float:
    """Clamp load of a screw that is tightened with a torque.

    torque_nmm : tightening torque [N·mm]
    major_mm : nominal diameter [mm]
    nut_factor_ratio : see nut_factor_ratio, about 0.2 where dry [-]

    Valid for: as the factor; it scatters by a third either way with the friction.
    Source: machine design textbook eq. 8-27, T = K F d.

    >>> clamp_load_n(1000.0, 5.0, 0.2)
    1000.0
    """
    return torque_nmm / (nut_factor_ratio * major_mm)


def tightening_torque_nmm(clamp_n: float, major_mm: float, nut_factor_ratio: float) -> float:
    """Torque that gives a clamp load.

    clamp_n : wanted clamp load [N]
    major_mm : nominal diameter [mm]
    nut_factor_ratio : see nut_factor_ratio, about 0.2 where dry [-]

    Valid for: as the factor.
    Source: machine design textbook eq. 8-27, T = K F d.

    >>> tightening_torque_nmm(1000.0, 5.0, 0.2)
    1000.0
    """
    return nut_factor_ratio * clamp_n * major_mm


def reusable_clamp_n(stress_area_mm2: float, proof_mpa: float) -> float:
    """Clamp load to which a screw is tightened that will be undone again.

    stress_area_mm2 : see formulas/threads [mm2]
    proof_mpa : proof stress of its property class [MPa]

    Valid for: steel screws in threads at least as strong.
    Source: machine design textbook eq. 8-31, 0.75 of the proof load.

    >>> round(reusable_clamp_n(14.2, 580.0))
    6177
    """
    return REUSED_RATIO * stress_area_mm2 * proof_mpa


def hand_torque_nmm(major_mm: float, per_cube_mpa: float = HAND_USUAL) -> float:
    """Torque that a maker gives by feel, two fingers on the short arm of the key.

    major_mm : nominal diameter [mm]
    per_cube_mpa : torque over diameter cubed, HAND_LOW to HAND_HIGH [MPa]

    Valid for: M2.5 to M6; what is larger takes a wrench.
    Source: common practice, no source: 0.4 N m at M3, 0.9 at M4, 1.75 at M5 follow the cube of the diameter.

    >>> round(hand_torque_nmm(4.0))
    922
    """
    return per_cube_mpa * major_mm**3


def ring_area_mm2(outer_mm: float, hole_mm: float) -> float:
    """Area on which a head, nut or washer presses.

    outer_mm : its diameter [mm]
    hole_mm : diameter of the hole below it [mm]

    Valid for: washers stiff enough to spread the load; none where the hole is as wide.
    Source: geometry.

    >>> round(ring_area_mm2(12.0, 4.5), 1)
    97.2
    """
    return max(0.0, pi / 4 * (outer_mm**2 - hole_mm**2))


def pressure_mpa(force_n: float, outer_mm: float, hole_mm: float) -> float:
    """Pressure below a head, nut or washer.

    force_n : clamp load [N]
    outer_mm : diameter of what presses [mm]
    hole_mm : diameter of the hole below it [mm]

    Valid for: outer_mm above hole_mm.
    Source: EN 1995-1-1 8.5.2, load over contact area.

    >>> round(pressure_mpa(972.0, 12.0, 4.5), 1)
    10.0
    """
    return force_n / ring_area_mm2(outer_mm, hole_mm)


def washer_capacity_n(across_mpa: float, outer_mm: float, hole_mm: float) -> float:
    """Load that a washer takes on solid wood.

    across_mpa : strength in compression across the grain [MPa]
    outer_mm : diameter of the washer [mm]
    hole_mm : diameter of the hole [mm]

    Valid for: softwood and hardwood, washers at least three screw diameters wide.
    Source: EN 1995-1-1 8.5.2 (2), three times the strength across the grain on the contact area.

    >>> round(washer_capacity_n(2.5, 24.0, 9.0))
    2916
    """
    return 3.0 * across_mpa * ring_area_mm2(outer_mm, hole_mm)


def grip_needed_n(pull_n: float, slide_n: float, friction_ratio: float) -> float:
    """Clamp load below which a joint opens or slides.

    pull_n : force on each screw that pulls the joint open [N]
    slide_n : force on each screw that would slide it [N]
    friction_ratio : between the faces [-]

    Valid for: joints held by friction, not by the shank in its hole.
    Source: Coulomb friction on what the pull leaves of the clamp load.

    >>> round(grip_needed_n(20.0, 30.0, 0.3), 6)
    120.0
    """
    return pull_n + slide_n / friction_ratio
