"""A stiff carriage on bushings that run on two sagging rods: its height at the tool, wherever the tool is."""

from __future__ import annotations

from math import hypot

from scantling.formulas.held_beams import held_sag_at_mm, held_slope_at_rad


def carriage_drop_mm(
    force_n: float,
    centre_at_mm: float,
    seen_at_mm: float,
    spacing_mm: float,
    span_mm: float,
    modulus_mpa: float,
    second_moment_mm4: float,
    end_fixity_ratio: float,
) -> float:
    """How far a carriage has sunk at a place along its rod, which may lie beyond its bushings.

    force_n : load of the carriage on this rod, shared evenly by its two bushings [N]
    centre_at_mm : where the carriage's middle stands, from one support [mm]
    seen_at_mm : where the height counts, from the same support [mm]
    spacing_mm : distance of the bushings' middles; 0 for a single bushing, which keeps level [mm]
    span_mm : distance of the supports [mm]
    modulus_mpa : modulus of elasticity of the rod [MPa]
    second_moment_mm4 : its second moment of area [mm4]
    end_fixity_ratio : 0 for ends that turn freely, 1 for clamped ones, see held_beams.fixity_ratio [-]

    Valid for: both bushings between the supports; a carriage much stiffer than its rods.
    Source: two loads superposed (beam tables); a straight line through the carriage's two bushings.

    >>> round(carriage_drop_mm(20.0, 200.0, 200.0, 0.0, 400.0, 205_000.0, 201.0619, 0.0), 4)
    0.647
    """
    beam = spacing_mm, span_mm, modulus_mpa, second_moment_mm4, end_fixity_ratio
    middle_mm, tilt = _carriage(force_n, centre_at_mm, *beam)
    return middle_mm + tilt * (seen_at_mm - centre_at_mm)


def lone_drop_mm(
    force_n: float,
    centre_at_mm: float,
    seen_at_mm: float,
    spacing_mm: float,
    span_mm: float,
    modulus_mpa: float,
    second_moment_mm4: float,
    end_fixity_ratio: float,
) -> float:
    """How far a carriage has sunk over the rod on which a single bushing runs; two on the other rod keep it level.

    force_n : load of the carriage on each of the two rods [N]
    centre_at_mm : where the carriage's middle and its single bushing stand, from one support [mm]
    seen_at_mm : where the height counts, from the same support [mm]
    spacing_mm : distance of the two bushings on the other rod, above 0 [mm]
    span_mm : distance of the supports [mm]
    modulus_mpa : modulus of elasticity of the rods [MPa]
    second_moment_mm4 : their second moment of area [mm4]
    end_fixity_ratio : 0 for ends that turn freely, 1 for clamped ones [-]

    Valid for: as carriage_drop_mm; the single bushing under the carriage's middle.
    Source: three points carry a plane: height of the single bushing, tilt of the pair.

    >>> round(lone_drop_mm(7.2, 76.0, 166.0, 110.0, 332.0, 205_000.0, 201.0619, 0.0), 4)
    0.1131
    """
    beam = span_mm, modulus_mpa, second_moment_mm4, end_fixity_ratio
    own_mm = held_sag_at_mm(force_n, centre_at_mm, centre_at_mm, *beam)
    return own_mm + _carriage(force_n, centre_at_mm, spacing_mm, *beam)[1] * (seen_at_mm - centre_at_mm)


def height_change_at_tool_mm(
    force_n: float,
    travel_mm: float,
    spacing_mm: float,
    span_mm: float,
    modulus_mpa: float,
    second_moment_mm4: float,
    end_fixity_ratio: float,
    tool_rides: bool,
    one_stands_alone: bool = False,
) -> float:
    """How much the height changes at the tool while a carriage runs over its travel: what levelling cannot take away.

    force_n : load of the carriage on the rod that carries more [N]
    travel_mm : travel, centred on the rod [mm]
    spacing_mm : distance of the bushings' middles [mm]
    span_mm : distance of the supports [mm]
    modulus_mpa : modulus of elasticity of the rod [MPa]
    second_moment_mm4 : its second moment of area [mm4]
    end_fixity_ratio : 0 for ends that turn freely, 1 for clamped ones [-]
    tool_rides : the tool sits on the middle of the carriage; else it stands still above the middle of the rod, and a
        bed passes under it
    one_stands_alone : on the other rod runs a single bushing; the worse side counts

    Valid for: travel + spacing up to the span; tool over the middle.
    Source: carriage_drop_mm at nine places from the middle to one end of the travel; the other end mirrors it.

    >>> round(height_change_at_tool_mm(7.2, 180.0, 110.0, 332.0, 205_000.0, 201.0619, 0.0, True), 4)
    0.0539
    >>> round(height_change_at_tool_mm(7.2, 180.0, 110.0, 332.0, 205_000.0, 201.0619, 0.0, False), 4)
    0.0076
    """
    beam = spacing_mm, span_mm, modulus_mpa, second_moment_mm4, end_fixity_ratio
    pair_mm, lone_mm = [], []
    for share in range(_PLACES + 1):
        centre_mm = (span_mm - travel_mm * share / _PLACES) / 2
        drop_mm, tilt = _carriage(force_n, centre_mm, *beam)
        tilted_mm = 0.0 if tool_rides else tilt * (span_mm / 2 - centre_mm)
        pair_mm.append(drop_mm + tilted_mm)
        if one_stands_alone and spacing_mm > 0:
            lone_mm.append(held_sag_at_mm(force_n, centre_mm, centre_mm, *beam[1:]) + tilted_mm)
    return max(max(drops_mm) - min(drops_mm) for drops_mm in (pair_mm, lone_mm) if drops_mm)


