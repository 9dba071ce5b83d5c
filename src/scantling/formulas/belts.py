"""Toothed belts: travel, lengths, teeth in mesh, tension and stretch."""

from __future__ import annotations

from fractions import Fraction
from math import acos, asin, cos, pi, sqrt
from typing import TypeVar

Exact = TypeVar("Exact", float, Fraction)


def belt_travel_per_turn_mm(teeth: int, pitch_mm: Exact) -> Exact:
    """Travel of a belt for one turn of its pulley; exact where the pitch is a Fraction.

    teeth : teeth of the pulley [-]
    pitch_mm : pitch of the belt [mm]

    Valid for: a belt that does not jump teeth.
    Source: definition.

    >>> belt_travel_per_turn_mm(20, Fraction(2))
    Fraction(40, 1)
    """
    return teeth * pitch_mm


def steps_per_mm(full_steps: int, microsteps: int, travel_per_turn_mm: Exact) -> Exact:
    """Steps a controller sends for one millimetre [1/mm]; exact where the travel is a Fraction.

    full_steps : full steps in one turn of the motor [-]
    microsteps : parts of a full step that the driver makes [-]
    travel_per_turn_mm : travel for one turn, of a belt or a screw (its lead) [mm]

    Valid for: a direct drive, without gears.
    Source: definition.

    >>> steps_per_mm(200, 16, Fraction(127, 100))
    Fraction(320000, 127)
    """
    return full_steps * microsteps / travel_per_turn_mm


def pitch_diameter_mm(teeth: int, pitch_mm: float) -> float:
    """Diameter of the circle on which the belt's cords run.

    teeth : teeth of the pulley [-]
    pitch_mm : pitch of the belt [mm]

    Valid for: toothed pulleys.
    Source: formula sheet of a belt maker, pitch diameter = teeth · pitch / π.

    >>> round(pitch_diameter_mm(16, 2.0), 4)
    10.1859
    """
    return teeth * pitch_mm / pi


def belt_line_shift_mm(teeth: int, other_teeth: int, pitch_mm: float) -> float:
    """How far the belt's line comes nearer to the axle (positive) when the pulley changes.

    teeth : teeth of the pulley that was there [-]
    other_teeth : teeth of the one that takes its place [-]
    pitch_mm : pitch of the belt [mm]

    Valid for: a pulley on the same axle.
    Source: geometry, half the difference of the pitch diameters.

    >>> round(belt_line_shift_mm(20, 16, 2.0), 3)
    1.273
    """
    return (pitch_diameter_mm(teeth, pitch_mm) - pitch_diameter_mm(other_teeth, pitch_mm)) / 2


def open_belt_length_mm(small_mm: float, large_mm: float, centre_mm: float) -> float:
    """Exact length of a belt round two pulleys that turn the same way.

    small_mm : pitch diameter of the smaller pulley [mm]
    large_mm : pitch diameter of the larger pulley [mm]
    centre_mm : distance of the axles [mm]

    Valid for: centre_mm > (large_mm - small_mm) / 2; else ValueError.
    Source: geometry, 2 C cos θ + π (D + d) / 2 + (D - d) θ with sin θ = (D - d) / (2 C).

    >>> round(open_belt_length_mm(12.7324, 38.1972, 80.0), 3)
    242.031
    """
    theta = asin(_checked_sine(large_mm - small_mm, centre_mm))
    return 2 * centre_mm * cos(theta) + pi / 2 * (large_mm + small_mm) + (large_mm - small_mm) * theta


def open_belt_length_handbook_mm(small_mm: float, large_mm: float, centre_mm: float) -> float:
    """Length of an open belt by the handbooks' short formula, always a little short.

    small_mm : pitch diameter of the smaller pulley [mm]
    large_mm : pitch diameter of the larger pulley [mm]
    centre_mm : distance of the axles [mm]

    Valid for: pulleys of like size; error below 0.01 % for D - d < 0.35 C.
    Source: formula sheet of a belt maker, L = 2 C + π (D + d) / 2 + (D - d)² / (4 C).

    >>> round(open_belt_length_handbook_mm(12.7324, 38.1972, 80.0), 3)
    242.026
    """
    return 2 * centre_mm + pi / 2 * (large_mm + small_mm) + (large_mm - small_mm) ** 2 / (4 * centre_mm)


