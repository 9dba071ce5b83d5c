"""Beams: sag of guide rods, of a carriage that runs on them, and of cantilevers; deflection positive along the load."""

from __future__ import annotations

from math import pi, sqrt

from scantling.formulas.dynamics import mass_t

# Share of a rod's own mass that moves with its middle, from its bending shape (exact: 17/35).
ROD_MASS_RATIO = 17 / 35


def supported_sag_mm(force_n: float, span_mm: float, modulus_mpa: float, second_moment_mm4: float) -> float:
    """Sag at mid-span of a beam on two free supports, load in the middle: the worst place of a moving load.

    force_n : load [N]
    span_mm : distance of the supports [mm]
    modulus_mpa : modulus of elasticity [MPa]
    second_moment_mm4 : second moment of area [mm4]

    Valid for: span over ten diameters (shear left out), sag under a hundredth of the span.
    Source: beam tables, F L³ / (48 E I).

    >>> round(supported_sag_mm(20.0, 400.0, 205_000.0, 201.0619), 4)
    0.647
    """
    return force_n * span_mm**3 / (48 * modulus_mpa * second_moment_mm4)


def clamped_sag_mm(force_n: float, span_mm: float, modulus_mpa: float, second_moment_mm4: float) -> float:
    """Sag at mid-span of a beam clamped at both ends, load in the middle.

    force_n : load [N]
    span_mm : free length [mm]
    modulus_mpa : modulus of elasticity [MPa]
    second_moment_mm4 : second moment of area [mm4]

    Valid for: ends that cannot turn at all; printed and wooden holders lie between this and supported_sag_mm.
    Source: beam tables, F L³ / (192 E I).

    >>> round(clamped_sag_mm(20.0, 400.0, 205_000.0, 201.0619), 4)
    0.1617
    """
    return supported_sag_mm(force_n, span_mm, modulus_mpa, second_moment_mm4) / 4


def supported_sag_at_mm(
    force_n: float, load_at_mm: float, seen_at_mm: float, span_mm: float, modulus_mpa: float, second_moment_mm4: float
) -> float:
    """Sag anywhere of a beam on two free supports, load anywhere.

    force_n : load [N]
    load_at_mm : where the load stands, from one support [mm]
    seen_at_mm : where the sag is wanted, from the same support [mm]
    span_mm : distance of the supports [mm]
    modulus_mpa : modulus of elasticity [MPa]
    second_moment_mm4 : second moment of area [mm4]

    Valid for: both places between the supports; as supported_sag_mm.
    Source: beam tables, F b x (L² - b² - x²) / (6 L E I) for x up to the load.

    >>> round(supported_sag_at_mm(20.0, 200.0, 200.0, 400.0, 205_000.0, 201.0619), 4)
    0.647
    """
    near_mm, far_mm = load_at_mm, span_mm - load_at_mm
    x_mm = seen_at_mm
    if seen_at_mm > load_at_mm:
        far_mm, x_mm = near_mm, span_mm - seen_at_mm
    rest_mm2 = span_mm**2 - far_mm**2 - x_mm**2
    return force_n * far_mm * x_mm * rest_mm2 / (6 * span_mm * modulus_mpa * second_moment_mm4)


def clamped_sag_at_mm(
    force_n: float, load_at_mm: float, seen_at_mm: float, span_mm: float, modulus_mpa: float, second_moment_mm4: float
) -> float:
    """Sag anywhere of a beam clamped at both ends, load anywhere.

    force_n : load [N]
    load_at_mm : where the load stands, from one end [mm]
    seen_at_mm : where the sag is wanted, from the same end [mm]
    span_mm : free length [mm]
    modulus_mpa : modulus of elasticity [MPa]
    second_moment_mm4 : second moment of area [mm4]

    Valid for: both places between the ends; ends that cannot turn.
    Source: beam tables, F b² x² (3 a L - (3 a + b) x) / (6 L³ E I) for x up to the load.

    >>> round(clamped_sag_at_mm(20.0, 200.0, 200.0, 400.0, 205_000.0, 201.0619), 4)
    0.1617
    """
    near_mm, far_mm = load_at_mm, span_mm - load_at_mm
    x_mm = seen_at_mm
    if seen_at_mm > load_at_mm:
        near_mm, far_mm, x_mm = far_mm, near_mm, span_mm - seen_at_mm
    rest_mm2 = 3 * near_mm * span_mm - (3 * near_mm + far_mm) * x_mm
    return force_n * far_mm**2 * x_mm**2 * rest_mm2 / (6 * span_mm**3 * modulus_mpa * second_moment_mm4)


