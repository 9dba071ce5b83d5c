"""Moves: how far and how long it takes to reach a speed."""

from __future__ import annotations

from math import sqrt


def distance_to_speed_mm(speed_mm_s: float, acceleration_mm_s2: float) -> float:
    """Way needed to reach a speed from rest, or to stop from it.

    speed_mm_s : speed [mm/s]
    acceleration_mm_s2 : acceleration [mm/s2]

    Valid for: constant acceleration.
    Source: v² / 2a.

    >>> distance_to_speed_mm(300.0, 3000.0)
    15.0
    """
    return speed_mm_s**2 / (2 * acceleration_mm_s2)


def peak_speed_mm_s(distance_mm: float, speed_mm_s: float, acceleration_mm_s2: float) -> float:
    """Highest speed on a move from rest to rest.

    distance_mm : length of the move [mm]
    speed_mm_s : speed wanted [mm/s]
    acceleration_mm_s2 : acceleration and deceleration [mm/s2]

    Valid for: constant acceleration; short moves never reach the speed wanted.
    Source: half the way to speed up, half to stop.

    >>> peak_speed_mm_s(180.0, 160.0, 2000.0)
    160.0
    """
    return min(speed_mm_s, sqrt(distance_mm * acceleration_mm_s2))


def move_time_s(distance_mm: float, speed_mm_s: float, acceleration_mm_s2: float) -> float:
    """Time of a move from rest to rest.

    distance_mm : length of the move [mm]
    speed_mm_s : speed wanted [mm/s]
    acceleration_mm_s2 : acceleration and deceleration [mm/s2]

    Valid for: constant acceleration.
    Source: trapezoid of speed over time.

    >>> move_time_s(180.0, 160.0, 2000.0)
    1.205
    """
    peak = peak_speed_mm_s(distance_mm, speed_mm_s, acceleration_mm_s2)
    return distance_mm / peak + peak / acceleration_mm_s2 if peak else 0.0
