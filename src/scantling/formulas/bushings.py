"""Linear ball bushings: life, hardness of the shaft, load on one ball."""

from __future__ import annotations

from itertools import pairwise
from math import cos, exp, log, pi

# Hardness factor of the load rating, as published with worked lives at 40, 50 and 60 HRC. Softer shafts get none here:
# charts go on, but what ends such a shaft is the pressure of the balls (formulas.contact), not the life of the bushing.
HARDNESS_POINTS = ((40.0, 0.27), (50.0, 0.53), (60.0, 1.0))
# Contact factor by the number of bushings that sit close together on one shaft (a bushing maker's table).
SHARED_LOAD_RATIOS = (1.00, 0.81, 0.72, 0.66, 0.61)


def hardness_ratio(hardness_hrc: float) -> float:
    """Share of a ball bushing's load rating that is left on a shaft of this hardness; ValueError below 40 HRC.

    hardness_hrc : hardness of the shaft's surface [HRC]

    Valid for: 40 to 60 HRC, never extrapolated below; harder shafts count as 60 HRC.
    Source: a bushing maker's design guide with worked lives at 40, 50, 60 HRC; between the points straight in log.

    >>> hardness_ratio(50.0), hardness_ratio(62.0)
    (0.53, 1.0)
    """
    lowest_hrc = HARDNESS_POINTS[0][0]
    if not hardness_hrc >= lowest_hrc:
        raise ValueError(
            f"no hardness factor for {hardness_hrc:g} HRC: no worked life below {lowest_hrc:g} HRC is known"
        )
    for (low_hrc, low), (high_hrc, high) in pairwise(HARDNESS_POINTS):
        if hardness_hrc == low_hrc:
            return low
        if hardness_hrc < high_hrc:
            share_ratio = (hardness_hrc - low_hrc) / (high_hrc - low_hrc)
            return exp(log(low) + share_ratio * (log(high) - log(low)))
    return HARDNESS_POINTS[-1][1]


def bushing_life_km(
    dynamic_load_n: float, load_n: float, hardness_factor_ratio: float, load_factor_ratio: float, basis_km: float
) -> float:
    """Travel that nine of ten ball bushings reach; infinite without load.

    dynamic_load_n : load rating C [N]
    load_n : load on one bushing [N]
    hardness_factor_ratio : see hardness_ratio [-]
    load_factor_ratio : 1 to 1.5 smooth and slow, 1.5 to 2 without shocks up to 1 m/s, 2 to 3.5 with shocks [-]
    basis_km : travel that the rating is made for, 50 or 100 [km]

    Valid for: loads below half the rating, clean grease, one direction of load.
    Source: ISO 14728-1, (f_H C / (f_W P))³ times the basis.

    >>> round(bushing_life_km(260.0, 50.0, 1.0, 1.0, 50.0), 1)
    7030.4
    """
    if load_n == 0:
        return float("inf")
    return (hardness_factor_ratio * dynamic_load_n / (load_factor_ratio * load_n)) ** 3 * basis_km


def rating_on_50_km_n(rating_100_km_n: float) -> float:
    """Load rating for a travel of 50 km from one made for 100 km.

    rating_100_km_n : load rating for 100 km [N]

    Valid for: ball bushings.
    Source: cube law of ISO 14728-1, 2^(1/3) = 1.26.

    >>> round(rating_on_50_km_n(100.0), 1)
    126.0
    """
    return rating_100_km_n * 2 ** (1 / 3)


def life_hours_h(life_km: float, stroke_mm: float, double_strokes_hz: float) -> float:
    """Life in hours of a carriage that goes to and fro.

    life_km : life as travel [km]
    stroke_mm : one way [mm]
    double_strokes_hz : to-and-fro movements a second [Hz]

    Valid for: even use.
    Source: definition.

    >>> round(life_hours_h(7030.4, 200.0, 1.0))
    4882
    """
    return life_km * 1e6 / (2 * stroke_mm * double_strokes_hz * 3600)


def most_loaded_ball_n(load_n: float, rows: int, balls_in_row: int) -> float:
    """Load on the ball that carries most in a bushing whose load points at one of its rows, the hardest way.

    load_n : load on the bushing [N]
    rows : rows of balls around the shaft [-]
    balls_in_row : balls of a row that touch the shaft at once [-]

    Valid for: rows spread evenly, no play; play and tilt shift more onto fewer balls: a floor, not a mean.
    Source: springs after Hertz, share of a row in proportion to cos α ^ 1.5, rows within 90° of the load.

    >>> round(most_loaded_ball_n(10.0, 4, 5), 2)
    2.0
    """
    return load_n * _largest_row_share(rows, 0.0) / balls_in_row


def between_rows_ratio(rows: int) -> float:
    """How much more a bushing carries with its load between two rows than with its load on one row.

    rows : rows of balls around the shaft [-]

    Valid for: 4 to 6 rows spread evenly.
    Source: springs after Hertz; agrees with 1.41, 1.46, 1.28 of bushing makers' catalogues for 4, 5, 6 rows.

    >>> [round(between_rows_ratio(rows), 2) for rows in (4, 5, 6)]
    [1.41, 1.46, 1.28]
    """
    return _largest_row_share(rows, 0.0) / _largest_row_share(rows, pi / rows)


def _largest_row_share(rows: int, offset_rad: float) -> float:
    """Share of the load on the row nearest to its direction, which lies ``offset_rad`` beside it."""
    cosines = [max(0.0, cos(offset_rad + 2 * pi * row / rows)) for row in range(rows)]
    return float(max(cosines) ** 1.5 / sum(float(one**2.5) for one in cosines))