def crossed_belt_length_mm(small_mm: float, large_mm: float, centre_mm: float) -> float:
    """Exact length of a belt that crosses between two pulleys, which then turn opposite ways.

    small_mm : pitch diameter of one pulley [mm]
    large_mm : pitch diameter of the other [mm]
    centre_mm : distance of the axles [mm]

    Valid for: centre_mm > (large_mm + small_mm) / 2; else ValueError.
    Source: geometry, 2 C cos θ + (D + d) (π / 2 + θ) with sin θ = (D + d) / (2 C).

    >>> round(crossed_belt_length_mm(20.0, 20.0, 100.0), 3)
    266.845
    """
    theta = asin(_checked_sine(large_mm + small_mm, centre_mm))
    return 2 * centre_mm * cos(theta) + (large_mm + small_mm) * (pi / 2 + theta)


def wrap_angle_rad(small_mm: float, large_mm: float, centre_mm: float) -> float:
    """Angle over which an open belt lies on the smaller pulley.

    small_mm : pitch diameter of the smaller pulley [mm]
    large_mm : pitch diameter of the larger pulley [mm]
    centre_mm : distance of the axles [mm]

    Valid for: centre_mm > (large_mm - small_mm) / 2; else ValueError.
    Source: geometry, 2 acos((D - d) / (2 C)).

    >>> round(wrap_angle_rad(20.0, 20.0, 100.0), 4)
    3.1416
    """
    return 2 * acos(_checked_sine(large_mm - small_mm, centre_mm))


def teeth_in_mesh_ratio(teeth: int, wrap_rad: float) -> float:
    """Teeth of a pulley that the belt lies on, as a number with a fraction; whole teeth are its floor.

    teeth : teeth of the pulley [-]
    wrap_rad : angle over which the belt lies on it [rad]

    Valid for: toothed pulleys; six whole teeth or more are customary.
    Source: formula sheet of a belt maker, z φ / 360°.

    >>> teeth_in_mesh_ratio(20, pi)
    10.0
    """
    return teeth * wrap_rad / (2 * pi)


def centre_from_length_mm(small_mm: float, large_mm: float, length_mm: float) -> float:
    """Distance of the axles that an open belt of a given length asks for, exact.

    small_mm : pitch diameter of the smaller pulley [mm]
    large_mm : pitch diameter of the larger pulley [mm]
    length_mm : pitch length of the belt, teeth times pitch [mm]

    Valid for: belts longer than the two pulleys touching inside each other need; else ValueError.
    Source: geometry, open_belt_length_mm solved by halving.

    >>> round(centre_from_length_mm(12.7324, 38.1972, 242.0307), 3)
    80.0
    """
    low, high = (large_mm - small_mm) / 2, length_mm / 2
    if length_mm <= pi * large_mm:
        raise ValueError(f"a belt of {length_mm:g} mm does not go round a pulley of {large_mm:g} mm and another")
    for _ in range(200):
        middle = (low + high) / 2
        if open_belt_length_mm(small_mm, large_mm, middle) < length_mm:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def centre_from_length_handbook_mm(small_mm: float, large_mm: float, length_mm: float) -> float:
    """Distance of the axles by the handbooks' closed formula.

    small_mm : pitch diameter of the smaller pulley [mm]
    large_mm : pitch diameter of the larger pulley [mm]
    length_mm : pitch length of the belt [mm]

    Valid for: pulleys of like size; error below 0.1 % for D - d < 0.5 C.
    Source: formula sheet of a belt maker, (B + √(B² - 2 (D - d)²)) / 4 with B = L - π (D + d) / 2.

    >>> round(centre_from_length_handbook_mm(12.7324, 38.1972, 200.0), 2)
    58.62
    """
    straight = length_mm - pi / 2 * (large_mm + small_mm)
    return (straight + sqrt(straight**2 - 2 * (large_mm - small_mm) ** 2)) / 4


