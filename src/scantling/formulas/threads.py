"""Threads under load: stress area, proof load, how much thread must be engaged."""

from __future__ import annotations

from math import pi

# Engagement by what the thread is cut into, in nominal diameters. Steel and aluminium: an electronics workmanship
# manual. Brass, plastic and wood: common practice, from memory.
STEEL_ENGAGEMENT_RATIO = 1.0
BRASS_ENGAGEMENT_RATIO = 1.3
ALUMINIUM_ENGAGEMENT_RATIO = 1.5
PLASTIC_ENGAGEMENT_RATIO = 2.0
WOOD_ENGAGEMENT_RATIO = 2.5
FEWEST_THREADS_RATIO = 3.0


def metric_stress_area_mm2(major_mm: float, pitch_mm: float) -> float:
    """Section of a metric screw that carries its pull.

    major_mm : nominal diameter [mm]
    pitch_mm : pitch [mm]

    Valid for: 60° metric threads.
    Source: ISO 898-1, π/4 (d - 0.9382 P)².

    >>> round(metric_stress_area_mm2(5.0, 0.8), 3)
    14.183
    """
    return pi / 4 * (major_mm - 0.9382 * pitch_mm) ** 2


def unified_stress_area_mm2(major_mm: float, pitch_mm: float) -> float:
    """Section of an inch screw that carries its pull.

    major_mm : nominal diameter [mm]
    pitch_mm : pitch, 25.4 mm over threads per inch [mm]

    Valid for: unified threads.
    Source: ASME B1.1, 0.7854 (d - 0.9743 / n)².

    >>> round(unified_stress_area_mm2(6.35, 1.27), 2)
    20.53
    """
    return pi / 4 * (major_mm - 0.9743 * pitch_mm) ** 2


def proof_load_n(stress_area_mm2: float, proof_mpa: float) -> float:
    """Pull that a screw bears without staying longer.

    stress_area_mm2 : see metric_stress_area_mm2 [mm2]
    proof_mpa : proof stress of its property class [MPa]

    Valid for: static pull, thread fully engaged.
    Source: ISO 898-1, area times stress.

    >>> proof_load_n(14.2, 580.0)
    8236.0
    """
    return stress_area_mm2 * proof_mpa


def engagement_needed_mm(major_mm: float, pitch_mm: float, diameters_ratio: float) -> float:
    """Least length of thread that must be engaged.

    major_mm : nominal diameter [mm]
    pitch_mm : pitch [mm]
    diameters_ratio : by what the thread is cut into, 1.0 steel, 1.5 aluminium; constants above [-]

    Valid for: screws of ordinary strength; never less than three threads.
    Source: an electronics workmanship manual, 1 d in hard metal, 1.5 d in aluminium, at least 3 threads.

    >>> engagement_needed_mm(3.0, 0.5, 1.5)
    4.5
    """
    return max(diameters_ratio * major_mm, FEWEST_THREADS_RATIO * pitch_mm)


def bolt_thread_length_mm(major_mm: float, length_mm: float) -> float:
    """Threaded length of a metric hexagon bolt; cap screws follow another rule.

    major_mm : nominal diameter [mm]
    length_mm : length of the bolt [mm]

    Valid for: up to M48; short bolts are threaded all the way.
    Source: machine design textbook eq. 8-14, 2d + 6, + 12 above 125 mm, + 25 above 200 mm.

    >>> bolt_thread_length_mm(5.0, 60.0)
    16.0
    """
    extra_mm = 6.0 if length_mm <= 125 else 12.0 if length_mm <= 200 else 25.0
    return min(2 * major_mm + extra_mm, length_mm)


def cap_screw_thread_length_mm(major_mm: float, length_mm: float) -> float:
    """Threaded length of a metric socket head cap screw.

    major_mm : nominal diameter [mm]
    length_mm : length of the screw [mm]

    Valid for: M2 and up; short screws are threaded all the way.
    Source: ISO 4762, b = 2d + 12.

    >>> cap_screw_thread_length_mm(5.0, 60.0)
    22.0
    """
    return min(2 * major_mm + 12, length_mm)