def bushing_slope_rad(
    force_n: float,
    travel_mm: float,
    spacing_mm: float,
    span_mm: float,
    modulus_mpa: float,
    second_moment_mm4: float,
    end_fixity_ratio: float,
) -> float:
    """Largest angle over the travel between the rod at one bushing and the line through both.

    force_n : load of the carriage on this rod, shared evenly by its two bushings [N]
    travel_mm : travel, centred on the rod [mm]
    spacing_mm : distance of the bushings' middles; 0 for a single bushing, which the carriage keeps level [mm]
    span_mm : distance of the supports [mm]
    modulus_mpa : modulus of elasticity of the rod [MPa]
    second_moment_mm4 : its second moment of area [mm4]
    end_fixity_ratio : 0 for ends that turn freely, 1 for clamped ones [-]

    Valid for: travel + spacing up to the span; a carriage much stiffer than its rods.
    Source: slopes of two loads superposed (beam tables) less the slope of the straight line through the bushings.

    >>> round(1000 * bushing_slope_rad(7.2, 180.0, 110.0, 332.0, 205_000.0, 201.0619, 0.0), 3)
    0.536
    """
    beam = span_mm, modulus_mpa, second_moment_mm4, end_fixity_ratio
    largest_rad = 0.0
    for share in range(_PLACES + 1):
        centre_mm = span_mm / 2 - travel_mm / 2 * share / _PLACES
        places_mm = (centre_mm - spacing_mm / 2, centre_mm + spacing_mm / 2)
        sags_mm, slopes_rad = (
            [sum(of(force_n / 2, load_mm, seen_mm, *beam) for load_mm in places_mm) for seen_mm in places_mm]
            for of in (held_sag_at_mm, held_slope_at_rad)
        )
        line_rad = (sags_mm[1] - sags_mm[0]) / spacing_mm if spacing_mm > 0 else 0.0
        largest_rad = max(largest_rad, *(abs(slope_rad - line_rad) for slope_rad in slopes_rad))
    return largest_rad


def side_by_side_share_ratio(load_offset_mm: float, apart_mm: float) -> float:
    """Share of a load that the nearer of two rods side by side carries.

    load_offset_mm : of the load from the middle between the rods, across them [mm]
    apart_mm : distance of the rods [mm]

    Valid for: level rods; above 1 where the load lies beyond the rod and the other is lifted.
    Source: moments about the other rod, 1/2 + e / b.

    >>> side_by_side_share_ratio(15.0, 150.0), side_by_side_share_ratio(-15.0, 150.0)
    (0.6, 0.6)
    """
    return 0.5 + abs(load_offset_mm) / apart_mm


def stacked_share_ratio(load_offset_mm: float, apart_mm: float) -> float:
    """Share of a load that each of two stacked rods carries, where it hangs in front of them.

    load_offset_mm : of the load, in front of the rods' plane [mm]
    apart_mm : distance of the rods [mm]

    Valid for: rods one above the other; both carry half the weight and a pull or push across from its moment.
    Source: resultant of W / 2 down and W e / b across.

    >>> stacked_share_ratio(0.0, 44.0), round(stacked_share_ratio(33.0, 44.0), 3)
    (0.5, 0.901)
    """
    return hypot(0.5, load_offset_mm / apart_mm)


_PLACES = 8


def _carriage(
    force_n: float,
    centre_at_mm: float,
    spacing_mm: float,
    span_mm: float,
    modulus_mpa: float,
    second_moment_mm4: float,
    end_fixity_ratio: float,
) -> tuple[float, float]:
    """How far the middle of a carriage has sunk, and how it tilts; a single bushing keeps level."""
    beam = span_mm, modulus_mpa, second_moment_mm4, end_fixity_ratio
    if spacing_mm == 0:
        return held_sag_at_mm(force_n, centre_at_mm, centre_at_mm, *beam), 0.0
    first_mm, second_mm = centre_at_mm - spacing_mm / 2, centre_at_mm + spacing_mm / 2
    half_n = force_n / 2
    cross_mm = held_sag_at_mm(half_n, first_mm, second_mm, *beam)  # either way round (Maxwell)
    near_mm = held_sag_at_mm(half_n, first_mm, first_mm, *beam) + cross_mm
    far_mm = held_sag_at_mm(half_n, second_mm, second_mm, *beam) + cross_mm
    return (near_mm + far_mm) / 2, (far_mm - near_mm) / spacing_mm
