"""Guides that are held more often than they need be: rods out of parallel squeeze, seats askew press on edges.

A carriage needs to be held across by one rod alone and to be carried by three bushings. Whatever holds it besides must
agree to within play, or rods and seats bend until it does; that load runs along and drags.
"""

from __future__ import annotations

from math import inf

from scantling.formulas.held_beams import held_sag_at_mm


def pair_compliances_mm_n(
    centre_at_mm: float,
    spacing_mm: float,
    span_mm: float,
    modulus_mpa: float,
    second_moment_mm4: float,
    end_fixity_ratio: float,
) -> tuple[float, float, float]:
    """How far a rod gives at two bushings: at the first under its own newton, at one under the other's, at the second.

    centre_at_mm : middle between the bushings, from one end of the rod [mm]
    spacing_mm : distance of the bushings' middles [mm]
    span_mm : free length [mm]
    modulus_mpa : modulus of elasticity of the rod [MPa]
    second_moment_mm4 : its second moment of area [mm4]
    end_fixity_ratio : 0 for ends that turn freely, 1 for clamped ones [-]

    Valid for: both bushings between the ends.
    Source: beam tables under a unit load; both cross terms are alike (Maxwell).

    >>> [round(1000 * c, 2) for c in pair_compliances_mm_n(166.0, 110.0, 332.0, 205_000.0, 201.0619, 0.0)]
    [14.66, 12.84, 14.66]
    """
    first_mm, second_mm = centre_at_mm - spacing_mm / 2, centre_at_mm + spacing_mm / 2
    beam = span_mm, modulus_mpa, second_moment_mm4, end_fixity_ratio
    return (
        held_sag_at_mm(1.0, first_mm, first_mm, *beam),
        held_sag_at_mm(1.0, first_mm, second_mm, *beam),
        held_sag_at_mm(1.0, second_mm, second_mm, *beam),
    )


def shift_stiffness_n_mm(compliances_mm_n: tuple[float, float, float]) -> float:
    """Force that shifts both bushings of a rod alike by a millimetre [N/mm].

    compliances_mm_n : see pair_compliances_mm_n [mm/N]

    Valid for: bushings at two places.
    Source: two springs that share a beam, sum of the inverse matrix.

    >>> round(shift_stiffness_n_mm((0.010, 0.008, 0.010)), 1)
    111.1
    """
    first, cross, second = compliances_mm_n
    return (first + second - 2 * cross) / (first * second - cross**2)


def twist_stiffness_n_mm(compliances_mm_n: tuple[float, float, float]) -> float:
    """Force on each bushing where one of a rod is lifted by a millimetre and the other pressed down as much [N/mm].

    compliances_mm_n : see pair_compliances_mm_n [mm/N]

    Valid for: bushings at two places; the mean of both.
    Source: two springs that share a beam, difference of the inverse matrix.

    >>> round(twist_stiffness_n_mm((0.010, 0.008, 0.010)), 1)
    500.0
    """
    first, cross, second = compliances_mm_n
    return (first + second + 2 * cross) / (2 * (first * second - cross**2))


def squeeze_n(misfit_mm: float, play_mm: float, stiffness_n_mm: float, other_n_mm: float) -> float:
    """Force between two rods whose distance is not that of the carriage's bushings.

    misfit_mm : by how much the distances differ where the carriage stands [mm]
    play_mm : what the bushings of both rods let it be [mm]
    stiffness_n_mm : of one rod against being shifted there [N/mm]
    other_n_mm : of the other [N/mm]

    Valid for: a carriage much stiffer than its rods.
    Source: springs in series; no force within the play.

    >>> squeeze_n(0.5, 0.25, 128.0, 128.0), squeeze_n(0.05, 0.1, 128.0, 128.0)
    (16.0, 0.0)
    """
    return max(0.0, misfit_mm - play_mm) / (1 / stiffness_n_mm + 1 / other_n_mm)