def supported_uniform_sag_mm(load_n_mm: float, span_mm: float, modulus_mpa: float, second_moment_mm4: float) -> float:
    """Sag at mid-span of a beam on two free supports under an even load, its own weight for instance.

    load_n_mm : load per length [N/mm]
    span_mm : distance of the supports [mm]
    modulus_mpa : modulus of elasticity [MPa]
    second_moment_mm4 : second moment of area [mm4]

    Valid for: as supported_sag_mm.
    Source: beam tables, 5 w L⁴ / (384 E I).

    >>> round(supported_uniform_sag_mm(0.00387, 400.0, 205_000.0, 201.0619), 4)
    0.0313
    """
    return 5 * load_n_mm * span_mm**4 / (384 * modulus_mpa * second_moment_mm4)


def clamped_uniform_sag_mm(load_n_mm: float, span_mm: float, modulus_mpa: float, second_moment_mm4: float) -> float:
    """Sag at mid-span of a beam clamped at both ends under an even load.

    load_n_mm : load per length [N/mm]
    span_mm : free length [mm]
    modulus_mpa : modulus of elasticity [MPa]
    second_moment_mm4 : second moment of area [mm4]

    Valid for: ends that cannot turn.
    Source: beam tables, w L⁴ / (384 E I).

    >>> round(clamped_uniform_sag_mm(0.00387, 400.0, 205_000.0, 201.0619), 4)
    0.0063
    """
    return supported_uniform_sag_mm(load_n_mm, span_mm, modulus_mpa, second_moment_mm4) / 5


def cantilever_sag_mm(force_n: float, length_mm: float, modulus_mpa: float, second_moment_mm4: float) -> float:
    """Sag of the free end of a cantilever, load at the end.

    force_n : load [N]
    length_mm : free length [mm]
    modulus_mpa : modulus of elasticity [MPa]
    second_moment_mm4 : second moment of area [mm4]

    Valid for: a root that cannot turn; see frame.joint_softening_ratio where it can.
    Source: beam tables, F L³ / (3 E I).

    >>> round(cantilever_sag_mm(5.0, 130.0, 7_000.0, 3645.0), 4)
    0.1435
    """
    return force_n * length_mm**3 / (3 * modulus_mpa * second_moment_mm4)


def cantilever_uniform_sag_mm(
    load_n_mm: float, length_mm: float, modulus_mpa: float, second_moment_mm4: float
) -> float:
    """Sag of the free end of a cantilever under an even load.

    load_n_mm : load per length [N/mm]
    length_mm : free length [mm]
    modulus_mpa : modulus of elasticity [MPa]
    second_moment_mm4 : second moment of area [mm4]

    Valid for: a root that cannot turn.
    Source: beam tables, w L⁴ / (8 E I).

    >>> round(cantilever_uniform_sag_mm(0.01, 130.0, 7_000.0, 3645.0), 5)
    0.01399
    """
    return load_n_mm * length_mm**4 / (8 * modulus_mpa * second_moment_mm4)


def supported_end_slope_rad(force_n: float, span_mm: float, modulus_mpa: float, second_moment_mm4: float) -> float:
    """Slope at the supports of a beam loaded in the middle: how far a bushing is forced askew there.

    force_n : load [N]
    span_mm : distance of the supports [mm]
    modulus_mpa : modulus of elasticity [MPa]
    second_moment_mm4 : second moment of area [mm4]

    Valid for: free supports.
    Source: beam tables, F L² / (16 E I).

    >>> round(supported_end_slope_rad(20.0, 400.0, 205_000.0, 201.0619), 5)
    0.00485
    """
    return force_n * span_mm**2 / (16 * modulus_mpa * second_moment_mm4)


