"""Reach: what part of a bed the tool comes to, what is left between moving things, and where an end switch must sit."""

from __future__ import annotations

from math import isinf


def reached_mm(start_mm: float, travel_mm: float, lost_low_mm: float, over_mm: float, lost_high_mm: float) -> float:
    """Length of bed along an axis that the tool reaches and nothing stands on.

    start_mm : of the tool over the bed with the axis at its low end, negative outside [mm]
    travel_mm : way of the axis [mm]
    lost_low_mm : what clips and rims take at the low edge [mm]
    over_mm : length of the bed; infinite where nothing bounds it [mm]
    lost_high_mm : what clips and rims take at the high edge [mm]

    Valid for: one axis; 0 where the tool never comes over the free part, and upwards (a length without bounds) where it
        does not come down to the surface that all begins on.
    Source: overlap of two stretches.

    >>> reached_mm(-5.0, 200.0, 10.0, 200.0, 10.0), reached_mm(30.0, 200.0, 10.0, 200.0, 10.0)
    (180.0, 160.0)
    >>> reached_mm(-1.0, 160.0, 0.0, float("inf"), 0.0), reached_mm(1.0, 160.0, 0.0, float("inf"), 0.0)
    (159.0, 0.0)
    """
    if isinf(over_mm) and start_mm > lost_low_mm:
        return 0.0
    return max(0.0, min(start_mm + travel_mm, over_mm - lost_high_mm) - max(start_mm, lost_low_mm))


def lost_by_place_mm(
    start_mm: float, travel_mm: float, lost_low_mm: float, over_mm: float, lost_high_mm: float
) -> float:
    """Reach that a better place of the tool over the bed would win back, with the same rods.

    start_mm, travel_mm, lost_low_mm, over_mm, lost_high_mm : as for reached_mm [mm]

    Valid for: one axis.
    Source: the shorter of travel and free bed, less reached_mm.

    >>> lost_by_place_mm(30.0, 200.0, 10.0, 200.0, 10.0)
    20.0
    """
    free_mm = max(0.0, over_mm - lost_high_mm - lost_low_mm)
    return min(travel_mm, free_mm) - reached_mm(start_mm, travel_mm, lost_low_mm, over_mm, lost_high_mm)


def narrowest_mm(gap_mm: float, travel_mm: float, closes: str) -> float:
    """Least gap of two things along the whole travel.

    gap_mm : with the axis at the low end [mm]
    travel_mm : way of the axis [mm]
    closes : ``high`` where the gap becomes less towards the high end, ``low`` or ``never`` where it does not [-]

    Valid for: a gap that changes by the travel or not at all; negative where they meet.
    Source: difference.

    >>> narrowest_mm(195.0, 180.0, "high"), narrowest_mm(3.0, 180.0, "low")
    (15.0, 3.0)
    """
    return gap_mm - travel_mm if closes == "high" else gap_mm


def home_offset_mm(end: str, start_mm: float, travel_mm: float, lost_low_mm: float) -> float:
    """Position to enter for an axis that stands on its switch, counted from the low edge of what is reached.

    end : ``low`` or ``high``: where its switch is [-]
    start_mm : of the tool over the bed with the axis at its low end [mm]
    travel_mm : way of the axis [mm]
    lost_low_mm : what clips and rims take at the low edge [mm]

    Valid for: positions that grow from the low to the high end; a travel that ends where the switch trips.
    Source: sum of lengths; what is reached begins at the tool's own low end or behind what the edge takes.

    >>> home_offset_mm("low", -5.0, 200.0, 10.0), home_offset_mm("high", -5.0, 200.0, 10.0)
    (-15.0, 185.0)
    >>> home_offset_mm("low", 10.0, 180.0, 0.0)
    0.0
    """
    return start_mm + (travel_mm if end == "high" else 0.0) - max(start_mm, lost_low_mm)


def switch_room_mm(trips_mm: float, give_mm: float, stopping_mm: float) -> float:
    """Way that is left behind an end switch when the axis has stopped; negative where something is hit.

    trips_mm : how far before the hard stop the switch trips [mm]
    give_mm : how far its lever or plunger goes on from there [mm]
    stopping_mm : way that the axis still makes, v² / 2 a [mm]

    Valid for: a controller that stops at once when the switch trips.
    Source: difference.

    >>> switch_room_mm(2.0, 1.5, 0.5)
    1.0
    """
    return min(trips_mm, give_mm) - stopping_mm
