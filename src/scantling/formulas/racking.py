"""Racking: whether a carriage slides or jams when the force acts beside its guide."""

from __future__ import annotations


def greatest_arm_ratio(friction_ratio: float) -> float:
    """Greatest arm of the force over the distance of the bushings at which the carriage still slides.

    friction_ratio : coefficient of friction of the bushings [-]

    Valid for: two bushings on one rod, no other drag; any load. 0.25 gives the rule of two to one.
    Source: a bushing maker's design guide, arm / spacing up to 1 / (2 f).

    >>> greatest_arm_ratio(0.25)
    2.0
    """
    return 1 / (2 * friction_ratio)


def racking_margin_ratio(arm_mm: float, spacing_mm: float, friction_ratio: float) -> float:
    """How far a carriage is from jamming: 0 at the limit, 1 with the force on the guide, negative where it jams.

    arm_mm : distance of the driving or dragging force from the guide [mm]
    spacing_mm : distance of the bushings' middles [mm]
    friction_ratio : coefficient of friction of the bushings [-]

    Valid for: as greatest_arm_ratio.
    Source: 1 - arm / (spacing · greatest_arm_ratio).

    >>> racking_margin_ratio(110.0, 110.0, 0.25)
    0.5
    """
    return 1 - arm_mm / spacing_mm / greatest_arm_ratio(friction_ratio)