def span_tension_n(mass_g_m: float, span_mm: float, frequency_hz: float) -> float:
    """Tension of a free span of belt from the note it gives when plucked.

    mass_g_m : mass of the belt per length [g/m]
    span_mm : free span between the tangent points [mm]
    frequency_hz : lowest note [Hz]

    Valid for: spans over about twenty belt thicknesses (a short thick one is stiff and sounds too high).
    Source: the vibrating string, T = 4 m L² f².

    >>> round(span_tension_n(8.4, 150.0, 110.0), 2)
    9.15
    """
    return 4 * mass_g_m / 1000 * (span_mm / 1000 * frequency_hz) ** 2


def span_frequency_hz(mass_g_m: float, span_mm: float, tension_n: float) -> float:
    """Note that a free span of belt gives at a tension.

    mass_g_m : mass of the belt per length [g/m]
    span_mm : free span between the tangent points [mm]
    tension_n : tension in the span [N]

    Valid for: spans over about twenty belt thicknesses.
    Source: the vibrating string, f = √(T / m) / (2 L).

    >>> round(span_frequency_hz(8.4, 150.0, 15.8), 1)
    144.6
    """
    return sqrt(tension_n / (mass_g_m / 1000)) / (2 * span_mm / 1000)


def span_stiffness_n_mm(strain_stiffness_n: float, span_mm: float) -> float:
    """Force that stretches one span of belt by a millimetre [N/mm].

    strain_stiffness_n : force per unit strain of this belt at its width [N]
    span_mm : length of the span [mm]

    Valid for: spans; teeth in mesh give way too and are not counted.
    Source: stiffness law k = csp · width / L, measured in a university thesis on toothed belts.

    >>> span_stiffness_n_mm(15000.0, 300.0)
    50.0
    """
    return strain_stiffness_n / span_mm


def carriage_stiffness_n_mm(strain_stiffness_n: float, near_mm: float, far_mm: float) -> float:
    """Stiffness of a carriage on a closed belt against its locked motor: both ways round hold it [N/mm].

    strain_stiffness_n : force per unit strain of this belt at its width [N]
    near_mm : belt from the carriage straight to the driven pulley [mm]
    far_mm : belt from the carriage round the idler to the driven pulley [mm]

    Valid for: both spans tight, tension above half the drive force.
    Source: two springs side by side.

    >>> carriage_stiffness_n_mm(15000.0, 300.0, 300.0)
    100.0
    """
    return span_stiffness_n_mm(strain_stiffness_n, near_mm) + span_stiffness_n_mm(strain_stiffness_n, far_mm)


def slack_side_tension_n(installed_n: float, force_n: float, near_mm: float, far_mm: float) -> float:
    """Tension left in the slack side of a closed belt while it drives; at or below zero it hangs loose.

    installed_n : tension at rest [N]
    force_n : drive force on the carriage [N]
    near_mm : belt from the carriage straight to the driven pulley, the tight side [mm]
    far_mm : belt from the carriage round the idler to the driven pulley, the slack side [mm]

    Valid for: belts that stretch in proportion to force; the worst place has the longest tight side.
    Source: two springs side by side, the slack side gives up its share of the force.

    >>> slack_side_tension_n(20.0, 10.0, 300.0, 300.0)
    15.0
    """
    return installed_n - force_n * near_mm / (near_mm + far_mm)


def _checked_sine(difference_mm: float, centre_mm: float) -> float:
    """The sine of the belt's slant; pulleys that overlap have none."""
    if centre_mm <= 0 or abs(difference_mm) >= 2 * centre_mm:
        raise ValueError(f"pulleys {centre_mm:g} mm apart overlap, no belt goes round them")
    return difference_mm / (2 * centre_mm)
