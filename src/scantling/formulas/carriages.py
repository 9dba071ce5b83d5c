"""A stiff carriage on two bushings that run on a sagging rod: its height at the tool, wherever the tool is."""

from __future__ import annotations

from scantling.formulas.beams import clamped_sag_at_mm, supported_sag_at_mm


def carriage_drop_mm(
    force_n: float,
    centre_at_mm: float,
    seen_at_mm: float,
    spacing_mm: float,
    span_mm: float,
    modulus_mpa: float,
    second_moment_mm4: float,
    clamped: bool,
) -> float:
    """How far a carriage has sunk at a place along its rod, which may lie beyond its bushings.

    force_n : load of the carriage on this rod, shared evenly by its two bushings [N]
    centre_at_mm : where the carriage's middle stands, from one support [mm]
    seen_at_mm : where the height counts, from the same support [mm]
    spacing_mm : distance of the bushings' middles; 0 for a single bushing, which keeps level [mm]
    span_mm : distance of the supports [mm]
    modulus_mpa : modulus of elasticity of the rod [MPa]
    second_moment_mm4 : its second moment of area [mm4]
    clamped : the rod's ends cannot turn

    Valid for: both bushings between the supports; a carriage much stiffer than its rods.
    Source: two loads superposed (beam tables); a straight line through the carriage's two bushings.

    >>> round(carriage_drop_mm(20.0, 200.0, 200.0, 0.0, 400.0, 205_000.0, 201.0619, False), 4)
    0.647
    """
    sag_at = clamped_sag_at_mm if clamped else supported_sag_at_mm
    places_mm = (centre_at_mm - spacing_mm / 2, centre_at_mm + spacing_mm / 2)
    near_mm, far_mm = (
        sum(sag_at(force_n / 2, load_mm, place_mm, span_mm, modulus_mpa, second_moment_mm4) for load_mm in places_mm)
        for place_mm in places_mm
    )
    if spacing_mm == 0:
        return near_mm
    return near_mm + (far_mm - near_mm) * (seen_at_mm - places_mm[0]) / spacing_mm


def height_change_at_tool_mm(
    force_n: float,
    travel_mm: float,
    spacing_mm: float,
    span_mm: float,
    modulus_mpa: float,
    second_moment_mm4: float,
    clamped: bool,
    tool_rides: bool,
) -> float:
    """How much the height changes at the tool while a carriage runs over its travel: what levelling cannot take away.

    force_n : load of the carriage on this rod [N]
    travel_mm : travel, centred on the rod [mm]
    spacing_mm : distance of the bushings' middles [mm]
    span_mm : distance of the supports [mm]
    modulus_mpa : modulus of elasticity of the rod [MPa]
    second_moment_mm4 : its second moment of area [mm4]
    clamped : the rod's ends cannot turn
    tool_rides : the tool sits on the middle of the carriage; else it stands still above the middle of the rod, and a
        bed passes under it

    Valid for: travel + spacing up to the span; tool over the middle.
    Source: carriage_drop_mm at nine places from the middle to one end of the travel; the other end mirrors it.

    >>> round(height_change_at_tool_mm(7.2, 180.0, 110.0, 332.0, 205_000.0, 201.0619, False, True), 4)
    0.0539
    >>> round(height_change_at_tool_mm(7.2, 180.0, 110.0, 332.0, 205_000.0, 201.0619, False, False), 4)
    0.0076
    """
    middle_mm = span_mm / 2
    drops_mm = []
    for share in range(_PLACES + 1):
        centre_mm = middle_mm - travel_mm / 2 * share / _PLACES
        seen_mm = centre_mm if tool_rides else middle_mm
        drops_mm.append(
            carriage_drop_mm(force_n, centre_mm, seen_mm, spacing_mm, span_mm, modulus_mpa, second_moment_mm4, clamped)
        )
    return max(drops_mm) - min(drops_mm)


_PLACES = 8