def bushing_turning_nmm_rad(
    to_end_mm: float, to_next_mm: float, modulus_mpa: float, second_moment_mm4: float, end_fixity_ratio: float
) -> float:
    """How stiff a rod is against being turned by a bushing that cannot turn.

    to_end_mm : from the bushing to the nearer end of the rod [mm]
    to_next_mm : to what holds it on the other side: the next bushing, on which it turns [mm]
    modulus_mpa : modulus of elasticity of the rod [MPa]
    second_moment_mm4 : its second moment of area [mm4]
    end_fixity_ratio : of the end, 0 to 1 [-]

    Valid for: a bushing that holds its place.
    Source: slope-deflection, 3 E I / s to a point where it turns freely, 12 E I / ((4 - r) a) to an end of fixity r.

    >>> round(bushing_turning_nmm_rad(50.0, 100.0, 205_000.0, 201.0619, 0.0))
    3709592
    """
    return modulus_mpa * second_moment_mm4 * (12 / ((4 - end_fixity_ratio) * to_end_mm) + 3 / to_next_mm)


def forced_moment_nmm(
    askew_rad: float,
    free_rad: float,
    rod_turning_nmm_rad: float,
    seat_turning_nmm_rad: float,
    bushing_turning_stiffness_nmm_rad: float = inf,
) -> float:
    """Moment on a bushing that sits askew on its rod.

    askew_rad : angle between seat and rod [rad]
    free_rad : what play, and a seat on which it can turn, let it be [rad]
    rod_turning_nmm_rad : see bushing_turning_nmm_rad [N·mm/rad]
    seat_turning_nmm_rad : how stiff the seat holds the bushing, see holders.gripped_turning_nmm_rad [N·mm/rad]
    bushing_turning_stiffness_nmm_rad : how stiff the bushing itself is, its balls give a little [N·mm/rad]

    Valid for: small angles.
    Source: springs in series; no moment within the free angle.

    >>> round(forced_moment_nmm(0.003, 0.001, 1e6, 1e6), 6), forced_moment_nmm(0.001, 0.002, 1e6, 1e6)
    (1000.0, 0.0)
    """
    gives_rad_nmm = 1 / rod_turning_nmm_rad + 1 / seat_turning_nmm_rad + 1 / bushing_turning_stiffness_nmm_rad
    return max(0.0, askew_rad - free_rad) / gives_rad_nmm


def moment_load_n(moment_nmm: float, length_mm: float, share_ratio: float) -> float:
    """Even load on a bushing that presses as hard, where it presses hardest, as a moment does.

    moment_nmm : moment across the bushing [N·mm]
    length_mm : length of the bushing [mm]
    share_ratio : 6 for a lining that presses evenly along its length, about 11 for balls, which carry over a part of it
        and stiffen under load [-]

    Valid for: moments alone; add the load itself.
    Source: geometry, 6 M / l; for balls a bushing maker's table of equivalent factors, 10.3 to 12.9 times M / l from 6
        to 20 mm.

    >>> round(moment_load_n(100.0, 24.0, 11.0), 1)
    45.8
    """
    return share_ratio * moment_nmm / length_mm


def binding_drag_n(
    squeeze_force_n: float, twist_force_n: float, bushings: int, moment_nmm: float, length_mm: float, rub_ratio: float
) -> float:
    """Pull that a guide takes because it is held too often.

    squeeze_force_n : force between the rods, borne by the bushings of both [N]
    twist_force_n : on each bushing where four do not lie in one plane, 0 for three [N]
    bushings : bushings of the carriage [-]
    moment_nmm : on each bushing that sits askew [N·mm]
    length_mm : length of a bushing [mm]
    rub_ratio : friction of a bushing on its rod [-]

    Valid for: friction in proportion to the load.
    Source: Coulomb; a moment presses with two forces of 1.5 M / l (straight-line pressure).

    >>> binding_drag_n(20.0, 0.0, 3, 0.0, 24.0, 0.25), binding_drag_n(0.0, 0.0, 3, 240.0, 24.0, 0.25)
    (10.0, 22.5)
    """
    pressed_n = 2 * squeeze_force_n + bushings * twist_force_n + bushings * 3 * moment_nmm / length_mm
    return rub_ratio * pressed_n
