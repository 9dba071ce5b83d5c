"""A whole axis as springs in a row: motor, belt, guide, frame; at what it rings, how far it swings at a corner."""

from __future__ import annotations

from collections.abc import Sequence
from math import pi, sin, sqrt

from scantling.formulas.dynamics import mass_t

# Of the lag, what is left by the two ends of an acceleration over all its lengths: mean, root mean square, largest.
LAG_MEAN_RATIO = 4 / pi
LAG_RMS_RATIO = sqrt(2)
LAG_MOST_RATIO = 2.0


def motor_stiffness_nmm_rad(torque_nmm: float, full_steps: int) -> float:
    """How stiff a stepping motor holds its place: what it gives way by is a share of a full step [N·mm/rad].

    torque_nmm : holding torque at the current that the driver is set to [N mm]
    full_steps : full steps in one turn [-]

    Valid for: two-phase motors, small loads; half as stiff near their limit.
    Source: torque follows the sine of the electrical angle, a quarter of full_steps to a turn; its slope at rest.

    >>> motor_stiffness_nmm_rad(200.0, 200)
    10000.0
    """
    return torque_nmm * full_steps / 4


def turning_to_straight_n_mm(stiffness_nmm_rad: float, travel_per_turn_mm: float) -> float:
    """Stiffness along a travel of what is stiff against turning [N/mm].

    stiffness_nmm_rad : turning stiffness at the shaft [N mm/rad]
    travel_per_turn_mm : travel for one turn [mm]

    Valid for: belts and screws.
    Source: energy, k (2π / s)².

    >>> round(turning_to_straight_n_mm(10000.0, 40.0), 2)
    246.74
    """
    return stiffness_nmm_rad * (2 * pi / travel_per_turn_mm) ** 2


def series_n_mm(stiffnesses_n_mm: Sequence[float]) -> float:
    """Stiffness of springs in a row [N/mm].

    stiffnesses_n_mm : of each [N/mm]

    Valid for: one force through all.
    Source: sum of what each gives.

    >>> series_n_mm([100.0, 300.0])
    75.0
    """
    return 1 / sum(1 / stiffness for stiffness in stiffnesses_n_mm)


def tilting_stiffness_n_mm(bushing_n_mm: float, rods: int, spacing_mm: float, arm_mm: float) -> float:
    """How stiff a guide holds a load whose middle lies beside the drive's pull, along the travel [N/mm].

    bushing_n_mm : force on each of two bushings of a rod for a millimetre of give, one up and one down [N/mm]
    rods : rods that take part [-]
    spacing_mm : between the two bushings of a rod [mm]
    arm_mm : from the drive's pull to the middle of the load, across the travel; not 0 [mm]

    Valid for: a carriage much stiffer than its rods.
    Source: geometry, angle 2 δ / s under the moment F h, the load moves by h times the angle.

    >>> tilting_stiffness_n_mm(500.0, 1, 100.0, 20.0)
    6250.0
    """
    return rods * bushing_n_mm * spacing_mm**2 / (2 * arm_mm**2)


def two_mass_frequency_hz(ground_n_mm: float, inner_kg: float, between_n_mm: float, outer_kg: float) -> float:
    """Lowest frequency of a mass on a spring that stands on another mass on a spring: carriage, belt, rotor, motor.

    ground_n_mm : spring between ground and the inner mass [N/mm]
    inner_kg : inner mass [kg]
    between_n_mm : spring between the masses [N/mm]
    outer_kg : outer mass [kg]

    Valid for: little damping.
    Source: textbook of vibration, two masses in a chain, smaller root of the characteristic equation.

    >>> round(two_mass_frequency_hz(250.0, 1e-9, 100.0, 1.0), 3), round(two_mass_frequency_hz(1.0, 1.0, 1.0, 1.0), 4)
    (42.536, 3.1105)
    """
    inner_t, outer_t = mass_t(inner_kg), mass_t(outer_kg)
    middle = ((ground_n_mm + between_n_mm) / inner_t + between_n_mm / outer_t) / 2
    product = ground_n_mm * between_n_mm / (inner_t * outer_t)
    square = product / (middle + sqrt(middle**2 - product))  # the smaller root, without loss of digits
    return sqrt(square) / (2 * pi)


def lag_mm(acceleration_mm_s2: float, frequency_hz: float) -> float:
    """How far a mass on a spring lags while it is accelerated: the yardstick of its ringing.

    acceleration_mm_s2 : acceleration [mm/s2]
    frequency_hz : lowest frequency [Hz]

    Valid for: little damping.
    Source: m a = k x, so x = a / (2 π f)².

    >>> round(lag_mm(2000.0, 30.0), 4)
    0.0563
    """
    return acceleration_mm_s2 / (2 * pi * frequency_hz) ** 2


def residual_mm(acceleration_mm_s2: float, frequency_hz: float, lasting_s: float) -> float:
    """How far a mass still swings after an acceleration that sets in, lasts and ends at once.

    acceleration_mm_s2 : acceleration [mm/s2]
    frequency_hz : lowest frequency [Hz]
    lasting_s : how long it lasts [s]

    Valid for: no damping; from nothing to twice the lag, √2 times it in the mean square over all lengths of time.
    Source: handbook of shock and vibration, residual response to a rectangular pulse, 2 |sin(π t / T)|.

    >>> round(residual_mm(2000.0, 30.0, 1 / 60), 4), round(residual_mm(2000.0, 30.0, 1 / 30), 4)
    (0.1126, 0.0)
    """
    return lag_mm(acceleration_mm_s2, frequency_hz) * abs(2 * sin(pi * frequency_hz * lasting_s))
