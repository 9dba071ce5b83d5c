"""Resolution: what one step of the motor is at the tool; exact where the travel is a Fraction."""

from __future__ import annotations

from fractions import Fraction
from typing import TypeVar

Exact = TypeVar("Exact", float, Fraction)


def full_step_mm(travel_per_turn_mm: Exact, full_steps: int) -> Exact:
    """Travel of one full step.

    travel_per_turn_mm : travel for one turn, of a belt or a screw (its lead) [mm]
    full_steps : full steps in one turn of the motor [-]

    Valid for: direct drives.
    Source: definition.

    >>> full_step_mm(Fraction(8), 200)
    Fraction(1, 25)
    """
    return travel_per_turn_mm / full_steps


def microstep_mm(travel_per_turn_mm: Exact, full_steps: int, microsteps: int) -> Exact:
    """Travel of one microstep; under load the real place differs by more, see motors.lag_full_steps_ratio.

    travel_per_turn_mm : travel for one turn [mm]
    full_steps : full steps in one turn of the motor [-]
    microsteps : parts of a full step that the driver makes [-]

    Valid for: direct drives.
    Source: definition.

    >>> microstep_mm(40.0, 200, 16)
    0.0125
    """
    return travel_per_turn_mm / (full_steps * microsteps)


def full_steps_in_ratio(distance_mm: Fraction, step_mm: Fraction) -> Fraction:
    """How many full steps a distance takes, exactly; a layer is steady where this is a whole number.

    distance_mm : distance, a layer height for instance [mm]
    step_mm : travel of one full step [mm]

    Valid for: always.
    Source: definition.

    >>> full_steps_in_ratio(Fraction(1, 5), Fraction(127, 90) / 200)
    Fraction(3600, 127)
    """
    return distance_mm / step_mm


def travel_mm(free_length_mm: float, carriage_mm: float, reserve_mm: float) -> float:
    """Travel that a guide leaves to its carriage.

    free_length_mm : rod between its holders [mm]
    carriage_mm : length of the carriage along the rod [mm]
    reserve_mm : stops, switch and tensioner, both ends together [mm]

    Valid for: carriages that stay between the holders.
    Source: geometry.

    >>> travel_mm(332.0, 134.0, 18.0)
    180.0
    """
    return free_length_mm - carriage_mm - reserve_mm
