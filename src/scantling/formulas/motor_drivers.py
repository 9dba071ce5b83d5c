"""What a driver makes of a motor: current, torque by published points, heat, sense resistor."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import pi, sqrt

PEAK_PER_RMS = sqrt(2)


def rms_a(current_a: float, is_peak: bool) -> float:
    """Return a current as rms, from a figure that may be the peak of its sine.

    current_a : as stated [A]
    is_peak : stated as peak

    Valid for: sine-shaped currents, as micro-stepping drivers make.
    Source: definition, peak / √2.

    >>> round(rms_a(1.5, True), 4), rms_a(1.5, False)
    (1.0607, 1.5)
    """
    return current_a / PEAK_PER_RMS if is_peak else current_a


def torque_by_points_nmm(
    curve_nmm: Sequence[tuple[float, float]], speed_rev_s: float, voltage_ratio: float, current_ratio: float
) -> float:
    """Pull-out torque from a published curve at another supply and current; 0 beyond its last point.

    curve_nmm : (speed, torque) of the curve, speeds growing [rev/s, N mm]
    speed_rev_s : speed [rev/s]
    voltage_ratio : supply against that of the curve [-]
    current_ratio : driver's current against that of the curve, counted up to 1 [-]

    Valid for: straight between points; level below the first; supplies near that of the curve, for resistance is left
        out.
    Source: what limits a motor at speed is induced and inductive voltage, both in proportion to speed; torque in
        proportion to current.

    >>> curve = [(1.0, 400.0), (5.0, 300.0), (10.0, 100.0)]
    >>> torque_by_points_nmm(curve, 7.5, 1.0, 1.0), torque_by_points_nmm(curve, 15.0, 2.0, 0.5)
    (200.0, 100.0)
    """
    speed = speed_rev_s / voltage_ratio
    share = min(1.0, current_ratio)
    if speed <= curve_nmm[0][0]:
        return share * curve_nmm[0][1]
    for (low, low_nmm), (high, high_nmm) in pairwise(curve_nmm):
        if speed <= high:
            return share * (low_nmm + (speed - low) / (high - low) * (high_nmm - low_nmm))
    return 0.0


def case_rise_k(rated_rise_k: float, current_ratio: float) -> float:
    """How much warmer than its surroundings a motor's case gets: heat goes with the square of the current.

    rated_rise_k : at its rated current in both phases, for hours [K]
    current_ratio : rms current against the rated one [-]

    Valid for: motors that mostly stand or turn slowly, iron losses left out.
    Source: copper loss 2 I² R over an unchanged loss to the air.

    >>> case_rise_k(60.0, 0.5)
    15.0
    """
    return rated_rise_k * current_ratio**2


def full_scale_a(sense_v: float, sense_ohm: float) -> float:
    """Largest rms current that a driver makes, from the voltage at which it cuts off over its sense resistor.

    sense_v : voltage over the resistor at the peak of the current [V]
    sense_ohm : sense resistor with its own wiring [ohm]

    Valid for: sine-shaped currents.
    Source: libraries for such drivers, V / (R √2) at the highest of their current steps.

    >>> round(full_scale_a(0.325, 0.11 + 0.02), 4)
    1.7678
    """
    return sense_v / (sense_ohm * PEAK_PER_RMS)


def sense_loss_w(current_a: float, sense_ohm: float) -> float:
    """Heat in the sense resistor of a phase.

    current_a : rms current of the phase [A]
    sense_ohm : resistor [ohm]

    Valid for: always.
    Source: I² R.

    >>> round(sense_loss_w(1.05, 0.11), 4)
    0.1213
    """
    return current_a**2 * sense_ohm


def held_ratio(weight_n: float, friction_n: float, detent_nmm: float, travel_per_turn_mm: float) -> float:
    """What holds a hanging belt axis with its motors off, as a share of its weight.

    weight_n : weight that hangs on the belt [N]
    friction_n : least friction of the guide [N]
    detent_nmm : detent torque of all its motors [N mm]
    travel_per_turn_mm : travel for one turn [mm]

    Valid for: belts; a belt has no lead that would hold.
    Source: statics, detent torque over the pulley's radius, and friction, against weight.

    >>> round(held_ratio(10.0, 1.0, 6.366, 40.0), 3)
    0.2
    """
    return (friction_n + detent_nmm * 2 * pi / travel_per_turn_mm) / weight_n
