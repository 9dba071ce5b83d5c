"""Screwed joints: how long the screw must be, how far it sticks out, how deep it goes in.

A stack is everything between the underside of the head and the nut, or the tapped part. For a countersunk head it
begins at the top of the head, for such a screw's length is measured from there.
"""

from __future__ import annotations

from math import radians, tan

# Pitches that should stick out of a nut: at least one (a fastener maker's rule), at most three (trade practice).
LEAST_PROTRUSION_RATIO = 1.0
MOST_PROTRUSION_RATIO = 3.0
# Free space to leave at the bottom of a blind hole; from memory of workshop practice.
BLIND_ROOM_MM = 0.5


def protrusion_mm(length_mm: float, stack_mm: float, nut_mm: float) -> float:
    """How far a screw sticks out of its nut; negative where it does not reach through.

    length_mm : length of the screw [mm]
    stack_mm : everything clamped, washers included [mm]
    nut_mm : height of the nut [mm]

    Valid for: through joints.
    Source: geometry.

    >>> protrusion_mm(20.0, 12.0, 5.0)
    3.0
    """
    return length_mm - stack_mm - nut_mm


def length_for_nut_mm(stack_mm: float, nut_mm: float, pitch_mm: float, pitches_ratio: float) -> float:
    """Length at which a screw sticks out of its nut by so many pitches.

    stack_mm : everything clamped, washers included [mm]
    nut_mm : height of the nut [mm]
    pitch_mm : pitch [mm]
    pitches_ratio : pitches that stick out, 1 at least and 3 at most [-]

    Valid for: through joints; round up to a length that is sold.
    Source: a fastener maker's rule, one pitch beyond the nut.

    >>> length_for_nut_mm(12.0, 4.7, 0.8, 1.0)
    17.5
    """
    return stack_mm + nut_mm + pitches_ratio * pitch_mm


def engagement_mm(length_mm: float, stack_mm: float, thread_depth_mm: float) -> float:
    """Thread engaged where a screw goes into a tapped part; negative where it does not reach.

    length_mm : length of the screw [mm]
    stack_mm : everything between head and tapped part [mm]
    thread_depth_mm : length of the thread in the part [mm]

    Valid for: threads that begin at the part's face.
    Source: geometry.

    >>> engagement_mm(10.0, 6.0, 4.5)
    4.0
    """
    return min(length_mm - stack_mm, thread_depth_mm)


def room_below_mm(length_mm: float, stack_mm: float, hole_depth_mm: float) -> float:
    """Space left below the tip in a blind hole; negative where the screw bottoms and clamps nothing.

    length_mm : length of the screw [mm]
    stack_mm : everything between head and tapped part [mm]
    hole_depth_mm : depth to which the screw may go [mm]

    Valid for: blind holes and motor faces; leave BLIND_ROOM_MM at least.
    Source: geometry.

    >>> room_below_mm(10.0, 6.0, 4.5)
    0.5
    """
    return hole_depth_mm - (length_mm - stack_mm)


def thread_in_nut_mm(length_mm: float, thread_length_mm: float, stack_mm: float, nut_mm: float) -> float:
    """Length of the nut that has thread in it; less than the nut where the shank reaches in.

    length_mm : length of the screw [mm]
    thread_length_mm : threaded length of the screw [mm]
    stack_mm : everything clamped, washers included [mm]
    nut_mm : height of the nut [mm]

    Valid for: through joints.
    Source: geometry.

    >>> round(thread_in_nut_mm(30.0, 18.0, 20.0, 2.4), 3), round(thread_in_nut_mm(30.0, 8.0, 20.0, 2.4), 3)
    (2.4, 0.4)
    """
    begins_mm = max(stack_mm, length_mm - thread_length_mm)
    ends_mm = min(stack_mm + nut_mm, length_mm)
    return max(0.0, ends_mm - begins_mm)


def countersink_depth_mm(head_diameter_mm: float, hole_diameter_mm: float, countersink_deg: float) -> float:
    """Depth of a countersink that takes a head flush, down to where it meets the hole.

    head_diameter_mm : diameter of the head at the surface [mm]
    hole_diameter_mm : diameter of the hole [mm]
    countersink_deg : whole angle of the cone, 90 metric, 82 inch [deg]

    Valid for: hole_diameter_mm below head_diameter_mm.
    Source: geometry.

    >>> round(countersink_depth_mm(6.72, 3.4, 90.0), 2)
    1.66
    """
    return (head_diameter_mm - hole_diameter_mm) / 2 / tan(radians(countersink_deg / 2))


def forgiveness_mm(hole_mm: float, screw_mm: float, parts_loose: int) -> float:
    """How far two hole patterns may disagree so that a screw still goes in.

    hole_mm : diameter of the clearance hole [mm]
    screw_mm : diameter of the screw [mm]
    parts_loose : 2 where both parts have clearance holes, 1 where one is tapped [-]

    Valid for: one screw; the pattern must fit at all of them.
    Source: rule of the floating and the fixed fastener, hole less screw, or half of it.

    >>> round(forgiveness_mm(3.6, 3.0, 2), 2), round(forgiveness_mm(3.6, 3.0, 1), 2)
    (0.6, 0.3)
    """
    return (hole_mm - screw_mm) * (1.0 if parts_loose == 2 else 0.5)
