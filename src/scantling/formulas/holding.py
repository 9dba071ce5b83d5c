"""What holds a screw in soft material: wood-based panel, plastic, a brass insert; and a tapped thread in metal."""

from __future__ import annotations

from math import pi, sqrt

# Factors of the withdrawal formula, metric, from the face of a board and from its edge (Wood Handbook, ch. 8).
FACE_FACTOR = 41.1
EDGE_FACTOR = 31.8
# Shear area of a tapped thread over the cylinder of its nominal diameter: 1/2 + tan 30° · 0.6495.
TAPPED_RATIO = 0.875


def panel_withdrawal_n(
    diameter_mm: float, depth_mm: float, gravity_ratio: float, factor_ratio: float = FACE_FACTOR
) -> float:
    """Pull that draws a screw out of wood-based panel.

    diameter_mm : of the screw [mm]
    depth_mm : of thread in the panel [mm]
    gravity_ratio : density over that of water [-]
    factor_ratio : FACE_FACTOR or EDGE_FACTOR [-]

    Valid for: sound panel, pilot hole of about the root; a mean, single screws scatter by a quarter. Nothing below a
    third of a diameter. Fitted to particleboard; fibreboard, plywood and strand board fall within their published
    ranges.
    Source: Wood Handbook, ch. 8, F = K √D (L - D/3)^(5/4) G² (from memory; reproduces published ranges of ISO 27528).

    >>> round(panel_withdrawal_n(4.2, 15.0, 0.70))
    1078
    """
    held_mm = max(0.0, depth_mm - diameter_mm / 3)
    return factor_ratio * sqrt(diameter_mm) * held_mm * sqrt(sqrt(held_mm)) * gravity_ratio**2


def overlap_ratio(major_mm: float, root_mm: float, hole_mm: float) -> float:
    """Share of a thread's height that is in the material round the hole.

    major_mm : outer diameter of the thread [mm]
    root_mm : diameter of its root [mm]
    hole_mm : diameter of the hole [mm]

    Valid for: threads cut or formed by the screw itself.
    Source: geometry.

    >>> round(overlap_ratio(3.0, 2.387, 2.7), 2)
    0.49
    """
    return min(1.0, max(0.0, (major_mm - hole_mm) / (major_mm - root_mm)))


def thread_crush_n(major_mm: float, hole_mm: float, pitch_mm: float, length_mm: float, crush_mpa: float) -> float:
    """Pull at which the flanks of a thread crush what they have cut themselves into.

    major_mm : outer diameter of the thread [mm]
    hole_mm : diameter of the hole [mm]
    pitch_mm : pitch [mm]
    length_mm : of thread in the material [mm]
    crush_mpa : pressure that the material bears [MPa]

    Valid for: all turns carrying alike; none where the hole is as wide as the thread.
    Source: geometry, pressure on the ring of each turn.

    >>> round(thread_crush_n(3.0, 2.7, 0.5, 10.0, 24.0))
    645
    """
    return pi / 4 * max(0.0, major_mm**2 - hole_mm**2) * length_mm / pitch_mm * crush_mpa


def plastic_pull_out_n(pitch_diameter_mm: float, length_mm: float, shear_mpa: float) -> float:
    """Pull that tears a self-cut thread out of plastic.

    pitch_diameter_mm : of the thread [mm]
    length_mm : of thread in the plastic [mm]
    shear_mpa : strength in shear, tensile strength over √3 [MPa]

    Valid for: bosses at least two diameters wide, thread formed nearly full.
    Source: a published design guide for plastics, F = S π D L.

    >>> round(plastic_pull_out_n(2.675, 6.0, 20.0))
    1008
    """
    return pi * pitch_diameter_mm * length_mm * shear_mpa


def shear_strength_mpa(tensile_mpa: float) -> float:
    """Strength in shear of a tough material.

    tensile_mpa : tensile strength [MPa]

    Valid for: materials that yield before they break.
    Source: von Mises, 1/√3.

    >>> round(shear_strength_mpa(50.0), 1)
    28.9
    """
    return tensile_mpa / sqrt(3)


def insert_pull_out_n(outer_mm: float, length_mm: float, shear_mpa: float, knurl_ratio: float) -> float:
    """Pull that tears a brass insert out of plastic.

    outer_mm : diameter of the insert over its knurl [mm]
    length_mm : of the insert [mm]
    shear_mpa : strength of the plastic in shear [MPa]
    knurl_ratio : share of the cylinder that the knurl takes hold of, about a half [-]

    Valid for: inserts set with heat, flush, in bosses twice as wide.
    Source: shear on the cylinder, a published design guide for plastics; the share from memory.

    >>> round(insert_pull_out_n(4.6, 5.0, 20.0, 0.5))
    723
    """
    return pi * outer_mm * length_mm * shear_mpa * knurl_ratio


def tapped_pull_out_n(major_mm: float, length_mm: float, shear_mpa: float) -> float:
    """Pull that strips a tapped thread.

    major_mm : nominal diameter [mm]
    length_mm : of thread engaged [mm]
    shear_mpa : strength of the tapped material in shear [MPa]

    Valid for: 60° threads of basic size, tapped material weaker than the screw.
    Source: FED-STD-H28, shear area of the internal thread, 1/2 + tan 30° (D - E)/P with E = D - 0.6495 P.

    >>> round(tapped_pull_out_n(3.0, 3.0, 100.0))
    2474
    """
    return TAPPED_RATIO * pi * major_mm * length_mm * shear_mpa
