"""A carriage on a tight toothed belt: what its runs share, what its tension must be, what they pull on the shaft."""

from __future__ import annotations


def least_tension_n(force_n: float, near_mm: float, path_mm: float) -> float:
    """Tension at rest below which the slack run hangs loose while the belt drives: its share of the force.

    force_n : drive force on the carriage [N]
    near_mm : longest way of the tight run, from the carriage straight to the driven pulley [mm]
    path_mm : belt once round [mm]

    Valid for: belts that stretch in proportion to force; axles that do not give.
    Source: two springs side by side; slack_side_tension_n at nothing.

    >>> least_tension_n(10.0, 300.0, 600.0)
    5.0
    """
    return force_n * near_mm / path_mm


def most_tension_n(allowed_n: float, force_n: float, near_mm: float, path_mm: float) -> float:
    """Tension at rest above which the tight run is overloaded while the belt drives.

    allowed_n : tension that the belt may work at [N]
    force_n : drive force on the carriage [N]
    near_mm : shortest way of the tight run [mm]
    path_mm : belt once round [mm]

    Valid for: as least_tension_n.
    Source: two springs side by side, the tight run takes the rest of the force.

    >>> most_tension_n(100.0, 20.0, 150.0, 600.0)
    85.0
    """
    return allowed_n - force_n * (1 - near_mm / path_mm)


def shaft_pull_n(installed_n: float, force_n: float, near_mm: float, path_mm: float) -> float:
    """Sideways pull of both runs on the shaft of the driven pulley, half wrapped, while it pulls by the near run.

    installed_n : tension at rest [N]
    force_n : drive force on the carriage [N]
    near_mm : way of the near run [mm]
    path_mm : belt once round [mm]

    Valid for: both runs tight and side by side.
    Source: sum of both runs, T + F (1 - a / L) and T - F a / L.

    >>> shaft_pull_n(15.0, 8.0, 75.0, 600.0), shaft_pull_n(15.0, 8.0, 300.0, 600.0)
    (36.0, 30.0)
    """
    return 2 * installed_n + force_n * (1 - 2 * near_mm / path_mm)


def tension_lost_n(strain_stiffness_n: float, nearer_mm: float, path_mm: float) -> float:
    """Tension that a belt loses where its axles come nearer, a mount that creeps for one.

    strain_stiffness_n : force per unit strain of this belt at its width [N]
    nearer_mm : by how much the axles come nearer [mm]
    path_mm : belt once round [mm]

    Valid for: a belt that stays tight.
    Source: definition, twice the way is taken from the belt's length.

    >>> tension_lost_n(15000.0, 0.1, 600.0)
    5.0
    """
    return strain_stiffness_n * 2 * nearer_mm / path_mm


def nearer_until_slack_mm(strain_stiffness_n: float, spare_n: float, path_mm: float) -> float:
    """By how much axles may come nearer until a tension is used up.

    strain_stiffness_n : force per unit strain of this belt at its width [N]
    spare_n : tension that may be lost [N]
    path_mm : belt once round [mm]

    Valid for: as tension_lost_n.
    Source: tension_lost_n solved for the way.

    >>> nearer_until_slack_mm(15000.0, 5.0, 600.0)
    0.1
    """
    return spare_n * path_mm / (2 * strain_stiffness_n)


def radial_limit_at_n(limit_n: float, stated_mm: float, at_mm: float, bearing_mm: float) -> float:
    """Sideways pull that a shaft bears elsewhere than where its limit is stated: the same moment about its bearing.

    limit_n : stated limit [N]
    stated_mm : where it is stated, from the motor's face [mm]
    at_mm : where the pull acts, from the motor's face [mm]
    bearing_mm : middle of the front bearing behind the face [mm]

    Valid for: pulls in front of the face; nearer than stated the limit grows no further than at the face.
    Source: equal moment about the front bearing; reproduces a motor maker's table, 20, 25, 34, 52 N at 0, 5, 10, 15 mm
        from the tip of a shaft of 20 mm.

    >>> [round(radial_limit_at_n(20.0, 20.0, 20.0 - tip, 5.0)) for tip in (0, 5, 10, 15)]
    [20, 25, 33, 50]
    """
    return limit_n * (stated_mm + bearing_mm) / (max(0.0, at_mm) + bearing_mm)
