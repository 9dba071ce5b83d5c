"""Wobble: how a crooked screw pushes its nut sideways once a turn, and how much of it the guide lets through.

A screw whose ends are held is a beam with a bow that turns with it. Where its nut cannot give way sideways, the screw
and the guide share the bow as two springs; ends that hold nothing (a free top on a coupler that bends) let it go.
"""

from __future__ import annotations

BOW_LENGTH_MM = 300.0  # straightness is told on this length
LOW_ENDS = ("clamped", "pinned")
TOP_ENDS = ("clamped", "pinned", "free")


def bow_mm(bow_300_mm: float, length_mm: float) -> float:
    """Bow of a screw of any length: how far its middle lies beside the line between its ends.

    bow_300_mm : bow of 300 mm of it [mm]
    length_mm : its length [mm]

    Valid for: an even curve, as of bar that was coiled or stored badly; a kink is worse.
    Source: geometry, sagitta of a flat arc grows with the square of its length.

    >>> bow_mm(0.3, 600.0)
    1.2
    """
    return bow_300_mm * (length_mm / BOW_LENGTH_MM) ** 2


def beside_mm(low: str, top: str, bow_mm: float, at_mm: float, length_mm: float) -> float:
    """How far a bowed screw runs beside the axis of its ends, once they are held and its nut is not.

    low, top : how its ends are held, ``clamped``, ``pinned`` or at the top ``free``
    bow_mm : bow over its free length [mm]
    at_mm : place of the nut, from the low end [mm]
    length_mm : free length [mm]

    Valid for: flat bows; an end that is neither clamped nor led by the other one (pinned and free) follows the nut: 0.
    Source: beam of even curvature κ = 8 bow / L², end reactions by beam tables: pinned 4 bow a b / L², clamped and
        free 4 bow a² / L², clamped and pinned 2 bow a² b / L³, clamped at both ends 0.

    >>> beside_mm("pinned", "pinned", 0.2, 100.0, 200.0), beside_mm("clamped", "free", 0.2, 200.0, 200.0)
    (0.2, 0.8)
    """
    from_low, from_top = at_mm / length_mm, 1 - at_mm / length_mm
    shapes = {
        ("pinned", "pinned"): 4 * from_low * from_top,
        ("clamped", "free"): 4 * from_low**2,
        ("clamped", "pinned"): 2 * from_low**2 * from_top,
        ("pinned", "clamped"): 2 * from_top**2 * from_low,
    }
    return bow_mm * shapes.get((low, top), 0.0)


def sideways_stiffness_n_mm(
    low: str, top: str, at_mm: float, length_mm: float, modulus_mpa: float, second_moment_mm4: float
) -> float:
    """Sideways stiffness of a held screw or rod where its nut or carriage stands.

    low, top : how its ends are held, ``clamped``, ``pinned`` or at the top ``free``
    at_mm : place, between its ends, from the low one [mm]
    length_mm : free length [mm]
    modulus_mpa : modulus of elasticity [MPa]
    second_moment_mm4 : second moment of area, of a screw that of its root [mm4]

    Valid for: slender bars; 0 where nothing holds it (pinned and free).
    Source: beam tables, load over deflection at the load: pinned 3 E I L / (a² b²), clamped and free 3 E I / a³,
        clamped and pinned 12 E I L³ / (a³ b² (3 a + 4 b)), clamped at both ends 3 E I L³ / (a³ b³).

    >>> round(sideways_stiffness_n_mm("pinned", "pinned", 200.0, 400.0, 205_000.0, 201.0619), 2)
    30.91
    """
    rigidity_nmm2, a_mm, b_mm = modulus_mpa * second_moment_mm4, at_mm, length_mm - at_mm
    if (low, top) == ("pinned", "clamped"):
        return sideways_stiffness_n_mm("clamped", "pinned", b_mm, length_mm, modulus_mpa, second_moment_mm4)
    softness = {
        ("pinned", "pinned"): a_mm**2 * b_mm**2 / (3 * length_mm),
        ("clamped", "free"): a_mm**3 / 3,
        ("clamped", "pinned"): a_mm**3 * b_mm**2 * (3 * a_mm + 4 * b_mm) / (12 * length_mm**3),
        ("clamped", "clamped"): a_mm**3 * b_mm**3 / (3 * length_mm**3),
    }
    return rigidity_nmm2 / softness[low, top] if (low, top) in softness else 0.0


def transferred_mm(beside_mm: float, float_mm: float, screw_n_mm: float, guide_n_mm: float) -> float:
    """Wobble that arrives at the guide: what the nut's seat does not let go, shared by two springs.

    beside_mm : how far the screw runs beside its axis [mm]
    float_mm : how far the nut shifts in its seat before it pushes, either way [mm]
    screw_n_mm : sideways stiffness of the screw [N/mm]
    guide_n_mm : sideways stiffness of the guide [N/mm]

    Valid for: a nut that cannot tilt away; both stiffnesses at the same height.
    Source: springs in series, k_s / (k_s + k_g) of what is left after the float.

    >>> transferred_mm(0.2, 0.0, 25.0, 475.0)
    0.01
    """
    left_mm = max(0.0, beside_mm - float_mm)
    return left_mm * screw_n_mm / (screw_n_mm + guide_n_mm) if screw_n_mm > 0 else 0.0
