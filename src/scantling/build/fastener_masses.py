"""Masses of standard fasteners from their sizes: good enough to weigh a bag and to add to a moving mass.

The thread is taken as a plain cylinder of its pitch diameter, which holds the same metal; recesses are taken out of
socket heads. Steel, 7850 kg/m3. Against masses printed in dealers' tables the results are within the stated band.
"""

from __future__ import annotations

from math import pi, sqrt

from scantling.model.kinds import Nut, Washer
from scantling.quantities import Figure, Grade
from scantling.tables.screws import ScrewHead
from scantling.tables.threads import thread

STEEL_KG_MM3 = 7850e-9  # usual density of steel, from memory
BAND_RATIO = 0.12  # of the estimates below against tables of screw masses, from memory

# Share of the enclosing cylinder that a head fills. Socket: recess of half the head's height, across flats about
# 0.45 of the diameter. Button and pan: dome. Hexagon: prism over its corner circle, 3·√3/(2·π). By calculation.
_HEAD_FILL = {"socket": 0.91, "button": 0.62, "hexagon": 3 * sqrt(3) / (2 * pi), "pan": 0.72}


def screw_mass(head: ScrewHead, length_mm: float) -> Figure:
    """Return the mass of a screw in kg."""
    found = thread(head.thread)
    shank_mm2 = _disc_mm2(found.pitch_diameter_mm)
    if head.countersink_deg is None:
        volume_mm3 = _disc_mm2(head.diameter_mm) * head.height_mm * _HEAD_FILL[head.head] + shank_mm2 * length_mm
    else:
        d_mm, big_mm = found.major_mm, head.diameter_mm
        cone_mm3 = pi / 12 * head.height_mm * (big_mm**2 + big_mm * d_mm + d_mm**2)
        volume_mm3 = cone_mm3 * 0.85 + shank_mm2 * (length_mm - head.height_mm)  # less the recess
    return _typical(volume_mm3)


def nut_mass(nut: Nut) -> Figure:
    """Return the mass of a nut in kg."""
    hexagon_mm2 = sqrt(3) / 2 * nut.across_flats_mm.value**2
    bore_mm2 = _disc_mm2(thread(nut.thread).pitch_diameter_mm)
    return _typical((hexagon_mm2 - bore_mm2) * nut.height_mm.value * (0.85 if nut.style == "lock" else 0.98))


def washer_mass(washer: Washer) -> Figure:
    """Return the mass of a washer in kg."""
    ring_mm2 = _disc_mm2(washer.outer_diameter_mm.value) - _disc_mm2(washer.inner_diameter_mm.value)
    return _typical(ring_mm2 * washer.thickness_mm.value)


def _disc_mm2(diameter_mm: float) -> float:
    return pi / 4 * diameter_mm**2


def _typical(volume_mm3: float) -> Figure:
    mass_kg = volume_mm3 * STEEL_KG_MM3
    low_kg, high_kg = mass_kg * (1 - BAND_RATIO), mass_kg * (1 + BAND_RATIO)
    return Figure(mass_kg, low_kg, high_kg, Grade.TYPICAL, "steel, from its sizes")