def carriage_sag_mm(
    force_n: float, centre_at_mm: float, spacing_mm: float, span_mm: float, modulus_mpa: float, second_moment_mm4: float
) -> float:
    """Sag of the middle of a carriage with two bushings on a rod with free ends.

    force_n : load of the carriage on this rod, shared evenly by its bushings [N]
    centre_at_mm : where the carriage's middle stands, from one support [mm]
    spacing_mm : distance of the bushings' middles; 0 for a single bushing [mm]
    span_mm : distance of the supports [mm]
    modulus_mpa : modulus of elasticity [MPa]
    second_moment_mm4 : second moment of area [mm4]

    Valid for: both bushings between the supports; bushings that tilt freely.
    Source: two loads superposed, mean of the sag under both.

    >>> round(carriage_sag_mm(20.0, 200.0, 0.0, 400.0, 205_000.0, 201.0619), 4)
    0.647
    """
    places_mm = (centre_at_mm - spacing_mm / 2, centre_at_mm + spacing_mm / 2)
    return sum(
        supported_sag_at_mm(force_n / 2, load_mm, seen_mm, span_mm, modulus_mpa, second_moment_mm4) / 2
        for load_mm in places_mm
        for seen_mm in places_mm
    )


def carriage_height_change_mm(
    force_n: float, travel_mm: float, spacing_mm: float, span_mm: float, modulus_mpa: float, second_moment_mm4: float
) -> float:
    """How much lower a carriage runs in the middle of its travel than at the ends: what levelling cannot take away.

    force_n : load of the carriage on this rod [N]
    travel_mm : travel, centred on the rod [mm]
    spacing_mm : distance of the bushings' middles [mm]
    span_mm : distance of the supports [mm]
    modulus_mpa : modulus of elasticity [MPa]
    second_moment_mm4 : second moment of area [mm4]

    Valid for: travel + spacing up to the span; free ends.
    Source: carriage_sag_mm in the middle less at the end.

    >>> round(carriage_height_change_mm(7.2, 180.0, 110.0, 332.0, 205_000.0, 201.0619), 4)
    0.0539
    """
    middle_mm = span_mm / 2
    in_middle = carriage_sag_mm(force_n, middle_mm, spacing_mm, span_mm, modulus_mpa, second_moment_mm4)
    at_end = carriage_sag_mm(force_n, middle_mm - travel_mm / 2, spacing_mm, span_mm, modulus_mpa, second_moment_mm4)
    return in_middle - at_end


def rod_stiffness_n_mm(span_mm: float, modulus_mpa: float, second_moment_mm4: float) -> float:
    """Force that bends the middle of a rod with free ends by a millimetre [N/mm].

    span_mm : distance of the supports [mm]
    modulus_mpa : modulus of elasticity [MPa]
    second_moment_mm4 : second moment of area [mm4]

    Valid for: as supported_sag_mm.
    Source: beam tables, 48 E I / L³.

    >>> round(rod_stiffness_n_mm(400.0, 205_000.0, 201.0619), 1)
    30.9
    """
    return 48 * modulus_mpa * second_moment_mm4 / span_mm**3


def loaded_rod_frequency_hz(stiffness_n_mm: float, carried_kg: float, rod_kg: float) -> float:
    """Lowest frequency of a rod with free ends that carries a mass in its middle.

    stiffness_n_mm : stiffness at the middle, of all rods together [N/mm]
    carried_kg : mass carried [kg]
    rod_kg : mass of the rods over their span [kg]

    Valid for: any ratio of the masses, error below 2 %.
    Source: energy with the static bending shape, 17/35 of the rod's mass moves with the middle.

    >>> round(loaded_rod_frequency_hz(30.9, 1.0, 0.158), 2)
    26.96
    """
    moving_t = mass_t(carried_kg + ROD_MASS_RATIO * rod_kg)
    return sqrt(stiffness_n_mm / moving_t) / (2 * pi)
